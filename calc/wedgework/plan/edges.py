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

The same edge comes again and again, in blocks of the same kind, at every start that is tried and at every change a person
makes; only the row that it lies at differs. So the answers are kept, counted from where the block begins or ends.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

__all__ = ["Style", "join_rows", "leave_rows", "leaving_error", "row_error"]

# A row more or less is allowed everywhere and costs little; two are to be avoided; more only where nothing else is possible.
_ERRORS = (0, 100, 900, 3000, 8000)
_MANY = len(_ERRORS)
_FAR = 2  # rows from the wished one that are tried first
_NEAR = 1  # rows from where the block begins within which a needle may begin with it
# At a leaving edge a row early or late is harmless as long as it stays the same along the edge: the border as a whole
# lies a row beside the drawing, and the rhythm is kept.
_LEAVING_ERRORS = (0, 10, 900, 3000, 8000)
# At the edge of a shaped piece nothing evens a row out: it is worth more than the movements of a group.
_DONE_ERRORS = (0, 400, 2000, 6000, 16000)
_RHYTHM = 40
# Of a needle a row high and one a row low the low one is kept, so that all errors have one sign and lie within a row.
_BIAS = 30
# A block's first needles begin together unless evenness asks otherwise.
_LATE_STARTER = 30
# The block above can follow an edge only where real heights rise inward.
_DROP = 250
_OFTEN = 8  # needles after which it is asked whether going on is worth while
# Leaving in a group takes the knitter two movements instead of one and costs a row of evenness.
_GROUP = 320
_HOPELESS = 2500
# Edges whose answers are kept; each holds about 3 KB.
_KEPT = 1024
_HERE = 0  # where the block begins, or ends, when rows are counted from there


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


def join_rows(
    heights: Sequence[int], wished: Sequence[int], parity: int, start: int, starters: int, most: int = 1 << 60
) -> tuple[int, list[int]]:
    """Cost and joining row of each needle, from the block's first needles outward.

    `heights`: real rows below each needle; `wished`: the rows of the drawing, which break ties. Needles join at rows of
    `parity`, never before the one nearer to the middle; the first `starters`, and others about as high, may also join at
    row `start`, where the block begins and every needle may move. Once it is clear that the cost is `most` or more, the rest is
    left out: then that cost comes back, and no rows.
    """
    if not heights:
        return 0, []
    level = 0  # needles beside the first ones that begin with the block
    while level < len(heights) and heights[level] == start:
        level += 1
    if level >= starters and (level == len(heights) or heights[level] > start) and _clean(heights[level:], parity, 0):
        return 0, list(heights)
    above, drawn = tuple(row - start for row in heights), tuple(row - start for row in wished)
    cost, rows = _joining(above, drawn, (parity - start) % 2, starters, most)
    return cost, [row + start for row in rows]


@lru_cache(_KEPT)
def _joining(
    heights: tuple[int, ...], wished: tuple[int, ...], parity: int, starters: int, most: int
) -> tuple[int, tuple[int, ...]]:
    """`join_rows` with all rows counted from the one where the block begins."""
    rows_before, costs_before = [_HERE], [0]  # of the needle before: rows it may have joined at, rising, and what that cost
    trail: list[
        tuple[list[int], list[int]]
    ] = []  # for each needle its rows and the row of the needle before that is best for each
    for i, (height, wish) in enumerate(zip(heights, wished, strict=True)):
        rows = _join_options(height, parity, rows_before[0], i < starters)
        costs, back = [], []
        at, cheapest, via = 0, costs_before[0], rows_before[0]
        for row in rows:
            while at < len(rows_before) and rows_before[at] <= row:
                if costs_before[at] < cheapest:
                    cheapest, via = costs_before[at], rows_before[at]
                at += 1
            off = row - height if row > height else height - row
            cost = cheapest + (_ERRORS[off] if off < _MANY else row_error(off)) + (row - wish if row > wish else wish - row)
            if row < height:
                cost += _BIAS
            if i < starters and row != _HERE:
                cost += _LATE_STARTER
            costs.append(cost)
            back.append(via)
        rows_before, costs_before = rows, costs
        trail.append((rows, back))
        if i % _OFTEN == 0 and min(costs) >= most:
            return most, ()
    cost = min(costs_before)
    row = rows_before[costs_before.index(cost)]
    found = []
    for rows, back in reversed(trail):
        found.append(row)
        row = back[rows.index(row)]
    return cost, tuple(reversed(found))


def _join_options(height: int, parity: int, floor: int, starter: bool) -> list[int]:
    """The rows at which a needle may join, rising; none below `floor`, where the needle nearer to the middle joins."""
    least = max(height - _FAR, _HERE + 1, floor)
    rows = list(range(least + (least - parity) % 2, height + _FAR + 1, 2))
    if floor == _HERE and (starter or abs(height) <= _NEAR):
        rows.insert(0, _HERE)
    if not rows:  # lower than where it could join: it joins as soon as it can
        rows = [least + (least - parity) % 2]
    return rows


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
    done: Sequence[bool] | None = None,
) -> tuple[int, list[int]]:
    """Cost and leaving row of each needle, from the outermost one inward: the first row that it does not knit.

    A needle held where the carriage stands leaves at a row of `parity`, one held away from it at the others. At `end`, where
    the block ends, any number may leave. `earliest` is the lowest row possible for each. `heights` are the real rows that
    each needle has when it leaves as wished: the block above can follow them only if they rise inward. A needle that is `done`
    ends there, in a shaped piece.
    """
    if not wished:
        return 0, []
    if wished[-1] < end and _clean(wished, parity, 2) and all(low <= row for low, row in zip(earliest, wished, strict=True)):
        return 0, list(wished)
    rises = (0, *(b - a for a, b in itertools.pairwise(heights))) if heights is not None else (_FAR * 4,) * len(wished)
    before, least = tuple(row - end for row in wished), tuple(row - end for row in earliest)
    cost, rows = _leaving(before, least, (parity - end) % 2, style, rises, tuple(done) if done is not None else ())
    return cost, [row + end for row in rows]


@lru_cache(_KEPT)
def _leaving(
    wished: tuple[int, ...], earliest: tuple[int, ...], parity: int, style: Style, rises: tuple[int, ...], done: tuple[bool, ...]
) -> tuple[int, tuple[int, ...]]:
    """`leave_rows` with all rows counted from the one where the block ends; `rises`: how much higher than the needle before it
    each is wished to be."""
    if style.at_carriage == 1 and all(b - a >= 2 for a, b in itertools.pairwise(wished)):
        single = _one_by_one(wished, earliest, parity, rises)
        if single is not None:
            return single
    # A state is (row, kind, rows late, cost, state before): kind 0 a group held away from the carriage, 1, 2 ... how many so far
    # at the carriage side.
    states: list[_State] = [(-(1 << 30), 1, 0, 0, None)]
    for i, (wish, low, rise) in enumerate(zip(wished, earliest, rises, strict=True)):
        least = states[0][0]  # states are sorted by row
        # Where the needle before already left late, this one needs rows beyond its own wish to choose from.
        furthest = max(wish + _FAR, max(least, low) + 2)
        rows = list(range(max(wish - _FAR, low, least), min(furthest + 1, _HERE)))
        if wish + _FAR + 2 >= _HERE or not rows:
            rows.append(_HERE)
        errors = _DONE_ERRORS if done and done[i] else _LEAVING_ERRORS
        found = [state for row in rows for state in _reached(states, row, row - wish, parity, style, i == 0, rise, errors)]
        if not any(state[1] for state in found) and rows[-1] != _HERE:
            found += _reached(states, _HERE, -wish, parity, style, i == 0, rise, errors)
        # What is far dearer than the best is not followed; the best that owes no single needle always is.
        best = min(state[3] for state in found)
        owes_nothing = min((state for state in found if state[1]), key=lambda state: state[3], default=None)
        states = [state for state in found if state[3] <= best + _HOPELESS or state is owes_nothing]
    finished = [state for state in states if state[1] != 0 or style.by_hand or state[0] >= _HERE - 1]
    # Where a group is left that nothing follows, nothing better can be had: the turn stays unwrapped.
    last: _State | None = min(finished or states, key=lambda state: state[3])
    if last is None:
        raise AssertionError("leaving at the end is always possible")
    cost = last[3]
    leaving = []
    while last is not None and last[4] is not None:
        leaving.append(last[0])
        last = last[4]
    return cost, tuple(reversed(leaving))


def _one_by_one(
    wished: Sequence[int], earliest: Sequence[int], parity: int, rises: Sequence[int]
) -> tuple[int, tuple[int, ...]] | None:
    """The best way in which every needle leaves alone and within a row of its wish; None where that is not clearly the best way.

    For needles that wish to leave at least two rows apart. Most edges are of this kind, and this way is found much faster than
    among all ways.
    """
    states: list[tuple[int, int, int, Any]] = [(-(1 << 30), 0, 0, None)]  # row, rows late, cost, state before
    for i, (wish, low, rise) in enumerate(zip(wished, earliest, rises, strict=True)):
        rows = (wish,) if wish % 2 == parity else (wish - 1, wish + 1)
        found: list[tuple[int, int, int, Any]] = []
        for row in (*(row for row in rows if low <= row < _HERE), *((_HERE,) if wish - 1 <= _HERE <= wish + 1 else ())):
            late = row - wish
            best: tuple[int, Any] | None = None
            for before in states:
                last, late_before, cost, _ = before
                if last + 2 > row and row != _HERE:
                    continue
                if i:
                    cost += _RHYTHM * abs(late - late_before)
                    if rise + late < late_before:
                        cost += _DROP * (late_before - late - rise)
                if best is None or cost < best[0]:
                    best = cost, before
            if best is not None:
                found.append((row, late, best[0] + _LEAVING_ERRORS[abs(late)] + (late > 0), best[1]))
        if not found:
            return None
        states = found
    state = min(states, key=lambda found: found[2])
    # Leaving in a group could save no more than the errors of one row, so it would have to cost less than all else that is spent.
    if state[2] - (_LEAVING_ERRORS[1] + 1) * len(wished) >= _GROUP:
        return None
    cost = state[2]
    leaving = []
    while state[3] is not None:
        leaving.append(state[0])
        state = state[3]
    return cost, tuple(reversed(leaving))


_State = tuple[int, int, int, int, Any]


def _reached(
    states: list[_State],
    row: int,
    late: int,
    parity: int,
    style: Style,
    first: bool,
    rise: int,
    errors: tuple[int, ...],
) -> list[_State]:
    """The states of a needle that leaves at `row`, `late` rows after the wish, each the cheapest way from those before.

    It is wished to be `rise` rows higher than the needle before it.
    """
    best: dict[int, _State] = {}
    away = row % 2 != parity and row < _HERE
    off = late if late > 0 else -late
    own = (errors[off] if off < _MANY else _priced(errors, off)) + (late > 0)
    for before in states:
        last, kind, late_before, cost, _ = before
        if last > row:
            break
        pending = kind == 0 and not style.by_hand  # a group was held away: the row after it must hold one more
        if row == _HERE:
            if pending and last < _HERE - 1:
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
            total += _RHYTHM * (late - late_before if late > late_before else late_before - late)
            if rise + late < late_before:
                total += _DROP * (late_before - late - rise)
        if away and (kind or last != row):
            total += _GROUP
        known = best.get(new_kind)
        if known is None or total < known[3]:
            best[new_kind] = (row, new_kind, late, total, before)
    return list(best.values())
