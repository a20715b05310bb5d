"""Which yarns rest uncut on the mast in the course of a plan, and where each hangs on the piece."""

from __future__ import annotations

from collections.abc import Sequence

from wedgework.formats.plan import Knit, Plan, Rest, Step, Thread
from wedgework.words.passages import passages
from wedgework.words.walk import Bed, step_over

__all__ = ["resting_values"]


def resting_values(plan: Plan, yarns: Sequence[str]) -> list[list[int]]:
    """For the page at the machine, in the order of the work: [cue, yarn's place in `yarns`, needle].

    When the cue is done, that yarn rests beside that needle, the last one that it knitted; needle 0: it rests no more.
    """
    at = {yarn: n for n, yarn in enumerate(yarns)}
    state = plan.state
    hangs = {state.feeder.yarn: state.feeder.needle} if state and state.feeder else {}
    found: list[list[int]] = []
    cue = 0
    for passage in passages(plan):
        for handful in (passage.opening, *passage.handfuls):
            bed = handful.bed
            for step in (*handful.moves, *handful.passes):
                if isinstance(step, Rest):
                    found.append([cue, at[bed.yarn], hangs.get(bed.yarn, 0)])
                elif isinstance(step, Thread) and step.yarn in bed.resting:
                    found.append([cue, at[step.yarn], 0])
                after = step_over(bed, step)
                _hang(hangs, bed, step, after)
                bed = after
            cue += 1
    return found


def _hang(hangs: dict[str, int], bed: Bed, step: Step, after: Bed) -> None:
    """A row leaves its yarn beside the last needle that it knitted."""
    if isinstance(step, Knit):
        working = bed.working
        if working:
            hangs[bed.yarn] = working[-1] if after.carriage == "R" else working[0]
