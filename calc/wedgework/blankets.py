"""Usual sizes of blankets and of the mattresses below them, with where each comes from.

    >>> BLANKETS["lap"].width_mm
    Fraction(4572, 5)

There is no standard for hand-made blankets. Sizes given in inches are kept as inches: 1 in = 25.4 mm.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from wedgework.units import MM_PER_INCH

__all__ = ["BLANKETS", "MATTRESSES", "NamedSize", "Source"]

Source = Literal["charity", "household-us", "household-eu"]


@dataclass(frozen=True, slots=True)
class NamedSize:
    key: str
    width_mm: Fraction
    height_mm: Fraction
    source: Source
    """Said under ``blankets.source-...``."""


def _inches(key: str, width: int, height: int, source: Source) -> NamedSize:
    return NamedSize(key, width * MM_PER_INCH, height * MM_PER_INCH, source)


def _cm(key: str, width: int, height: int, source: Source) -> NamedSize:
    return NamedSize(key, Fraction(width * 10), Fraction(height * 10), source)


def _listed(*sizes: NamedSize) -> Mapping[str, NamedSize]:
    return {size.key: size for size in sizes}


# Lists of charities that collect blankets (baby, lap, adult; the afghan is put together of 49 sections of 7 x 9 in), and sizes of
# US bed blankets as shops and household lists give them; those differ by an inch or two.
BLANKETS: Mapping[str, NamedSize] = _listed(
    _inches("baby", 32, 38, "charity"),
    _inches("lap", 36, 48, "charity"),
    _inches("charity-afghan", 49, 63, "charity"),
    _inches("adult", 50, 70, "charity"),
    _inches("twin", 66, 90, "household-us"),
    _inches("full", 80, 90, "household-us"),
    _inches("queen", 90, 100, "household-us"),
    _inches("king", 108, 100, "household-us"),
)

# Tops of mattresses. US sizes from household lists; the others are usual in Europe (from memory).
MATTRESSES: Mapping[str, NamedSize] = _listed(
    _inches("crib-top", 28, 52, "household-us"),
    _inches("twin-top", 39, 75, "household-us"),
    _inches("full-top", 54, 75, "household-us"),
    _inches("queen-top", 60, 80, "household-us"),
    _inches("king-top", 76, 80, "household-us"),
    _cm("90-top", 90, 200, "household-eu"),
    _cm("140-top", 140, 200, "household-eu"),
    _cm("160-top", 160, 200, "household-eu"),
)
