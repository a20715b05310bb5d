"""Cast-on at the beginning, and what is done when the last row is knitted."""

from __future__ import annotations

from itertools import takewhile

from wedgework.bed import across, name, range_name
from wedgework.formats.plan import BindOff, Knit, Plan, Waste
from wedgework.formats.state import State
from wedgework.say import say, say_n
from wedgework.words.passages import Handful
from wedgework.words.phrases import Speaker, cast_on_yarn, runs, sentence
from wedgework.words.walk import step_over

__all__ = ["end_list", "start_list"]


def start_list(plan: Plan, speaker: Speaker) -> tuple[str, ...]:
    """From a bare bed to the state that the plan starts from; or how a bed stands on which the rest is knitted."""
    if plan.state is not None:
        return _carried_on(plan.state, speaker)
    first, last = plan.start.working
    needles = across(first, last)
    said = [say("words.start-carriage")]
    said.append(
        say(
            "words.start-needles",
            needles=say("words.to", first=name(first), last=name(last)),
            position=speaker.position("working"),
            count=say_n("common.needles", len(needles)),
        )
    )
    said.append(
        say(
            f"words.start-cast-on-{_cast_on(plan)}",
            stitches=say_n("common.stitches", len(needles)),
            yarn=speaker.yarn(cast_on_yarn(plan)),
            side=speaker.standing(plan.start.carriage),
        )
    )
    said.append(say("words.start-weights"))
    return tuple(said)


def _carried_on(state: State, speaker: Speaker) -> tuple[str, ...]:
    said = [say("words.carry-on")]
    if state.held:
        needles = ", ".join(range_name(first, last) for first, last in runs(state.held))
        said.append(say("words.carry-on-held", needles=needles, position=speaker.position("holding")))
    said += [say("words.carry-on-cut", yarn=speaker.yarn(hanging.yarn), needle=name(hanging.needle)) for hanging in state.mast]
    if state.feeder is not None:
        said.append(say("words.carry-on-feeder", yarn=speaker.yarn(state.feeder.yarn), needle=name(state.feeder.needle)))
    else:
        said.append(say("words.carry-on-empty"))
    said.append(say("words.carry-on-carriage", where=speaker.standing(state.carriage)))
    return tuple(said)


def _cast_on(plan: Plan) -> str:
    """Closed; on waste yarn whose rows are steps; or on waste yarn of which the plan says no more."""
    steps = takewhile(lambda step: not isinstance(step, Knit), plan.steps)
    told = plan.edges.cast_on == "waste" and any(isinstance(step, Waste) for step in steps)
    return "open" if told else plan.edges.cast_on


def end_list(plan: Plan, opening: Handful, speaker: Speaker) -> tuple[str, ...]:
    """The steps after the last row (`opening` of the last passage), and binding off where no step says it."""
    said = [say("words.end-weights")]
    bed = opening.bed
    for step in opening.moves:
        said.append(sentence(speaker.step(step, bed)))
        bed = step_over(bed, step)
    off = any(isinstance(step, BindOff) for step in plan.steps[opening.first :])
    if not off:
        said.append(say("words.end-bind-off", stitches=say_n("common.stitches", len(bed.needles))))
    return tuple(said)
