"""Windows cut out of a picture, at its own size or smaller, and laid on one another: pictures of their own.

Everything happens on the grid, so that what was cut is exactly what a plan will see; at the end the cells become polygons.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from wedgework.formats import nearest_decimal
from wedgework.formats.design import DrawnLayout, Point, Shape
from wedgework.layout.grid import Cells, Grid
from wedgework.layout.merging import merged
from wedgework.layout.picture import paint

__all__ = ["Window", "cut", "drawn", "scaled", "stacked"]

_PLACES = 9
"""Decimals of a corner: with fewer than a million columns none is moved over the middle of a cell."""


@dataclass(frozen=True, slots=True)
class Window:
    """Columns from `left` and turns from `bottom`, seen from the finished front."""

    left: int
    bottom: int
    columns: int
    turns: int


def scaled(layout: DrawnLayout, needles: int, rows: int, merge_below: int) -> Grid:
    """The picture on so many needles and rows; regions of fewer stitches than `merge_below` are given away."""
    grid = paint(layout, needles, rows)
    return merged(grid, rows, merge_below) if merge_below else grid


def cut(grid: Grid, window: Window) -> Grid:
    """The part of the picture that lies in the window, moved inside where the window stands out."""
    columns, turns = min(window.columns, grid.needles), min(window.turns, len(grid.turns))
    left = max(0, min(window.left, grid.needles - columns))
    bottom = max(0, min(window.bottom, len(grid.turns) - turns))
    right = left + columns - 1
    return Grid(
        columns,
        tuple(
            tuple(
                Cells(max(cells.first, left) - left, min(cells.last, right) - left, cells.shape, cells.yarn)
                for cells in turn
                if cells.last >= left and cells.first <= right
            )
            for turn in grid.turns[bottom : bottom + turns]
        ),
    )


def stacked(parts: Sequence[Grid]) -> Grid:
    """Pictures of one width on one another, the first one at the bottom."""
    return Grid(parts[0].needles, tuple(turn for part in parts for turn in part.turns))


def drawn(grid: Grid) -> DrawnLayout:
    """Polygons along the cells. The yarn of the most cells becomes the background."""
    cells: dict[str, int] = {}
    for turn in grid.turns:
        for run in turn:
            cells[run.yarn] = cells.get(run.yarn, 0) + run.last - run.first + 1
    background = max(cells, key=lambda yarn: cells[yarn])
    shapes = tuple(
        Shape(yarn, _outline(first_turn, runs, grid.needles, len(grid.turns)))
        for yarn, first_turn, runs in _stacks(grid)
        if yarn != background
    )
    return DrawnLayout(background, shapes)


def _stacks(grid: Grid) -> Iterable[tuple[str, int, list[tuple[int, int]]]]:
    """Runs of one yarn that lie on one another, one in each turn: yarn, first turn, first and last column of each run."""
    done: list[tuple[str, int, list[tuple[int, int]]]] = []
    open_: list[tuple[str, int, list[tuple[int, int]]]] = []
    for number, turn in enumerate(grid.turns):
        going: list[tuple[str, int, list[tuple[int, int]]]] = []
        for yarn, first, last in _by_yarn(turn):
            under = [one for one in open_ if one[0] == yarn and one[2][-1][0] <= last and one[2][-1][1] >= first]
            stack = under[0] if under else (yarn, number, [])
            if under:
                open_.remove(stack)
            stack[2].append((first, last))
            going.append(stack)
        done += open_
        open_ = going
    return sorted(done + open_, key=lambda stack: (stack[1], stack[2][0]))


def _by_yarn(turn: Iterable[Cells]) -> list[tuple[str, int, int]]:
    runs: list[tuple[str, int, int]] = []
    for cells in turn:
        if runs and runs[-1][0] == cells.yarn:
            runs[-1] = (cells.yarn, runs[-1][1], cells.last)
        else:
            runs.append((cells.yarn, cells.first, cells.last))
    return runs


def _outline(first_turn: int, runs: Sequence[tuple[int, int]], needles: int, turns: int) -> tuple[Point, ...]:
    """Up the right edge and down the left one; corners on a straight line are left out."""
    right = [(last + 1, turn + k) for turn, (_, last) in enumerate(runs, first_turn) for k in (0, 1)]
    left = [(first, turn + k) for turn, (first, _) in enumerate(runs, first_turn) for k in (0, 1)]
    corners = right + left[::-1]
    kept = [corner for i, corner in enumerate(corners) if not _straight(corners[i - 1], corner, corners[(i + 1) % len(corners)])]
    return tuple((_decimal(x, needles), _decimal(y, turns)) for x, y in kept)


def _straight(before: tuple[int, int], corner: tuple[int, int], after: tuple[int, int]) -> bool:
    return before[0] == corner[0] == after[0] or before[1] == corner[1] == after[1]


def _decimal(part: int, whole: int) -> Fraction:
    return nearest_decimal(Fraction(part, whole), _PLACES)
