"""Whole numbers without doubt: named roundings, even spreading, small ratios, square roots. No floats.

    >>> nearest(Fraction(5, 2)), nearest_even(Fraction(7, 1)), nearest_with(Fraction(30), 6, 1)
    (3, 8, 31)
    >>> even_spread(124, 14)[:7]
    (8, 9, 9, 9, 9, 9, 9)
    >>> spread_groups(124, 14)
    (Group(size=8, times=2), Group(size=9, times=12))

Wherever two whole numbers are equally near, the greater one is taken: fabric that is too long can be eased.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from wedgework.units import decimal_text

__all__ = [
    "Group",
    "Rounding",
    "decimal_text",
    "down",
    "even_positions",
    "even_spread",
    "nearest",
    "nearest_even",
    "nearest_odd",
    "nearest_part",
    "nearest_with",
    "rounded",
    "rounded_with",
    "small_ratio",
    "spread_groups",
    "square_root",
    "up",
]

Rounding = Literal["nearest", "down", "up", "even", "odd"]


def down(value: Fraction) -> int:
    """The greatest whole number that is not above `value`."""
    return math.floor(value)


def up(value: Fraction) -> int:
    """The least whole number that is not below `value`."""
    return math.ceil(value)


def nearest_with(value: Fraction, multiple: int, remainder: int = 0) -> int:
    """The whole number nearest to `value` that leaves `remainder` when divided by `multiple`; of two, the greater.

    A pattern that repeats over 6 stitches and needs one more: ``nearest_with(value, 6, 1)``.
    """
    if multiple < 1:
        raise ValueError("a multiple is at least 1")
    return multiple * math.floor((Fraction(value) - remainder) / multiple + Fraction(1, 2)) + remainder


def rounded_with(value: Fraction, way: Literal["nearest", "down", "up"], multiple: int, remainder: int = 0) -> int:
    """The same, or the next such number not above or not below `value`."""
    if way == "nearest":
        return nearest_with(value, multiple, remainder)
    if multiple < 1:
        raise ValueError("a multiple is at least 1")
    times = (Fraction(value) - remainder) / multiple
    return multiple * (math.floor(times) if way == "down" else math.ceil(times)) + remainder


def nearest(value: Fraction) -> int:
    """The nearest whole number; halves go up."""
    return nearest_with(value, 1)


def nearest_even(value: Fraction) -> int:
    """The nearest even number; odd whole numbers go up."""
    return nearest_with(value, 2, 0)


def nearest_odd(value: Fraction) -> int:
    """The nearest odd number; even whole numbers go up."""
    return nearest_with(value, 2, 1)


def rounded(value: Fraction, rounding: Rounding) -> int:
    """`value` rounded in the way that is named."""
    return {"nearest": nearest, "down": down, "up": up, "even": nearest_even, "odd": nearest_odd}[rounding](value)


def nearest_part(value: Fraction, parts: int) -> Fraction:
    """The nearest half, quarter, eighth ...: the nearest multiple of 1/`parts`; of two, the greater."""
    return Fraction(nearest(value * parts), parts)


@dataclass(frozen=True, slots=True)
class Group:
    """`times` parts of `size` each."""

    size: int
    times: int


def even_spread(total: int, parts: int) -> tuple[int, ...]:
    """`total` split into `parts` whole numbers that differ by one at most, the greater ones spread evenly among the rest.

    Part i ends at floor((i + 1) total / parts): the rule of a straight line on a grid.
    """
    ends = even_positions(total, parts)
    return tuple(end - start for start, end in zip((0, *ends), ends, strict=False))


def even_positions(total: int, parts: int) -> tuple[int, ...]:
    """Where each of those parts ends, counted from 0; the last one ends at `total`."""
    if parts < 1 or total < 0:
        raise ValueError("a spread needs at least one part and nothing negative")
    return tuple((i + 1) * total // parts for i in range(parts))


def spread_groups(total: int, parts: int) -> tuple[Group, ...]:
    """The sizes in that spread and how often each occurs, the smaller first: q (k - r times) and q + 1 (r times)."""
    if parts < 1 or total < 0:
        raise ValueError("a spread needs at least one part and nothing negative")
    size, more = divmod(total, parts)
    groups = (Group(size, parts - more), Group(size + 1, more))
    return tuple(group for group in groups if group.times)


def small_ratio(value: Fraction, most: int) -> Fraction:
    """The ratio nearest to `value` whose lower number is at most `most`: "3 for every 4 rows"."""
    return Fraction(value).limit_denominator(most)


def square_root(value: Fraction, digits: int = 9) -> Fraction:
    """The square root, cut to `digits` decimals; exact arithmetic, so every Python cuts at the same digit."""
    if value < 0:
        raise ValueError("no root of a negative number")
    scale = 10**digits
    return Fraction(math.isqrt(math.floor(value * scale * scale)), scale)
