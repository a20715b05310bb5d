"""The grid of a design: its shapes, painted one over the other."""

from __future__ import annotations

from wedgework.formats.design import Design, DrawnLayout
from wedgework.layout.checks import drawn_layout
from wedgework.layout.grid import Cells, Grid
from wedgework.layout.merging import merged
from wedgework.layout.parts import part_of
from wedgework.layout.raster import outline, spans
from wedgework.layout.shaped import cut_out, is_shaped
from wedgework.layout.sizes import Sizes

__all__ = ["grid_of", "paint"]


def grid_of(design: Design, sizes: Sizes) -> Grid:
    """The picture of `design`, or its part of it, seen from the finished front, without its gaps and without the crumbs that she
    wants merged.

    Raises Refused for a layout that cannot be read.
    """
    layout = drawn_layout(design, sizes)
    grid = paint(layout, sizes.across, sizes.rows)
    if is_shaped(design):
        grid = cut_out(grid, layout, sizes.rows)
    if design.panel.part is not None:
        grid = part_of(grid, design.panel.part)
    least = design.options.merge_below
    return merged(grid, sizes.rows, least) if least else grid


def paint(layout: DrawnLayout, needles: int, rows: int) -> Grid:
    """Cells of one needle x one turn; the centre of turn t lies 2t + 1 rows up, also where `rows` is odd."""
    outlines = [outline((shape.points, *shape.holes)) for shape in layout.shapes]
    yarns = [shape.yarn for shape in layout.shapes]
    turns: list[tuple[Cells, ...]] = []
    for turn in range((rows + 1) // 2):
        row = [-1] * needles
        borders = {0, needles}
        for index, shape in enumerate(outlines):
            for first, last in spans(shape, needles, 2 * turn + 1, rows):
                row[first : last + 1] = [index] * (last - first + 1)
                borders.add(first)
                borders.add(last + 1)
        turns.append(_cells(row, sorted(borders), yarns, layout.background))
    return Grid(needles, tuple(turns))


def _cells(row: list[int], borders: list[int], yarns: list[str], background: str) -> tuple[Cells, ...]:
    """The runs of one turn; `borders` are all places where a run can begin."""
    found: list[tuple[int, int]] = []  # first column, shape
    for first in borders[:-1]:
        if not found or found[-1][1] != row[first]:
            found.append((first, row[first]))
    ends = [first - 1 for first, _ in found[1:]] + [len(row) - 1]
    return tuple(
        Cells(first, last, shape, yarns[shape] if shape >= 0 else background)
        for (first, shape), last in zip(found, ends, strict=True)
    )
