"""Windows of a picture, and polygons that paint the same picture again."""

from __future__ import annotations

import pytest

from pieces import diamond, lopsided
from wedgework.formats.design import Design
from wedgework.layout import drawn_layout, resolve
from wedgework.layout.grid import Cells, Grid
from wedgework.layout.picture import paint
from wedgework.practice.cuts import Window, cut, drawn, scaled, stacked

RING = Grid(5, ((Cells(0, 4, 0, "a"),), (Cells(0, 1, 0, "a"), Cells(2, 2, 1, "b"), Cells(3, 4, 0, "a")), (Cells(0, 4, 0, "a"),)))


def yarns(grid: Grid) -> list[str]:
    return ["".join(cells.yarn * (cells.last - cells.first + 1) for cells in turn) for turn in grid.turns]


def picture(design: Design) -> Grid:
    sizes = resolve(design)
    return scaled(drawn_layout(design, sizes), sizes.needles, sizes.rows, 0)


@pytest.mark.parametrize("grid", [RING, picture(diamond()), picture(lopsided())], ids=["ring", "diamond", "harbour"])
def test_the_polygons_paint_the_cells_again(grid: Grid) -> None:
    assert yarns(paint(drawn(grid), grid.needles, 2 * len(grid.turns))) == yarns(grid)


def test_a_window_shows_what_lies_in_it() -> None:
    assert yarns(cut(RING, Window(1, 1, 3, 2))) == ["aba", "aaa"]


def test_a_window_that_stands_out_is_moved_inside() -> None:
    assert cut(RING, Window(4, -3, 3, 2)) == cut(RING, Window(2, 0, 3, 2))
    assert yarns(cut(RING, Window(0, 0, 9, 9))) == yarns(RING)


def test_pictures_lie_on_one_another() -> None:
    low, high = cut(RING, Window(0, 0, 5, 2)), cut(RING, Window(0, 2, 5, 1))
    assert stacked((low, high)) == RING


def test_crumbs_are_given_away_where_that_is_wished() -> None:
    design = lopsided()
    layout = drawn_layout(design, resolve(design))
    assert "c" in "".join(yarns(scaled(layout, 30, 60, 0)))
    assert "c" not in "".join(yarns(scaled(layout, 30, 60, 1000)))
