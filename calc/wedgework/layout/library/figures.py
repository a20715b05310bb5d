"""Outlines that several layouts draw, in fractions of the panel."""

from __future__ import annotations

from fractions import Fraction

from wedgework.formats.design import Point

__all__ = ["HALF", "ONE", "ZERO", "diamond", "kite"]

ZERO, HALF, ONE = Fraction(0), Fraction(1, 2), Fraction(1)


def diamond(x: Fraction, y: Fraction, reach: Fraction, rise: Fraction) -> tuple[Point, ...]:
    """A diamond about (x, y) that reaches so far to each side and rises so far up and down."""
    return kite(x - reach, x + reach, y - rise, y + rise, HALF)


def kite(left: Fraction, right: Fraction, low: Fraction, high: Fraction, shoulder: Fraction) -> tuple[Point, ...]:
    """A kite in a box; its side corners lie at the part `shoulder` of its height. With a half it is a diamond."""
    x, y = (left + right) / 2, low + (high - low) * shoulder
    return ((x, low), (right, y), (x, high), (left, y))
