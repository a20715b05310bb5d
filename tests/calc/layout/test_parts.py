"""A panel of a picture: its stitches, seam stitches beside them, and what is wrong with one."""

from __future__ import annotations

from dataclasses import replace

import pytest

from pieces import diamond
from wedgework.formats.design import Design, Part
from wedgework.layout import grid_of, resolve, size_problems
from wedgework.layout.grid import Cells, Grid
from wedgework.layout.parts import part_of
from wedgework.layout.sizes import picture_sizes


def panel(part: Part, bed: int = 110) -> Design:
    whole = diamond(bed=bed)
    return replace(whole, panel=replace(whole.panel, part=part))


def test_cells_are_cut_and_seam_stitches_continue_what_lies_beside_them() -> None:
    grid = Grid(6, ((Cells(0, 1, 0, "a"), Cells(2, 5, 1, "b")), (Cells(0, 5, 0, "a"),)))
    found = part_of(grid, Part(2, 2, 2, 5, 1, 2))
    assert found.needles == 7
    assert found.turns == ((Cells(0, 1, 0, "a"), Cells(2, 6, 1, "b")), (Cells(0, 6, 0, "a"),))


def test_where_needles_end_is_cut_too() -> None:
    grid = Grid(4, ((Cells(0, 3, 0, "a"),),), (2, 1, 1, 2))
    assert part_of(grid, Part(1, 2, 1, 2, 0, 1)).tops == (2, 1, 1)


def test_a_panel_has_its_own_needles_and_the_whole_picture() -> None:
    design = panel(Part(2, 2, 25, 48, 1, 0))
    sizes = resolve(design)
    assert (sizes.needles, sizes.across, sizes.first_needle, sizes.last_needle) == (25, 48, -12, 13)
    whole = diamond()
    mine, all_ = grid_of(design, sizes), grid_of(whole, resolve(whole))
    for turn, full in zip(mine.turns, all_.turns, strict=True):
        cells = [run.yarn for run in turn for _ in range(run.first, run.last + 1)]
        assert cells[1:] == [run.yarn for run in full for _ in range(run.first, run.last + 1)][24:]


def test_a_picture_may_be_wider_than_the_bed() -> None:
    assert [p.code for p in size_problems(diamond(bed=40))] == ["layout.too-wide"]
    assert size_problems(panel(Part(1, 2, 1, 24, 0, 1), bed=40)) == []
    assert picture_sizes(diamond(bed=40)).across == 48


@pytest.mark.parametrize("part", [Part(1, 2, 30, 20), Part(1, 2, 1, 49), Part(3, 2, 1, 20)])
def test_a_panel_that_is_not_there(part: Part) -> None:
    (problem,) = size_problems(panel(part))
    assert (problem.where, problem.code) == ("panel.part", "layout.part-outside")
    assert problem.way_out
