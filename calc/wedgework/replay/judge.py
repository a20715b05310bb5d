"""Judgements over the finished piece: is it level, does it show the picture?"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace

from wedgework.bed import at_place, name
from wedgework.formats.plan import Hole, Uneven
from wedgework.layout import Shaping
from wedgework.layout.grid import Grid
from wedgework.problems import Problem
from wedgework.replay.result import Run
from wedgework.say import say, say_n

__all__ = ["Stretches", "find_holes", "find_uneven", "level_problems", "picture_problems", "placed", "stretches"]

LEVEL = 2
"""Rows within which all needles of a flat piece end."""
ASIDE, ABOVE = 1, 3
"""A stitch may lie so many needles and rows beside its region: short rows move an edge in steps."""

Columns = Sequence[Sequence[Run]]
Stretches = list[dict[str, list[tuple[int, int]]]]
"""For each place and yarn the rows, from and to, that the picture has it in."""


def find_holes(columns: Columns, turns: Sequence[tuple[str, int, int, int]], origin: int) -> tuple[Hole, ...]:
    """Unwrapped narrowing turns beside a needle that their block did not knit again."""
    found = []
    for block, place, at_pass, rows in turns:
        if not any(run.block == block and run.last_pass > at_pass for run in columns[place]):
            found.append(Hole(at_place(origin + place), rows))
    return tuple(found)


def heights(columns: Columns) -> list[int]:
    return [column[-1].level + column[-1].rows if column else 0 for column in columns]


def placed(columns: Columns, picture: Stretches, shaping: Shaping) -> tuple[tuple[Run, ...], ...]:
    """The runs at their places in the picture of a shaped piece: between which gaps each of them lies.

    A pass knits on one side of a gap, so a run never lies on both. Of all ways to deal the runs of a needle out to the stretches
    of the picture between its gaps the one is taken that fits their rows and yarns best.
    """
    if not any(shaping.gaps):
        return tuple(map(tuple, columns))
    found = []
    for place, (column, wanted) in enumerate(zip(columns, picture, strict=True)):
        spans = list(shaping.split(place, 0, shaping.tops[place]))
        if len(spans) < 2 and not (spans and spans[0][0]):
            found.append(tuple(column))
            continue
        yarns = [{yarn for yarn, each in wanted.items() if any(low <= a < high for a, _ in each)} for low, high in spans]
        under = [low - sum(b - a for a, b in spans[:k]) for k, (low, _) in enumerate(spans)]
        dealt = _dealt([(run.yarn, run.rows) for run in column], [high - low for low, high in spans], yarns)
        found.append(tuple(replace(run, gaps=under[k]) for run, k in zip(column, dealt, strict=True)))
    return tuple(found)


def _dealt(runs: Sequence[tuple[str, int]], lengths: Sequence[int], yarns: Sequence[Collection[str]]) -> list[int]:
    """For each run (yarn and rows), from below, the stretch in which it lies; stretches have lengths and yarns.

    Costs a row for each that a stretch has too many or too few, and for each in a yarn that is not there.
    """
    if not lengths:
        return [0] * len(runs)
    # best[i]: the cost and the dealing of the first i runs to the stretches so far.
    best: list[tuple[int, list[int]] | None] = [(0, []), *([None] * len(runs))]
    for k, (length, here) in enumerate(zip(lengths, yarns, strict=True)):
        after: list[tuple[int, list[int]] | None] = [None] * len(best)
        for i, known in enumerate(best):
            if known is None:
                continue
            total = strange = 0
            for j in range(i, len(best)):
                if j > i:
                    yarn, count = runs[j - 1]
                    total += count
                    strange += 0 if yarn in here else count
                cost = known[0] + abs(total - length) + strange
                other = after[j]
                if other is None or cost < other[0]:
                    after[j] = cost, known[1] + [k] * (j - i)
        best = after
    last = best[-1]
    return last[1] if last is not None else [0] * len(runs)


def find_uneven(columns: Columns, wanted: Sequence[int], origin: int) -> tuple[Uneven, ...]:
    """Needles more than one row off, where the piece as a whole does not have the rows that are wanted."""
    rows = heights(columns)
    off = [h - top for h, top in zip(rows, wanted, strict=True)]
    if _level(off, wanted):
        return ()
    return tuple(Uneven(at_place(origin + p), rows[p]) for p, away in enumerate(off) if abs(away) > 1)


def _level(off: Sequence[int], wanted: Sequence[int]) -> bool:
    """Whether needles so many rows off are as they should be: each near its own rows, in a flat piece near each other too."""
    near = all(abs(away) <= LEVEL for away in off)
    return near and (len(set(wanted)) > 1 or max(off) - min(off) <= LEVEL)


def level_problems(columns: Columns, wanted: Sequence[int], origin: int) -> list[Problem]:
    """One problem when the needles do not end with the rows that are wanted: of the panel, or their own in a shaped piece."""
    rows = heights(columns)
    off = [h - top for h, top in zip(rows, wanted, strict=True)]
    if _level(off, wanted):
        return []
    if len(set(wanted)) == 1:
        sentence = say("replay.uneven", low=min(rows), high=max(rows), top=wanted[0])
    else:
        worst = max(range(len(off)), key=lambda p: abs(off[p]))
        sentence = say("replay.unshaped", needle=name(at_place(origin + worst)), rows=rows[worst], wanted=wanted[worst])
    return [Problem("steps", "level.uneven", sentence, say("replay.uneven.way-out"))]


def picture_problems(columns: Columns, picture: Stretches, shaping: Shaping, origin: int) -> list[Problem]:
    """Stitches in a yarn that the picture does not have there, nor within one needle and three rows of there.

    On the needle itself a gap has no height: what lies under it and over it touch.
    """
    wrong: list[tuple[int, Run]] = []
    for p, column in enumerate(columns):
        near = picture[max(p - ASIDE, 0) : p + ASIDE + 1]
        own = picture[p]
        if shaping.gaps[p]:
            own = {
                yarn: [(low - shaping.passed(p, low), high - shaping.passed(p, low)) for low, high in each]
                for yarn, each in own.items()
            }
        for run in column:
            if not _covered(run.yarn, run.level, run.rows, own) and not _covered(run.yarn, run.low, run.rows, *near):
                wrong.append((p, run))
    if not wrong:
        return []
    p, run = wrong[0]
    return [
        Problem(
            "steps",
            "picture.differs",
            say(
                "replay.differs",
                stitches=say_n("common.places", len(wrong)),
                needle=name(at_place(origin + p)),
                row=run.low + 1,
                yarn=run.yarn,
            ),
            say("replay.differs.way-out"),
        )
    ]


def stretches(grid: Grid, rows: int) -> Stretches:
    """What a picture of so many rows has on each place."""
    found: Stretches = [{} for _ in range(grid.needles)]
    yarn_now: list[str | None] = [None] * grid.needles
    since = [0] * grid.needles

    def close(place: int, turn: int) -> None:
        yarn = yarn_now[place]
        if yarn is not None:
            found[place].setdefault(yarn, []).append((2 * since[place], min(2 * turn, rows)))

    for turn, cells in enumerate(grid.turns):
        after = 0
        for run in (*cells, None):
            for place in range(after, run.first if run else grid.needles):
                close(place, turn)
                yarn_now[place] = None
            if run is None:
                break
            for place in range(run.first, run.last + 1):
                if yarn_now[place] != run.yarn:
                    close(place, turn)
                    yarn_now[place], since[place] = run.yarn, turn
            after = run.last + 1
    for place in range(grid.needles):
        close(place, len(grid.turns))
    return found


def _covered(yarn: str, low: int, rows: int, *wanted: dict[str, list[tuple[int, int]]]) -> bool:
    """Whether each of the rows above `low` lies within `ABOVE` rows of where one of these places has the yarn."""
    high = low + rows
    for first, last in sorted(stretch for place in wanted for stretch in place.get(yarn, ())):
        if first - ABOVE > low:
            return False
        low = max(low, last + ABOVE)
        if low >= high:
            return True
    return low >= high
