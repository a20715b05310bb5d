"""Least squares and reading back."""

from __future__ import annotations

from fractions import Fraction

import pytest

from wedgework.lines import STUDENT_95, line_through, student_95

F = Fraction
POINTS = [(F(5), F("31.2")), (F(6), F("29.6")), (F(7), F("28.3")), (F(8), F("26.8"))]


def test_points_on_a_line_leave_nothing() -> None:
    found = line_through([(F(x), 3 - F(x) / 2) for x in range(4)])
    assert (found.slope, found.rest, found.at(F(10)), found.where(F(-2))) == (F(-1, 2), 0, -2, 10)
    assert found.off_by_scatter(F(0)) == 0


def test_reading_back_undoes_reading() -> None:
    found = line_through(POINTS)
    assert found.where(found.at(F(27, 4))) == F(27, 4)


def test_two_points_know_no_scatter() -> None:
    found = line_through(POINTS[:2])
    assert found.off_by_scatter(F(30)) is None
    assert found.off_by_reading(F(30), F(1, 2)) > 0


def test_the_middle_is_the_surest_place() -> None:
    found = line_through(POINTS)
    middle, end = found.off_by_scatter(found.mean_y), found.off_by_scatter(found.mean_y + 3)
    assert middle is not None
    assert end is not None
    assert middle < end
    assert found.off_by_reading(found.mean_y, F(1)) < found.off_by_reading(found.mean_y + 3, F(1))


def test_student_falls_toward_two() -> None:
    assert list(STUDENT_95) == sorted(STUDENT_95, reverse=True)
    assert student_95(1) == F("12.706")
    assert student_95(100) == STUDENT_95[-1] > F("1.96")


@pytest.mark.parametrize("points", [[], POINTS[:1], [(F(5), F(1)), (F(5), F(2))]])
def test_what_is_no_line(points: list[tuple[Fraction, Fraction]]) -> None:
    with pytest.raises(ValueError, match="two points"):
        line_through(points)
