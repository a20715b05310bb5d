"""The needles to move now, by name: "Opposite the carriage: L15, L14 to HP."."""

from __future__ import annotations

from wedgework.bed import name
from wedgework.formats.plan import Hold, Step, Work
from wedgework.say import say
from wedgework.words.passages import Handful
from wedgework.words.phrases import Speaker, needle_list, sentence
from wedgework.words.walk import Bed, by_end, edge_line, step_over

__all__ = ["moves_now"]


def moves_now(handful: Handful, speaker: Speaker) -> tuple[str, ...]:
    """One sentence for each move before the rows of `handful`."""
    said: list[str] = []
    bed = handful.bed
    for step in handful.moves:
        said += _said(bed, step, speaker)
        bed = step_over(bed, step)
    return tuple(said)


def _said(bed: Bed, step: Step, speaker: Speaker) -> list[str]:
    if not isinstance(step, Hold | Work):
        return [sentence(speaker.step(step, bed))]
    position = speaker.position("holding" if isinstance(step, Hold) else "upper-working")
    said: list[str] = []
    for side, needles in by_end(bed, step):
        if isinstance(step, Work) and side == bed.carriage:
            said += _out_of_the_way(bed, needles)
        where = "needles-to" if side is None else "at-carriage" if side == bed.carriage else "opposite"
        said.append(say(f"words.{where}", needles=needle_list(needles), position=position))
    return said


def _out_of_the_way(bed: Bed, needles: tuple[int, ...]) -> list[str]:
    """Where the carriage was taken just clear of the last needle, the next ones lie under it."""
    line = edge_line(needles, bed.carriage)
    clear = bed.beside >= line if bed.carriage == "R" else bed.beside <= line
    return [] if clear else [say("words.change-clear", needle=name(needles[-1] if bed.carriage == "R" else needles[0]))]
