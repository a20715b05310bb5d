"""The hands and the eye at the model bed: carry out one step after the other, note whatever is not allowed."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from itertools import pairwise
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
    Waste,
    Work,
    Wrap,
)
from wedgework.formats.state import Hanging as Yarn
from wedgework.formats.state import State
from wedgework.problems import Problem
from wedgework.replay.hems import HemWork
from wedgework.replay.model_bed import Hanging, ModelBed
from wedgework.replay.result import Run
from wedgework.say import say, say_n
from wedgework.units import short_decimal

__all__ = ["Hands"]

CLIMB = 8
"""Rows that a strand may climb along the knitting before it must be cut. Common practice, no source."""

MOST_LOOPS = 2
"""Loops that one needle can knit together."""


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
        on_waste = plan.edges.cast_on == "waste" and plan.state is None
        self.hems = HemWork({yarn.id: yarn.tension for yarn in plan.design.yarns}, on_waste)
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
        self._emptied: set[int] = set()  # their loops were moved away by hand, and they have not knitted since
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
            Waste: self._waste,
        }

    def begin_with(self, state: State, earlier: Sequence[Sequence[Run]]) -> None:
        """The state of a bed in the middle of a piece; yarns that rest on the mast are cut before."""
        held = self._places(state.held)
        self.bed.begin_with(state.rows, held, earlier)
        if state.feeder is not None:
            self._threaded = state.feeder.yarn
            hangs = self._place(state.feeder.needle)
            if hangs is not None:
                self._hanging = Hanging(hangs, state.rows[hangs], state.carriage)

    def carry_out(self, steps: Iterable[Step]) -> None:
        """One step after the other."""
        for self.index, step in enumerate(steps):
            action = self._do.get(type(step))
            if action is not None:  # weights and reminders change nothing that is counted
                action(step)

    def state(self) -> State:
        """The bed as it is now."""
        bed = self.bed

        def hanging(yarn: str, hangs: Hanging | None) -> Yarn:
            edge = 0 if bed.carriage == "L" else bed.needles - 1
            return Yarn(yarn, self.names[hangs.place if hangs else edge])

        return State(
            self.names[0],
            tuple(bed.rows(p) for p in range(bed.needles)),
            tuple(self.names[p] for p in range(bed.needles) if bed.held[p]),
            bed.carriage,
            hanging(self._threaded, self._hanging) if self._threaded is not None else None,
            tuple(hanging(yarn, hangs) for yarn, hangs in self._resting.items()),
        )

    def run(self, steps: Iterable[Step]) -> None:
        """All steps, then what has to be true at the end."""
        self.carry_out(steps)
        self.bed.finish()
        hanging = [*self._resting, *([self._threaded] if self._threaded is not None else [])]
        for yarn in hanging:
            self._fault("yarn-left", yarn=yarn)
        left = [self.names[p] for p in range(self.bed.needles) if self.bed.loops[p]]
        if left:
            self.warnings.append(
                Problem("steps", "steps.left-on", say("replay.left-on", needles=len(left)), say("replay.left-on.way-out"))
            )
        if self.hems.open:
            said = say_n("replay.open-on-waste", len(self.hems.open))
            self.warnings.append(Problem("steps", "steps.open-on-waste", said, say("replay.open-on-waste.way-out")))

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
        if step.tension is not None:
            at = next((block.id for block in self.blocks.values() if block.first_step <= self.index <= block.last_step), "")
            self.hems.dial(step.tension, at)

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
        if self._emptied:
            self._check_emptied()
        if not bed.passes:
            self.hems.begin(p for p in range(bed.needles) if not bed.held[p])
        if self.hems.turned or not bed.in_picture:
            dial = self.hems.row(bed.above, step.block, bed.yarn, bed.all_working())
            if dial is not None:
                self._fault("tension-left", found=short_decimal(dial[0], 2), wanted=short_decimal(dial[1], 2))
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

    def _check_emptied(self) -> None:
        """Over two needles emptied side by side the yarn only lies across: it makes no two stitches."""
        knitting = sorted(p for p in self._emptied if not self.bed.held[p])
        for p, beside in pairwise(knitting):
            if beside == p + 1:
                self._fault("empty-together", first=name(self.names[p]), second=name(self.names[beside]))
        self._emptied.difference_update(knitting)

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
        if abs(a - b) != 1:
            self._fault("not-neighbours", first=name(step.from_needle), second=name(step.to_needle))
        if not self.bed.loops[a]:
            self._fault("no-loop", needle=name(step.from_needle))
            return
        loops = self.bed.loops[b] + self.bed.loops[a]
        if loops > MOST_LOOPS:
            self._fault("too-many-loops", needle=name(step.to_needle), loops=loops)
        self.bed.set_loops(b, loops)
        self.bed.set_loops(a, 0)
        self._emptied.add(a)
        self._emptied.discard(b)
        if not self.bed.in_picture:
            self.hems.ends[self.bed.above].emptied.add(a)

    def _hang(self, step: Hang) -> None:
        if not self.bed.passes:
            self._fault("nothing-to-hang")
        for p in self._places(step.needles):
            needle = name(self.names[p])
            if not self.bed.loops[p]:
                self._fault("no-loop", needle=needle)
            elif self.bed.loops[p] == MOST_LOOPS:
                self._fault("too-many-loops", needle=needle, loops=MOST_LOOPS + 1)
            self.bed.set_loops(p, min(self.bed.loops[p] + 1, MOST_LOOPS))
            if not self.bed.in_picture:
                end = self.hems.ends[self.bed.above]
                if p in end.hung:
                    self._fault("hung-already", needle=needle)
                end.hung.add(p)
                if end is self.hems.ends[0]:
                    self.hems.open.discard(p)

    def _waste(self, _: Waste) -> None:
        """Rows over every needle; neither counted nor seen in the end."""
        held = [p for p in range(self.bed.needles) if self.bed.held[p]]
        if self.bed.lever_on_hold and held:
            self._fault("waste-held", needle=name(self.names[held[0]]))
        empty = [p for p in range(self.bed.needles) if not self.bed.loops[p]]
        if empty:
            self._fault("no-loop", needle=name(self.names[empty[0]]))

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
