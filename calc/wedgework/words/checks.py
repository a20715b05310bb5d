"""What should be seen after the rows of a cue, so that a mistake is found before the next one."""

from __future__ import annotations

from wedgework.bed import name, place
from wedgework.formats.plan import Hang, Hold, Transfer, Work, Wrap
from wedgework.say import say, say_n
from wedgework.words.passages import Handful, Passage
from wedgework.words.phrases import Speaker, needle_list
from wedgework.words.walk import by_end, step_over

__all__ = ["check_change", "check_of"]


def check_of(handful: Handful, speaker: Speaker) -> str:
    """The one thing worth looking at: the wrap of a held needle, the needles that joined, else side and counter."""
    said: list[str] = []
    bed = handful.bed
    for step in handful.moves:
        if isinstance(step, Wrap):
            said.append(say("words.check-hand", needle=name(step.needle)))
        elif isinstance(step, Hold):
            for side, needles in by_end(bed, step):
                here = side == bed.carriage
                said.append(_wrap(needles, side == "L") if here else _named("words.check-left", needles))
        elif isinstance(step, Work):
            said.append(_named("words.check-joined", step.needles))
        elif isinstance(step, Hang):
            said.append(_named("words.check-layers", step.needles))
        bed = step_over(bed, step)
    return " ".join(said) if said else speaker.where(handful.done)


def _named(key: str, needles: tuple[int, ...]) -> str:
    return say_n(key, len(needles), needles=needle_list(needles))


def _wrap(needles: tuple[int, ...], left: bool) -> str:
    inner = max(needles, key=place) if left else min(needles, key=place)
    over = [n for n in needles if n != inner]
    if not over:
        return say("words.check-wrap-one", needle=name(inner))
    return say("words.check-wrap-several", needle=name(inner), over=needle_list(over))


def check_change(passage: Passage, speaker: Speaker) -> str:
    """After a check list: which needles will knit."""
    if not passage.handfuls:
        return ""
    bed = passage.handfuls[0].bed
    steps = passage.opening.moves
    hung = next((step for step in steps if isinstance(step, Hang)), None)
    if hung is not None:
        return _named("words.check-hung", hung.needles)
    empty = [step.from_needle for step in steps if isinstance(step, Transfer)]
    if empty:
        return say_n("words.check-empty", len(empty), position=speaker.position("working"))
    if len(bed.working) == len(bed.needles):
        return say("words.check-all-work", needles=needle_list(bed.needles))
    return say("words.check-list-done", needles=needle_list(bed.working), position=speaker.position("holding"))
