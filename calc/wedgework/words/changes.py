"""The change from block to block as a check list: what a knitter ticks off before the first row of a block."""

from __future__ import annotations

from wedgework.bed import Side, name
from wedgework.formats.plan import Cut, Free, Hold, Knit, Rest, Set, Step, Thread, Weigh, Work
from wedgework.say import say
from wedgework.words.passages import Passage
from wedgework.words.phrases import Speaker, needle_list, sentence
from wedgework.words.walk import Bed, edge_line, step_over

__all__ = ["change_list"]

POINT_NEEDLES = 4
"""A block that begins on so few needles gets one light weight or a clip instead of weights at both ends."""


def change_list(passage: Passage, speaker: Speaker) -> tuple[str, ...]:
    """Sentences in the order of the steps, with what no step says: where to stop, the slide, the counter, the weights."""
    steps = passage.opening.moves
    bed = passage.opening.bed
    first_row = passage.handfuls[0].passes[0] if passage.handfuls else None
    target = _clear_needle(passage, first_row)
    slide_due = target is not None and not any(isinstance(step, Free) for step in steps)
    counter_due = first_row is not None
    stop_due = any(isinstance(step, Cut | Rest) for step in steps)
    holding = speaker.position("holding")
    said: list[str] = []

    def counter() -> None:
        nonlocal counter_due
        if counter_due:
            said.append(say("words.change-counter", counter=speaker.counter(0)))
            counter_due = False

    if all(isinstance(step, Hold | Work | Set) for step in steps):
        # Nothing happens between: a needle that would go forward and come back again is left alone.
        steps = _net(bed, steps)
    for at, step in enumerate(steps):
        rest = steps[at:]
        if stop_due and not bed.yarn and not bed.working:
            said.append(say("words.change-stop"))
            stop_due = False
        if isinstance(step, Thread | Work) and slide_due and target is not None and not bed.yarn and not bed.working:
            said += _slide(bed, target, speaker)
            slide_due = False
        if isinstance(step, Work) and not any(isinstance(later, Free) for later in rest):
            if slide_due and target is not None:
                said += _move_clear(step_over(bed, step), target)
                slide_due = False
            counter()
        if isinstance(step, Hold) and bed.lever == "hold" and not step_over(bed, step).working:
            said.append(sentence(speaker.step(step, bed)))
            said.append(say("words.change-all-forward", position=holding))
        elif isinstance(step, Free):
            said.append(say("words.change-free-warning", position=holding))
            said.append(sentence(speaker.step(step, bed, target)))
        elif not (isinstance(step, Set) and step.tension is None and step.hold_lever == bed.lever):
            said.append(sentence(speaker.step(step, bed)))
        bed = step_over(bed, step)
    if slide_due and target is not None and passage.number:
        said += _move_clear(bed, target)
    counter()
    if first_row is not None and not any(isinstance(step, Weigh) for step in steps) and passage.number and _moved(passage):
        said.append(_weights(bed))
    return tuple(said)


def _moved(passage: Passage) -> bool:
    """Whether other needles will knit than before: then the weights move."""
    return passage.handfuls[0].bed.working != passage.opening.bed.working


def _net(bed: Bed, steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """The same with each needle moved at most once: holds first, then the lever, then returns."""
    after = bed
    for step in steps:
        after = step_over(after, step)
    held = tuple(n for n in bed.needles if n in after.held - bed.held)
    returned = tuple(n for n in bed.needles if n in bed.held - after.held)
    settings = tuple(step for step in steps if isinstance(step, Set))
    to_hold = tuple(step for step in settings if step.hold_lever == "hold")
    others = tuple(step for step in settings if step.hold_lever != "hold")
    return (*to_hold, *((Hold(held),) if held else ()), *((Work(returned),) if returned else ()), *others)


def _clear_needle(passage: Passage, first_row: Knit | None) -> int | None:
    """The needle that the carriage has to be clear of before the first row: the end needle at the side it starts from."""
    if first_row is None:
        return None
    working = passage.handfuls[0].bed.working
    if not working:
        return None
    return working[-1] if first_row.to == "L" else working[0]


def _line(needle: int, side: Side) -> int:
    return edge_line((needle,), side)


def _slide(bed: Bed, target: int, speaker: Speaker) -> list[str]:
    """Across held needles with nothing threaded, wherever the carriage does not stand beside the block already."""
    if bed.beside == _line(target, bed.carriage):
        return []
    return [say("words.change-slide", needle=name(target), position=speaker.position("holding"))]


def _move_clear(bed: Bed, target: int) -> list[str]:
    """With yarn in the feeder the carriage only has to be beyond the needle, not close to it."""
    line = _line(target, bed.carriage)
    clear = bed.beside >= line if bed.carriage == "R" else bed.beside <= line
    return [] if clear else [say("words.change-clear", needle=name(target))]


def _weights(bed: Bed) -> str:
    working = bed.working
    if len(working) <= POINT_NEEDLES:
        return say("words.change-weight-point", needles=needle_list(working))
    return say("words.change-weights", needles=needle_list((working[0], working[-1])))
