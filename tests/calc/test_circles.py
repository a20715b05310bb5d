"""Round things: lengths in pi, wedges that add up, decreases from the rim."""

from __future__ import annotations

from fractions import Fraction

import pytest

from wedgework.angles import PI
from wedgework.circles import (
    Length,
    RoundThing,
    cone,
    corner_mm,
    disc,
    dome,
    inward,
    middle_mm,
    ruffle,
    wedge_steps,
    wedge_stitches,
)

F = Fraction
THINGS = [disc(F(400)), cone(F(400), F(200)), dome(F(400)), ruffle(F(500), F(2), F(80))]


def test_lengths_count_from_both_bounds() -> None:
    assert Length(F(0), F(2)).count(F(88)) == 553
    assert Length(F(10), F(1)).mm == 10 + PI


def test_a_cone_without_height_is_a_disc() -> None:
    assert cone(F(400), F(0)) == disc(F(400))
    assert disc(F(400)).turn == 1
    assert cone(F(60), F(40)).turn == F(3, 5)


@pytest.mark.parametrize("thing", THINGS)
@pytest.mark.parametrize("stitches", [1, 2, 28, 61])
@pytest.mark.parametrize("turns", [1, 7, 28, 90])
def test_a_wedge_holds_every_stitch_once(thing: RoundThing, stitches: int, turns: int) -> None:
    steps = wedge_steps(thing, stitches, turns)
    assert sum(steps) == stitches
    assert len(steps) == turns
    assert steps[-1] >= 1
    assert min(steps) >= 0


def test_a_disc_holds_evenly_and_a_dome_more_and_more() -> None:
    assert wedge_steps(disc(F(400)), 28, 14) == (2,) * 14
    assert wedge_steps(disc(F(400)), 7, 14) == (0, 1) * 7
    steps = wedge_steps(dome(F(400)), 60, 20)
    assert sum(steps[:10]) < sum(steps[10:])


def test_stitches_of_a_wedge() -> None:
    assert wedge_stitches((2, 2, 2)) == 2 * 1 + 2 * 3 + 2 * 6
    assert wedge_stitches((5,)) == 10
    n = 20
    assert wedge_stitches((1,) * n) == n * n + 1, "a half square, and the last row that brings the carriage back"


def test_a_wedge_needs_something() -> None:
    with pytest.raises(ValueError, match="stitches and turns"):
        wedge_steps(disc(F(400)), 0, 4)


@pytest.mark.parametrize("thing", THINGS)
def test_from_the_rim_inward_one_stitch_a_section_is_left_or_none(thing: RoundThing) -> None:
    places = inward(thing, 22, 40)
    lost = sum(times for _, times in places)
    assert lost == (22 if thing == THINGS[3] else 21)
    rows = [row for row, _ in places]
    assert rows == sorted(set(rows))
    assert rows[-1] <= 40


def test_corners_and_middles_close_in_on_the_circle() -> None:
    outer = 2 * PI * 200
    assert middle_mm(outer, 6) < 200 < corner_mm(outer, 6)
    assert corner_mm(outer, 100) - 200 < F(1, 2)
    assert abs(corner_mm(F(600), 6) - 100) < F(1, 10**15), "a hexagon's side is its radius"
