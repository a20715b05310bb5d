"""What is left of a picture when the needles have these rows: the cells above them.

Real rows differ from the drawing by one or two almost everywhere. So a needle that is that near to a border of the drawing has
reached it, and needles that lie level go on together; the fit of a block then goes by the real rows.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence

from wedgework.layout.grid import Cells, Grid

__all__ = ["remaining"]

NEAR = 2
"""Rows by which a needle may be off a border of the drawing, or off its neighbours."""
TOGETHER = 6
"""Rows by which the needles that are knitting now may differ and still go on as one block."""


def remaining(grid: Grid, heights: Sequence[int], held: Collection[int]) -> Grid:
    """The cells of `grid` (as it hangs on the bed) that are not knitted yet; turns may have gaps.

    `heights` are the real rows of each place, `held` the places in holding position.
    """
    yarns = [_spread(turn, grid.needles) for turn in grid.turns]
    done = _reached(yarns, heights, held)
    turns = tuple(tuple(part for cells in turn for part in _parts(cells, done, t)) for t, turn in enumerate(grid.turns))
    return Grid(grid.needles, turns)


def _spread(turn: Sequence[Cells], needles: int) -> list[str]:
    yarns = [""] * needles
    for cells in turn:
        yarns[cells.first : cells.last + 1] = [cells.yarn] * (cells.last - cells.first + 1)
    return yarns


def _reached(yarns: Sequence[Sequence[str]], heights: Sequence[int], held: Collection[int]) -> list[int]:
    """For each place the turn up to which it is done."""
    last = len(yarns)
    working = [p for p in range(len(heights)) if p not in held]
    together = 0 < len(working) < len(heights) and max(heights[p] for p in working) - min(heights[p] for p in working) <= TOGETHER
    done: list[int | None] = [None] * len(heights)
    if together:
        front = min(min(heights[p] for p in working) // 2, last)
        for p in working:
            done[p] = _joined(yarns, p, front, _commonest(yarns, working, front))
    for p, rows in enumerate(heights):
        if done[p] is None:
            done[p] = _border(yarns, p, rows, _level_beside(yarns, heights, p))
    level: list[int] = []  # neighbours that lie level, away from any border
    for p in [*range(len(heights)), None]:
        goes_on = (
            p is not None
            and done[p] is None
            and level
            and level[-1] == p - 1
            and abs(heights[p] - heights[p - 1]) < NEAR
            and max(heights[p], *(heights[q] for q in level)) - min(heights[p], *(heights[q] for q in level)) <= NEAR
            and _yarn(yarns, p, heights[p]) == _yarn(yarns, p - 1, heights[p - 1])
        )
        if level and not goes_on:
            front = min((min(heights[q] for q in level) + 1) // 2, last)
            for q in level:
                done[q] = front
            level = []
        if p is not None and done[p] is None:
            level.append(p)
    return [turn if turn is not None else last for turn in done]


def _commonest(yarns: Sequence[Sequence[str]], working: Sequence[int], front: int) -> str:
    """The yarn that most of the needles knit that knit now."""
    here = [yarns[min(front, len(yarns) - 1)][p] for p in working]
    return max(sorted(set(here)), key=here.count)


def _joined(yarns: Sequence[Sequence[str]], p: int, front: int, yarn: str) -> int | None:
    """Where a needle that knits now goes on with the others: it may have joined a little before its place in the drawing.

    None where it has long been another yarn's turn on it.
    """
    for turn in range(front, min(front + NEAR, len(yarns) - 1) + 1):
        if yarns[turn][p] == yarn:
            return turn
    return front if front == len(yarns) else None


def _level_beside(yarns: Sequence[Sequence[str]], heights: Sequence[int], p: int) -> bool:
    """Whether a neighbour lies level with this needle, and the same yarn follows on both."""
    return any(
        0 <= q < len(heights)
        and abs(heights[q] - heights[p]) < NEAR
        and _yarn(yarns, q, heights[q]) == _yarn(yarns, p, heights[p])
        for q in (p - 1, p + 1)
    )


def _border(yarns: Sequence[Sequence[str]], p: int, rows: int, level: bool) -> int | None:
    """The turn of a border of the drawing within `NEAR` rows of the rows on a needle, the nearest; the top counts as one.

    A needle that lies `level` with a neighbour has not a turn too many: it has begun what lies above the border.
    """
    last = len(yarns)
    near = sorted(range(max(0, (rows - NEAR + 1) // 2), (rows + NEAR) // 2 + 1), key=lambda turn: abs(2 * turn - rows))
    for turn in near:
        if level and rows - 2 * turn >= NEAR:
            continue
        if turn >= last:
            return last
        if (turn == 0 and rows == 0) or (turn and yarns[turn - 1][p] != yarns[turn][p]):
            return turn
    return None


def _yarn(yarns: Sequence[Sequence[str]], p: int, rows: int) -> str:
    """The yarn that follows on a needle."""
    return yarns[min(rows // 2, len(yarns) - 1)][p]


def _parts(cells: Cells, done: Sequence[int], turn: int) -> list[Cells]:
    """The stretches of a run whose needles are still to be knitted in this turn."""
    found: list[Cells] = []
    for p in range(cells.first, cells.last + 1):
        if done[p] > turn:
            continue
        if found and found[-1].last == p - 1:
            found[-1] = Cells(found[-1].first, p, cells.shape, cells.yarn)
        else:
            found.append(Cells(p, p, cells.shape, cells.yarn))
    return found
