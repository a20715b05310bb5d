"""Stitches along an edge against published counts and rhythms; corners against trigonometry and a reference library."""

from __future__ import annotations

import math
from fractions import Fraction
from functools import partial

import pytest
from shapely.geometry import Polygon
from shapely.ops import unary_union

import working
from wedgework.calculators.side_hem import CALCULATOR
from wedgework.pickups import pick_up

INCH = Fraction("25.4")


values = partial(working.values, CALCULATOR)


def per_4_inches(count: int) -> str:
    return str(float(count * 100 / (4 * INCH)))


def test_three_for_four() -> None:
    """A handbook: 3 stitches for every 4 rows, 120 rows give 90 stitches."""
    found = values(edges="side", rows="120", pick_up="three-for-four")
    assert found["picked_up"] == 90
    assert found["rhythm"] == {"stitches": 3, "rows": 4}


def test_a_band_of_a_yarn_maker() -> None:
    """A yarn maker's tutorial: 20 stitches and 26 rows to 4 in, so 20 for every 26 rows, 10 for 13, as 3/4 + 3/4 + 4/5."""
    gauge = {"stitches_per_10cm": per_4_inches(20), "rows_per_10cm": per_4_inches(26)}
    assert values(edges="side", rows="26", **gauge)["picked_up"] == 20
    assert values(edges="side", rows="13", depth="2", **gauge)["picked_up"] == 10
    # between two rows that are left out 3 or 4 are hung, over and over
    hung = [one.hung for one in pick_up(130, 100).stretches()]
    assert set(hung[1:-1]) == {3, 4}


def test_a_cardigan_of_a_forum() -> None:
    """A hand knitters' forum: 88 rows, 71 stitches. 17 rows are left out; 71 / 17 = 4.2: hang 4, leave out 1."""
    found = pick_up(88, 71)
    assert len(found.left_out) == 17
    hung = [one.hung for one in found.stretches() for _ in range(one.times)]
    assert sorted(hung)[len(hung) // 2] == 4
    assert sum(hung) == 71


def test_eight_for_ten() -> None:
    """A knitting guide: 8 stitches over 10 rows, "four rows, miss one, four rows, miss one"."""
    assert pick_up(40, 32).rhythm() == Fraction(4, 5)
    assert {one.hung for one in pick_up(40, 32).stretches()[1:-1]} == {4}


@pytest.mark.parametrize(("along", "hung"), [(16, 13), (32, 26), (160, 130)])
def test_the_border_of_a_blanket(along: int, hung: int) -> None:
    """A blanket with its sums told by its maker: 28 stitches and 32 rows to 4 in, the border 26 stitches; so 13 for 16 rows."""
    found = values(
        edges="side",
        rows=str(along),
        stitches_per_10cm=per_4_inches(28),
        rows_per_10cm=per_4_inches(32),
        hem_stitches_per_10cm=per_4_inches(26),
    )
    assert found["picked_up"] == hung


def test_the_same_blanket_along_its_cast_on() -> None:
    """The same blanket: 13 for 14 stitches along the cast-on edge."""
    found = values(
        stitches="140",
        stitches_per_10cm=per_4_inches(28),
        rows_per_10cm=per_4_inches(32),
        hem_stitches_per_10cm=per_4_inches(26),
    )
    sides = found["sides"]
    assert next(one for one in sides if one["side"] == "bottom")["picked_up"] == 130


def test_a_baby_blanket_of_a_pattern() -> None:
    """A pattern asked about in a forum: about 294 rows, 218 stitches. That is 3 for every 4 rows, within 2 in a hundred."""
    found = values(edges="side", rows="294", pick_up="three-for-four")
    assert abs(found["picked_up"] - 218) <= 294 * 0.02
    assert pick_up(294, 218).rhythm() == Fraction(3, 4)


def test_a_band_along_a_measured_edge() -> None:
    """A knitting guide: an edge of 10 in, the border 4 stitches to an inch: 40 stitches."""
    rows = 10 * 7
    gauge = {"stitches_per_10cm": str(float(500 / INCH)), "rows_per_10cm": str(float(700 / INCH))}
    assert values(edges="side", rows=str(rows), hem_stitches_per_10cm=str(float(400 / INCH)), **gauge)["picked_up"] == 40


@pytest.mark.parametrize("depth", ["2", "4", "7.5"])
def test_a_mitre_has_45_degrees_of_real_length(depth: str) -> None:
    """Trigonometry: the slanted end of the outside is at 45 degrees, within what a whole stitch can turn it."""
    found = values(corners="mitred", depth=depth)
    across = found["corner_stitches"] * 100 / 14
    up = found["outside_rows"] * 100 / 19
    assert math.degrees(math.atan2(up, across)) == pytest.approx(45, abs=math.degrees(math.atan2(100 / 28, up)) + 0.01)


@pytest.mark.parametrize("corners", ["lapped", "mitred", "butted"])
def test_hems_cover_the_frame_without_overlap(corners: str) -> None:
    """Against shapely: four hems of the widths that are told fill the frame round the piece, and overlap nowhere."""
    found = values(corners=corners, stitches="140", rows="190", edge_takes="none")
    depth = float(found["depth_mm"])
    corner = depth  # as deep as wide: to a whole stitch
    wide, high = 1000.0, 1000.0
    hems = []
    sides = found["sides"]
    for one in sides:
        more = (one["stitches"] - one["picked_up"]) / 2 and corner
        grown = (one["at_fold"] - one["stitches"]) / 2 and corner
        shape = Polygon([(-more, 0), (1000 + more, 0), (1000 + more + grown, -depth), (-more - grown, -depth)])
        hems.append((one["side"], shape))
    placed = [_placed(side, shape, wide, high) for side, shape in hems]
    frame = Polygon([(-depth, -depth), (wide + depth, -depth), (wide + depth, high + depth), (-depth, high + depth)]).difference(
        Polygon([(0, 0), (wide, 0), (wide, high), (0, high)])
    )
    covered = unary_union(placed)
    assert covered.symmetric_difference(frame).area == pytest.approx(0, abs=1e-6)
    assert math.fsum(shape.area for shape in placed) == pytest.approx(frame.area, rel=1e-9)


def _placed(side: str, shape: Polygon, wide: float, high: float) -> Polygon:
    """The hem of the lower edge, turned to its own side."""
    turns = {
        "bottom": lambda x, y: (x, y),
        "top": lambda x, y: (wide - x, high - y),
        "right": lambda x, y: (wide - y, x),
        "left": lambda x, y: (y, high - x),
    }
    return Polygon([turns[side](x, y) for x, y in shape.exterior.coords])
