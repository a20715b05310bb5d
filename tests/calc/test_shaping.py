"""Spreading changes: both conventions, every second row, a first change that is fixed, edges by points."""

from __future__ import annotations

import pytest

from wedgework.exact import Group
from wedgework.shaping import Spacing, most_changes, runs, spaced, stages


def test_as_many_gaps_as_changes() -> None:
    found = spaced(14, 124)
    assert found.gaps == (8, 9, 9, 9, 9, 9, 9, 8, 9, 9, 9, 9, 9, 9)
    assert (found.positions[0], found.positions[-1], found.closing, found.left_over) == (8, 124, 0, 0)


def test_one_gap_more_leaves_a_plain_part() -> None:
    found = spaced(4, 40, closing=True)
    assert found == Spacing((8, 8, 8, 8), 8, 0)
    assert found.groups == (Group(8, 5),)


def test_every_second_row() -> None:
    found = spaced(14, 125, step=2)
    assert all(row % 2 == 0 for row in found.positions)
    assert found.groups == (Group(8, 8), Group(10, 6))
    assert (found.left_over, found.over) == (1, 125)


@pytest.mark.parametrize("closing", [False, True])
def test_the_first_change_may_be_fixed(closing: bool) -> None:
    found = spaced(6, 50, closing=closing, first=3)
    assert found.positions[0] == 3
    assert len(found.gaps) == 6
    assert found.over == 50
    rest = (*found.gaps[1:], *((found.closing,) if closing else ()))
    assert max(rest) - min(rest) <= 1


def test_a_single_change_that_is_fixed_leaves_the_rest() -> None:
    assert spaced(1, 30, first=10) == Spacing((10,), 0, 20)
    assert spaced(1, 30, first=0).groups == ()


def test_the_order_of_the_parts() -> None:
    assert spaced(5, 12, mixing="smaller-first").gaps == (2, 2, 2, 3, 3)
    assert spaced(5, 12, mixing="larger-first").gaps == (3, 3, 2, 2, 2)
    assert sorted(spaced(5, 12).gaps) == [2, 2, 2, 3, 3]


@pytest.mark.parametrize("closing", [False, True])
@pytest.mark.parametrize("step", [1, 2])
@pytest.mark.parametrize("first", [None, 0, 4])
def test_there_is_room_for_the_most_and_not_for_one_more(closing: bool, step: int, first: int | None) -> None:
    most = most_changes(21, closing=closing, step=step, first=first)
    found = spaced(most, 21, closing=closing, step=step, first=first)
    assert min(found.gaps[1:]) >= step
    with pytest.raises(ValueError, match="no room"):
        spaced(most + 1, 21, closing=closing, step=step, first=first)


def test_two_together_need_two() -> None:
    assert most_changes(21, least=2) == 10
    assert most_changes(21, closing=True, least=2) == 9
    assert most_changes(5, first=6) == 0


def test_equal_neighbours_in_one_line() -> None:
    assert runs((8, 9, 9, 8)) == (Group(8, 1), Group(9, 2), Group(8, 1))
    assert runs(()) == ()


def test_an_edge_by_points() -> None:
    out, plain, at_once, in_steps = stages([(0, 40), (90, 62), (120, 62), (120, 56), (126, 33)])
    assert (len(out.places), out.change, out.at_once) == (22, 22, False)
    assert (plain.places, plain.change) == ((), 0)
    assert at_once.places == ((120, -6),)
    assert in_steps.places == ((122, -7), (124, -8), (126, -8))
    assert in_steps.at_once


def test_stages_on_even_rows_count_from_the_start_of_the_piece() -> None:
    _, second = stages([(0, 10), (7, 10), (20, 14)], step=2)
    assert [row for row, _ in second.places] == [8, 12, 16, 20]


@pytest.mark.parametrize("points", [[(0, 10), (4, 12), (3, 12)], [(0, 10), (1, 13)]])
def test_what_is_no_edge(points: list[tuple[int, int]]) -> None:
    with pytest.raises(ValueError, match="row"):
        stages(points)
