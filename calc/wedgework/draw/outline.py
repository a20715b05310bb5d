"""The outline of a block: from stitches on needles to a few stair-edged loops. Columns and rows are whole numbers."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction

__all__ = ["Columns", "Interval", "Spot", "loops", "spot", "stack_on"]

Interval = tuple[int, int]
Columns = Mapping[int, tuple[Interval, ...]]
"""Column -> intervals of rows (from, to; the last not counted), from below, none touching another."""
Vertex = tuple[int, int]
Spot = tuple[Fraction, Fraction, int, int]
"""Column and row of the middle, and how many columns and rows are free about it."""


def stack_on(columns: dict[int, tuple[Interval, ...]], column: int, low: int, high: int) -> None:
    """Stitches on top of those that the column has; where they touch, it is one interval."""
    own = columns.get(column, ())
    if own and own[-1][1] == low:
        own, low = own[:-1], own[-1][0]
    columns[column] = (*own, (low, high))


def loops(columns: Columns) -> list[list[Vertex]]:
    """The closed lines around the stitches, each corner once, counter-clockwise around stitches (rows upward)."""
    onward: dict[Vertex, list[Vertex]] = {}
    for start, end in _edges(columns):
        onward.setdefault(start, []).append(end)
    found: list[list[Vertex]] = []
    for first in sorted(onward):
        while onward[first]:
            loop = [first]
            at = onward[first].pop()
            while at != first:
                loop.append(at)
                at = onward[at].pop()
            found.append(_corners(loop))
    return found


def _edges(columns: Columns) -> Iterable[tuple[Vertex, Vertex]]:
    for column, intervals in columns.items():
        for low, high in intervals:
            yield (column, low), (column + 1, low)
            yield (column + 1, high), (column, high)
    for border in sorted({c for column in columns for c in (column, column + 1)}):
        left, right = columns.get(border - 1, ()), columns.get(border, ())
        for low, high in _without(left, right):
            yield (border, low), (border, high)
        for low, high in _without(right, left):
            yield (border, high), (border, low)


def _without(these: Iterable[Interval], those: tuple[Interval, ...]) -> list[Interval]:
    """The parts of `these` that lie in none of `those`."""
    found: list[Interval] = []
    for low, high in these:
        for a, b in those:
            if b <= low or a >= high:
                continue
            if a > low:
                found.append((low, a))
            low = max(low, b)
        if low < high:
            found.append((low, high))
    return found


def _corners(loop: list[Vertex]) -> list[Vertex]:
    """Without the points on straight lines."""
    n = len(loop)
    return [
        at
        for i, at in enumerate(loop)
        if not (loop[i - 1][0] == at[0] == loop[(i + 1) % n][0] or loop[i - 1][1] == at[1] == loop[(i + 1) % n][1])
    ]


def spot(columns: Columns, stitch: Fraction, row: Fraction, looked_at: int | None = None) -> Spot:
    """A good inner place for a label, by the millimetres of a stitch and a row.

    The column with the most room both ways gives the start; then the place moves to the middle of its row and of its
    column in turn, which in a triangle ends where the medians meet. Where it has to be quick, so many columns or fewer than
    twice as many are looked at, evenly spaced, and not all.
    """
    tried = sorted(columns)
    if looked_at is not None:
        tried = tried[(len(tried) // looked_at) // 2 :: max(1, len(tried) // looked_at)]
    # Whole numbers in the same proportion: a block has thousands of places.
    wide, tall = stitch.numerator * row.denominator, row.numerator * stitch.denominator
    # The tallest first: what is across can only make it less, so the rest is soon passed over.
    places = ((column, (low + high) // 2, low, high) for column in tried for low, high in columns[column])
    middles = [(-tall * min(middle - low + 1, high - middle), (column, middle)) for column, middle, low, high in places]
    at, most = (tried[0], 0), -1
    for up, place in sorted(middles):
        if -up < most:
            break
        if -up == most and place > at:  # of equal places the first
            continue
        room = _across_least(columns, *place, wide, -up)
        if room > most or (room == most and place < at):
            at, most = place, room
    enough = Fraction(7 * most, 10)
    for _ in range(6):
        first, last = _across(columns, *at)
        column = (first + last - 1) // 2
        low, high = _up(columns, column, at[1])
        moved = (column, (low + high) // 2)
        if moved == at or _room(columns, moved, wide, tall) < enough:
            break
        at = moved
    first, last = _across(columns, *at)
    low, high = _up(columns, *at)
    free = 2 * min(at[0] - first + 1, last - at[0]), 2 * min(at[1] - low + 1, high - at[1])
    # Where the run is even about the place, its middle is a border of stitches.
    x = Fraction(first + last, 2) if abs(first + last - 2 * at[0] - 1) <= 1 else Fraction(2 * at[0] + 1, 2)
    y = Fraction(low + high, 2) if abs(low + high - 2 * at[1] - 1) <= 1 else Fraction(2 * at[1] + 1, 2)
    return x, y, free[0], free[1]


def _room(columns: Columns, at: Vertex, stitch: int, row: int) -> int:
    """The smaller of the free widths across and up."""
    first, last = _across(columns, *at)
    low, high = _up(columns, *at)
    return min(min(at[0] - first + 1, last - at[0]) * stitch, min(at[1] - low + 1, high - at[1]) * row)


def _across_least(columns: Columns, column: int, row: int, stitch: int, most: int) -> int:
    """The smaller of the free widths to the left and to the right, and no more than `most`."""
    reach, free = 1, stitch
    while free < most and _has(columns, column - reach, row) and _has(columns, column + reach, row):
        reach += 1
        free += stitch
    return min(free, most)


def _up(columns: Columns, column: int, row: int) -> Interval:
    """The interval of the column that holds `row`."""
    return next((low, high) for low, high in columns[column] if low <= row < high)


def _across(columns: Columns, column: int, row: int) -> Interval:
    """The columns about `column` that have a stitch at `row`: first, and one after the last."""
    first, last = column, column + 1
    while _has(columns, first - 1, row):
        first -= 1
    while _has(columns, last, row):
        last += 1
    return first, last


def _has(columns: Columns, column: int, row: int) -> bool:
    for low, high in columns.get(column, ()):  # noqa: SIM110  (asked thousands of times; a loop takes half as long)
        if low <= row < high:
            return True
    return False
