"""Borders of the finished piece that will be seen: slits that stand open, stairs in a slope."""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Sequence
from dataclasses import replace

from wedgework.bed import at_place, place
from wedgework.formats.plan import Slit, Stair
from wedgework.replay.result import Run

__all__ = ["STAIR", "find_slits", "find_stairs", "standing_steps", "steps_joined"]

STANDING = 4
"""Rows that a border may stand on one needle: a turning point stands 3, a step of a steep border 4. Common practice."""
STAIR = 6
"""More needles than these in one step of a slope are seen as a stair. Our own choice; the trade only says "many"."""
RISER = 4
"""A step up of at most so many rows still belongs to a slope."""
APART = 2
"""Rows between the end of one standing step and the start of the next on the same border."""

Columns = Sequence[Sequence[Run]]


def find_slits(columns: Columns, origin: int) -> tuple[Slit, ...]:
    """Borders that stand open; steps that follow each other along one border are one slit."""
    return steps_joined(standing_steps(columns, origin))


def standing_steps(columns: Columns, origin: int) -> list[Slit]:
    """Where two neighbouring needles were knitted in different passes for more than `STANDING` rows at one height."""
    found = []
    blocks = [_as_one(column) for column in columns]
    for p in range(len(columns) - 1):
        left, right = blocks[p], blocks[p + 1]
        i = k = 0
        while i < len(left) and k < len(right):
            a, b = left[i], right[k]
            standing = min(a.high, b.high) - max(a.low, b.low)
            together = a.first_pass <= b.last_pass and b.first_pass <= a.last_pass
            if standing > STANDING and not together:
                found.append(Slit(at_place(origin + p), max(a.low, b.low) + 1, standing))
            if a.high <= b.high:
                i += 1
            else:
                k += 1
    return found


def _as_one(column: Sequence[Run]) -> Sequence[Run]:
    """What was there before the plan began is one run up to each gap, whatever its colours: nobody saw it grow."""
    if sum(run.last_pass == 0 for run in column) < 2:
        return column
    found: list[Run] = []
    for run in column:
        if found and run.last_pass == 0 and found[-1].high == run.low:
            found[-1] = replace(found[-1], rows=run.high - found[-1].low)
        else:
            found.append(run)
    return found


def steps_joined(slits: Iterable[Slit]) -> tuple[Slit, ...]:
    """Slits of which each goes on beside the one before it, a needle further and where that one ended, made one."""
    rising: dict[int, list[list[Slit]]] = {}  # place of the last step -> runs that lean to the right
    falling: dict[int, list[list[Slit]]] = {}
    runs: list[list[Slit]] = []
    for slit in sorted(slits, key=lambda s: (place(s.needle), s.from_row)):
        at = place(slit.needle)
        low, high = slit.from_row, slit.from_row + slit.rows
        before = next((run for run in rising.get(at - 1, ()) if abs(low - run[-1].from_row - run[-1].rows) <= APART), None)
        if before is not None:
            rising[at - 1].remove(before)
            rising.setdefault(at, []).append(before)
        else:
            before = next((run for run in falling.get(at - 1, ()) if abs(run[-1].from_row - high) <= APART), None)
            if before is not None:
                falling[at - 1].remove(before)
                falling.setdefault(at, []).append(before)
        if before is None:
            before = []
            runs.append(before)
            rising.setdefault(at, []).append(before)
            falling.setdefault(at, []).append(before)
        elif len(before) == 1:  # its second step says which way the border leans
            for other in (rising, falling):
                kept = other.get(at - 1, [])
                if before in kept:
                    kept.remove(before)
        before.append(slit)
    return tuple(sorted((_one(run) for run in runs), key=lambda s: (place(s.needle), s.from_row)))


def _one(run: Sequence[Slit]) -> Slit:
    """From its lowest step to its highest one."""
    low, high = sorted((run[0], run[-1]), key=lambda s: s.from_row)
    steps = sum(s.steps for s in run)
    return Slit(low.needle, low.from_row, sum(s.rows for s in run), steps, (high.to_needle or high.needle) if steps > 1 else None)


def find_stairs(columns: Columns, origin: int) -> tuple[Stair, ...]:
    """Borders between two blocks that climb in steps, some of them wider than `STAIR` needles."""
    open_: dict[tuple[str, str], list[tuple[int, int]]] = {}  # lower and upper block -> the places and heights of their border
    found: list[Stair] = []
    for p, column in enumerate(columns):
        here = {(low.block, high.block): high.low for low, high in itertools.pairwise(column) if low.block != high.block}
        for pair in [pair for pair in open_ if pair not in here]:
            found += _stairs(open_.pop(pair), origin)
        for pair, level in here.items():
            open_.setdefault(pair, []).append((p, level))
    for border in open_.values():
        found += _stairs(border, origin)
    return tuple(sorted(found, key=lambda s: (place(s.needle), s.from_row)))


def _stairs(border: Sequence[tuple[int, int]], origin: int) -> list[Stair]:
    treads: list[list[tuple[int, int]]] = []
    for p, level in border:
        if treads and abs(level - treads[-1][0][1]) <= 1:
            treads[-1].append((p, level))
        else:
            treads.append([(p, level)])
    wide = []
    for before, tread, after in zip(treads, treads[1:], treads[2:], strict=False):
        down, up = tread[0][1] - before[-1][1], after[0][1] - tread[-1][1]
        if len(tread) > STAIR and down * up > 0 and max(abs(down), abs(up)) <= RISER:
            wide.append(tread)
    if not wide:
        return []
    rows = [level for tread in wide for _, level in tread]
    return [
        Stair(
            at_place(origin + wide[0][0][0]),
            at_place(origin + wide[-1][-1][0]),
            min(rows),
            max(rows),
            len(wide),
            max(map(len, wide)),
        )
    ]
