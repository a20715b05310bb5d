"""Short-row shapes against teaching material of universities, worked wedges, trigonometry, and areas of a reference library."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from functools import partial
from typing import Any

import pytest
from shapely.geometry import Polygon

import working
from wedgework.calculators.short_row_shape import CALCULATOR

values = partial(working.values, CALCULATOR)


def listed(found: Mapping[str, Any], key: str) -> Sequence[Mapping[str, Any]]:
    several = found[key]
    return several


def test_the_steepest_gradient_of_a_handout() -> None:
    """A university's handout on short rows: the steepest slope is one needle to hold in every other row. At one stitch to two
    rows of equal length that is 45 degrees; at 14 x 19 it is atan(28 / 19)."""
    assert values(stitches_per_10cm="20", rows_per_10cm="40")["steepest_angle"] == 45
    steepest = float(values()["steepest_angle"])
    assert steepest == pytest.approx(math.degrees(math.atan(28 / 19)), abs=0.001)


def test_one_needle_on_each_row() -> None:
    """The same handout: the fastest way is one needle on every row; a triangle whose both edges move one needle in two rows
    holds one needle in each row, alternately, and every turn is wrapped by itself."""
    found = values(width="20", stitches_per_10cm="20", rows_per_10cm="40", height="10")
    turns = listed(found, "turns")
    assert {(turn["left"], turn["right"]) for turn in turns[1:-1]} == {(-1, -1)}
    assert found["wraps"] >= found["block_rows"] - 3


def test_a_wedge_of_100_stitches_over_36_rows() -> None:
    """A teacher's chart: 100 stitches, a wedge over 36 rows, each line of the chart two rows: 18 turns of 5 or 6 needles."""
    found = values(
        lean="left",
        width="100 cm",
        stitches_per_10cm="10",
        rows_per_10cm="18",
        height="20 cm",
        bed_needles="200",
        bed_pitch="4.5 mm",
    )
    assert (found["needles"], found["rows"]) == (100, 36)
    moved = [max(abs(turn["left"]), abs(turn["right"])) for turn in listed(found, "turns")]
    assert set(moved[1:-1]) <= {5, 6}
    assert 100 - sum(moved) <= 12


def test_wrapped_by_itself_as_a_teacher_tells_it() -> None:
    """The same teacher and the handout: several needles go to hold opposite the carriage but for one, and the last at the
    carriage's side; so a shallow triangle has no wrap by hand and no hole."""
    found = values(width="60", height="10")
    assert (found["wraps_by_hand"], found["holes"]) == (0, 0)
    assert found["wraps"] > 0


def test_the_triangle_of_a_right_angle_and_its_counterpart() -> None:
    """An essay on knitted triangles (2009): each triangle is two right-angled ones. A middle point over 25 stitches of which
    20 lie on one side is out of range here; half and half, both sides have the same needles."""
    found = values(width="30", height="15")
    needles = [edge["needles"] for edge in listed(found, "edges")]
    assert abs(needles[0] - needles[1]) <= 1


@pytest.mark.parametrize("angle", ["20", "30", "45", "55"])
@pytest.mark.parametrize("shape", ["triangle", "diamond"])
def test_angles_as_the_math_module_finds_them(angle: str, shape: str) -> None:
    """Against math.atan2: the line through the needles' rows has the angle that was asked for, within a degree and a half, on
    a piece as wide as a bed."""
    found = values(shape=shape, size_by="angle", angle=angle, width="70")
    for edge in listed(found, "edges"):
        assert float(edge["angle_wanted"]) == pytest.approx(float(angle), abs=0.01)
        assert float(edge["angle_got"]) == pytest.approx(float(angle), abs=1.5)


SHAPES = {
    "triangle": [(0, 0), (1, 0), (0.5, 1)],
    "trapezoid": [(0, 0), (1, 0), (2 / 3, 1), (1 / 3, 1)],
    "diamond": [(0.5, 0), (1, 0.5), (0.5, 1), (0, 0.5)],
}


@pytest.mark.parametrize("shape", SHAPES)
def test_stitches_are_the_area(shape: str) -> None:
    """Against shapely: the stitches knitted are the polygon's area in stitches times rows, within two rows along its edges."""
    found = values(shape=shape, width="60", narrow_width="20", height="30")
    needles, rows = found["needles"], found["rows"]
    area = Polygon([(x * needles, y * rows) for x, y in SHAPES[shape]]).area
    assert found["block_stitches"] == pytest.approx(area, abs=2 * needles)


def test_the_counted_diamond() -> None:
    """Common practice, counted needle by needle for n = 20: from the two centre needles, one needle a row on alternate sides,
    2n - 1 passes to the full width, then narrowing the same way; 2n needles, one needle every two rows."""
    found = values(shape="diamond", stitches_per_10cm="10", rows_per_10cm="20", width="40", height="40")
    assert (found["needles"], found["rows"]) == (40, 80)
    assert abs(found["block_rows"] - 2 * (2 * 20 - 1)) <= 2


def test_a_wedge_of_a_flat_circle() -> None:
    """A derived formula of teaching material: wedges that hold one stitch every two rows turn by 2 / (k R) radians, R the rows to
    one stitch: 76.4 degrees at R = 1.5, so that 4.71 wedges make a circle."""
    typed = {"stitches_per_10cm": "20", "rows_per_10cm": "30", "width": "20", "size_by": "angle", "angle": "76.4"}
    found = values(shape="wedge", **typed)
    assert float(found["turned_degrees"]) == pytest.approx(math.degrees(2 / 1.5), abs=0.5)
    assert 360 / float(found["turned_degrees"]) == pytest.approx(4.71, abs=0.03)
    turns = [max(abs(turn["left"]), abs(turn["right"])) for turn in listed(found, "turns")]
    assert turns.count(1) >= 36


def test_the_shoulder_of_a_published_pattern() -> None:
    """75 stitches, 29 of them at the neck: each shoulder has 23 = 7 + 8 + 8, three steps of two rows (a published pattern).
    Groups within a stitch of each other, as many as there are turns."""
    found = values(shape="shoulder", stitches_per_10cm="10", rows_per_10cm="20", width="23", height="3", step_style="by-hand")
    rows = found["rows_wanted"]
    assert found["needles"] == 23
    groups = sorted(rows.count(each) for each in set(rows))
    assert groups == [7, 8, 8]
    assert found["rows_got"] == rows


def test_a_dart_takes_a_triangle_out() -> None:
    """Against shapely: the stitches of a piece with a dart are a rectangle without a triangle, within two rows at its edges."""
    typed = {"width": "40", "dart_length": "25", "height": "12", "plain_rows": "8"}
    found = values(shape="dart", **typed)
    needles, rows = found["needles"], found["rows"]
    leaning = 25 * 1.4
    low, high = (rows - 12 * 1.9) / 2, (rows + 12 * 1.9) / 2
    whole = Polygon([(0, 0), (needles, 0), (needles, rows), (0, rows)])
    dart = Polygon([(0, low), (leaning, rows / 2), (0, high)])
    assert sum(found["rows_got"]) == pytest.approx(whole.difference(dart).area, abs=2 * leaning)


def test_a_heel_narrows_to_a_third_and_widens_again() -> None:
    """Common practice, no source: a heel of short rows keeps about a third of its needles in the middle; one needle at each side
    every two rows, down and up again, makes each half as high as two rows for every needle held."""
    typed = {"stitches_per_10cm": "20", "rows_per_10cm": "30", "width": "15", "narrow_width": "5"}
    found = values(shape="heel", size_by="height", height=f"{40 / 3:.3f}", **typed)
    assert found["needles"] == 30
    rows = found["rows_wanted"]
    assert rows[:10] == list(range(4, 44, 4))
    assert rows[10:20] == [40] * 10
