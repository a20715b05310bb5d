"""The calculator of panels: fewest panels, seams, repeats, joins, everything that is wrong."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

import pytest

import working
from wedgework.calculators.panels import CALCULATOR
from wedgework.declare import Bullets, work_out

F = Fraction


result = partial(working.result, CALCULATOR)


def test_the_fewest_panels_that_fit() -> None:
    found = result().values
    assert (found["panels"], found["needles_per_panel"], found["rows"]) == (3, 95, 418)
    assert (found["first_needle"], found["last_needle"]) == ("L47", "R48")
    assert found["visible_stitches"] == [94, 93, 94]
    assert (found["seams"], found["seam_mm"], found["seams_mm"]) == (2, 2200, 4400)


@pytest.mark.parametrize(("seam", "each"), [("none", 0), ("half", F(1, 2)), ("one", 1)])
def test_stitches_seen_and_hidden_are_all_stitches(seam: str, each: Fraction) -> None:
    found = result(seam_stitches=seam, panels="4").values
    assert found["stitches"] + 2 * found["seams"] * each == 4 * found["needles_per_panel"]
    assert sum(found["visible_stitches"], F(0)) == found["stitches"]
    assert found["width_mm"] == found["stitches"] * 100 / 14


def test_a_repeat_in_each_panel() -> None:
    found = result(stitch_multiple="30", stitch_extra="2")
    assert found.values["needles_per_panel"] % 30 == 2
    assert found.warnings == ()


def test_a_repeat_that_misses_the_size_is_told_with_a_better_number() -> None:
    (warning,) = result(panels="5", stitch_multiple="24", stitch_extra="2").warnings
    assert (warning.where, warning.code) == ("stitch_multiple", "panels.far-off")
    assert warning.sentence == "With this repeat it comes out 13.6 % off."
    better = warning.way_out.split()[1]
    assert abs(result(panels=better, stitch_multiple="24", stitch_extra="2").values["width_off_percent"]) < 5


def test_one_panel_says_so() -> None:
    found = result(width="60")
    assert (found.values["panels"], found.values["joins"]) == (1, [])
    assert [w.code for w in found.warnings] == ["panels.fits"]
    assert result(width="60", panels="1").warnings == ()


def test_neighbours_are_joined_first() -> None:
    found = result(panels="5")
    assert found.values["joins"] == [
        {"left": [1], "right": [2]},
        {"left": [3], "right": [4]},
        {"left": [1, 2], "right": [3, 4]},
        {"left": [1, 2, 3, 4], "right": [5]},
    ]
    order = found.view[-1]
    assert isinstance(order, Bullets)
    assert order.items[2] == "Sew panels 1 and 2 to panels 3 and 4."


@pytest.mark.parametrize("panels", range(2, 31))
def test_every_seam_is_sewn_once_between_neighbours(panels: int) -> None:
    joins = (
        result(panels=str(panels), width="900").values["joins"]
        if panels > 12
        else result(panels=str(max(panels, 3))).values["joins"]
    )
    seams = sorted(join["left"][-1] for join in joins)
    assert seams == list(range(1, max(panels, 3)))
    assert all(join["right"][0] == join["left"][-1] + 1 for join in joins)


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ({"panels": "2"}, ("panels", "panels.too-few")),
        ({"width": "1000", "bed_needles": "40"}, ("width", "panels.too-many")),
        ({"width": "5", "panels": "30"}, ("panels", "panels.too-narrow")),
        ({"stitch_multiple": "100", "stitch_extra": "20"}, ("stitch_multiple", "panels.repeat-too-wide")),
    ],
)
def test_what_cannot_be_split(typed: dict[str, str], expected: tuple[str, str]) -> None:
    problems = work_out(CALCULATOR, typed).problems
    assert [(p.where, p.code) for p in problems] == [expected]
    assert problems[0].way_out
