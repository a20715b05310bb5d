"""Polygons to cells: the rule for borders, corners, holes, and pictures that lie outside the panel."""

from __future__ import annotations

from fractions import Fraction

import pytest

from pieces import drawn, letters, mirrored, points
from wedgework.formats.design import DrawnLayout, Shape
from wedgework.layout.checks import crossing
from wedgework.layout.picture import paint
from wedgework.layout.raster import outline, spans


def test_a_triangle_cell_by_cell() -> None:
    # Corner (0,0), (1,0), (0,1) on 4 needles and 4 turns: a centre (j+1/2, t+1/2) lies inside or on the slope if j + t <= 3.
    layout = drawn("a", ("b", [(0, 0), (1, 0), (0, 1)]))
    assert letters(layout, 4, 8) == ["baaa", "bbaa", "bbba", "bbbb"]


def test_a_centre_on_a_border_belongs_to_the_later_shape() -> None:
    left, right = ("b", [(0, 0), ("0.5", 0), ("0.5", 1), (0, 1)]), ("c", [("0.5", 0), (1, 0), (1, 1), ("0.5", 1)])
    assert letters(drawn("a", left, right), 3, 2) == ["bcc"]
    assert letters(drawn("a", right, left), 3, 2) == ["bbc"]


def test_a_level_border_on_centres_belongs_to_the_later_shape() -> None:
    low, high = ("b", [(0, 0), (1, 0), (1, "0.5"), (0, "0.5")]), ("c", [(0, "0.5"), (1, "0.5"), (1, 1), (0, 1)])
    assert letters(drawn("a", low, high), 2, 6) == ["cc", "cc", "bb"]
    assert letters(drawn("a", high, low), 2, 6) == ["cc", "bb", "bb"]


def test_a_mirrored_picture_gives_the_mirrored_grid() -> None:
    layout = drawn(
        "a", ("b", [("0.1", "0.05"), ("0.7", "0.3"), ("0.4", "0.95")]), ("c", [("0.5", "0.5"), ("1.2", "0.4"), ("0.9", 1)])
    )
    assert letters(mirrored(layout), 17, 30) == [line[::-1] for line in letters(layout, 17, 30)]


def test_a_hole_shows_what_lies_below() -> None:
    square = points((0, 0), (1, 0), (1, 1), (0, 1))
    hole = points(("0.3", "0.3"), ("0.7", "0.3"), ("0.7", "0.7"), ("0.3", "0.7"))
    layout = DrawnLayout("a", (Shape("b", square, (hole,)),))
    # Centres at 0.1, 0.3 ...: those on the hole's border belong to the shape, as every border does.
    assert letters(layout, 5, 10) == ["bbbbb", "bbbbb", "bbabb", "bbbbb", "bbbbb"]
    assert letters(layout, 10, 20)[4] == "bbbaaaabbb"


def test_points_outside_the_panel_are_clipped() -> None:
    layout = drawn("a", ("b", [(-1, -1), (2, -1), (2, "0.5"), (-1, "0.5")]))
    assert letters(layout, 3, 4) == ["aaa", "bbb"]


def test_a_row_that_touches_a_point_only_counts_the_point() -> None:
    # The tip of the upper triangle lies exactly on the centre of column 2 of 5 in the middle turn of 3.
    layout = drawn("a", ("b", [("0.5", "0.5"), (1, 1), (0, 1)]))
    assert letters(layout, 5, 6)[1] == "aabaa"


def test_an_odd_number_of_rows_has_a_last_turn_of_one_row() -> None:
    assert len(paint(drawn("a"), 4, 7).turns) == 4


@pytest.mark.parametrize(
    ("ring", "found"),
    [
        (points((0, 0), (1, 0), (1, 1), (0, 1)), None),
        (points((0, 0), (1, 1), (1, 0), (0, 1)), (0, 2)),
        (points((0, 0), (1, 0), ("0.5", 0), ("0.5", 1)), (0, 1)),
        (points((0, 0), ("0.5", "0.5"), (1, 0), (1, 1), ("0.5", "0.5"), (0, 1)), None),
    ],
    ids=["square", "bow", "doubled edge", "two triangles that share a corner"],
)
def test_crossing_edges_are_found(ring: tuple[tuple[Fraction, Fraction], ...], found: tuple[int, int] | None) -> None:
    assert crossing(ring) == found


def test_no_span_outside_the_shape() -> None:
    assert spans(outline([points((0, 0), (1, 0), (0, "0.1"))]), 10, 19, 20) == []
