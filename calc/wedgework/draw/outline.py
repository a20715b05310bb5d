"""The outline of a block: from stitches on needles to a few stair-edged loops. Columns and rows are whole numbers."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction

__all__ = ["Columns", "Spot", "loops", "spot"]

Interval = tuple[int, int]
Columns = Mapping[int, tuple[Interval, ...]]
"""Column -> intervals of rows (from, to; the last not counted), from below, none touching another."""
Vertex = tuple[int, int]
Spot = tuple[Fraction, Fraction, int, int]
"""Column and row of the middle, and how many columns and rows are free about it."""


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


def spot(columns: Columns, stitch: Fraction, row: Fraction) -> Spot:
    """A good inner place for a label: the middle of the widest, highest part, by millimetres of a stitch and a row."""
    best: tuple[Fraction, int, int, Interval, Interval] | None = None
    centre = Fraction(min(columns) + max(columns) + 1, 2)
    for column in sorted(columns):
        for low, high in columns[column]:
            middle = (low + high) // 2
            first, last = _across(columns, column, middle)
            width, height = (last - first) * stitch, (high - low) * row
            off = abs(Fraction(first + last, 2) - column - Fraction(1, 2)) * stitch / 4 + abs(column - centre) * stitch / 100
            score = min(width, height) - off
            if best is None or score > best[0]:
                best = score, column, middle, (first, last), (low, high)
    if best is None:
        raise ValueError("a block without stitches has no middle")
    _, column, _, (first, last), (low, high) = best
    near = 2 * min(column - first + 1, last - column)
    return Fraction(2 * column + 1, 2), Fraction(low + high, 2), near, high - low


def _across(columns: Columns, column: int, row: int) -> Interval:
    """The columns about `column` that have a stitch at `row`: first, and one after the last."""
    first, last = column, column + 1
    while _has(columns, first - 1, row):
        first -= 1
    while _has(columns, last, row):
        last += 1
    return first, last


def _has(columns: Columns, column: int, row: int) -> bool:
    return any(low <= row < high for low, high in columns.get(column, ()))
