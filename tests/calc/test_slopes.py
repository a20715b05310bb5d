"""Angles without floats: there and back, and the ends of the range."""

from __future__ import annotations

from fractions import Fraction

import pytest

from wedgework.slopes import degrees, rise_for

F = Fraction


@pytest.mark.parametrize(("rise", "run", "angle"), [(1, 1, 45), (0, 5, 0), (5, 0, 90)])
def test_angles_that_are_known(rise: int, run: int, angle: int) -> None:
    assert degrees(F(rise), F(run)) == angle


@pytest.mark.parametrize("tenths", range(10, 900, 37))
def test_an_angle_there_and_back(tenths: int) -> None:
    angle = F(tenths, 10)
    assert abs(degrees(rise_for(angle, F(1000)), F(1000)) - angle) <= F(1, 500)


def test_steeper_is_more() -> None:
    angles = [degrees(F(rise), F(7)) for rise in range(40)]
    assert angles == sorted(angles)
    assert len(set(angles)) == len(angles)


def test_what_cannot_be() -> None:
    for rise, run in ((-1, 1), (1, -1), (0, 0)):
        with pytest.raises(ValueError, match="goes up or across"):
            degrees(F(rise), F(run))
    for angle in (0, 90, -5):
        with pytest.raises(ValueError, match="between"):
            rise_for(F(angle), F(1))
