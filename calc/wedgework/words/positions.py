"""Where a leaf stands in its repeats: the 7th of 20 times."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from wedgework.say import say
from wedgework.words.grouping import Grouped, Repeat, unfold
from wedgework.words.phrases import ordinal

__all__ = ["Position", "positions"]


@dataclass(frozen=True, slots=True)
class Position:
    """The `nth` of `times` rounds of the outermost repeat, and the `part` of `parts` leaves in one round; all from 1."""

    nth: int
    times: int
    part: int
    parts: int

    def __str__(self) -> str:
        key = "words.nth" if self.parts == 1 else "words.nth-part"
        return say(key, ordinal=ordinal(self.nth), times=self.times, part=self.part, parts=self.parts)


def positions(grouped: Grouped) -> Iterator[Position | None]:
    """One for each leaf of `grouped` as `unfold` gives them; None outside a repeat."""
    for item in grouped:
        if not isinstance(item, Repeat):
            yield None
            continue
        parts = len(tuple(unfold(item.body)))
        for nth in range(1, item.times + 1):
            for part in range(1, parts + 1):
                yield Position(nth, item.times, part, parts)
