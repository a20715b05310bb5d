"""The hands and the eye at the model bed: carry out one step after the other, note whatever is not allowed."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

from wedgework.bed import across, float_limit, name, place
from wedgework.formats.plan import (
    BindOff,
    Block,
    CastOn,
    Cut,
    Free,
    Hang,
    Hold,
    Join,
    Knit,
    Plan,
    Rest,
    Set,
    Step,
    Thread,
    Transfer,
    Work,
    Wrap,
)
from wedgework.problems import Problem
from wedgework.replay.model_bed import Hanging, ModelBed
from wedgework.say import say

__all__ = ["Hands"]

CLIMB = 8
"""Rows that a strand may climb along the knitting before it must be cut. Common practice, no source."""


class Hands:
    """Carries out the steps of one plan; `problems` grows as it goes. `index` is the step in hand."""

    def __init__(self, plan: Plan) -> None:
        first, last = plan.first_needle, plan.last_needle
        self.names = across(first, last)
        self.bed = ModelBed(len(self.names), plan.start.carriage)
        self.problems: list[Problem] = []
        self.warnings: list[Problem] = []
        self.limit = float_limit(plan.design.bed.pitch_mm)
        self.mast = plan.design.bed.machine.yarns_on_mast
        self.known_yarns = {yarn.id for yarn in plan.design.yarns}
        self.blocks: dict[str, Block] = {block.id: block for block in plan.blocks}
        self.ends = self.ends_inside = self.free_passes = self.inside_starts = self.floats = 0
        self.turns_unwrapped: list[tuple[str, int, int, int]] = []
        """Block, place beside the turn, pass, rows there: narrowing turns that nothing wraps."""
        self.block_rows: dict[str, int] = {}
        self.index = 0
        self._origin = place(first)
        self._threaded: str | None = None
        self._hanging: Hanging | None = None
        self._anchor: int | None = None
        self._resting: dict[str, Hanging | None] = {}
        self._before: tuple[int, int] | None = None  # extent of the pass before, in the same block
        self._away = False  # needles were held away from the carriage before that pass, at the end it travelled to
        self._wrapped = False
        self._do: dict[type, Callable[[Any], None]] = {
            Hold: self._hold,
            Work: self._work,
            Knit: self._knit,
            Free: self._free,
            Thread: self._thread,
            Cut: self._cut,
            Rest: self._rest,
            Join: self._join,
            Set: self._set,
            Wrap: self._wrap,
            Transfer: self._transfer,
            Hang: self._hang,
            CastOn: self._cast_on,
            BindOff: self._bind_off,
        }

    def run(self, steps: Iterable[Step]) -> None:
        """All steps, then what has to be true at the end."""
        for self.index, step in enumerate(steps):
            action = self._do.get(type(step))
            if action is not None:  # waste yarn, weights and reminders change nothing that is counted
                action(step)
        self.bed.finish()
        hanging = [*self._resting, *([self._threaded] if self._threaded is not None else [])]
        for yarn in hanging:
            self._fault("yarn-left", yarn=yarn)
        left = [self.names[p] for p in range(self.bed.needles) if self.bed.loops[p]]
        if left:
            self.warnings.append(
                Problem("steps", "steps.left-on", say("replay.left-on", needles=len(left)), say("replay.left-on.way-out"))
            )

    def _fault(self, code: str, **values: object) -> None:
        self.problems.append(
            Problem(f"steps[{self.index}]", f"steps.{code}", say(f"replay.{code}", **values), say(f"replay.{code}.way-out"))
        )

    def _place(self, needle: int) -> int | None:
        found = place(needle) - self._origin
        if 0 <= found < self.bed.needles:
            return found
        self._fault("not-in-use", needle=name(needle))
        return None

    def _places(self, needles: Iterable[int]) -> list[int]:
        return [p for p in map(self._place, needles) if p is not None]

    # needles

    def _hold(self, step: Hold) -> None:
        for p in self._places(step.needles):
            if self.bed.held[p]:
                self._fault("held-already", needle=name(self.names[p]))
            else:
                self.bed.hold(p)

    def _work(self, step: Work) -> None:
        for p in self._places(step.needles):
            if not self.bed.held[p]:
                self._fault("not-held", needle=name(self.names[p]))
            else:
                self.bed.work(p)

    def _set(self, step: Set) -> None:
        if step.hold_lever is not None:
            self.bed.lever_on_hold = step.hold_lever == "hold"

    # yarn

    def _thread(self, step: Thread) -> None:
        if step.yarn not in self.known_yarns:
            self._fault("unknown-yarn", yarn=step.yarn)
        if self._threaded is not None:
            self._fault("feeder-full", yarn=self._threaded)
        self._threaded = step.yarn
        if step.yarn in self._resting:
            self._hanging = self._resting.pop(step.yarn)
        else:
            self._hanging = None
            self.ends += 1
        if len(self._resting) + 1 > self.mast:
            self._fault("mast-full", yarns=len(self._resting) + 1, mast=self.mast)
        self._anchor = None
        if step.around is not None:
            self._anchor = self._place(step.around)
            self.inside_starts += 1
            self.ends_inside += 1
            if self._anchor is not None and not self.bed.held[self._anchor]:
                self._fault("anchor-not-held", needle=name(step.around))

    def _away_with_yarn(self) -> str | None:
        yarn, self._threaded = self._threaded, None
        if yarn is None:
            self._fault("nothing-threaded")
        return yarn

    def _cut(self, _: Cut) -> None:
        if self._away_with_yarn() is not None:
            self.ends += 1
            if self._hanging is not None and not self._at_selvedge(self._hanging.place):
                self.ends_inside += 1
        self._hanging = None

    def _rest(self, _: Rest) -> None:
        yarn = self._away_with_yarn()
        if yarn is not None:
            self._resting[yarn] = self._hanging
        self._hanging = None

    def _join(self, _: Join) -> None:
        # The old ball ends and the new one begins: two tails.
        self.ends += 2
        if self._hanging is not None and not self._at_selvedge(self._hanging.place):
            self.ends_inside += 2

    def _at_selvedge(self, p: int) -> bool:
        return p in (0, self.bed.needles - 1)

    # passes

    def _knit(self, step: Knit) -> None:
        bed = self.bed
        self._check_counts(step)
        if step.to == bed.carriage:
            self._fault("same-way", side=say("common.left" if step.to == "L" else "common.right"))
        if not bed.lever_on_hold and not bed.all_working():
            for p in range(bed.needles):
                if bed.held[p]:
                    bed.work(p)
        extent = bed.extent()
        if extent is None:
            self._fault("empty-pass")
            bed.knit(step.to)
            return
        low, high = extent
        if not bed.unbroken():
            self._check_gaps(low, high)
        start, end = (low, high) if step.to == "R" else (high, low)
        if self._threaded is None:
            self._fault("no-yarn")
        self._check_strand(start, step)
        if self._before is not None and bed.in_picture:
            self._check_edges(low, high, step)
        else:
            self._away = False
        self._before, self._wrapped = (low, high), False
        bed.knit(step.to)
        self._hanging = Hanging(end, bed.rows(end), step.to)
        self.block_rows[step.block] = self.block_rows.get(step.block, 0) + 1

    def _check_counts(self, step: Knit) -> None:
        bed = self.bed
        if step.row != bed.passes + 1:
            self._fault("row-count", found=step.row, wanted=bed.passes + 1)
        block = self.blocks.get(step.block)
        if block is None:
            self._fault("unknown-block", block=step.block)
        elif not block.first_step <= self.index <= block.last_step:
            self._fault("outside-block", block=step.block)
        elif self._threaded is not None and block.yarn != self._threaded:
            self._fault("wrong-yarn", block=step.block, yarn=block.yarn, found=self._threaded)
        if step.block != bed.block or self._threaded not in (None, bed.yarn):
            self._before = None
            bed.begin(step.block, self._threaded or (block.yarn if block else ""))
        wanted = self.block_rows.get(step.block, 0) + 1
        if step.block_row != wanted:
            self._fault("block-row-count", found=step.block_row, wanted=wanted)

    def _check_gaps(self, low: int, high: int) -> None:
        """Held needles between knitting ones: the yarn lies over them as a strand."""
        gap = longest = 0
        for p in range(low, high + 1):
            gap = gap + 1 if self.bed.held[p] else 0
            longest = max(longest, gap)
        self._float(longest, 0)

    def _check_strand(self, start: int, step: Knit) -> None:
        """The way of the yarn from where it hangs to the first stitch of this pass."""
        hanging = self._hanging
        if hanging is None:
            if not self._at_selvedge(start):
                beside = start - 1 if step.to == "R" else start + 1
                if self._anchor is None:
                    self.ends_inside += 1
                    self.warnings.append(
                        Problem(
                            f"steps[{self.index}]",
                            "steps.loose-tail",
                            say("replay.loose-tail", needle=name(self.names[start])),
                            say("replay.loose-tail.way-out", needle=name(self.names[beside])),
                        )
                    )
                elif self._anchor != beside:
                    self._fault("anchor-elsewhere", needle=name(self.names[self._anchor]), beside=name(self.names[beside]))
            return
        at = hanging.place
        between = range(at + 1, start) if at < start else range(start + 1, at)
        crossed = sum(self.bed.held[p] for p in between)
        inward = start > at if hanging.side == "L" else start < at
        if inward and self.bed.held[at]:
            crossed += 1
        # Within a block the height is that of the passes themselves; only between blocks can a strand have to climb.
        climb = abs(self.bed.rows(start) - hanging.rows) if self._before is None else 0
        self._float(crossed, climb)

    def _float(self, crossed: int, climb: int) -> None:
        if crossed > self.limit:
            self.floats += 1
            self._fault("float", needles=crossed, limit=self.limit)
        elif climb > CLIMB:
            self.floats += 1
            self._fault("climb", rows=climb, limit=CLIMB)

    def _check_edges(self, low: int, high: int, step: Knit) -> None:
        """The rules of the carriage: what may be held and returned at which end."""
        if self._before is None:
            return
        low_before, high_before = self._before
        if step.to == "R":  # the carriage stands left
            at_carriage, at_carriage_before, far_narrowed = low, low_before, high < high_before
            returned, beside = low < low_before, low - 1
        else:
            at_carriage, at_carriage_before, far_narrowed = high, high_before, low > low_before
            returned, beside = high > high_before, high + 1
        if returned:
            self._fault("returned-at-carriage", needle=name(self.names[at_carriage]))
        if self._away and at_carriage == at_carriage_before and not self._wrapped and 0 <= beside < self.bed.needles:
            self.turns_unwrapped.append((step.block, beside, self.bed.passes, self.bed.rows(at_carriage)))
        self._away = far_narrowed

    def _free(self, step: Free) -> None:
        self.free_passes += 1
        if self._threaded is not None:
            self._fault("yarn-in-feeder", yarn=self._threaded)
        if step.to == self.bed.carriage:
            self._fault("same-way", side=say("common.left" if step.to == "L" else "common.right"))
        lost = self.bed.free(step.to)
        if lost:
            self._fault("dropped", needles=len(lost), first=name(self.names[lost[0]]), last=name(self.names[lost[-1]]))
        self._before = None

    def _wrap(self, step: Wrap) -> None:
        p = self._place(step.needle)
        if p is None:
            return
        turn = None
        if self._before is not None:
            turn = self._before[0] - 1 if self.bed.carriage == "L" else self._before[1] + 1
        if not self.bed.held[p] or p != turn:
            self._fault("wrap-elsewhere", needle=name(step.needle))
        self._wrapped = True

    # loops

    def _transfer(self, step: Transfer) -> None:
        a, b = self._place(step.from_needle), self._place(step.to_needle)
        if a is None or b is None:
            return
        if not self.bed.loops[a]:
            self._fault("no-loop", needle=name(step.from_needle))
            return
        self.bed.set_loops(b, self.bed.loops[b] + self.bed.loops[a])
        self.bed.set_loops(a, 0)

    def _hang(self, step: Hang) -> None:
        for p in self._places(step.needles):
            self.bed.set_loops(p, self.bed.loops[p] + 1)

    def _cast_on(self, step: CastOn) -> None:
        for p in self._places(step.needles):
            if self.bed.loops[p]:
                self._fault("loop-there", needle=name(self.names[p]))
            self.bed.set_loops(p, 1)

    def _bind_off(self, step: BindOff) -> None:
        for p in self._places(step.needles):
            if not self.bed.loops[p]:
                self._fault("no-loop", needle=name(self.names[p]))
            self.bed.set_loops(p, 0)
        if self._threaded is None and step.needles:
            self._fault("no-yarn")
