"""The bed as it stands before each step of a plan: what a reader has to know to put the step into words.

This is no judge (that is `wedgework.replay`): it believes the plan and only keeps the place.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache

from wedgework.bed import Side, across, place
from wedgework.formats.plan import Cut, Free, Hold, Knit, Lever, Plan, Rest, Set, Step, Thread, Work

__all__ = ["Bed", "by_end", "edge_line", "step_over"]


@dataclass(frozen=True, slots=True)
class Bed:
    """The bed before a step."""

    needles: tuple[int, ...]
    """Every needle of the piece, left to right."""
    held: frozenset[int]
    carriage: Side
    beside: int
    """Where on that side the carriage stands: its line lies just left of this place (see `wedgework.bed.place`)."""
    lever: Lever = "knit"
    yarn: str = ""
    """In the feeder; empty when there is none."""
    resting: frozenset[str] = frozenset()
    """Yarns that wait uncut on the mast."""
    row: int = 0
    block: str = ""
    block_row: int = 0

    @classmethod
    def at_start(cls, plan: Plan) -> Bed:
        """After cast-on: every needle works, the carriage stands beyond the end needle of its side; or the real state from which
        a plan of the rest begins."""
        needles = across(*plan.start.working)
        side, state = plan.start.carriage, plan.state
        if state is None:
            return cls(needles, frozenset(), side, edge_line(needles, side))
        held = frozenset(state.held)
        knitting = tuple(n for n in needles if n not in held) or needles
        return cls(needles, held, side, edge_line(knitting, side), "hold", state.feeder.yarn if state.feeder else "")

    @property
    def working(self) -> tuple[int, ...]:
        """The needles that knit on the next pass, left to right."""
        return self.needles if self.lever == "knit" else _without(self.needles, self.held)

    def end(self, side: Side) -> int | None:
        """The outermost knitting needle on `side`; None when no needle knits."""
        working = self.working
        return (working[0] if side == "L" else working[-1]) if working else None


@lru_cache(maxsize=4096)
def _without(needles: tuple[int, ...], held: frozenset[int]) -> tuple[int, ...]:
    """Asked for many times on every bed, and most steps move nothing."""
    return tuple(n for n in needles if n not in held)


def edge_line(needles: tuple[int, ...], side: Side) -> int:
    """The line just clear of `needles` on `side`, as in `Bed.beside`."""
    return place(needles[-1]) + 1 if side == "R" else place(needles[0])


def step_over(bed: Bed, step: Step) -> Bed:
    """The bed after `step`. Most steps by far are passes and needles moved: those are made outright, which is twice as quick."""
    match step:
        case Set(hold_lever=lever) if lever is not None:
            return replace(bed, lever=lever)
        case Thread(yarn=yarn):
            return replace(bed, yarn=yarn, resting=bed.resting - {yarn})
        case Cut():
            return replace(bed, yarn="")
        case Rest():
            return replace(bed, yarn="", resting=bed.resting | {bed.yarn})
        case Hold(needles=needles):
            return _with_held(bed, bed.held | frozenset(needles))
        case Work(needles=needles):
            return _with_held(bed, bed.held - frozenset(needles))
        case Knit(to=to, row=row, block=block, block_row=block_row):
            working = bed.working
            line = edge_line(working, to) if working else bed.beside
            held = frozenset[int]() if bed.lever == "knit" else bed.held
            return Bed(bed.needles, held, to, line, bed.lever, bed.yarn, bed.resting, row, block, block_row)
        case Free(to=to):
            return replace(bed, carriage=to, beside=edge_line(bed.needles, to))
        case _:
            return bed


def _with_held(bed: Bed, held: frozenset[int]) -> Bed:
    return Bed(bed.needles, held, bed.carriage, bed.beside, bed.lever, bed.yarn, bed.resting, bed.row, bed.block, bed.block_row)


def by_end(bed: Bed, step: Hold | Work) -> tuple[tuple[Side | None, tuple[int, ...]], ...]:
    """The needles of `step` by the end of the knitting needles at which they lie, the carriage's end first.

    None stands for needles that lie at neither end: in the middle, or where nothing knits, or all that knit.
    """
    needles, working = tuple(sorted(step.needles)), bed.working
    if isinstance(step, Work):
        left = tuple(n for n in needles if working and n < working[0])
        right = tuple(n for n in needles if working and n > working[-1])
    else:
        stays = [n for n in working if n not in needles]
        left = tuple(n for n in needles if stays and n < stays[0])
        right = tuple(n for n in needles if stays and n > stays[-1])
    middle = tuple(n for n in needles if n not in left and n not in right)
    ends: list[tuple[Side | None, tuple[int, ...]]] = [("L", left), ("R", right)]
    if bed.carriage == "R":
        ends.reverse()
    return tuple((side, found) for side, found in [*ends, (None, middle)] if found)
