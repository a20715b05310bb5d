"""Outlines of blocks against shapely: the union of all stitches as squares."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Point, Polygon, box, unary_union

from wedgework.draw.outline import Interval, loops, spot


@st.composite
def columns(draw: st.DrawFn) -> dict[int, tuple[Interval, ...]]:
    found: dict[int, tuple[Interval, ...]] = {}
    for column in range(draw(st.integers(1, 7))):
        ends = sorted(draw(st.sets(st.integers(0, 12), max_size=6)))
        runs = tuple((ends[i], ends[i + 1]) for i in range(0, len(ends) - 1, 2))
        if runs:
            found[column] = runs
    return found or {0: ((0, 1),)}


@given(columns())
@settings(max_examples=150, deadline=None)
def test_loops_enclose_the_union_of_the_stitches(found: dict[int, tuple[Interval, ...]]) -> None:
    squares = unary_union([box(c, low, c + 1, high) for c, runs in found.items() for low, high in runs])
    # even-odd, as they are filled in the drawing
    drawn = Polygon()
    for loop in loops(found):
        drawn = drawn.symmetric_difference(Polygon(loop).buffer(0))
    assert drawn.symmetric_difference(squares).area < 1e-9


@given(columns())
@settings(max_examples=100, deadline=None)
def test_the_number_lies_on_the_block(found: dict[int, tuple[Interval, ...]]) -> None:
    squares = unary_union([box(c, low, c + 1, high) for c, runs in found.items() for low, high in runs])
    x, y, _, _ = spot(found, Fraction(7), Fraction(5))
    assert squares.distance(Point(float(x), float(y))) < 1e-9
