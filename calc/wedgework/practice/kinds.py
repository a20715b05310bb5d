"""What a plan asks of the hands, and where: kinds of edges, starts, turns and joins, read from its steps.

Sides are those of the bed, as the knitter sees it. An edge is a side of a block that moves by needles from turn to turn: it is
*steep* where it moves by one needle at a time, *shallow* where it moves by several, *mixed* where both come often.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from wedgework.bed import Side, place
from wedgework.formats.plan import Free, Hold, Knit, Plan, Rest, Set, Thread, Work, Wrap, is_edge
from wedgework.replay.result import Replay, Run

__all__ = ["KINDS", "Spot", "kinds_of"]

_WAYS = ("widening", "narrowing")
_SLOPES = ("steep", "mixed", "shallow")
KINDS: tuple[str, ...] = (
    *(f"edge-{side}-{way}-{slope}" for side in ("left", "right") for way in _WAYS for slope in _SLOPES),
    "edge-level",
    *("start-selvedge", "start-inside", "start-rested"),
    *("hold-one", "hold-several", "return-one", "return-several", "wrap", "free-pass"),
    *("join-point-below", "join-point-above", "join-slit"),
)
"""Every kind, in the order in which they are told."""

_FEWEST = 3
"""Moves that an edge needs before its steps say how it climbs."""
_LEVEL = 7
"""Needles at one height where one block lies on another: a level edge. One more than a step within a slope may have (`STANDING`
and `WIDE` of the planner); our own choice."""
_ODD = 5
"""One step in more than so many that is otherwise does not change what an edge is."""
_STANDS = 6
"""Rows after which an edge that does not move has ended: three turns."""
_POINT = 2
"""Needles on which a block that begins or ends in a point has its first or last row."""


@dataclass(frozen=True, slots=True)
class Spot:
    """Where something comes up: place on the bed, from 0 at the left end of the piece, and rows of the picture below it."""

    place: int
    level: int


@dataclass(frozen=True, slots=True)
class _Pass:
    """A row of the picture: the places that knit, from first to last, and the rows below them."""

    block: str
    first: int
    last: int
    level: int


def kinds_of(plan: Plan, judged: Replay) -> dict[str, tuple[Spot, ...]]:
    """Each kind that the plan contains, in the order of `KINDS`, with the spots where it comes up."""
    found: dict[str, list[Spot]] = {}
    passes: list[_Pass] = []
    for kind, spot in _read(plan, passes):
        found.setdefault(kind, []).append(spot)
    for kind, spot in (*_edges(passes), *_points(passes, len(judged.piece.columns)), *_levels(judged)):
        found.setdefault(kind, []).append(spot)
    origin = place(plan.first_needle)
    for slit in judged.summary.slits:
        found.setdefault("join-slit", []).append(Spot(place(slit.needle) - origin, slit.from_row))
    return {kind: tuple(found[kind]) for kind in KINDS if kind in found}


def _read(plan: Plan, passes: list[_Pass]) -> Iterator[tuple[str, Spot]]:
    """Starts, wraps and free passes in the order of the steps; the rows of the picture are put into `passes`."""
    origin = place(plan.first_needle)
    count = place(plan.last_needle) - origin + 1
    held: set[int] = set()
    rows = [0] * count
    holds = False
    resting: set[str] = set()
    yarn = ""
    blocks = {i: block.id for block in plan.blocks for i in range(block.first_step, block.last_step + 1)}

    def spot(needles: Sequence[int]) -> Spot:
        middle = needles[len(needles) // 2]
        return Spot(middle, rows[middle])

    for i, step in enumerate(plan.steps):
        block = blocks.get(i, "")
        in_picture = bool(block) and not is_edge(block)
        match step:
            case Set(hold_lever=lever) if lever is not None:
                holds = lever == "hold"
            case Thread(yarn=threaded, around=around):
                if in_picture:
                    where = _next_row(plan, i, held, origin, count)
                    yield _start(threaded, around, resting), spot(where)
                yarn = threaded
                resting.discard(threaded)
            case Rest():
                resting.add(yarn)
            case Hold(needles=needles) | Work(needles=needles):
                places = {place(needle) - origin for needle in needles}
                held = held | places if isinstance(step, Hold) else held - places
            case Knit(block=knitted):
                works = [p for p in range(count) if not (holds and p in held)]
                if works and not is_edge(knitted):
                    passes.append(_Pass(knitted, works[0], works[-1], min(rows[p] for p in works)))
                    for p in works:
                        rows[p] += 1
            case Free(to=to):
                yield "free-pass", Spot(0 if to == "L" else count - 1, max(rows))
            case Wrap(needle=needle):
                yield "wrap", spot([place(needle) - origin])
            case _:
                pass


def _start(yarn: str, around: int | None, resting: set[str]) -> str:
    if yarn in resting:
        return "start-rested"
    return "start-selvedge" if around is None else "start-inside"


def _next_row(plan: Plan, at: int, held: set[int], origin: int, count: int) -> list[int]:
    """The places that knit on the first row after step `at`; all when none follows."""
    held = set(held)
    for step in plan.steps[at:]:
        if isinstance(step, Hold):
            held |= {place(needle) - origin for needle in step.needles}
        elif isinstance(step, Work):
            held -= {place(needle) - origin for needle in step.needles}
        elif isinstance(step, Knit):
            break
    return [p for p in range(count) if p not in held] or list(range(count))


def _edges(passes: Sequence[_Pass]) -> Iterator[tuple[str, Spot]]:
    by_block: dict[str, list[_Pass]] = {}
    for one in passes:
        by_block.setdefault(one.block, []).append(one)
    sides: tuple[Side, ...] = ("L", "R")
    for rows in by_block.values():
        for side in sides:
            yield from _edge(rows, side)


def _edge(rows: Sequence[_Pass], side: Side) -> Iterator[tuple[str, Spot]]:
    """The stretches in which one side of a block moves the same way."""
    stretch: list[int] = []
    began, last = 0, 0
    for i, moved in _moves(rows, side):
        yield f"{'return' if moved > 0 else 'hold'}-{'one' if abs(moved) == 1 else 'several'}", _spot(rows[i], side)
        if stretch and (i - last > _STANDS or (moved > 0) != (stretch[-1] > 0)):
            yield from _slope(stretch, rows[(began + last) // 2], side)
            stretch = []
        if not stretch:
            began = i
        stretch.append(moved)
        last = i
    yield from _slope(stretch, rows[(began + last) // 2], side)


def _moves(rows: Sequence[_Pass], side: Side) -> list[tuple[int, int]]:
    """Index of a row, and by how many needles the edge has moved out (in where negative) since the turn before. Several needles
    may go to hold in two parts, before and after one row: that is one move."""
    moves: list[tuple[int, int]] = []
    parted = False
    for i, (before, after) in enumerate(itertools.pairwise(rows), 1):
        moved = before.first - after.first if side == "L" else after.last - before.last
        if not moved:
            continue
        if moves and not parted and moves[-1][0] == i - 1 and (moved > 0) == (moves[-1][1] > 0):
            moves[-1] = (i, moves[-1][1] + moved)
            parted = True
        else:
            moves.append((i, moved))
            parted = False
    return moves


def _spot(one: _Pass, side: Side) -> Spot:
    return Spot(one.first if side == "L" else one.last, one.level)


def _slope(moves: Sequence[int], middle: _Pass, side: Side) -> Iterator[tuple[str, Spot]]:
    if len(moves) < _FEWEST:
        return
    # Where an edge begins and ends, a point or a corner is rounded: its first and last step do not say how it climbs.
    inner = moves[1:-1] if len(moves) > _FEWEST else moves
    single = sum(abs(move) == 1 for move in inner)
    if _ODD * min(single, len(inner) - single) >= len(inner):
        slope = "mixed"
    else:
        slope = "steep" if 2 * single > len(inner) else "shallow"
    way = "widening" if moves[0] > 0 else "narrowing"
    yield f"edge-{'left' if side == 'L' else 'right'}-{way}-{slope}", _spot(middle, side)


def _points(passes: Sequence[_Pass], count: int) -> Iterator[tuple[str, Spot]]:
    """Blocks whose first or last row lies on one or two needles, but not where a corner of the piece is cut off."""
    first: dict[str, _Pass] = {}
    last: dict[str, _Pass] = {}
    for one in passes:
        first.setdefault(one.block, one)
        last[one.block] = one
    for name, ends in (("below", first), ("above", last)):
        for one in ends.values():
            if one.last - one.first < _POINT and one.first > 0 and one.last < count - 1:
                yield f"join-point-{name}", Spot(one.first, one.level)


def _levels(judged: Replay) -> Iterator[tuple[str, Spot]]:
    """Where one block lies on another at one height over more needles than a step has."""
    running: dict[tuple[str, str], tuple[int, int]] = {}  # the two blocks -> height, needles so far
    for p, column in enumerate((*judged.piece.columns, ())):
        pairs = {(below.block, above.block): above.level for below, above in _borders(column)}
        for pair, (height, needles) in list(running.items()):
            if pairs.get(pair) != height:
                del running[pair]
                if needles >= _LEVEL:
                    yield "edge-level", Spot(p - needles // 2 - 1, height)
        for pair, height in pairs.items():
            running[pair] = (height, running.get(pair, (height, 0))[1] + 1)


def _borders(column: Sequence[Run]) -> Iterator[tuple[Run, Run]]:
    return ((below, above) for below, above in itertools.pairwise(column) if below.block != above.block)
