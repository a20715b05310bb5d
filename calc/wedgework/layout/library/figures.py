"""Outlines that several layouts draw, in fractions of the panel."""

from __future__ import annotations

from fractions import Fraction

from wedgework.formats.design import Point

__all__ = ["HALF", "ONE", "ZERO", "diamond", "kite"]

ZERO, HALF, ONE = Fraction(0), Fraction(1, 2), Fraction(1)


def diamond(x: Fraction, y: Fraction, reach: Fraction, rise: Fraction) -> tuple[Point, ...]:
    """A diamond about (x, y) that reaches so far to each side and rises so far up and down."""
    return kite(x, y, reach, rise, rise)


def kite(x: Fraction, y: Fraction, reach: Fraction, down: Fraction, up: Fraction) -> tuple[Point, ...]:
    """A kite whose side corners lie at height y; from there it goes down and up to a point."""
    return ((x, y - down), (x + reach, y), (x, y + up), (x - reach, y))
