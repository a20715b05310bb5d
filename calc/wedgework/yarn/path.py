"""The way of the yarn through a piece: pass after pass, as the model bed knitted it, with all that is no stitch.

    way = path_of(plan, judged)
    way.first[t], way.last[t], way.stitches[t]     # places where pass t began and ended, and how many stitches it made
    way.crossed[t], way.climbed.get(t, 0)          # needles and rows that the yarn went over before it

Counts only, no lengths: those belong to a yarn and its tension (`wedgework.yarn.laid`). Passes are counted from 0 here,
places from the left end of the piece. Everything is read from the replayed runs; only threads and cuts, which leave no
stitch, come from the steps.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from wedgework.bed import Side, place
from wedgework.formats.plan import BindOff, CastOn, Cut, Join, Knit, Plan, Thread, Waste, Wrap, is_edge
from wedgework.replay.result import Replay, Run

__all__ = ["Stretch", "YarnPath", "between", "path_of"]

AROUND = 2
"""Pitches of yarn in a wrap laid by hand: to the held needle and back. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """One block: its yarn, and its passes from `begin` to before `end`."""

    block: str
    name: str
    yarn: str
    begin: int
    end: int
    outside: bool
    """Base rows and hems, outside the picture."""


@dataclass(slots=True)
class YarnPath:
    """Lists with one value for each pass, mappings with those passes only that have something to tell."""

    needles: int
    stretches: tuple[Stretch, ...]
    first: list[int]
    last: list[int]
    stitches: list[int]
    crossed: list[int]
    """Needles that the yarn goes over before its first stitch: held ones it lies on or is wrapped round."""
    climbed: dict[int, int] = field(default_factory=dict)
    """Rows along which a strand climbs to where the pass begins."""
    anew: dict[int, int] = field(default_factory=dict)
    """Tails before the pass: one where yarn is threaded anew, two where a new ball is joined."""
    cut: dict[int, int] = field(default_factory=dict)
    """Tails after the pass."""
    cast_on: dict[int, int] = field(default_factory=dict)
    """Stitches cast on in its yarn before the pass."""
    bound_off: dict[int, int] = field(default_factory=dict)
    """Stitches bound off after the pass."""
    gaps: dict[int, tuple[int, ...]] = field(default_factory=dict)
    """The places of a pass whose needles do not lie side by side, from left to right."""
    waste_rows: int = 0
    """Rows of waste yarn over every needle."""
    runs: dict[str, list[tuple[int, Run]]] = field(default_factory=dict)
    """Of each block of the picture: place, and run."""

    @property
    def passes(self) -> int:
        return len(self.first)

    def places(self, at: int) -> tuple[int, ...]:
        """The places of a pass, in the order in which it knits them."""
        first, last = self.first[at], self.last[at]
        if at in self.gaps:
            return self.gaps[at] if first <= last else self.gaps[at][::-1]
        return tuple(range(first, last + 1) if first <= last else range(first, last - 1, -1))

    def selvedge(self, at: int) -> Side | None:
        """The selvedge at which a pass ended; None where it ended inside."""
        if self.last[at] == 0:
            return "L"
        return "R" if self.last[at] == self.needles - 1 else None


def path_of(plan: Plan, judged: Replay) -> YarnPath:
    """The path of a plan that was replayed without problems."""
    sides, blocks, path = _walk(plan)
    _extents(path, sides, judged)
    _strands(path, blocks, judged)
    return path


def _walk(plan: Plan) -> tuple[list[Side], list[int], YarnPath]:
    """The passes, each with the side it goes to and the number of its stretch; and what happens between them."""
    names = {block.id: block for block in plan.blocks}
    needles = place(plan.last_needle) - place(plan.first_needle) + 1
    sides: list[Side] = []
    blocks: list[int] = []
    stretches: list[Stretch] = []
    begun = ""
    path = YarnPath(needles, (), [], [], [], [])
    threaded: set[str] = set()
    yarn = ""
    tails = wrapped = hung = 0
    # The state before the first step is after cast-on; on waste yarn there is no edge of the piece's own yarn.
    cast_on = needles if plan.edges.cast_on == "closed" else 0
    for step in plan.steps:
        kind = type(step)
        if kind is Knit:
            assert isinstance(step, Knit)
            at = len(sides)
            if step.block != begun:
                begun = step.block
                block = names[begun]
                if stretches:
                    stretches[-1] = _until(stretches[-1], at)
                stretches.append(Stretch(begun, block.name, block.yarn, at, at, is_edge(begun)))
            sides.append(step.to)
            blocks.append(len(stretches) - 1)
            path.crossed.append(wrapped)
            wrapped = 0
            if tails:
                path.anew[at], tails = tails, 0
            if cast_on + hung:
                path.cast_on[at], cast_on, hung = cast_on + hung, 0, 0
        elif kind is Thread:
            assert isinstance(step, Thread)
            yarn = step.yarn
            if yarn not in threaded:
                threaded.add(yarn)
                tails = 1
        elif kind is Cut:
            threaded.discard(yarn)
            if sides:
                path.cut[len(sides) - 1] = path.cut.get(len(sides) - 1, 0) + 1
        elif kind is Join:
            tails += 2
        elif kind is Wrap:
            wrapped = AROUND
        elif isinstance(step, CastOn):
            hung += len(step.needles)
        elif isinstance(step, BindOff) and sides:
            path.bound_off[len(sides) - 1] = path.bound_off.get(len(sides) - 1, 0) + len(step.needles)
        elif isinstance(step, Waste):
            path.waste_rows += step.rows
    if stretches:
        stretches[-1] = _until(stretches[-1], len(sides))
    path.stretches = tuple(stretches)
    return sides, blocks, path


def _until(stretch: Stretch, end: int) -> Stretch:
    return Stretch(stretch.block, stretch.name, stretch.yarn, stretch.begin, end, stretch.outside)


def _extents(path: YarnPath, sides: list[Side], judged: Replay) -> None:
    """Where each pass began and ended, and its stitches: from the runs, which say when each needle knitted."""
    total = len(sides)
    begins: list[list[int]] = [[] for _ in range(total + 1)]
    ends: list[list[int]] = [[] for _ in range(total + 1)]
    for at, column in enumerate(judged.piece.columns):
        for run in column:
            path.runs.setdefault(run.block, []).append((at, run))
            begins[run.first_pass - 1].append(at)
            ends[run.last_pass].append(at)
    for stretch in path.stretches:
        if stretch.outside:
            _over_all(path, stretch, sides, judged)
        else:
            _short_rows(path, stretch, sides, begins, ends)


def _over_all(path: YarnPath, stretch: Stretch, sides: list[Side], judged: Replay) -> None:
    """Base rows and hems go over every needle in use; the replay counted how many that were."""
    passes = stretch.end - stretch.begin
    stitches = judged.block_stitches.get(stretch.block, passes * path.needles)
    for i in range(passes):
        count = (i + 1) * stitches // passes - i * stitches // passes
        high = min(count, path.needles) - 1
        to_right = sides[stretch.begin + i] == "R"
        path.first.append(0 if to_right else high)
        path.last.append(high if to_right else 0)
        path.stitches.append(count)


def _short_rows(path: YarnPath, stretch: Stretch, sides: list[Side], begins: list[list[int]], ends: list[list[int]]) -> None:
    knitting = bytearray(path.needles)
    low, high, count = path.needles, -1, 0
    firsts, lasts, stitches = path.first, path.last, path.stitches
    for at in range(stretch.begin, stretch.end):
        if at > stretch.begin:
            for gone in ends[at]:
                knitting[gone] = 0
                count -= 1
        for come in begins[at]:
            knitting[come] = 1
            count += 1
            low, high = min(low, come), max(high, come)
        if count:
            low = knitting.index(1, low)
            high = knitting.rindex(1, low, high + 1)
        if count != high - low + 1:
            path.gaps[at] = tuple(p for p in range(low, high + 1) if knitting[p])
        if sides[at] == "R":
            firsts.append(low)
            lasts.append(high)
        else:
            firsts.append(high)
            lasts.append(low)
        stitches.append(count)


def _strands(path: YarnPath, blocks: list[int], judged: Replay) -> None:
    """What lies between the last stitch of a yarn and its next one, where it was not cut."""
    first, last, crossed = path.first, path.last, path.crossed
    hanging: dict[str, int] = {}
    before = -1
    for at, block in enumerate(blocks):
        yarn = path.stretches[block].yarn
        if block == before:
            if at not in path.anew:
                crossed[at] += abs(first[at] - last[at - 1])
        else:
            if at not in path.anew and yarn in hanging:
                over, climb = _between(path, judged, blocks, hanging[yarn], at)
                crossed[at] += over
                if climb:
                    path.climbed[at] = climb
            before = block
        hanging[yarn] = at


def between(path: YarnPath, judged: Replay, number: int) -> tuple[int, int]:
    """Needles and rows from where stretch `number` ends to where the next one begins, whatever yarns they are."""
    blocks = {stretch.end - 1: i for i, stretch in enumerate(path.stretches)} | {s.begin: i for i, s in enumerate(path.stretches)}
    return _between(path, judged, blocks, path.stretches[number].end - 1, path.stretches[number + 1].begin)


def _between(path: YarnPath, judged: Replay, blocks: Mapping[int, int] | Sequence[int], one: int, other: int) -> tuple[int, int]:
    """Needles and rows between the end of one pass and the beginning of a later one."""
    ends, begins = path.last[one], path.first[other]
    climb = _rows(path, judged, blocks[other], other, begins, 0) - _rows(path, judged, blocks[one], one, ends, 1)
    return abs(begins - ends), abs(climb)


def _rows(path: YarnPath, judged: Replay, block: int, at: int, where: int, more: int) -> int:
    """Rows of the picture on a needle before a pass, or after it with `more` = 1."""
    if path.stretches[block].outside:
        above = at > 0 and any(not s.outside for s in path.stretches[:block])
        column = judged.piece.columns[where]
        return column[-1].level + column[-1].rows if above and column else 0
    for run in judged.piece.columns[where]:
        if run.first_pass - 1 <= at < run.last_pass:
            return run.level + at - (run.first_pass - 1) + more
    return 0
