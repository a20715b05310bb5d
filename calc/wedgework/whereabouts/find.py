"""The places that fit what is seen, best first, each with what differs.

The page at the machine does the same with the short lists of `sight_values`, where no Python runs; a test compares both.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from wedgework.bed import Side, place, range_name
from wedgework.say import say
from wedgework.whereabouts.sights import Sight

__all__ = ["Answer", "Difference", "Fit", "Seen", "differences", "find"]

Ends = tuple[int, int] | Literal["none"] | None
"""Outermost needles; "none" where there are none, None where the person does not say."""

# How much a difference weighs (common practice, no source: a carriage or a colour is seen at a glance, a needle can be
# misread by one, the counter is a hint).
YARN = 8
CARRIAGE = 8
NO_ENDS = 6
END = 2
MOST_NEEDLES = 8
WRAP = 3
NO_WRAP = 1
COUNTER = 1

SHOWN = 5
"""So many places are given where none fits whole."""


@dataclass(frozen=True, slots=True)
class Seen:
    """What the person says. Whatever she cannot tell stays None and is not counted."""

    yarn: str | None = None
    """Yarn id in the feeder; empty: none."""
    colour: Ends = None
    open: Ends = None
    carriage: Side | None = None
    wrapped: bool | None = None
    counter: int | None = None


@dataclass(frozen=True, slots=True)
class Difference:
    """What is otherwise at a place: there it is `here`, in words."""

    what: Literal["yarn", "colour", "open", "carriage", "wrapped", "counter"]
    weight: int
    here: str
    """A yarn by its id."""

    def __str__(self) -> str:
        return say(f"machine.differs-{self.what}", here=self.here)


@dataclass(frozen=True, slots=True)
class Fit:
    sight: Sight
    differs: tuple[Difference, ...]

    @property
    def weight(self) -> int:
        """Of all that differs."""
        return sum(one.weight for one in self.differs)


@dataclass(frozen=True, slots=True)
class Answer:
    fits: tuple[Fit, ...]
    """Best first; equally good ones by their distance from the place that was kept."""
    alike: int
    """So many of them, the first ones, cannot be told apart by what was said."""

    @property
    def why(self) -> str:
        """Why there is more than one; empty where there is one."""
        return say("machine.alike", n=self.alike) if self.alike > 1 else ""


def find(places: Sequence[Sight], seen: Seen, *, near: int = 0, digits: int = 3) -> Answer:
    """The places that fit `seen`. `near` is the cue where the page stood, `digits` how many the counter has."""
    fits = [Fit(one, differences(one, seen, digits)) for one in places]
    fits.sort(key=lambda fit: (fit.weight, abs(fit.sight.cue - near)))
    if not fits:
        return Answer((), 0)
    best = fits[0].weight
    alike = sum(fit.weight == best for fit in fits)
    return Answer(tuple(fits[: alike if best == 0 else max(alike, SHOWN)]), alike)


def differences(one: Sight, seen: Seen, digits: int = 3) -> tuple[Difference, ...]:
    """What is otherwise at `one` than was `seen`."""
    found: list[Difference] = []
    if seen.yarn is not None and seen.yarn != one.yarn:
        found.append(Difference("yarn", YARN, one.yarn or say("machine.no-yarn")))
    if weight := _ends(one.colour, seen.colour):
        found.append(Difference("colour", weight, _needles(one.colour)))
    if weight := _ends(one.open, seen.open):
        found.append(Difference("open", weight, _needles(one.open)))
    if seen.carriage is not None and seen.carriage != one.carriage:
        found.append(Difference("carriage", CARRIAGE, say(f"machine.side-{one.carriage}")))
    if seen.wrapped is not None and seen.wrapped != one.wrapped:
        which = "none" if one.wrapped is None else "yes" if one.wrapped else "no"
        found.append(Difference("wrapped", NO_WRAP if one.wrapped is None else WRAP, say(f"machine.wrapped-{which}")))
    if seen.counter is not None and (seen.counter - one.counter) % 10**digits:
        found.append(Difference("counter", COUNTER, str(one.counter % 10**digits).zfill(digits)))
    return tuple(found)


def _needles(ends: tuple[int, int] | None) -> str:
    return say("machine.no-needle") if ends is None else range_name(*ends)


def _ends(here: tuple[int, int] | None, seen: Ends) -> int:
    if seen is None:
        return 0
    if here is None or seen == "none":
        return 0 if here is None and seen == "none" else NO_ENDS
    away = [abs(place(a) - place(b)) for a, b in zip(here, seen, strict=True)]
    return sum(END + min(far, MOST_NEEDLES) for far in away if far)
