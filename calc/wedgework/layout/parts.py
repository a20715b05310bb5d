"""One panel of a picture: the stitches that it shows, and those that its seams take."""

from __future__ import annotations

from wedgework.formats.design import Part
from wedgework.layout.grid import Cells, Grid

__all__ = ["part_of"]


def part_of(grid: Grid, part: Part) -> Grid:
    """The cells of `part`. A seam stitch is of the shape beside it: what the seam hides adds no block and no border."""
    first, last = part.first - 1, part.last - 1
    tops = grid.tops and (grid.tops[first],) * part.seam_left + grid.tops[first : last + 1] + (grid.tops[last],) * part.seam_right
    return Grid(part.needles, tuple(_cut(turn, first, last, part) for turn in grid.turns), tops)


def _cut(turn: tuple[Cells, ...], first: int, last: int, part: Part) -> tuple[Cells, ...]:
    found = []
    for cells in turn:
        if cells.last < first or cells.first > last:
            continue
        left = 0 if cells.first <= first else cells.first - first + part.seam_left
        right = part.needles - 1 if cells.last >= last else cells.last - first + part.seam_left
        found.append(Cells(left, right, cells.shape, cells.yarn))
    return tuple(found)
