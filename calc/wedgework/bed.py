"""The needle bed: how needles are numbered and named, sides, usual beds, where a panel lies.

Needles are whole numbers without zero, outward from the centre: -1 is L1, 1 is R1, and those two are
neighbours. For arithmetic there is a *place*, 0, 1, 2 ... from the left end of a bed without the gap:

    >>> name(-20), name(1)
    ('L20', 'R1')
    >>> neighbour(-1, +1)
    1
    >>> span(-20, 20)
    40

Common practice of the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

__all__ = [
    "USUAL_BEDS",
    "Side",
    "UsualBed",
    "across",
    "at_place",
    "float_limit",
    "limits",
    "name",
    "neighbour",
    "opposite",
    "panel_needles",
    "place",
    "range_name",
    "span",
]

Side = Literal["L", "R"]


def opposite(side: Side) -> Side:
    """The other side."""
    return "R" if side == "L" else "L"


def place(needle: int) -> int:
    """The needle's place on a line without a gap: -2, -1, 1, 2 -> -2, -1, 0, 1."""
    if needle == 0:
        raise ValueError("there is no needle 0")
    return needle - 1 if needle > 0 else needle


def at_place(line: int) -> int:
    """The needle at a place of that line; the inverse of `place`."""
    return line + 1 if line >= 0 else line


def neighbour(needle: int, steps: int) -> int:
    """The needle `steps` places to the right (to the left where negative)."""
    return at_place(place(needle) + steps)


def span(first: int, last: int) -> int:
    """How many needles lie from `first` to `last`, both counted."""
    return place(last) - place(first) + 1


def across(first: int, last: int) -> tuple[int, ...]:
    """Every needle from `first` to `last`, from left to right."""
    return tuple(n for n in range(first, last + 1) if n != 0)


def name(needle: int) -> str:
    """L20, R1: the needle as the knitter reads it on the bed."""
    if needle == 0:
        raise ValueError("there is no needle 0")
    return f"L{-needle}" if needle < 0 else f"R{needle}"


def range_name(first: int, last: int) -> str:
    """One needle as L3, several as L3-R4, from left to right."""
    return name(first) if first == last else f"{name(first)}-{name(last)}"


def limits(needles: int, odd_side: Side = "R") -> tuple[int, int]:
    """First and last needle of a bed (or a centred panel) of so many needles; the odd one lies on `odd_side`."""
    half, odd = divmod(needles, 2)
    left = half + (odd if odd_side == "L" else 0)
    return (at_place(-left), at_place(-left + needles - 1))


def panel_needles(needles: int, shift: int = 0, odd_side: Side = "R") -> tuple[int, int]:
    """First and last needle of a panel set about the centre and moved `shift` needles to the right."""
    first, last = limits(needles, odd_side)
    return neighbour(first, shift), neighbour(last, shift)


def float_limit(pitch_mm: Fraction) -> int:
    """How many held needles a strand may cross before it is a float: 4 needles or 25 mm, whichever is less.

    Common practice, no source. Never less than one: the wrap of a single held needle is no float.
    """
    return max(1, min(4, int(Fraction(25) / pitch_mm)))


@dataclass(frozen=True, slots=True)
class UsualBed:
    """A bed as they are usually met."""

    key: str
    pitch_mm: Fraction
    needles: int


# Common practice, no source: job.md and the check values list the same pairs; "about" is said on the page.
USUAL_BEDS: tuple[UsualBed, ...] = (
    UsualBed("fine-3.6", Fraction(36, 10), 250),
    UsualBed("standard-4.5", Fraction(45, 10), 200),
    UsualBed("standard-5", Fraction(5), 180),
    UsualBed("mid-6.5", Fraction(65, 10), 150),
    UsualBed("mid-7", Fraction(7), 130),
    UsualBed("bulky-8", Fraction(8), 100),
    UsualBed("bulky-9", Fraction(9), 110),
)
