"""Judgements over the finished piece: is it level, does it show the picture?"""

from __future__ import annotations

from collections.abc import Sequence

from wedgework.bed import at_place, name
from wedgework.formats.plan import Hole, Uneven
from wedgework.layout.grid import Grid
from wedgework.problems import Problem
from wedgework.replay.result import Run
from wedgework.say import say, say_n

__all__ = ["find_holes", "find_uneven", "level_problems", "picture_problems", "stretches"]

LEVEL = 2
"""Rows within which all needles of a flat piece end."""
ASIDE, ABOVE = 1, 3
"""A stitch may lie so many needles and rows beside its region: short rows move an edge in steps."""

Columns = Sequence[Sequence[Run]]


def find_holes(columns: Columns, turns: Sequence[tuple[str, int, int, int]], origin: int) -> tuple[Hole, ...]:
    """Unwrapped narrowing turns beside a needle that their block did not knit again."""
    found = []
    for block, place, at_pass, rows in turns:
        if not any(run.block == block and run.last_pass > at_pass for run in columns[place]):
            found.append(Hole(at_place(origin + place), rows))
    return tuple(found)


def heights(columns: Columns) -> list[int]:
    return [column[-1].level + column[-1].rows if column else 0 for column in columns]


def find_uneven(columns: Columns, top: int, origin: int) -> tuple[Uneven, ...]:
    """Needles more than one row off, where the piece as a whole is not level."""
    rows = heights(columns)
    if max(rows) - min(rows) <= LEVEL and all(abs(h - top) <= LEVEL for h in rows):
        return ()
    return tuple(Uneven(at_place(origin + p), h) for p, h in enumerate(rows) if abs(h - top) > 1)


def level_problems(columns: Columns, top: int) -> list[Problem]:
    """One problem when the needles do not end together, or not at the height of the panel."""
    rows = heights(columns)
    low, high = min(rows), max(rows)
    if high - low <= LEVEL and top - LEVEL <= low and high <= top + LEVEL:
        return []
    return [Problem("steps", "level.uneven", say("replay.uneven", low=low, high=high, top=top), say("replay.uneven.way-out"))]


def picture_problems(columns: Columns, grid: Grid, rows: int, origin: int) -> list[Problem]:
    """Stitches in a yarn that the picture does not have there, nor within one needle and three rows of there."""
    wanted = stretches(grid, rows)
    wrong: list[tuple[int, Run]] = []
    for p, column in enumerate(columns):
        near = wanted[max(p - ASIDE, 0) : p + ASIDE + 1]
        own = wanted[p]
        for run in column:
            if not _covered(run, own) and not _covered(run, *near):
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
                row=run.level + 1,
                yarn=run.yarn,
            ),
            say("replay.differs.way-out"),
        )
    ]


def stretches(grid: Grid, rows: int) -> list[dict[str, list[tuple[int, int]]]]:
    """For each place and yarn the rows, from and to, that the picture has it in."""
    found: list[dict[str, list[tuple[int, int]]]] = [{} for _ in range(grid.needles)]
    yarn_now: list[str | None] = [None] * grid.needles
    since = [0] * grid.needles

    def close(place: int, turn: int) -> None:
        yarn = yarn_now[place]
        if yarn is not None:
            found[place].setdefault(yarn, []).append((2 * since[place], min(2 * turn, rows)))

    for turn, cells in enumerate(grid.turns):
        for run in cells:
            for place in range(run.first, run.last + 1):
                if yarn_now[place] != run.yarn:
                    close(place, turn)
                    yarn_now[place], since[place] = run.yarn, turn
    for place in range(grid.needles):
        close(place, len(grid.turns))
    return found


def _covered(run: Run, *wanted: dict[str, list[tuple[int, int]]]) -> bool:
    """Whether every row of the run lies within `ABOVE` rows of where one of these places has its yarn."""
    low, high = run.level, run.level + run.rows
    for first, last in sorted(stretch for place in wanted for stretch in place.get(run.yarn, ())):
        if first - ABOVE > low:
            return False
        low = max(low, last + ABOVE)
        if low >= high:
            return True
    return low >= high
