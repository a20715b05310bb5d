"""Ink that can be read on a yarn's colour. Whole numbers and fractions only."""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache

__all__ = ["DARK", "LIGHT", "ink_on", "luminance", "mixed"]

DARK, LIGHT = "#1a1a1a", "#ffffff"


def _channels(colour: str) -> tuple[int, int, int]:
    return int(colour[1:3], 16), int(colour[3:5], 16), int(colour[5:7], 16)


def luminance(colour: str) -> Fraction:
    """Relative luminance of ``#rrggbb``, 0 to 1, as WCAG 2 defines it (0.2126 R + 0.7152 G + 0.0722 B of the linear
    channels); the power of 2.4 is replaced by a cubic that stays within 0.003 of it, so that no last bit can decide."""
    red, green, blue = (_linear(Fraction(value, 255)) for value in _channels(colour))
    return (2126 * red + 7152 * green + 722 * blue) / 10000


def _linear(x: Fraction) -> Fraction:
    return x * (x * (x * Fraction(305306, 10**6) + Fraction(682171, 10**6)) + Fraction(12523, 10**6))


@lru_cache(maxsize=256)
def ink_on(colour: str) -> str:
    """Dark or light, whichever has the greater contrast on `colour` (WCAG 2: (brighter + 0.05) / (darker + 0.05))."""
    here = luminance(colour) + Fraction(1, 20)
    dark, light = luminance(DARK) + Fraction(1, 20), luminance(LIGHT) + Fraction(1, 20)
    return DARK if here * here > dark * light else LIGHT


def mixed(colour: str, other: str, percent: int) -> str:
    """`colour` with so many percent of `other` in it."""
    parts = zip(_channels(colour), _channels(other), strict=True)
    return "#" + "".join(f"{((100 - percent) * a + percent * b + 50) // 100:02x}" for a, b in parts)
