"""A yarn that changes its colour: the repeat of its colours and lengths, and which colour lies where.

    >>> repeat = Repeat(("#b4533f", "#efe8d8"), (2_000_000, 5_000_000))     # 2 m of the one, then 3 m of the other
    >>> repeat.at(1_999_999), repeat.at(2_000_000), repeat.at(5_000_000)
    (0, 1, 0)
    >>> repeat.stitches(1_990_000, 4, 7_500)      # colour and stitches, from that place on
    [(0, 1), (1, 3)]

Lengths are whole micrometres. A stitch has the colour that lies at its middle.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Mapping
from dataclasses import dataclass, field

__all__ = ["Repeat", "Striped"]


@dataclass(frozen=True, slots=True)
class Repeat:
    """`ends`: where each colour ends, counted from the beginning of the repeat; the last is its whole length."""

    colours: tuple[str, ...]
    ends: tuple[int, ...]

    def __post_init__(self) -> None:
        starts = (0, *self.ends[:-1])
        if not self.colours or len(self.colours) != len(self.ends) or any(a >= b for a, b in zip(starts, self.ends, strict=True)):
            raise ValueError("a repeat has colours, each with some length")

    @property
    def length(self) -> int:
        return self.ends[-1]

    def lengths(self) -> tuple[int, ...]:
        """Of each colour."""
        return tuple(b - a for a, b in zip((0, *self.ends[:-1]), self.ends, strict=True))

    def at(self, place: int) -> int:
        """The number of the colour at `place` of the endless yarn."""
        return bisect_right(self.ends, place % self.length)

    def until(self, place: int, number: int) -> int:
        """How far it is from `place` to where colour `number` begins next; nothing if it begins there."""
        begins = self.ends[number - 1] if number else 0
        return (begins - place) % self.length

    def stitches(self, place: int, count: int, loop: int) -> list[tuple[int, int]]:
        """The colours of `count` stitches that begin at `place`: number of the colour, and how many stitches."""
        at = place % self.length + loop // 2
        if at >= self.length:
            at -= self.length * (at // self.length)
        ends, number = self.ends, bisect_right(self.ends, at)
        found: list[tuple[int, int]] = []
        while True:
            many = -((at - ends[number]) // loop)
            if many >= count:
                found.append((number, count))
                return found
            if many > 0:
                found.append((number, many))
                count -= many
                at += many * loop
            number += 1
            if number == len(ends):
                number = 0
                at -= ends[-1]


@dataclass(frozen=True, slots=True)
class Striped:
    """One yarn of a piece in such colours."""

    yarn: str
    repeat: Repeat
    offsets: tuple[int, ...] = (0,)
    """For each ball in use, one or two: how much of its repeat is gone before it is threaded. Two are taken in turn,
    two rows of each; the first begins every block."""
    begins: Mapping[int, int] = field(default_factory=dict)
    """By stretch of the path: the number of the colour that it shall begin with; what lies before is wound off."""

    def __post_init__(self) -> None:
        if len(self.offsets) not in (1, 2):
            raise ValueError("one ball or two")

    def ball(self, nth: int) -> int:
        """Which ball the pass so many after the first of its block is knitted from."""
        return nth // 2 % len(self.offsets)
