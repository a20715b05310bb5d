"""One block fitted to the real heights of its needles: from which side, from which row to which, who joins and leaves when."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from wedgework.bed import Side
from wedgework.layout import Shaping
from wedgework.plan.edges import Style, join_rows, leave_rows, leaving_error, row_error

RHYTHMIC = 3
"""Up to so many last needles are a point, which keeps the rhythm of the edges that lead to it; more are a level top."""

__all__ = ["Fits", "Fitted", "Outline", "fit", "outline_of"]


@dataclass(frozen=True, slots=True, eq=False)
class Outline:
    """A block as the drawing has it, for each place from `low` on: the turn that it enters and the turn after its last.

    Two outlines are the same only if they are one object: `Fits` keeps what it found by that.
    """

    low: int
    enter: list[int]
    leave: list[int]
    first_run: tuple[int, int]
    last_run: tuple[int, int]
    from_rows: Sequence[int]
    """The row of the picture that each place joins at, as drawn."""
    to_rows: Sequence[int]
    """The row of the picture after the last of each place."""
    done: Sequence[bool]
    """Whether a place ends there, on the way to nothing more of the picture."""
    under: Sequence[int]
    """Rows of the gaps that lie under the block on each place: a needle's own rows and these are where it is in the picture."""
    together: tuple[int, int] | None = None
    """First and last of the places that are knitting this block already, where the rest of a piece is planned."""

    @property
    def high(self) -> int:
        return self.low + len(self.enter) - 1

    @property
    def tops_out(self) -> bool:
        """Whether its last needles end there."""
        return all(self.done[self.last_run[0] - self.low : self.last_run[1] - self.low + 1])


def outline_of(runs: Sequence[tuple[int, int]], first_turn: int, shaping: Shaping) -> Outline:
    """The outline of consecutive runs of places, the first of them in `first_turn`, in a picture of this shaping."""
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
    tops = shaping.tops[low : high + 1]
    from_rows = [min(2 * turn, top) for turn, top in zip(enter, tops, strict=True)]
    to_rows = [min(2 * turn, top) for turn, top in zip(leave, tops, strict=True)]
    done = [2 * turn >= top for turn, top in zip(leave, tops, strict=True)]
    under = [shaping.passed(place, 2 * turn) for place, turn in enumerate(enter, low)]
    return Outline(low, enter, leave, runs[0], runs[-1], from_rows, to_rows, done, under)


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
    uneven: int
    """What the finished piece would show, in the costs of `edges`: needles too high or too low, borders far from the drawing."""

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

    @property
    def first_needle(self) -> int:
        """The place where the first pass begins."""
        run = self.knitting(self.first_row)
        return run[0] if self.start == "L" else run[1]

    @property
    def last_needle(self) -> int:
        """The place where the last pass ends, and its yarn hangs."""
        run = self.knitting(self.end_row - 1)
        return run[0] if self.end == "L" else run[1]


def fit(shape: Outline, rows: Sequence[int], start: Side, style: Style) -> Fitted:
    """The best fit of `shape` begun from `start` on needles that really have these `rows` (one for each place of the shape).

    Heights in here are rows of the picture, with the gaps that lie under the block. The row that it begins in is tried around the
    height of its lowest needle.
    """
    heights = [own + gaps for own, gaps in zip(rows, shape.under, strict=True)]
    if shape.together is not None:
        return _going_on(shape, heights, start, style)
    pivot = _pivot(shape, heights, start)
    joining, first_row, joins = _join(shape, heights, start, heights[pivot], pivot)
    for shift in (1, -1):
        if joining > row_error(1):  # any other beginning costs that already
            cost, row, rows = _join(shape, heights, start, heights[pivot] + shift, pivot, joining)
            if cost < joining:
                joining, first_row, joins = cost, row, rows
    return _ended(shape, heights, start, style, joining, first_row, joins)[1]


def _ended(
    shape: Outline,
    heights: Sequence[int],
    start: Side,
    style: Style,
    joining: int,
    first_row: int,
    joins: list[int],
) -> tuple[int, Fitted]:
    """A block with its joins, led to its end in the best way; and what that costs in all."""
    leftward = _leftward(start, first_row)
    goal = [top - height + join for top, height, join in zip(shape.to_rows, heights, joins, strict=True)]
    ends = _ends(shape, joins, goal, first_row + 1)
    ways = [_leave(shape, joins, goal, end, leftward, style) for end in ends]
    cost, uneven, end_row, leaves = min(ways, key=lambda found: found[0])
    joins = [min(join, end_row) for join in joins]
    return joining + cost, Fitted(shape.low, start, first_row, end_row, joins, leaves, joining + uneven)


def _going_on(shape: Outline, heights: Sequence[int], start: Side, style: Style) -> Fitted:
    """A block in the middle of which planning begins: the needles that knit already knit on together, whatever their rows.

    Nothing of that is an error now: it was there before, and the needles even it out as they leave.
    """
    if shape.together is None:
        raise AssertionError("nothing goes on")
    first, last = (place - shape.low for place in shape.together)
    ways = []
    for first_row in sorted(set(heights[first : last + 1])):
        joining, joins = _joined(shape, heights, start, first_row, (first, last), (0, 0))
        ways.append(_ended(shape, heights, start, style, joining, first_row, joins))
    return min(ways, key=lambda way: way[0])[1]


class Fits:
    """Fits found so far: the same block on needles of the same heights is looked at once."""

    def __init__(self, style: Style) -> None:
        self._style = style
        self._found: dict[tuple[Outline, Side, tuple[int, ...]], Fitted] = {}

    def of(self, shape: Outline, under: tuple[int, ...], start: Side) -> Fitted:
        """The best fit of `shape` begun from `start` on needles of these heights."""
        key = shape, start, under
        found = self._found.get(key)
        if found is None:
            found = self._found[key] = fit(shape, under, start, self._style)
        return found


def _leftward(start: Side, first_row: int) -> int:
    """The parity of the rows that travel to the left."""
    return first_row % 2 if start == "R" else (first_row + 1) % 2


def _pivot(shape: Outline, heights: Sequence[int], start: Side) -> int:
    """The needle that begins: the lowest of the first run, the one nearest its middle where several are.

    Of two equally near the one at the start side, so that the mirrored piece from the other side is the mirrored piece.
    """
    first, last = (place - shape.low for place in shape.first_run)
    outward = 1 if start == "L" else -1
    return min(range(first, last + 1), key=lambda i: (heights[i], abs(2 * i - first - last), outward * i))


def _join(
    shape: Outline, heights: Sequence[int], start: Side, first_row: int, pivot: int, most: int = 1 << 60
) -> tuple[int, int, list[int]]:
    """Cost, first row and joining rows of a block that begins at `first_row` with the needle `pivot`.

    Where the cost is `most` or more, that is all that can be told.
    """
    own = row_error(heights[pivot] - first_row)
    starters = pivot - (shape.first_run[0] - shape.low), shape.first_run[1] - shape.low - pivot
    cost, joins = _joined(shape, heights, start, first_row, (pivot, pivot), starters, most - own)
    return own + cost, first_row, joins


def _joined(
    shape: Outline,
    heights: Sequence[int],
    start: Side,
    first_row: int,
    begun: tuple[int, int],
    starters: tuple[int, int],
    most: int = 1 << 60,
) -> tuple[int, list[int]]:
    """Cost and joining rows of a block whose needles `begun` (first and last) begin at `first_row`; so many needles on either
    side of them may begin with them. Where the cost is `most` or more, there are no rows."""
    leftward = _leftward(start, first_row)
    joins = [first_row] * len(heights)
    cost = 0
    left, right = range(begun[0] - 1, -1, -1), range(begun[1] + 1, len(heights))
    for places, parity, beside in ((left, leftward, starters[0]), (right, 1 - leftward, starters[1])):
        joining, rows = join_rows(
            [heights[i] for i in places], [shape.from_rows[i] for i in places], parity, first_row, beside, most - cost
        )
        cost += joining
        if cost >= most:
            return most, []
        for i, row in zip(places, rows, strict=True):
            joins[i] = row
    return cost, joins


def _late(i: int, end_row: int, joins: Sequence[int], goal: Sequence[int]) -> int:
    """How much too high needle i is when it leaves at the end. One that would only join then has its height already."""
    return max(end_row, joins[i]) - goal[i]


def _ends(shape: Outline, joins: Sequence[int], goal: Sequence[int], least: int) -> list[int]:
    """Rows at which the block might end: where most of its last needles have their height, or a row earlier or later, with
    the rhythm of its edges, if it ends in a point and not at the top."""
    last = range(shape.last_run[0] - shape.low, shape.last_run[1] - shape.low + 1)
    rows = sorted({max(goal[i], least) for i in last})
    best = min(rows, key=lambda row: sum(row_error(_late(i, row, joins, goal)) for i in last))
    if shape.tops_out or len(last) > RHYTHMIC:
        return [best]
    return [best, *(row for row in (best - 1, best + 1) if row >= least)]


def _leave(
    shape: Outline, joins: Sequence[int], goal: Sequence[int], end_row: int, leftward: int, style: Style
) -> tuple[int, int, int, list[int]]:
    """Cost, visible part of the cost, end row, and the leaving rows of a block that ends at `end_row`."""
    c, d = shape.last_run[0] - shape.low, shape.last_run[1] - shape.low
    leaves = [end_row] * len(joins)
    levels = [_late(i, end_row, joins, goal) for i in range(c, d + 1)]
    if shape.tops_out:
        cost = uneven = sum(map(row_error, levels))
    else:
        cost = sum(leaving_error(off, off) for off in levels)
        uneven = sum(max(0, row_error(off) - row_error(1)) for off in levels)
    # Nobody leaves before it has knitted a row, nor before the needle that the block moves on to has joined.
    for places, parity, inward in ((range(c), 1 - leftward, 1), (range(len(joins) - 1, d, -1), leftward, -1)):
        earliest = [max(joins[i] + 1, joins[i + inward]) for i in places]
        done = [shape.done[i] for i in places]
        leaving, rows = leave_rows(
            [goal[i] for i in places],
            earliest,
            parity,
            end_row,
            style,
            [shape.to_rows[i] for i in places],
            done,
        )
        cost += leaving
        late = 0
        for i, row, ends in zip(places, rows, done, strict=True):
            leaves[i] = row
            late = row - goal[i]
            # Where a shaped piece ends nothing evens a row out; anywhere else the block above does.
            uneven += row_error(late) if ends else max(0, row_error(late) - row_error(1))
        if places:  # the last needles keep the rhythm, or break it
            innermost = levels[0] if inward == 1 else levels[-1]
            cost += leaving_error(innermost, late) - leaving_error(innermost, innermost)
    return cost, uneven, end_row, leaves
