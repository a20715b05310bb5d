"""The needles to move now, by name: "Opposite the carriage: L15, L14 to HP."."""

from __future__ import annotations

from dataclasses import dataclass

from wedgework.bed import name
from wedgework.formats.plan import Hold, Step, Work
from wedgework.say import say
from wedgework.words.loops import loop_sentences
from wedgework.words.passages import Handful
from wedgework.words.phrases import Speaker, needle_list, sentence
from wedgework.words.walk import Bed, by_end, edge_line, step_over

__all__ = ["Now", "moves_now"]


@dataclass(frozen=True, slots=True)
class Now:
    """One thing to do before the rows: needles to move, with the end they lie at, or (`needles` false) anything else."""

    where: str
    """At the carriage, Opposite the carriage; empty where neither is meant."""
    what: str
    """"L15, L14 to HP", or a whole sentence."""
    needles: bool

    @classmethod
    def other(cls, sentence: str) -> Now:
        """A sentence that moves no needle."""
        return cls("", sentence, False)

    def __str__(self) -> str:
        if not self.needles:
            return self.what
        return say("words.now-at", where=self.where, what=self.what) if self.where else say("words.now", what=self.what)


def moves_now(handful: Handful, speaker: Speaker) -> tuple[Now, ...]:
    """What to do before the rows of `handful`, in order; as text, one sentence each."""
    said: list[Now] = []
    bed = handful.bed
    for at, step in enumerate(handful.moves):
        loops = loop_sentences(handful.moves, at, bed, speaker)
        said += _said(bed, step, speaker) if loops is None else map(Now.other, loops)
        bed = step_over(bed, step)
    return tuple(said)


def _said(bed: Bed, step: Step, speaker: Speaker) -> list[Now]:
    if not isinstance(step, Hold | Work):
        return [Now.other(sentence(speaker.step(step, bed)))]
    position = speaker.position("holding" if isinstance(step, Hold) else "upper-working")
    said: list[Now] = []
    for side, needles in by_end(bed, step):
        if isinstance(step, Work) and side == bed.carriage:
            said += _out_of_the_way(bed, needles)
        where = "" if side is None else say("words.at-carriage" if side == bed.carriage else "words.opposite")
        said.append(Now(where, say("words.needles-to", needles=needle_list(needles), position=position), True))
    return said


def _out_of_the_way(bed: Bed, needles: tuple[int, ...]) -> list[Now]:
    """Where the carriage was taken just clear of the last needle, the next ones lie under it."""
    line = edge_line(needles, bed.carriage)
    clear = bed.beside >= line if bed.carriage == "R" else bed.beside <= line
    needle = needles[-1] if bed.carriage == "R" else needles[0]
    return [] if clear else [Now.other(say("words.change-clear", needle=name(needle)))]
