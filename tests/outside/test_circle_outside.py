"""Round things against published lessons, Archimedes, and a reference library's polygons."""

from __future__ import annotations

import math
from fractions import Fraction
from itertools import pairwise

import pytest
from shapely.geometry import Point, Polygon

import working
from wedgework.calculators.circle import CALCULATOR
from wedgework.circles import corner_mm, middle_mm
from wedgework.declare import work_out

INCH = Fraction("25.4")


def values(**typed: str) -> dict[str, float]:
    return {key: float(value) for key, value in working.numbers(CALCULATOR, **typed).items()}


def per_inch(stitches: int, rows: int) -> dict[str, str]:
    return {"stitches_per_10cm": str(float(stitches * 100 / INCH)), "rows_per_10cm": str(float(rows * 100 / INCH))}


def test_a_published_lesson_on_pies() -> None:
    """A machine knitting lesson (2011): 44 in across at 4 stitches and 6 rows per inch: 88 stitches, 828 rows (circumference
    rounded to 138 in), 5 slices of 166 rows."""
    found = values(diameter="44 in", wedges="5", **per_inch(4, 6))
    assert found["stitches"] == 88
    assert abs(found["outer_rows"] - 828) <= 2
    assert found["outer_rows"] / 5 == 166


def test_a_published_rule_for_flat_hats() -> None:
    """A hand knitters' forum: stitch gauge / row gauge x 2 pi; at 5 and 7 per inch 4.487 (printed) a row."""
    assert values(made="inward", **per_inch(5, 7))["decreases_per_row"] == pytest.approx(4.487, abs=0.002)


def test_a_published_bag_bottom() -> None:
    """A hand knitters' forum (2008): at 8 stitches and 10 rows per inch 5 decreases a row, worked out row by row."""
    assert round(values(made="inward", **per_inch(8, 10))["decreases_per_row"]) == 5


def test_the_wedge_of_the_formula() -> None:
    """Wedge angle 2 / (k R) radians: with R = 1.5 and k = 1 76.4 degrees, 4.71 wedges (worked out from 2 pi r, not read)."""
    found = values(stitches_per_10cm="20", rows_per_10cm="30", per_step="1")
    assert round(found["natural_wedge_angle"], 1) == 76.4
    assert round(found["natural_wedges"], 2) == 4.71


@pytest.mark.parametrize("wedges", ["", "6", "12"])
def test_a_disc_has_the_area_of_a_circle(wedges: str) -> None:
    """Archimedes, Measurement of a Circle: half of radius times circumference."""
    found = values(diameter="60", wedges=wedges)
    area = found["stitches_knitted"] * (100 / 14) * (100 / 19)
    assert area == pytest.approx(math.pi * 300**2, rel=0.03)


@pytest.mark.parametrize("wedges", ["6", "10"])
def test_a_dome_has_the_area_of_half_a_ball(wedges: str) -> None:
    """Archimedes, On the Sphere and the Cylinder I: the surface of a ball is four great circles, of half a ball two."""
    found = values(shape="dome", diameter="60", wedges=wedges)
    area = found["stitches_knitted"] * (100 / 14) * (100 / 19)
    assert area == pytest.approx(2 * math.pi * 300**2, rel=0.02)


def test_a_cone_has_the_area_of_its_mantle() -> None:
    """Euclid's and Archimedes' mantle: pi times radius times side; a 3-4-5 triangle gives the side."""
    found = values(shape="cone", diameter="60", cone_height="40", wedges="8")
    assert found["across_mm"] == pytest.approx(500, abs=100 / 14)
    area = found["stitches_knitted"] * (100 / 14) * (100 / 19)
    assert area == pytest.approx(math.pi * 300 * 500, rel=0.03)


@pytest.mark.parametrize("sides", [3, 5, 8, 13])
def test_corners_as_shapely_draws_the_polygon(sides: int) -> None:
    """Against shapely: the polygon with corners there has the circle's circumference and the inner circle touches its sides."""
    outer = 2 * Fraction("3.14159265358979") * 200
    corner = float(corner_mm(outer, sides))
    turns = [2 * math.pi * i / sides for i in range(sides)]
    polygon = Polygon([(corner * math.cos(t), corner * math.sin(t)) for t in turns])
    assert polygon.length == pytest.approx(float(outer), rel=1e-9)
    assert polygon.exterior.distance(Point(0, 0)) == pytest.approx(float(middle_mm(outer, sides)), rel=1e-9)


def test_rows_inward_follow_the_circle() -> None:
    """Row by row from the rim: 2 pi r at the gauge, within one decrease of all sections and the gathered middle."""
    answer = work_out(CALCULATOR, {"made": "inward", "sections": "8", "diameter": "60"}).result
    assert answer is not None
    stitches, rows = int(str(answer.values["stitches"])), answer.values["decrease_rows"]
    assert isinstance(rows, list)
    now = stitches
    for row, then in pairwise([0, *rows]):
        circle = 2 * math.pi * (300 - row * 100 / 19) * 14 / 100
        assert abs(now - circle) <= 8
        assert then > row
        now -= 8
