"""Whole numbers without doubt."""

from __future__ import annotations

from fractions import Fraction

import pytest

from wedgework.exact import (
    Group,
    down,
    even_positions,
    even_spread,
    nearest,
    nearest_even,
    nearest_odd,
    nearest_part,
    nearest_with,
    rounded,
    rounded_with,
    small_ratio,
    spread_groups,
    square_root,
    up,
)

F = Fraction


def test_halves_go_up() -> None:
    assert [nearest(F(v)) for v in ("2.4", "2.5", "3.5", "-2.5", "-2.6", "7")] == [2, 3, 4, -2, -3, 7]


def test_even_and_odd() -> None:
    assert [nearest_even(F(v)) for v in ("6.9", "7", "7.1", "8", "-1")] == [6, 8, 8, 8, 0]
    assert [nearest_odd(F(v)) for v in ("6.9", "7", "8", "8.1", "0")] == [7, 7, 9, 9, 1]


def test_a_repeat_with_a_rest() -> None:
    assert [nearest_with(F(v), 6, 1) for v in ("27", "28", "29", "33.9", "34")] == [25, 31, 31, 31, 37]
    with pytest.raises(ValueError, match="multiple"):
        nearest_with(F(3), 0)


def test_named_roundings() -> None:
    value = F("104.5")
    found = {name: rounded(value, name) for name in ("nearest", "down", "up", "even", "odd")}
    assert found == {"nearest": 105, "down": 104, "up": 105, "even": 104, "odd": 105}
    assert (down(F(-1, 2)), up(F(-1, 2))) == (-1, 0)


def test_parts() -> None:
    assert nearest_part(F("11.22"), 8) == F(45, 4)
    assert nearest_part(F(1, 16), 8) == F(1, 8)


def test_a_spread_adds_up_and_differs_by_one_at_most() -> None:
    for total in range(60):
        for parts in range(1, 20):
            spread = even_spread(total, parts)
            assert len(spread) == parts
            assert sum(spread) == total
            assert max(spread) - min(spread) <= 1
            assert even_positions(total, parts)[-1] == total
            groups = spread_groups(total, parts)
            assert sum(g.size * g.times for g in groups) == total
            assert sum(g.times for g in groups) == parts
            assert [g.size for g in groups] == sorted(set(spread))


def test_the_greater_parts_are_spread_among_the_rest() -> None:
    assert even_spread(10, 4) == (2, 3, 2, 3)
    assert even_spread(2, 4) == (0, 1, 0, 1)
    assert even_spread(0, 3) == (0, 0, 0)
    assert spread_groups(12, 4) == (Group(3, 4),)


@pytest.mark.parametrize(("total", "parts"), [(5, 0), (-1, 3)])
def test_an_impossible_spread_is_a_programmers_mistake(total: int, parts: int) -> None:
    for function in (even_spread, even_positions, spread_groups):
        with pytest.raises(ValueError, match="spread"):
            function(total, parts)


def test_small_ratios() -> None:
    assert small_ratio(F(14, 19), 4) == F(3, 4)
    assert small_ratio(F(14, 19), 3) == F(2, 3)


def test_roots_are_cut_exactly() -> None:
    assert square_root(F(9, 16)) == F(3, 4)
    assert square_root(F(0)) == 0
    root = square_root(F(2), 9)
    assert root * root <= 2 < (root + F(1, 10**9)) ** 2
    with pytest.raises(ValueError, match="negative"):
        square_root(F(-1))


def test_a_repeat_rounded_in_one_direction() -> None:
    assert [rounded_with(F(v), "down", 6, 1) for v in ("30.9", "31", "0")] == [25, 31, -5]
    assert [rounded_with(F(v), "up", 6, 1) for v in ("31", "31.1")] == [31, 37]
    assert rounded_with(F("28"), "nearest", 6, 1) == nearest_with(F("28"), 6, 1)
    with pytest.raises(ValueError, match="at least 1"):
        rounded_with(F(3), "up", 0)
