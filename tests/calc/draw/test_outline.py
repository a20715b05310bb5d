"""Outlines of blocks: few corners, exact areas, a place for the number that lies inside."""

from __future__ import annotations

from fractions import Fraction
from random import Random

import pytest

from wedgework.draw.outline import Columns, loops, spot

RECTANGLE: Columns = dict.fromkeys(range(6), ((0, 4),))
TRIANGLE: Columns = {c: ((0, 2 * c + 2),) for c in range(6)}
RING: Columns = {0: ((0, 6),), 1: ((0, 2), (4, 6)), 2: ((0, 6),)}
CORNERS: Columns = {0: ((0, 2),), 1: ((2, 4),), 2: ((0, 2),)}
APART: Columns = {0: ((0, 2), (5, 6)), 4: ((1, 3),)}
ALL = [RECTANGLE, TRIANGLE, RING, CORNERS, APART]


def area(corners: list[tuple[int, int]]) -> Fraction:
    """The surveyor's formula, positive where the inside lies on the left."""
    return Fraction(sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in zip(corners, corners[1:] + corners[:1], strict=True)), 2)


@pytest.mark.parametrize("columns", ALL)
def test_the_loops_enclose_exactly_the_stitches(columns: Columns) -> None:
    stitches = sum(high - low for runs in columns.values() for low, high in runs)
    assert sum(area(loop) for loop in loops(columns)) == stitches


@pytest.mark.parametrize("columns", ALL)
def test_lines_run_across_or_up_in_turn(columns: Columns) -> None:
    for loop in loops(columns):
        across = [a[1] == b[1] for a, b in zip(loop, loop[1:] + loop[:1], strict=True)]
        assert all(a != b for a, b in zip(across, across[1:] + across[:1], strict=True)), loop


def test_only_corners_are_kept() -> None:
    assert sorted(loops(RECTANGLE)[0]) == [(0, 0), (0, 4), (6, 0), (6, 4)]
    assert len(loops(TRIANGLE)[0]) == 2 + 2 * 6


def test_a_ring_has_an_inner_loop() -> None:
    inner = [loop for loop in loops(RING) if area(loop) < 0]
    assert [sorted(loop) for loop in inner] == [[(1, 2), (1, 4), (2, 2), (2, 4)]]


@pytest.mark.parametrize("columns", ALL)
def test_the_number_stands_on_a_stitch(columns: Columns) -> None:
    x, y, wide, high = spot(columns, Fraction(7), Fraction(5))
    near = [c for c in columns if c <= x <= c + 1]
    assert any(low <= y <= high_ for c in near for low, high_ in columns[c])
    assert wide > 0
    assert high > 0


def test_the_number_stands_in_the_middle() -> None:
    assert spot(RECTANGLE, Fraction(1), Fraction(1))[:2] == (3, 2)
    wide: Columns = dict.fromkeys(range(9), ((0, 10),))
    assert spot(wide, Fraction(1), Fraction(1))[:2] == (Fraction(9, 2), 5)


def test_in_a_right_angled_triangle_it_stands_near_the_meeting_of_the_medians() -> None:
    """A third of the way from the right angle, both ways (geometry)."""
    columns: Columns = {c: ((0, c + 1),) for c in range(60)}
    x, y, _, _ = spot(columns, Fraction(1), Fraction(1))
    assert abs(x - 40) <= 3
    assert abs(y - 20) <= 3


def test_no_place_has_more_room_than_the_one_that_is_taken() -> None:
    """Against the middles of all columns, counted out one stitch after the other."""
    made = Random(11)
    for _ in range(300):
        low = made.randint(0, 9)
        columns: Columns = {}
        for column in range(made.randint(1, 24)):
            low = max(0, low + made.choice((-1, 0, 0, 1)))
            upper = low + made.randint(3, 20)
            columns[column] = ((low, low + made.randint(1, 2)), (low + 3, upper + 1)) if made.random() < 0.3 else ((low, upper),)
        wide, tall = made.randint(3, 9), made.randint(2, 9)
        most = max(room(columns, c, (a + b) // 2, wide, tall) for c, runs in columns.items() for a, b in runs)
        _, _, across, up = spot(columns, Fraction(wide), Fraction(tall))
        # Both ways about the place, which may have moved to where three tenths of the room are missing.
        assert 10 * min(across * wide, up * tall) >= 14 * most


def room(columns: Columns, column: int, row: int, wide: int, tall: int) -> int:
    """The free way from a stitch to the nearest border, that stitch counted."""

    def reach(right: int, upward: int) -> int:
        steps = 0
        while any(low <= row + steps * upward < high for low, high in columns.get(column + steps * right, ())):
            steps += 1
        return steps

    return min(reach(1, 0) * wide, reach(-1, 0) * wide, reach(0, 1) * tall, reach(0, -1) * tall)
