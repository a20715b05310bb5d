"""The edging calculator: whole repeats, joins that are spread, corners, everything that is wrong."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

import pytest

import working
from wedgework.calculators.edging import CALCULATOR
from wedgework.declare import work_out

F = Fraction


result = partial(working.result, CALCULATOR)


@pytest.mark.parametrize("repeat", ["1", "4", "6", "15"])
@pytest.mark.parametrize("join", ["1", "2", "3"])
def test_whole_repeats_and_whole_joins(repeat: str, join: str) -> None:
    found = result(repeat=repeat, join_every=join)
    assert found.values["rows"] % int(repeat) == 0
    for edge in found.values["edges"]:
        assert edge["rows"] % int(repeat) == edge["rows"] % int(join) == 0
        assert edge["joins"] == edge["rows"] // int(join) == len(edge["joined_at"])
        assert all(1 <= place <= edge["places"] for place in edge["joined_at"])
    assert found.values["rows"] == sum(e["rows"] for e in found.values["edges"]) + 4 * found.values["corner_rows"]


def test_rows_follow_both_gauges() -> None:
    (edge,) = result(along="end", edging_rows_per_10cm="22", repeat="1").values["edges"]
    assert edge["rows_exact"] == F(106) / 14 * 22
    assert edge["rows"] == 166
    assert abs(edge["off_mm"]) <= 100 / F(22)


@pytest.mark.parametrize(("corner", "rows"), [("none", 0), ("eased", 17), ("square", 22)])
def test_corners(corner: str, rows: int) -> None:
    """8 stitches are 57.1 mm, which is 10.86 rows: pi / 2 of it are 17.05, twice it 21.7."""
    found = result(corner=corner, repeat="1", join_every="1").values
    assert found["corner_rows"] == rows


def test_one_edge_has_no_corner() -> None:
    found = result(along="side").values
    assert [edge["edge"] for edge in found["edges"]] == ["side"]
    assert found["corner_rows"] == 0


def test_warnings() -> None:
    assert {w.code for w in result(repeat="150").warnings} == {"edging.far-off"}
    assert {w.code for w in result(join_every="1").warnings} == {"edging.crowded"}


def test_what_cannot_be() -> None:
    problems = work_out(CALCULATOR, {"rows": "1", "join_every": "0", "corner": "round"}).problems
    assert [(p.where, p.code) for p in problems] == [
        ("rows", "declare.out-of-range"),
        ("join_every", "declare.out-of-range"),
        ("corner", "declare.not-a-choice"),
    ]
