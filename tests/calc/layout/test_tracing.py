"""Cells back to polygons: the same cells, few corners, borders that both sides share."""

from __future__ import annotations

import pytest

from pieces import grid_from, letters, letters_of, piece
from wedgework.formats import read_design, write_design
from wedgework.formats.design import NamedLayout
from wedgework.layout import grid_of, layout_problems, resolve
from wedgework.layout.contours import contours_of
from wedgework.layout.library import LAYOUTS
from wedgework.layout.straight import straightened
from wedgework.layout.tracing import traced

HARBOUR = (
    "aaaaaaaa",
    "aaabbaaa",
    "aabbbbaa",
    "abbccbba",
    "abbccbba",
    "aabbbbaa",
    "aaabbaaa",
    "aaaaaaaa",
)


def corners(*lines: str, straighten: int = 0) -> list[tuple[str, int]]:
    layout = traced(grid_from(*lines), 2 * len(lines), straighten)
    return [(shape.yarn, len(shape.points)) for shape in layout.shapes]


def test_a_diamond_round_a_square() -> None:
    """What encloses lies below; the square has its four corners."""
    layout = traced(grid_from(*HARBOUR), 16)
    assert letters(layout, 8, 16) == list(HARBOUR)
    assert layout.background == "a"
    assert layout.counted == (8, 16)
    assert [shape.yarn for shape in layout.shapes] == ["b", "c"]
    square = {(x * 8, y * 16) for x, y in layout.shapes[1].points}
    assert square == {(3, 6), (5, 6), (5, 10), (3, 10)}


def test_ground_inside_a_shape_is_drawn_on_top_of_it() -> None:
    lines = ("aaaaa", "abbba", "ababa", "abbba", "aaaaa")
    assert corners(*lines) == [("b", 4), ("a", 4)]
    assert letters(traced(grid_from(*lines), 10), 5, 10) == list(lines)


def test_a_slope_of_one_needle_a_turn_is_one_line() -> None:
    lines = ("abbbb", "aabbb", "aaabb", "aaaab")
    (yarn, points), *more = corners(*lines)
    assert more == []
    assert yarn in "ab"
    assert points <= 4


def test_a_picture_of_one_colour_is_ground_alone() -> None:
    layout = traced(grid_from("aaa", "aaa"), 4)
    assert layout.shapes == ()
    assert letters(layout, 3, 4) == ["aaa", "aaa"]


def test_regions_that_touch_in_a_corner_stay_two() -> None:
    lines = ("aab", "aab", "bba", "bba")
    assert letters(traced(grid_from(*lines), 8), 3, 8) == list(lines)
    assert len(contours_of(grid_from(*lines)).yarns) == 4


def test_a_border_may_be_moved_to_be_straight() -> None:
    """A ragged border: with no freedom each cell is kept, with one cell of it the border is one line."""
    lines = ("aabbb", "abbbb", "aaabb", "aabbb", "abbbb", "aabbb")
    kept, moved = corners(*lines), corners(*lines, straighten=1)
    assert sum(n for _, n in moved) < sum(n for _, n in kept)
    assert sum(n for _, n in moved) == 4


def test_an_odd_number_of_rows_has_a_turn_of_one() -> None:
    lines = ("abb", "aab", "aaa")
    layout = traced(grid_from(*lines), 5)
    assert letters(layout, 3, 5) == list(lines)


@pytest.mark.parametrize("layout", LAYOUTS, ids=lambda layout: layout.name)
def test_every_layout_that_ships_comes_back_cell_by_cell(layout) -> None:
    design = piece(NamedLayout(layout.name), 60, 120)
    grid = grid_of(design, resolve(design))
    drawn = traced(grid, 120)
    assert letters(drawn, 60, 120) == letters_of(grid)
    whole = piece(drawn, 60, 120)
    assert layout_problems(whole) == []
    assert read_design(write_design(whole)) == whole


def test_the_line_of_a_border_leaves_every_cell_on_its_side() -> None:
    contours = contours_of(grid_from(*HARBOUR))
    for border in contours.borders:
        if min(border.left, border.right) < 0:
            continue
        line = straightened(border.steps, left_later=False)
        assert line[0] == border.steps[0].start
        assert line[-1] == border.steps[-1].end
        assert len(line) <= len(border.corners)
