"""Pi and sines in whole numbers."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest

from wedgework.angles import PI, PI_ABOVE, PI_BELOW, cosine, nearest_pi, sine

F = Fraction


def inverse_tangent(part: int, digits: int) -> int:
    """arctan(1 / part) in fixed point."""
    term = total = 10**digits // part
    n, square = 1, part * part
    while term:
        term //= -square
        n += 2
        total += term // n
    return total


def test_pi_by_machin() -> None:
    """John Machin, 1706: pi = 16 arctan(1/5) - 4 arctan(1/239)."""
    found = 16 * inverse_tangent(5, 70) - 4 * inverse_tangent(239, 70)
    assert PI_BELOW < F(found, 10**70) < PI_ABOVE
    assert PI == PI_BELOW


@pytest.mark.parametrize("turn", [F(i, 24) for i in range(-30, 31)])
def test_sines_as_the_standard_library_has_them(turn: Fraction) -> None:
    assert float(sine(turn)) == pytest.approx(math.sin(2 * math.pi * turn), abs=1e-12)
    assert float(cosine(turn)) == pytest.approx(math.cos(2 * math.pi * turn), abs=1e-12)


def test_sines_that_are_known_exactly() -> None:
    assert (sine(F(0)), sine(F(1, 12)), sine(F(1, 4)), sine(F(1, 2)), cosine(F(1, 2))) == (0, F(1, 2), 1, 0, -1)
    assert abs(sine(F(1, 8)) ** 2 - F(1, 2)) < F(1, 10**23)


def test_whole_numbers_of_pi() -> None:
    """Against the circumferences of wheels: 22/7 is too large by 1 part in 2500."""
    assert [nearest_pi(F(n)) for n in (1, 7, 176, 1000)] == [3, 22, 553, 3142]
    assert nearest_pi(F(0)) == 0
