"""What is seen on the bed at every place of a plan."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from wedgework.bed import Side, place
from wedgework.formats.design import Design
from wedgework.formats.plan import Cut, Knit, Plan, Rest, Step, Thread, Wrap
from wedgework.formats.state import State
from wedgework.layout import grid_of, resolve
from wedgework.words.passages import Handful, passages
from wedgework.words.phrases import cast_on_yarn
from wedgework.words.walk import Bed, step_over

__all__ = ["Part", "Sight", "sight_values", "sights"]

Part = Literal["before", "resting", "made"]
PARTS: tuple[Part, ...] = ("before", "resting", "made")


@dataclass(frozen=True, slots=True)
class Sight:
    """One place, and what is seen there."""

    cue: int
    """Index of the cue."""
    part: Part
    """Before its moves; in the middle of a check list, every needle in HP; its moves made."""
    done: int
    """Rows of the cue that are knitted."""
    yarn: str
    """Yarn id in the feeder; empty when there is none."""
    colour: tuple[int, int] | None
    """Outermost needles that carry this yarn (with none in the feeder: that of the last row), where it is knitted; None
    when no needle carries it there yet."""
    open: tuple[int, int] | None
    """Outermost needles that are not in HP; None when all are."""
    carriage: Side
    wrapped: bool | None
    """Whether the yarn lies round the held needle next to them, on the carriage's side; None where there is none."""
    counter: int
    """Rows of this block that are done, as the counter was set."""
    row: int
    """Rows of the piece that are done."""


def sights(plan: Plan, carries: tuple[int, int] | None = None) -> tuple[Sight, ...]:
    """Every place of `plan`, in the order in which the work passes them.

    Where it is a plan of the rest of a piece, `carries` are the outermost needles that carry the yarn in the feeder on the bed
    from which it begins; without them the colours there are those of the drawing, which real rows miss by one or two.
    """
    eyes = _Eyes(plan, carries)
    found: list[Sight] = []
    cue = 0
    for passage in passages(plan):
        for handful in (passage.opening, *passage.handfuls):
            found += _places(eyes, cue, handful)
            cue += 1
    return tuple(found)


def _places(eyes: _Eyes, cue: int, handful: Handful) -> Iterator[Sight]:
    bed = handful.bed
    resting = False
    if handful.moves or not handful.passes:
        yield eyes.sight(cue, "before", 0, bed)
    for step in handful.moves:
        eyes.see(bed, step)
        bed = step_over(bed, step)
        if not handful.passes and not bed.working and not bed.yarn and not resting:
            resting = True
            yield eyes.sight(cue, "resting", 0, bed)
    if handful.moves or handful.passes:
        yield eyes.sight(cue, "made", 0, handful.ready)
    bed = handful.ready
    # After the last row it is the next cue that has not begun.
    for done, knitted in enumerate(handful.passes, 1):
        eyes.see(bed, knitted)
        bed = step_over(bed, knitted)
        if done < len(handful.passes):
            yield eyes.sight(cue, "made", done, bed)


class _Eyes:
    """Remembers which yarn each needle carries and round which held needles the yarn lies."""

    def __init__(self, plan: Plan, carries: tuple[int, int] | None) -> None:
        needles = Bed.at_start(plan).needles
        self.first = place(needles[0])
        self.needles = needles
        closed = plan.edges.cast_on == "closed"
        bare = cast_on_yarn(plan) if closed or plan.state else ""
        self.loops = _on_needles(plan.design, plan.state, bare, carries) if plan.state else [bare] * len(needles)
        self.wrapped: set[int] = set()
        self.last_yarn = plan.state.feeder.yarn if plan.state and plan.state.feeder else self.loops[0]
        self.worked = (0, len(needles) - 1)  # the ends of the last row, as places from the left end

    def see(self, bed: Bed, step: Step) -> None:
        """`step`, made on `bed`."""
        match step:
            case Knit():
                self._knit(bed)
            case Thread(around=around):
                self.wrapped = set() if around is None else {around}
            case Wrap(needle=needle):
                self.wrapped.add(needle)
            case Cut() | Rest():
                self.wrapped = set()
            case _:
                pass

    def _knit(self, bed: Bed) -> None:
        if not bed.working:
            return
        beside = self._beside(bed)
        if beside is not None and (bed.beside > place(beside) if bed.carriage == "R" else bed.beside <= place(beside)):
            self.wrapped.add(beside)  # the carriage stands beyond it: the yarn passes over it
        for needle in bed.working:
            self.loops[place(needle) - self.first] = bed.yarn
        self.wrapped.difference_update(bed.working)
        self.worked = (place(bed.working[0]) - self.first, place(bed.working[-1]) - self.first)
        self.last_yarn = bed.yarn

    def sight(self, cue: int, part: Part, done: int, bed: Bed) -> Sight:
        """What is seen on `bed`."""
        working = bed.working
        beside = self._beside(bed) if working else None
        return Sight(
            cue,
            part,
            done,
            bed.yarn,
            self._colour(bed.yarn or self.last_yarn, working),
            (working[0], working[-1]) if working else None,
            bed.carriage,
            None if beside is None else beside in self.wrapped,
            bed.block_row,
            bed.row,
        )

    def _beside(self, bed: Bed) -> int | None:
        """The held needle next to those that work, on the carriage's side."""
        at = place(bed.working[-1]) + 1 if bed.carriage == "R" else place(bed.working[0]) - 1
        at -= self.first
        return self.needles[at] if 0 <= at < len(self.needles) else None

    def _colour(self, yarn: str, working: Sequence[int]) -> tuple[int, int] | None:
        """The stretch of needles that carries `yarn` and reaches those that work (or those of the last row)."""
        low, high = self.worked
        if working:
            low, high = place(working[0]) - self.first, place(working[-1]) - self.first
        loops = self.loops
        first = next((at for at in range(low, high + 1) if loops[at] == yarn), None)
        if first is None:
            return None
        last = next(at for at in range(high, low - 1, -1) if loops[at] == yarn)
        while first == low and first > 0 and loops[first - 1] == yarn:
            first, low = first - 1, low - 1
        while last == high and last + 1 < len(loops) and loops[last + 1] == yarn:
            last, high = last + 1, high + 1
        return self.needles[first], self.needles[last]


def _on_needles(design: Design, state: State, bare: str, carries: tuple[int, int] | None) -> list[str]:
    """The yarn on each needle where a plan of the rest begins: what was seen, else what the picture has at the rows there."""
    turns = grid_of(design, resolve(design)).mirrored().turns
    found: list[str] = []
    for p, rows in enumerate(state.rows):
        turn = turns[min(max(rows - 1, 0) // 2, len(turns) - 1)]
        found.append(next((cells.yarn for cells in turn if cells.first <= p <= cells.last), bare) if rows else bare)
    if carries is not None and state.feeder is not None:
        yarn = state.feeder.yarn
        first, last = (place(needle) - place(state.first_needle) for needle in carries)
        for p in (first - 1, last + 1):
            if 0 <= p < len(found) and found[p] == yarn:
                found[p] = ""  # another, whatever the drawing has
        found[first : last + 1] = [yarn] * (last + 1 - first)
    return found


def sight_values(found: Sequence[Sight], yarns: Sequence[str]) -> list[list[int]]:
    """The places as short lists of whole numbers, for a page that compares them without asking again.

    Cue, part (0, 1, 2), rows of it, yarn's place in `yarns` (-1: none), first and last needle that carries the colour (0,
    0: none), first and last needle not in HP (0, 0: none), carriage (-1 left, 1 right), wrapped (-1 there is no such needle,
    0 no, 1 yes), counter.
    """
    at = {yarn: n for n, yarn in enumerate(yarns)}
    return [
        [
            one.cue,
            PARTS.index(one.part),
            one.done,
            at.get(one.yarn, -1),
            *(one.colour or (0, 0)),
            *(one.open or (0, 0)),
            -1 if one.carriage == "L" else 1,
            -1 if one.wrapped is None else int(one.wrapped),
            one.counter,
        ]
        for one in found
    ]
