"""The change from block to block as a check list: what a knitter ticks off before the first row of a block."""

from __future__ import annotations

from wedgework.bed import Side, name
from wedgework.formats.plan import Cut, Free, Hold, Knit, Rest, Set, Step, Thread, Weigh, Work
from wedgework.say import say
from wedgework.words.loops import loop_sentences
from wedgework.words.passages import Passage
from wedgework.words.phrases import Speaker, needle_list, sentence
from wedgework.words.walk import Bed, edge_line, step_over

__all__ = ["change_list"]

POINT_NEEDLES = 4
"""A block that begins on so few needles gets one light weight or a clip instead of weights at both ends."""


def change_list(passage: Passage, speaker: Speaker) -> tuple[str, ...]:
    """Sentences in the order of the steps, with what no step says: where to stop, the slide, the counter, the weights."""
    opening = passage.opening
    steps = opening.moves
    if all(isinstance(step, Hold | Work | Set) for step in steps):
        # Nothing happens between: a needle that would go forward and come back again is left alone.
        steps = _net(opening.bed, steps)
    making = _Making(passage, speaker, steps, opening.bed)
    for at, step in enumerate(steps):
        making.before(step, steps[at + 1 :])
        making.say(step, loop_sentences(steps, at, making.bed, speaker))
    return making.finished()


class _Making:
    """A check list in the making: the bed as it stands, and what is still due."""

    def __init__(self, passage: Passage, speaker: Speaker, steps: tuple[Step, ...], bed: Bed) -> None:
        self.speaker, self.bed = speaker, bed
        self.said: list[str] = []
        row = passage.handfuls[0].passes[0] if passage.handfuls else None
        self.target = _clear_needle(passage, row)
        self.slide_due = self.target is not None and not any(isinstance(step, Free) for step in steps)
        self.counter_due = row is not None
        self.stop_due = any(isinstance(step, Cut | Rest) for step in steps)
        self.tension_due = not any(isinstance(step, Set) and step.tension is not None for step in steps)
        told = any(isinstance(step, Weigh) for step in steps)
        self.weights_due = passage.number > 0 and not told and _moved(passage)

    def before(self, step: Step, later: tuple[Step, ...]) -> None:
        """What has to be said before `step`; `later` are the steps after it."""
        idle = not self.bed.yarn and not self.bed.working
        if self.stop_due and idle:
            self.said.append(say("words.change-stop"))
            self.stop_due = False
        if self.slide_due and self.target is not None:
            if isinstance(step, Thread | Work) and idle:
                self.said += _slide(self.bed, self.target, self.speaker)
                self.slide_due = False
            elif isinstance(step, Work):
                self.said += _move_clear(step_over(self.bed, step), self.target)
                self.slide_due = False
        if isinstance(step, Work) and not any(isinstance(other, Free) for other in later):
            self.counter()

    def say(self, step: Step, loops: tuple[str, ...] | None) -> None:
        """The step itself, with the warning of a free pass and what belongs to it; `loops` where loops are moved or hung."""
        after = step_over(self.bed, step)
        holding = self.speaker.position("holding")
        if loops is not None:
            self.said += loops
        elif isinstance(step, Free):
            self.said.append(say("words.change-free-warning", position=holding))
            self.said.append(_free(self.bed, step, self.target, self.speaker))
        elif not (isinstance(step, Set) and step.tension is None and step.hold_lever == self.bed.lever):
            self.said.append(sentence(self.speaker.step(step, self.bed)))
        if isinstance(step, Hold) and self.bed.lever == "hold" and not after.working:
            self.said.append(say("words.change-all-forward", position=holding))
        if isinstance(step, Thread) and self.tension_due:
            self.said += self.speaker.tension(step.yarn)
        self.bed = after

    def counter(self) -> None:
        if self.counter_due:
            self.said.append(say("words.change-counter", counter=self.speaker.counter(0)))
            self.counter_due = False

    def finished(self) -> tuple[str, ...]:
        """The whole list."""
        if self.slide_due and self.target is not None:
            self.said += _move_clear(self.bed, self.target)
        self.counter()
        if self.weights_due:
            self.said.append(_weights(self.bed))
        return tuple(self.said)


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


def _free(bed: Bed, step: Free, target: int | None, speaker: Speaker) -> str:
    """The free pass, which is only a slide where the carriage stands on that side of the block already."""
    if target is not None:
        line = _line(target, step.to)
        if bed.beside >= line if step.to == "R" else bed.beside <= line:
            return say("words.change-free-beside", side=speaker.side(step.to), needle=name(target))
    return sentence(speaker.step(step, bed, target))


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
