"""Slits, holes and crumbs as the knitter is told of them."""

from __future__ import annotations

from pieces import diamond, drawn, piece
from wedgework.formats.plan import Slit
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan
from wedgework.replay.advice import runs_of_slits


def test_an_upright_border_is_a_slit_with_its_length_and_ways_out() -> None:
    # Left half b, right half a, from the bottom to the top: nothing joins them.
    judged = replay_plan(plan_piece(piece(drawn("a", ("b", [(0, 0), ("0.5", 0), ("0.5", 1), (0, 1)])), 20, 40)))
    assert judged.problems == ()
    assert not judged.joined
    assert [(s.needle, s.from_row, s.rows) for s in judged.summary.slits] == [(-1, 1, 40)]
    (warning,) = [w for w in judged.warnings if w.code == "piece.slit"]
    assert "211 mm" in warning.sentence  # 40 rows at 19 per 10 cm
    assert "link it by hand" in warning.way_out


def test_a_border_leaned_by_one_needle_every_two_rows_is_joined() -> None:
    judged = replay_plan(plan_piece(piece(drawn("a", ("b", [(0, 0), ("0.75", 0), ("0.25", 1), (0, 1)])), 40, 40)))
    assert judged.sound


def test_slits_along_a_steep_border_are_one_warning() -> None:
    slits = [Slit(-1, 1, 6), Slit(1, 7, 6), Slit(2, 13, 6), Slit(9, 40, 5)]
    assert [len(run) for run in runs_of_slits(slits)] == [3, 1]


def test_crumbs_are_named() -> None:
    specks = [("b", [(f"0.{x}", "0.5"), (f"0.{x}4", "0.5"), (f"0.{x}2", "0.54")]) for x in range(1, 9)]
    judged = replay_plan(plan_piece(piece(drawn("a", *specks), 60, 100)))
    assert {"piece.crumbs", "piece.many-ends"} & {w.code for w in judged.warnings}


def test_a_deep_fold_is_told_in_rows_and_millimetres() -> None:
    judged = replay_plan(plan_piece(piece(drawn("a", ("b", [(0, 0), ("0.6", 0), ("0.4", 1), (0, 1)])), 60, 100)))
    if judged.summary.steepest_fold > 60:
        assert any(w.code == "piece.fold" for w in judged.warnings)
    assert replay_plan(plan_piece(diamond())).summary.steepest_fold < 10
