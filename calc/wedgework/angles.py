"""Pi, sines and cosines without floats, so that every Python cuts at the same digit and no last bit decides a whole number.

    >>> nearest_pi(Fraction(2 * 88))      # the whole number nearest to 176 times pi
    553
    >>> sine(Fraction(1, 12))             # of a twelfth of a full turn
    Fraction(1, 2)

Angles are parts of a full turn. A sine is exact to 24 decimals and cut there.
"""

from __future__ import annotations

from fractions import Fraction

from wedgework.exact import nearest

__all__ = ["PI", "cosine", "nearest_pi", "sine"]

# The first 50 decimals of pi (from memory; a test computes them by Machin's formula of 1706). Pi lies between these two.
_PI_DIGITS = 314159265358979323846264338327950288419716939937510
PI_BELOW, PI_ABOVE = Fraction(_PI_DIGITS, 10**50), Fraction(_PI_DIGITS + 1, 10**50)
PI = PI_BELOW

# Fixed point: so many digits are carried, so many are kept.
_CARRIED, _KEPT = 10**40, 10**24


def nearest_pi(factor: Fraction) -> int:
    """The whole number nearest to `factor` times pi: the same from both bounds, or an error (pi is not rational: it never is)."""
    low, high = nearest(factor * PI_BELOW), nearest(factor * PI_ABOVE)
    if low != high:
        raise ArithmeticError("50 decimals of pi do not decide this")
    return low


def sine(turn: Fraction) -> Fraction:
    """The sine of `turn` parts of a full turn: the series x - x^3/3! + ..., in whole numbers."""
    turn = Fraction(turn) % 1
    if turn >= Fraction(1, 2):
        return -sine(turn - Fraction(1, 2))
    if turn > Fraction(1, 4):
        turn = Fraction(1, 2) - turn
    x = nearest(2 * PI * turn * _CARRIED)
    square = x * x // _CARRIED
    term, total, n = x, 0, 1
    while term:
        total += term if n % 4 == 1 else -term
        term = term * square // _CARRIED // ((n + 1) * (n + 2))
        n += 2
    return Fraction(nearest(Fraction(total * _KEPT, _CARRIED)), _KEPT)


def cosine(turn: Fraction) -> Fraction:
    """The cosine of `turn` parts of a full turn."""
    return sine(turn + Fraction(1, 4))
