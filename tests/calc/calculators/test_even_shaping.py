"""The calculator of even shaping: promised names and the shape of the result, conventions, points, everything that is wrong."""

from __future__ import annotations

import json
from functools import partial

import pytest

import working
from wedgework.calculators.even_shaping import CALCULATOR
from wedgework.declare import Bullets, Figures, Picture, Prose, work_out
from wedgework.faces.answers import answer_object

result = partial(working.result, CALCULATOR)


def codes(**typed: str) -> list[tuple[str, str]]:
    problems = work_out(CALCULATOR, typed).problems
    assert all(problem.way_out for problem in problems)
    return [(problem.where, problem.code.removeprefix("even-shaping.")) for problem in problems]


def test_the_promised_fields_defaults_and_groups() -> None:
    defaults = CALCULATOR.defaults
    assert {"changes", "over", "gaps", "even_rows_only", "first_after", "edges"} <= set(defaults)
    assert (defaults["even_rows_only"], defaults["edges"]) == ("no", "one")
    gaps = CALCULATOR.field("gaps")
    assert gaps is not None
    assert gaps.choices == ("k", "k+1")
    told = answer_object(work_out(CALCULATOR, {"changes": "14", "over": "124", "gaps": "k"}))
    assert json.loads(json.dumps(told))["result"]["groups"] == [{"every": 8, "times": 2}, {"every": 9, "times": 12}]


def test_the_sum_is_always_shown() -> None:
    for typed in ({"gaps": "k"}, {"gaps": "k+1"}, {"even_rows_only": "yes", "over": "125"}, {"first_after": "5"}):
        found = result(**typed)
        groups, total = found.values["groups"], int(typed.get("over", "124"))
        assert isinstance(groups, list)
        assert sum(g["every"] * g["times"] for g in groups) + found.values["left_over"] == total
        figures = found.view[0]
        assert isinstance(figures, Figures)
        assert any(row.value.endswith(f"= {total}") for row in figures.rows)


def test_both_edges() -> None:
    found = result(edges="both")
    assert found.values["stitches_changed"] == 28
    assert found.values["positions_other_edge"] == list(found.values["positions"])
    found = result(edges="both", even_rows_only="yes")
    assert all(row % 2 == 0 for row in found.values["positions"])
    assert found.values["positions_other_edge"] == [row - 1 for row in found.values["positions"]]


def test_the_order_changes_places_and_not_groups() -> None:
    mixed, small = result().values, result(mixed="smaller").values
    assert mixed["groups"] == small["groups"]
    assert mixed["positions"] != small["positions"]
    assert small["positions"][:3] == (8, 16, 25)


def test_stitches_counted_before_and_after() -> None:
    before = result(along="stitches", changes="16", over="112").values
    assert (before["groups"], before["stitches_after"]) == ([{"every": 7, "times": 16}], 128)
    after = result(along="stitches", changes="16", over="112", counted="after").values
    assert (after["groups"], after["sum"]) == ([{"every": 8, "times": 16}], "16 \u00d7 8 = 128")
    fewer = result(along="stitches", changes="14", over="110", change="fewer", gaps="k+1", counted="after").values
    assert fewer["stitches_after"] == 96
    assert sum(g["every"] * g["times"] for g in fewer["groups"]) == 96


def test_points_give_stages_whose_rows_add_up() -> None:
    found = result(along="points", points="0 40; 90 62; 120 62; 120 56; 140 30")
    first, plain, at_once, steps = found.values["stages"]
    assert first["groups"] == [{"every": 4, "times": 20}, {"every": 5, "times": 2}]
    assert (plain["groups"], plain["left_over"]) == ([], 30)
    assert (at_once["change"], steps["change"]) == (-6, -26)
    assert found.values["places"][-1]["row"] == 140
    assert any(isinstance(part, Picture) for part in found.view)


def test_points_at_both_edges_share_the_change() -> None:
    found = result(along="points", points="0 40; 60 60", edges="both")
    assert found.values["stages"][0]["change"] == 10
    last = found.view[-1]
    assert isinstance(last, Prose)
    assert not any(isinstance(part, Bullets) for part in found.view)


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ({"changes": "125"}, [("changes", "no-room")]),
        ({"changes": "63", "even_rows_only": "yes"}, [("changes", "no-room")]),
        ({"first_after": "5", "even_rows_only": "yes"}, [("first_after", "odd-first")]),
        ({"first_after": "200"}, [("changes", "no-room")]),
        ({"first_after": "5", "even_rows_only": "yes", "changes": "124"}, [("changes", "no-room"), ("first_after", "odd-first")]),
        ({"along": "stitches", "change": "fewer", "changes": "63"}, [("changes", "no-room")]),
        ({"along": "stitches", "change": "fewer", "first_after": "1"}, [("first_after", "first-too-small")]),
        ({"changes": "14.5", "over": "0"}, [("changes", "declare.not-whole"), ("over", "declare.out-of-range")]),
    ],
)
def test_what_has_no_room_is_told(typed: dict[str, str], expected: list[tuple[str, str]]) -> None:
    assert codes(**typed) == expected


@pytest.mark.parametrize(
    ("points", "more", "expected"),
    [
        ("0 40; 90 x; y", {}, ["not-a-point", "not-a-point"]),
        ("0 40", {}, ["how-many-points"]),
        (";".join(f"{i} 9" for i in range(30)), {}, ["how-many-points"]),
        ("3 40; 90 0; 80 7", {}, ["first-point", "stitches-range", "falling"]),
        ("0 40; 9000 50", {}, ["last-point"]),
        ("0 40; 30 45", {"edges": "both"}, ["odd-change"]),
        ("0 40; 31 40; 31 44", {"even_rows_only": "yes"}, ["odd-row"]),
        ("0 40; 1 44", {}, ["no-row"]),
        ("0 40; 1 41", {"even_rows_only": "yes"}, ["no-row"]),
    ],
)
def test_points_that_are_no_edge_are_told_all_at_once(points: str, more: dict[str, str], expected: list[str]) -> None:
    assert codes(along="points", points=points, **more) == [("points", code) for code in expected]
