"""Cues: what the machine page shows at one time; on screen a cue is called a step.

    for cue in cues(plan):
        cue.where, cue.before, cue.knit, cue.check, cue.next

One cue is the needles to move now and the passes until needles move again. Cues cover the steps of the plan
without gap or overlap, in order.
"""

from __future__ import annotations

from collections.abc import Container
from dataclasses import asdict, dataclass, replace
from typing import Literal

from wedgework.bed import Side, at_place
from wedgework.formats.plan import Cut, Hold, Plan, Rest, Set, Work
from wedgework.say import say, say_n
from wedgework.words.changes import change_list
from wedgework.words.checks import check_change, check_of
from wedgework.words.grouping import group
from wedgework.words.loops import announced
from wedgework.words.moves import Now, moves_now
from wedgework.words.passages import Handful, Passage, passages
from wedgework.words.phrases import Speaker, runs
from wedgework.words.positions import positions
from wedgework.words.starts import end_list, start_list
from wedgework.words.titles import short_title, title
from wedgework.words.walk import Bed, step_over

__all__ = ["BedView", "Cue", "Row", "cue_value", "cues"]

Kind = Literal["start", "base", "hem", "block-change", "knit", "end"]
Ranges = tuple[tuple[int, int], ...]

WEIGHT_ROWS = 8
"""Weights are moved up every 8 to 10 rows (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class BedView:
    """The bed when the moves of a cue are made and its rows are not yet knitted; first and last needle of each run."""

    first: int
    last: int
    knitting: Ranges
    """They knitted before and knit again."""
    held: Ranges
    """They wait in HP, and waited there before."""
    returning: Ranges
    """Returned now, to UWP."""
    holding: Ranges
    """Going to HP now."""
    carriage: Side
    beside: int | None
    """The needle that the carriage stands just clear of; None where it stands beyond the whole piece."""
    yarn: str
    """Yarn id in the feeder; empty when there is none."""


@dataclass(frozen=True, slots=True)
class Row:
    """One pass of a cue that has several, for those who tick off every pass. The moves of the cue are made."""

    where: str
    """Before it: "COL. RC 001."."""
    knit: str
    carriage: Side
    """Where it stands before the pass."""
    beside: int | None
    """As in `BedView`."""


@dataclass(frozen=True, slots=True)
class Cue:
    index: int
    kind: Kind
    block: str
    """Block id; empty at the end of the piece."""
    block_name: str
    """Its title, as in "Block 3 of 5: Chalk"."""
    yarn: str
    """Yarn id of the block."""
    where: str
    before: tuple[str, ...]
    now: tuple[Now, ...]
    """The same in parts, so that the needle numbers can stand large; empty for a check list."""
    knit: str
    """Empty where no row is knitted."""
    check: str
    next: str
    rows: int
    passes: tuple[Row, ...]
    """The rows one by one; empty where there is only one, or none."""
    to: Side | None
    """Where the first row goes."""
    counter_before: int
    counter_after: int
    row_before: int
    """Rows of the piece that are done."""
    row_after: int
    run: str
    """7th of 20 times; empty outside a run."""
    nth: int
    """The 7 of it; 0 outside a run."""
    bed: BedView
    carriage_after: Side
    yarn_at: Literal["feeder", "mast", "none"]
    """Where the block's yarn is when the moves are made."""
    good_to_stop: bool
    first_step: int
    last_step: int
    """Steps of the plan that this cue covers, both counted; `last_step` = `first_step` - 1 where it covers none."""


def cue_value(cue: Cue) -> dict[str, object]:
    """The cue as plain data for the page: only text, whole numbers, lists and objects."""
    return {key: _plain(value) for key, value in asdict(cue).items()}


def _plain(value: object) -> object:
    if isinstance(value, tuple | list):
        return [_plain(item) for item in value]
    if isinstance(value, dict):
        return {key: _plain(item) for key, item in value.items()}
    return value


def cues(plan: Plan, blocks: Container[str] | None = None) -> tuple[Cue, ...]:
    """Every cue of the piece, from cast-on to the last needle off; or of some blocks alone, counted from the first of these."""
    speaker = Speaker.of(plan)
    made: list[tuple[str, Cue | None]] = []  # how the cue before it announces it
    for passage in passages(plan):
        if blocks is None or (passage.block is not None and passage.block.id in blocks):
            made.append((_announced(plan, passage), _opening(plan, passage, speaker, first=not made)))
            made += _rows(plan, passage, speaker)
        else:
            made.append((_announced(plan, passage), None))
    after = [announced for announced, _ in made[1:]] + [say("words.next-finish")]
    asked = [(cue, what) for (_, cue), what in zip(made, after, strict=True) if cue is not None]
    return tuple(replace(cue, index=index, next=say("words.next", what=what)) for index, (cue, what) in enumerate(asked))


def _announced(plan: Plan, passage: Passage) -> str:
    return say("words.next-off") if passage.block is None else say("words.next-change", block=short_title(plan, passage))


def _opening(plan: Plan, passage: Passage, speaker: Speaker, *, first: bool) -> Cue:
    """Cast-on, the check list of a change, or the end."""
    opening, bed = passage.opening, passage.opening.bed
    ready = passage.handfuls[0].bed if passage.handfuls else opening.ready
    before = end_list(plan, opening, speaker) if passage.block is None else change_list(passage, speaker)
    if first:
        before = start_list(plan, speaker) + before
    kind: Kind = "start" if first else "end" if passage.block is None else "block-change"
    cue = _cue(plan, passage, speaker, opening, ready)
    return replace(
        cue,
        kind=kind,
        where=speaker.where(bed),
        before=before,
        check=check_change(passage, speaker),
        counter_before=bed.block_row,
        counter_after=ready.block_row,
        good_to_stop=not first and any(isinstance(step, Cut | Rest) for step in opening.moves),
    )


def _rows(plan: Plan, passage: Passage, speaker: Speaker) -> list[tuple[str, Cue]]:
    """The cues of a block's rows."""
    made: list[tuple[str, Cue]] = []
    since = 0  # rows since the weights were moved
    leaves = passage.leaves
    for handful, leaf, place in zip(passage.handfuls, leaves, positions(group(leaves)), strict=True):
        now = moves_now(handful, speaker)
        if since >= WEIGHT_ROWS:
            now += (Now.other(say("words.weights-up")),)
            since = 0
        since += len(handful.passes)
        cue = _cue(plan, passage, speaker, handful, handful.ready)
        phrases = [*announced(leaf, handful.bed, speaker), say_n("words.knit-rows", len(handful.passes))]
        made.append(
            (
                ", ".join(phrases),
                replace(
                    cue,
                    before=tuple(str(one) for one in now),
                    now=now,
                    knit=speaker.knit(len(handful.passes), handful.passes[0].to),
                    passes=_passes(handful, speaker),
                    check=check_of(handful, speaker),
                    run="" if place is None else str(place),
                    nth=0 if place is None else place.nth,
                ),
            )
        )
    return made


def _cue(plan: Plan, passage: Passage, speaker: Speaker, handful: Handful, ready: Bed) -> Cue:
    """What all cues have in common: counters, yarn, bed."""
    bed, done = handful.bed, handful.done
    block = passage.block
    yarn = block.yarn if block else ""
    edge = block is not None and not passage.number
    return Cue(
        index=0,
        kind=("hem" if block and block.id.startswith("hem") else "base") if edge else "knit",
        block=block.id if block else "",
        block_name=title(plan, passage),
        yarn=yarn,
        where=speaker.where(bed),
        before=(),
        now=(),
        knit="",
        check="",
        next="",
        rows=len(handful.passes),
        passes=(),
        to=handful.passes[0].to if handful.passes else None,
        counter_before=bed.block_row,
        counter_after=done.block_row,
        row_before=bed.row,
        row_after=done.row,
        run="",
        nth=0,
        bed=_view(handful, ready),
        carriage_after=done.carriage,
        yarn_at="feeder" if yarn and ready.yarn == yarn else "mast" if yarn in ready.resting else "none",
        good_to_stop=False,
        first_step=handful.first,
        last_step=handful.last,
    )


def _passes(handful: Handful, speaker: Speaker) -> tuple[Row, ...]:
    found: list[Row] = []
    bed = handful.ready
    if len(handful.passes) > 1:
        for step in handful.passes:
            found.append(Row(speaker.where(bed), speaker.knit(1, step.to), bed.carriage, _beside(bed)))
            bed = step_over(bed, step)
    return tuple(found)


def _view(handful: Handful, ready: Bed) -> BedView:
    working = set(ready.working)
    returned = working - set(handful.bed.working)
    if not all(isinstance(step, Hold | Work | Set) for step in handful.moves):
        # Every needle went forward in between, so that those that knitted before are returned as well.
        returned |= {n for step in handful.moves if isinstance(step, Work) for n in step.needles}
    held_now = set(handful.bed.working) - working
    return BedView(
        first=ready.needles[0],
        last=ready.needles[-1],
        knitting=runs(working - returned),
        held=runs(set(ready.needles) - working - held_now),
        returning=runs(working & returned),
        holding=runs(held_now),
        carriage=ready.carriage,
        beside=_beside(ready),
        yarn=ready.yarn,
    )


def _beside(bed: Bed) -> int | None:
    """The needle just inside of where the carriage stands."""
    needle = at_place(bed.beside - 1 if bed.carriage == "R" else bed.beside)
    return None if needle == (bed.needles[-1] if bed.carriage == "R" else bed.needles[0]) else needle
