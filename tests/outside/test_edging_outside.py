"""Edgings against published rules and shawls, and against geometry of a reference library."""

from __future__ import annotations

import math
from fractions import Fraction
from functools import partial
from typing import Any

import pytest
from shapely.geometry import box

import working
from wedgework.calculators.edging import CALCULATOR

INCH = Fraction("25.4")


values = partial(working.values, CALCULATOR)


def edge(**typed: str) -> dict[str, Any]:
    edges = values(**typed)["edges"]
    (one,) = edges
    return dict(one)


@pytest.mark.parametrize(("inches", "rows_per_inch", "picked"), [(20, 8, 80), (36, 7, 126), (12, 6, 36)])
def test_the_rule_of_a_magazine(inches: int, rows_per_inch: int, picked: int) -> None:
    """A knitting magazine (2018) on stockinette edgings: length of the edge times rows to an inch of the edging, halved,
    since two rows are knitted for each join, gives the stitches to pick up."""
    per_10cm = float(rows_per_inch * 100 / INCH)
    stitches = 5 * inches
    found = edge(
        along="end",
        stitches=str(stitches),
        stitches_per_10cm=str(float(500 / INCH)),
        edging_rows_per_10cm=str(per_10cm),
        repeat="1",
    )
    assert found["joins"] == picked


@pytest.mark.parametrize("stitches", ["96", "156", "107"])
def test_two_rows_for_a_stitch(stitches: str) -> None:
    """Three published guides to knitted-on edgings: where the edging has two rows to a stitch of the piece (as in garter stitch),
    every two rows use up one stitch."""
    found = edge(along="end", stitches=stitches, stitches_per_10cm="20", edging_rows_per_10cm="40", repeat="1")
    assert found["rows"] == 2 * int(stitches)
    assert found["joined_at"] == list(range(1, int(stitches) + 1))


def test_a_stitch_for_every_two_rows() -> None:
    """A knitting course: along a side edge one stitch for every two rows of the piece, joined every other row of the edging:
    with the same rows in both, 200 rows give 100 joins."""
    found = edge(along="side", rows="200", rows_per_10cm="28", edging_rows_per_10cm="28", repeat="2")
    assert (found["rows"], found["joins"]) == (200, 100)


def test_a_shawl_of_156_stitches() -> None:
    """A published edging: 156 stitches on a quarter of a shawl, a repeat of 12 rows has six joins, of which two take two
    stitches: 8 stitches for 12 rows. So three stitches to two joins; 39 of 156 are not joined by themselves."""
    found = edge(along="end", stitches="156", stitches_per_10cm="20", edging_rows_per_10cm="30", repeat="6")
    assert found["rows_exact"] == 234
    assert (found["rows"], found["joins"]) == (234, 117)
    joined = found["joined_at"]
    assert 156 - len(set(joined)) == 39


def test_repeats_along_a_long_side() -> None:
    """A shawl told by its knitter: 50 repeats of 12 rows on a long side, 30 on a short one, joined in alternate rows. Edges
    of 300 and 180 places with two rows each give them."""
    long_side = edge(along="end", stitches="300", stitches_per_10cm="20", edging_rows_per_10cm="40", repeat="12")
    short = edge(along="end", stitches="180", stitches_per_10cm="20", edging_rows_per_10cm="40", repeat="12")
    assert (long_side["rows"] // 12, short["rows"] // 12) == (50, 30)


@pytest.mark.parametrize("stitches", ["4", "8", "20"])
def test_an_eased_corner_is_a_quarter_of_a_circle(stitches: str) -> None:
    """Archimedes, Measurement of a Circle: pi times the radius is half of the circumference; the edging turns a quarter."""
    found = values(edging_stitches=stitches, repeat="1", join_every="1")
    wide = int(stitches) * 100 / 14
    assert found["corner_rows"] * 100 / 19 == pytest.approx(math.pi / 2 * wide, abs=100 / 19)


@pytest.mark.parametrize("corner", ["eased", "square"])
def test_the_outer_edge_is_that_of_the_buffer(corner: str) -> None:
    """Against shapely: the rows of the edging are as long as the outline of the piece grown by the edging's width."""
    found = values(corner=corner, repeat="1", join_every="1", stitches="140", rows="190")
    wide = float(Fraction(8 * 100, 14))
    grown = box(0, 0, 1000, 1000).buffer(wide, quad_segs=512, join_style="round" if corner == "eased" else "mitre")
    long = found["rows"] * 100 / 19
    assert long == pytest.approx(grown.exterior.length, abs=8 * 100 / 19)
