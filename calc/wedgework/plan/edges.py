"""When the needles at one edge of a block join it, and when they leave it, row by row.

Rows here are the rows of the panel: row 0 is its lowest. A block knits row after row, the carriage going to and fro,
so the row tells the direction. The rules of the carriage (common practice, no source) then say which rows an edge
may move at:

- a needle *joins* before a pass that travels toward its edge, because it is returned at the end away from the carriage;
- a single needle *leaves* before a pass that travels away from its edge: it is held where the carriage stands, and the
  yarn passes over it and wraps it;
- several leave together in one of three styles (`Style`).

What counts is the real height of each needle, not the drawing: a needle that has one row too many may join late or
leave early, so that errors of one row never add up. Both questions are a shortest path over the needles of an edge,
outward for joining, inward for leaving. Costs are whole numbers.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

__all__ = ["Style", "join_rows", "leave_rows", "leaving_error", "row_error"]

# A row more or less is allowed everywhere and costs little; two are to be avoided; more only where nothing else is possible.
_ERRORS = (0, 100, 900, 3000, 8000)
_FAR = 2  # rows from the wished one that are tried first
_NEAR = 1  # rows from where the block begins within which a needle may begin with it
# At a leaving edge a row early or late is harmless as long as it stays the same along the edge: the border as a whole
# lies a row beside the drawing, and the rhythm is kept.
_LEAVING_ERRORS = (0, 10, 900, 3000, 8000)
_RHYTHM = 40
_BIAS = 30
_DROP = 250
# Leaving in a group takes the knitter two movements instead of one and costs a row of evenness.
_GROUP = 320


def row_error(rows: int) -> int:
    """What it costs that a needle is `rows` rows off."""
    return _priced(_ERRORS, rows)


def leaving_error(rows: int, before: int) -> int:
    """What it costs that a needle leaves `rows` rows late, the one before it on this edge having left `before` rows late."""
    return _priced(_LEAVING_ERRORS, rows) + _RHYTHM * abs(rows - before)


def _priced(scale: tuple[int, ...], rows: int) -> int:
    rows = abs(rows)
    return scale[rows] if rows < len(scale) else scale[-1] * (rows - 2)


@dataclass(frozen=True, slots=True)
class Style:
    """How several needles leave at once.

    `at_carriage`: so many may be held together at the carriage side, the strand crossing them.
    `by_hand`: a group held away from the carriage is wrapped by hand and needs no single needle after it; otherwise
    (all but one away from the carriage, one at its side) the row after a group must hold exactly one more.
    """

    at_carriage: int = 1
    by_hand: bool = False


def join_rows(heights: Sequence[int], wished: Sequence[int], parity: int, start: int, starters: int) -> tuple[int, list[int]]:
    """Cost and joining row of each needle, from the block's first needles outward.

    `heights`: real rows below each needle; `wished`: the rows of the drawing, which break ties. Needles join at rows of
    `parity`, never before the one nearer to the middle; the first `starters`, and others about as high, may also join at
    row `start`, where the block begins and every needle may move.
    """
    if not heights:
        return 0, []
    if starters == 0 and heights[0] > start and _clean(heights, parity, 0):
        return 0, list(heights)
    best: dict[int, int] = {start: 0}  # row of the needle before -> cost so far
    trail: list[dict[int, int]] = []
    for i, (height, wish) in enumerate(zip(heights, wished, strict=True)):
        options = [row for row in range(height - _FAR, height + _FAR + 1) if row % 2 == parity and row > start]
        if i < starters or abs(height - start) <= _NEAR:
            options.append(start)
        if not options:  # lower than where the block begins: it joins as soon as it can
            options = [start + 1 + (start + 1 - parity) % 2]
        floor = min(best)
        if max(options) < floor:
            options.append(floor if floor % 2 == parity or floor == start else floor + 1)
        here: dict[int, int] = {}
        back: dict[int, int] = {}
        for row in options:
            reach = [(cost, before) for before, cost in best.items() if before <= row]
            if reach:
                cost, before = min(reach)
                late = 30 if i < starters and row != start else 0
                here[row] = cost + row_error(height - row) + abs(row - wish) + late + (_BIAS if row < height else 0)
                back[row] = before
        best = here
        trail.append(back)
    return _walk_back(best, trail)


def _walk_back(best: dict[int, int], trail: list[dict[int, int]]) -> tuple[int, list[int]]:
    cost, row = min((cost, row) for row, cost in best.items())
    rows = []
    for back in reversed(trail):
        rows.append(row)
        row = back[row]
    return cost, rows[::-1]


def _clean(rows: Sequence[int], parity: int, gap: int) -> bool:
    """Whether every row has the parity and lies at least `gap` above the one before."""
    return all(row % 2 == parity for row in rows) and all(b - a >= gap for a, b in itertools.pairwise(rows))


def leave_rows(
    wished: Sequence[int],
    earliest: Sequence[int],
    parity: int,
    end: int,
    style: Style,
    heights: Sequence[int] | None = None,
) -> tuple[int, list[int]]:
    """Cost and leaving row of each needle, from the outermost one inward: the first row that it does not knit.

    A needle held where the carriage stands leaves at a row of `parity`, one held away from it at the others. At `end`, where
    the block ends, any number may leave. `earliest` is the lowest row possible for each. `heights` are the real rows that
    each needle has when it leaves as wished: the block above can follow them only if they rise inward.
    """
    if not wished:
        return 0, []
    if wished[-1] < end and _clean(wished, parity, 2) and all(low <= row for low, row in zip(earliest, wished, strict=True)):
        return 0, list(wished)
    # A state is (row, kind, rows late, cost, state before): kind 0 a group held away from the carriage, 1, 2 ... how many so far
    # at the carriage side.
    states: list[_State] = [(-(1 << 30), 1, 0, 0, None)]
    for i, (wish, low) in enumerate(zip(wished, earliest, strict=True)):
        least = states[0][0]  # states are sorted by row
        lowest = max(wish - _FAR, low)
        rows = [row for row in range(lowest, wish + _FAR + 1) if least <= row < end]
        if not rows:
            rows = [row for row in range(max(least, low), max(least, low) + 3) if row < end]
        rise = heights[i] - heights[i - 1] if heights is not None and i else _FAR * 4
        states = [state for row in [*rows, end] for state in _reached(states, row, row - wish, parity, end, style, i == 0, rise)]
    finished = [state for state in states if state[1] != 0 or style.by_hand or state[0] >= end - 1]
    # Where a group is left that nothing follows, nothing better can be had: the turn stays unwrapped.
    last: _State | None = min(finished or states, key=lambda state: state[3])
    if last is None:
        raise AssertionError("leaving at the end is always possible")
    cost = last[3]
    found = []
    while last is not None and last[4] is not None:
        found.append(last[0])
        last = last[4]
    return cost, found[::-1]


_State = tuple[int, int, int, int, Any]


def _reached(
    states: list[_State], row: int, late: int, parity: int, end: int, style: Style, first: bool, rise: int
) -> list[_State]:
    """The states of a needle that leaves at `row`, `late` rows after the wish, each the cheapest way from those before.

    It is wished to be `rise` rows higher than the needle before it.
    """
    best: dict[int, _State] = {}
    away = row % 2 != parity and row < end
    own = _priced(_LEAVING_ERRORS, late) + (late > 0)
    for before in states:
        last, kind, late_before, cost, _ = before
        if last > row:
            break
        pending = kind == 0 and not style.by_hand  # a group was held away: the row after it must hold one more
        if row == end:
            if pending and last < end - 1:
                continue
            new_kind = 1
        elif away:
            if pending and row != last:
                continue
            new_kind = 0
        elif pending:
            if row != last + 1:
                continue
            new_kind = 1
        elif row == last:
            if not 0 < kind < style.at_carriage:
                continue
            new_kind = kind + 1
        else:
            new_kind = 1
        total = cost + own
        if not first:
            total += _RHYTHM * abs(late - late_before)
            if rise + late < late_before:
                total += _DROP * (late_before - late - rise)
        if away and (kind or last != row):
            total += _GROUP
        known = best.get(new_kind)
        if known is None or total < known[3]:
            best[new_kind] = (row, new_kind, late, total, before)
    return list(best.values())
