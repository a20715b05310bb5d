"""Blocks, base rows and yarn changes as the steps of a plan, in the order in which hands carry them out."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction

from wedgework.bed import Side, at_place, opposite, place
from wedgework.formats.plan import BindOff, Block, Cut, Free, Hold, Knit, Rest, Set, Step, Thread, Work, Wrap
from wedgework.plan.edges import Style
from wedgework.plan.feed import Change
from wedgework.plan.fit import Fitted

__all__ = ["Recorder", "hand_wraps"]


class Recorder:
    """Writes steps down and keeps the bed in mind: which needles work, where the carriage stands, the rows so far."""

    def __init__(
        self,
        first_needle: int,
        needles: int,
        carriage: Side,
        tensions: Mapping[str, Fraction] | None = None,
        held: Iterable[int] = (),
    ) -> None:
        self._origin = place(first_needle)
        self.needles = needles
        self.carriage: Side = carriage
        self.working: set[int] = set(range(needles)).difference(held)
        self.steps: list[Step] = []
        self.blocks: list[Block] = []
        self.rows = 0
        self.free_passes = 0
        self._tensions = tensions or {}
        self._tension: Fraction | None = None
        self._names = [at_place(self._origin + p) for p in range(needles)]

    @property
    def names(self) -> tuple[int, ...]:
        """Every needle of the piece, left to right."""
        return tuple(self._names)

    def _named(self, places: Iterable[int]) -> tuple[int, ...]:
        return tuple(self._names[p] for p in sorted(places))

    def _hold(self, places: Iterable[int]) -> None:
        moving = self.working.intersection(places)
        if moving:
            self.working -= moving
            self.steps.append(Hold(self._named(moving)))

    def _work(self, places: Iterable[int]) -> None:
        moving = set(places) - self.working
        if moving:
            self.working |= moving
            self.steps.append(Work(self._named(moving)))

    def _knit(self, to: Side, block: str, block_row: int) -> None:
        self.rows += 1
        self.carriage = to
        self.steps.append(Knit(to, self.rows, block, block_row))

    def setting(self, lever_on_hold: bool) -> None:
        """The carriage's lever."""
        self.steps.append(Set("hold" if lever_on_hold else "knit"))

    def _change(self, change: Change, yarn: str, start: Side, first: int) -> None:
        """Yarn away, carriage to its side, yarn in."""
        if change.away != "nothing":
            self.steps.append(Cut() if change.away == "cut" else Rest())
        if start != self.carriage:
            self._hold(set(self.working))
            self.steps.append(Free(start))
            self.carriage = start
            self.free_passes += 1
        if change.thread:
            outside = first - 1 if start == "L" else first + 1
            inside_start = change.anew and 0 <= outside < self.needles
            self.steps.append(Thread(yarn, self._names[outside] if inside_start else None))
            tension = self._tensions.get(yarn)
            if tension is not None and tension != self._tension:
                self.steps.append(Set(tension=tension))
                self._tension = tension

    def block(self, fitted: Fitted, change: Change, block_id: str, name: str, yarn: str, style: Style) -> None:
        """A block of short rows."""
        first_step = len(self.steps)
        if not self.blocks or self.blocks[-1].id.startswith("base"):
            self.setting(lever_on_hold=True)
        a, b = fitted.knitting(fitted.first_row)
        begins = set(range(a, b + 1))
        keeps = change.away == "nothing" and not change.thread
        # With the yarn out of the feeder every needle goes forward: nothing can be caught while hands are busy.
        self._hold(self.working - begins if keeps else set(self.working))
        self._change(change, yarn, fitted.start, a if fitted.start == "L" else b)
        self._work(begins)
        joins, leaves = _by_row(fitted.joins, fitted.low), _by_row(fitted.leaves, fitted.low)
        wraps = dict(hand_wraps(fitted, style))
        to = opposite(fitted.start)
        for row in range(fitted.first_row, fitted.end_row):
            if row > fitted.first_row:
                self._hold(leaves.get(row, ()))
                self._work(joins.get(row, ()))
            self._knit(to, block_id, row - fitted.first_row + 1)
            if row in wraps:
                self.steps.append(Wrap(self._names[wraps[row]]))
            to = opposite(to)
        self._hold(set(self.working))
        self._close(block_id, yarn, name, first_step)

    def base(self, rows: int, change: Change, block_id: str, name: str, yarn: str, start: Side) -> None:
        """Rows over every needle, the first one from side `start`."""
        first_step = len(self.steps)
        self._change(change, yarn, start, 0 if start == "L" else self.needles - 1)
        self._work(range(self.needles))
        self.setting(lever_on_hold=False)
        for row in range(rows):
            self._knit(opposite(self.carriage), block_id, row + 1)
        self._close(block_id, yarn, name, first_step)

    def strip(
        self, change: Change, block_id: str, name: str, yarn: str, parts: Sequence[Step | int], first: Sequence[Step] = ()
    ) -> None:
        """Part of a hem: `first`, the change of yarn, then steps and, as numbers, rows over every needle."""
        first_step = len(self.steps)
        self.steps += first
        self._change(change, yarn, self.carriage, 0 if self.carriage == "L" else self.needles - 1)
        done = 0
        for part in parts:
            if isinstance(part, int):
                for _ in range(part):
                    done += 1
                    self._knit(opposite(self.carriage), block_id, done)
            elif isinstance(part, Set) and part.tension is not None:
                self._dial(part.tension)
            else:
                self.steps.append(part)
        self._close(block_id, yarn, name, first_step)

    def _dial(self, tension: Fraction) -> None:
        """Sets the tension, unless it stands there; of two settings without a row between them only the later one counts."""
        before = self.steps[-1] if self.steps else None
        if isinstance(before, Set) and before.hold_lever is None and tension != self._tension:
            self.steps.pop()
        if tension != self._tension:
            self.steps.append(Set(tension=tension))
            self._tension = tension

    def finish(self) -> None:
        """Bind off and cut; these steps belong to the last block."""
        self._work(range(self.needles))
        self.steps.append(BindOff(tuple(self._names)))
        self.steps.append(Cut())
        last = self.blocks.pop()
        self._close(last.id, last.yarn, last.name, last.first_step)

    def _close(self, block_id: str, yarn: str, name: str, first_step: int) -> None:
        self.blocks.append(Block(block_id, yarn, name, first_step, len(self.steps) - 1))


def _by_row(rows: Sequence[int], low: int) -> dict[int, list[int]]:
    found: dict[int, list[int]] = {}
    for i, row in enumerate(rows):
        found.setdefault(row, []).append(low + i)
    return found


def hand_wraps(fitted: Fitted, style: Style) -> list[tuple[int, int]]:
    """After which row (first of each pair) the yarn goes by hand round which held place, where the style asks for it."""
    if not style.by_hand:
        return []
    return [(row, place) for row, place in away_groups(fitted) if row + 1 < fitted.end_row]


def away_groups(fitted: Fitted) -> list[tuple[int, int]]:
    """Rows before which needles were held away from the carriage, with the innermost of them: where the turn will be."""
    found: dict[tuple[int, int], int] = {}
    lows = range(len(fitted.leaves))
    top = fitted.knitting(fitted.end_row - 1)
    for i in lows:
        row = fitted.leaves[i]
        if row >= fitted.end_row:
            continue
        left = fitted.low + i < top[0]
        toward_left = ((row - fitted.first_row) % 2 == 0) == (fitted.start == "R")
        if left == toward_left:
            key = (row, 0 if left else 1)
            found[key] = max(found.get(key, i), i) if left else min(found.get(key, i), i)
    return sorted((row, fitted.low + i) for (row, _), i in found.items())
