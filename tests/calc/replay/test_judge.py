"""Slits, holes and crumbs as the knitter is told of them."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from pieces import diamond, drawn, piece
from wedgework.bed import place
from wedgework.formats.plan import Slit
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan
from wedgework.replay.borders import standing_steps, steps_joined


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


@pytest.mark.parametrize("leans", ["right", "left"])
def test_a_steep_border_is_one_slit_in_steps(leans: str) -> None:
    """Seven steps of ten rows, or eight with a short one: one entry, from its lowest step to its highest, seen from behind."""
    low, high = ("0.65", "0.3") if leans == "right" else ("0.3", "0.65")  # the front is the mirror image of the bed
    layout = drawn("a", ("b", [(0, 0), (low, 0), (high, 1), (0, 1)]))
    plan = plan_piece(piece(layout, 20, 70))
    judged = replay_plan(plan)
    (slit,) = judged.summary.slits
    assert slit.to_needle is not None
    assert (slit.needle < slit.to_needle) == (leans == "right")
    assert {slit.needle, slit.to_needle} in ({-4, 3}, {-4, 4})
    assert (slit.steps, slit.rows) in ((7, 66), (8, 70))
    assert plan.summary.slits == judged.summary.slits
    (warning,) = [w for w in judged.warnings if w.code == "piece.slit"]
    assert f"in {slit.steps} steps, from row {slit.from_row}" in warning.sentence
    assert ("347 mm in all" if slit.rows == 66 else "368 mm in all") in warning.sentence  # at 19 rows per 10 cm


def test_steps_of_two_borders_are_two_slits() -> None:
    steps = [Slit(-1, 1, 6), Slit(1, 7, 6), Slit(2, 13, 6), Slit(9, 40, 5), Slit(10, 34, 5), Slit(3, 1, 8)]
    assert steps_joined(steps) == (Slit(-1, 1, 18, 3, 2), Slit(3, 1, 8), Slit(10, 34, 10, 2, 9))


def test_claims_of_single_steps_are_joined_before_they_are_compared() -> None:
    """A plan of an earlier version lists each step on its own, and knows no stairs; it is as true as before."""
    plan = plan_piece(piece(drawn("a", ("b", [(0, 0), ("0.65", 0), ("0.3", 1), (0, 1)])), 20, 70))
    (slit,) = plan.summary.slits
    single = tuple(standing_steps(replay_plan(plan).piece.columns, place(plan.first_needle)))
    assert len(single) == slit.steps
    assert replay_plan(replace(plan, summary=replace(plan.summary, slits=single))).problems == ()
    lying = replace(plan, summary=replace(plan.summary, slits=single[1:]))
    assert [p.where for p in replay_plan(lying).problems] == ["summary.slits"]


def test_a_shallow_slope_is_a_stair_and_a_level_top_is_none() -> None:
    slope = drawn("a", ("b", [(0, 0), (1, 0), (1, "0.6"), (0, "0.4")]))  # ten needles a turn
    plan = plan_piece(piece(slope, 60, 60))
    judged = replay_plan(plan)
    (stair,) = judged.summary.stairs
    assert stair.widest >= 9
    assert stair.steps >= 3
    assert 22 <= stair.from_row < stair.to_row <= 38
    assert plan.summary.stairs == judged.summary.stairs
    (warning,) = [w for w in judged.warnings if w.code == "piece.stair"]
    assert f"up to {stair.widest} needles" in warning.sentence
    level = drawn("a", ("b", [(0, 0), (1, 0), (1, "0.2"), ("0.7", "0.5"), ("0.3", "0.5"), (0, "0.2")]))
    assert replay_plan(plan_piece(piece(level, 60, 60))).summary.stairs == ()


def test_crumbs_are_named() -> None:
    specks = [("b", [(f"0.{x}", "0.5"), (f"0.{x}4", "0.5"), (f"0.{x}2", "0.54")]) for x in range(1, 9)]
    judged = replay_plan(plan_piece(piece(drawn("a", *specks), 60, 100)))
    assert {"piece.crumbs", "piece.many-ends"} & {w.code for w in judged.warnings}


def test_a_deep_fold_is_told_in_rows_and_millimetres() -> None:
    judged = replay_plan(plan_piece(piece(drawn("a", ("b", [(0, 0), ("0.6", 0), ("0.4", 1), (0, 1)])), 60, 100)))
    if judged.summary.steepest_fold > 60:
        assert any(w.code == "piece.fold" for w in judged.warnings)
    assert replay_plan(plan_piece(diamond())).summary.steepest_fold < 10


def test_crumbs_and_slivers_come_with_an_offer_that_helps() -> None:
    """Taking the offer gives a piece of which nobody has to say that it is for another technique."""
    speck = ("b", [("0.2", "0.5"), ("0.26", "0.5"), ("0.23", "0.54")])
    sliver = ("c", [("0.7", "0.2"), ("0.717", "0.2"), ("0.9", "0.8"), ("0.883", "0.8")])
    design = piece(drawn("a", speck, sliver), 60, 100)
    judged = replay_plan(plan_piece(design))
    assert judged.problems == ()
    told = {w.code: w for w in judged.warnings}
    assert "for another technique" in told["piece.crumbs"].sentence + told["piece.slivers"].sentence
    least = max(int(number) for code in ("piece.crumbs", "piece.slivers") for number in re.findall(r"\d+", told[code].way_out))
    merged = replay_plan(plan_piece(piece(drawn("a", speck, sliver), 60, 100, merge_below=least)))
    assert merged.stitches == {"a": 60 * 100}
    assert {w.code for w in merged.warnings} == set()


def test_a_shape_of_which_nothing_is_seen_is_told_with_its_place() -> None:
    small = ("b", [("0.5", "0.5"), ("0.501", "0.5"), ("0.5", "0.501")])
    outside = ("c", [("1.2", "1.2"), ("1.8", "1.2"), ("1.5", "1.8")])
    covered = ("b", [("0.2", "0.2"), ("0.4", "0.2"), ("0.3", "0.4")])
    cover = ("c", [("0.1", "0.1"), ("0.9", "0.1"), ("0.9", "0.9"), ("0.1", "0.9")])
    judged = replay_plan(plan_piece(piece(drawn("a", small, outside, covered, cover), 60, 100)))
    told = [w for w in judged.warnings if w.code == "layout.unseen"]
    assert [w.where for w in told] == [f"design.layout.shapes[{i}]" for i in (0, 1, 2)]
    assert all(w.way_out for w in told)
