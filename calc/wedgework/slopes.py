"""Angles of edges against the rows, without floats: from a rise and a run, and back.

    >>> degrees(Fraction(1), Fraction(1))
    Fraction(45, 1)
    >>> rise_for(Fraction(30), Fraction(200))        # 200 mm x tan 30 degrees, to a thousandth
    Fraction(11547, 100)

An angle of 0 lies along the rows, one of 90 degrees along the needles. Cut at a thousandth of a degree.
"""

from __future__ import annotations

import math
from fractions import Fraction
from functools import lru_cache

from wedgework.angles import cosine, sine
from wedgework.exact import nearest_part

__all__ = ["degrees", "rise_for"]

_STEPS = 1000
_RIGHT = 90 * _STEPS
_TURN = 360 * _STEPS


@lru_cache(maxsize=256)
def degrees(rise: Fraction, run: Fraction) -> Fraction:
    """The angle whose tangent is `rise` / `run`, 0 to 90; both at least 0 and not both 0 (ValueError)."""
    if rise < 0 or run < 0 or not (rise or run):
        raise ValueError("an edge goes up or across")

    def reaches(halves: int) -> bool:
        turn = Fraction(halves, 2 * _TURN)
        return rise * cosine(turn) >= run * sine(turn)

    low, high = 0, 2 * _RIGHT  # in halves of a step; the angle lies between
    # A float says where to look, which spares most of the work on a tablet. It decides nothing: both ends are tried.
    near = int(math.atan2(rise, run) / math.pi * _RIGHT * 4)
    below, above = max(0, near - 2), min(2 * _RIGHT, near + 2)
    if reaches(below) and (above == high or not reaches(above)):
        low, high = below, above
    while high - low > 1:
        middle = (low + high) // 2
        if reaches(middle):
            low = middle
        else:
            high = middle
    return Fraction((low + 1) // 2, _STEPS)


def rise_for(angle: Fraction, run: Fraction) -> Fraction:
    """How far an edge at `angle` degrees rises over `run`, to a thousandth; the angle lies between 0 and 90."""
    if not 0 < angle < 90:
        raise ValueError("an angle between 0 and 90")
    turn = Fraction(angle, 360)
    return nearest_part(run * sine(turn) / cosine(turn), 1000)
