"""One block fitted to the real heights of its needles: from which side, from which row to which, who joins and leaves when."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from wedgework.bed import Side
from wedgework.plan.edges import Style, join_rows, leave_rows, leaving_error, row_error

__all__ = ["Fitted", "Outline", "fit", "outline_of"]


@dataclass(frozen=True, slots=True)
class Outline:
    """A block as the drawing has it, for each place from `low` on: the turn that it enters and the turn after its last."""

    low: int
    enter: list[int]
    leave: list[int]
    first_run: tuple[int, int]
    last_run: tuple[int, int]

    @property
    def high(self) -> int:
        return self.low + len(self.enter) - 1


def outline_of(runs: Sequence[tuple[int, int]], first_turn: int) -> Outline:
    """The outline of consecutive runs of places, the first of them in `first_turn`."""
    low, high = min(a for a, _ in runs), max(b for _, b in runs)
    end_turn = first_turn + len(runs)
    enter, leave = [first_turn] * (high - low + 1), [end_turn] * (high - low + 1)
    before = runs[0]
    for turn, (first, last) in enumerate(runs[1:], first_turn + 1):
        if (first, last) == before:
            continue
        a, b = before
        for place in range(first, min(a, last + 1)):
            enter[place - low] = turn
        for place in range(max(b + 1, first), last + 1):
            enter[place - low] = turn
        for place in range(a, min(first, b + 1)):
            leave[place - low] = turn
        for place in range(max(last + 1, a), b + 1):
            leave[place - low] = turn
        before = first, last
    return Outline(low, enter, leave, runs[0], runs[-1])


@dataclass(frozen=True, slots=True)
class Fitted:
    """A block that can be knitted: passes for the rows `first_row` ... `end_row` - 1, the first from side `start`.

    `joins[i]` and `leaves[i]` are the first row that place `low` + i knits and the first that it does not.
    """

    low: int
    start: Side
    first_row: int
    end_row: int
    joins: list[int]
    leaves: list[int]
    error: int
    """What the fit costs in all, in the costs of `edges`."""
    uneven: int
    """The part of it that the finished piece would show: needles that end too high or too low, borders far from the drawing."""

    @property
    def end(self) -> Side:
        """The side where the carriage stands after the last pass."""
        other: Side = "R" if self.start == "L" else "L"
        return self.start if (self.end_row - self.first_row) % 2 == 0 else other

    @property
    def rows(self) -> list[int]:
        """Rows that each place gains."""
        return [leave - join for join, leave in zip(self.joins, self.leaves, strict=True)]

    def knitting(self, row: int) -> tuple[int, int]:
        """First and last place that knit in `row`."""
        inside = [i for i, (join, leave) in enumerate(zip(self.joins, self.leaves, strict=True)) if join <= row < leave]
        return self.low + inside[0], self.low + inside[-1]


def fit(shape: Outline, heights: Sequence[int], top: int, start: Side, style: Style) -> Fitted:
    """The best fit of `shape` begun from `start` on needles of these real `heights` (one for each place of the shape).

    `top` is the panel's height in rows. The row the block begins in is tried around the height of its lowest needle.
    """
    pivot = _pivot(shape, heights, start)
    tried = []
    for shift in (0, 1, -1):
        tried.append(_fit_from(shape, heights, top, start, heights[pivot] + shift, pivot, style))
        if tried[-1].uneven == 0:
            break
    return min(tried, key=lambda fitted: fitted.error)


def _pivot(shape: Outline, heights: Sequence[int], start: Side) -> int:
    """The needle that begins: the lowest of the first run, the one nearest its middle where several are.

    Of two equally near the one at the start side, so that the mirrored piece from the other side is the mirrored piece.
    """
    first, last = (place - shape.low for place in shape.first_run)
    outward = 1 if start == "L" else -1
    return min(range(first, last + 1), key=lambda i: (heights[i], abs(2 * i - first - last), outward * i))


def _fit_from(shape: Outline, heights: Sequence[int], top: int, start: Side, first_row: int, pivot: int, style: Style) -> Fitted:
    leftward = first_row % 2 if start == "R" else (first_row + 1) % 2  # parity of the rows that travel to the left
    a, b = shape.first_run[0] - shape.low, shape.first_run[1] - shape.low
    wished = [min(2 * turn, top) for turn in shape.enter]
    joins = [first_row] * len(heights)
    left = range(pivot - 1, -1, -1)
    right = range(pivot + 1, len(heights))
    cost_left, rows_left = join_rows([heights[i] for i in left], [wished[i] for i in left], leftward, first_row, pivot - a)
    cost_right, rows_right = join_rows(
        [heights[i] for i in right], [wished[i] for i in right], 1 - leftward, first_row, b - pivot
    )
    for places, rows in ((left, rows_left), (right, rows_right)):
        for i, row in zip(places, rows, strict=True):
            joins[i] = row
    joining = cost_left + cost_right + row_error(heights[pivot] - first_row)
    surplus = [height - join for height, join in zip(heights, joins, strict=True)]
    goal = [min(2 * turn, top) - more for turn, more in zip(shape.leave, surplus, strict=True)]
    least_end = max(max(joins) + 1, first_row + 1)
    tries = [_leave(shape, joins, goal, end, leftward, top, style) for end in _ends(shape, goal, least_end, top)]
    leaving, uneven, end_row, leaves = min(tries, key=lambda tried: tried[0])
    return Fitted(shape.low, start, first_row, end_row, joins, leaves, joining + leaving, joining + uneven)


def _ends(shape: Outline, goal: Sequence[int], least: int, top: int) -> list[int]:
    """Rows at which the block might end: where most of its last needles have their height, or a row earlier, with the
    rhythm of its edges, if it does not end the piece."""
    last = goal[shape.last_run[0] - shape.low : shape.last_run[1] - shape.low + 1]
    best = min(sorted({max(row, least) for row in last}), key=lambda row: sum(row_error(row - wish) for wish in last))
    return [best] if _tops_out(shape, top) else [best, *(row for row in (best - 1, best + 1) if row >= least)]


def _tops_out(shape: Outline, top: int) -> bool:
    return 2 * shape.leave[shape.last_run[0] - shape.low] >= top


def _leave(
    shape: Outline, joins: Sequence[int], goal: Sequence[int], end_row: int, leftward: int, top: int, style: Style
) -> tuple[int, int, int, list[int]]:
    """Cost, visible part of the cost, end row, and the leaving rows of a block that ends at `end_row`."""
    c, d = shape.last_run[0] - shape.low, shape.last_run[1] - shape.low
    leaves = [end_row] * len(joins)
    levels = [end_row - goal[i] for i in range(c, d + 1)]
    last = sum(map(row_error, levels)) if _tops_out(shape, top) else sum(leaving_error(off, off) for off in levels)
    cost = last
    uneven = last if _tops_out(shape, top) else sum(max(0, row_error(off) - row_error(1)) for off in levels)
    # Nobody leaves before it has knitted a row, nor before the needle that the block moves on to has joined.
    for places, parity, inward in ((range(c), 1 - leftward, 1), (range(len(joins) - 1, d, -1), leftward, -1)):
        earliest = [max(joins[i] + 1, joins[i + inward]) for i in places]
        leaving, rows = leave_rows([goal[i] for i in places], earliest, parity, end_row, style)
        cost += leaving
        late = 0
        for i, row in zip(places, rows, strict=True):
            leaves[i] = row
            late = row - goal[i]
            uneven += max(0, row_error(late) - row_error(1))
        if places:
            innermost = c if inward == 1 else d
            cost += leaving_error(end_row - goal[innermost], late) - leaving_error(
                end_row - goal[innermost], end_row - goal[innermost]
            )
    return cost, uneven, end_row, leaves
