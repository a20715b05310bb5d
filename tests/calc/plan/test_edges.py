"""When needles join and leave: the parity of the carriage, groups, and errors of one row that must not add up."""

from __future__ import annotations

import pytest

from wedgework.plan.edges import Style, join_rows, leave_rows

ONE = Style()


def test_heights_in_phase_are_met_exactly() -> None:
    assert join_rows([2, 4, 6], [2, 4, 6], parity=0, start=0, starters=0) == (0, [2, 4, 6])


def test_heights_out_of_phase_are_a_row_low_all_along_the_edge() -> None:
    _, rows = join_rows([3, 5, 7, 9], [2, 4, 6, 8], parity=0, start=0, starters=0)
    assert rows == [4, 6, 8, 10]


def test_a_needle_never_joins_before_the_one_nearer_to_the_middle() -> None:
    _, rows = join_rows([6, 4, 6, 2], [6, 6, 6, 6], parity=0, start=0, starters=0)
    assert rows == sorted(rows)


def test_first_needles_may_begin_with_the_block() -> None:
    assert join_rows([5, 5, 5], [4, 4, 4], parity=0, start=5, starters=3)[1] == [5, 5, 5]


def test_one_needle_a_turn_leaves_at_the_carriage() -> None:
    assert leave_rows([2, 4, 6], [1, 1, 1], parity=0, end=9, style=ONE) == (0, [2, 4, 6])


def test_out_of_phase_the_whole_edge_leaves_a_row_early_and_keeps_its_rhythm() -> None:
    assert leave_rows([3, 5, 7], [1, 1, 1], parity=0, end=9, style=ONE)[1] == [2, 4, 6]


def test_of_three_at_once_two_leave_away_from_the_carriage_and_the_last_at_its_side() -> None:
    assert leave_rows([4, 4, 4, 6], [1] * 4, parity=0, end=20, style=ONE)[1] == [3, 3, 4, 6]


@pytest.mark.parametrize("style", [Style(at_carriage=4), Style(at_carriage=2)])
def test_within_the_strand_several_leave_at_the_carriage(style: Style) -> None:
    assert leave_rows([4, 4, 6], [1] * 3, parity=0, end=20, style=style)[1] == [4, 4, 6]


def test_by_hand_a_group_needs_no_single_needle_after_it() -> None:
    assert leave_rows([5, 5, 5, 10], [1] * 4, parity=0, end=20, style=Style(by_hand=True))[1] == [5, 5, 5, 10]
    assert leave_rows([5, 5, 5, 10], [1] * 4, parity=0, end=20, style=ONE)[1] == [5, 5, 6, 10]


def test_at_the_end_of_the_block_any_number_may_leave() -> None:
    assert leave_rows([10, 10, 10], [1] * 3, parity=0, end=10, style=ONE)[1] == [10, 10, 10]


def test_nobody_leaves_before_the_earliest_row() -> None:
    _, rows = leave_rows([2, 4], [7, 7], parity=0, end=12, style=ONE)
    assert min(rows) >= 7


def test_a_needle_leaves_so_that_real_heights_rise_inward() -> None:
    # The second needle is a row high and the others a row low: left alone it would stand out, and the block above could
    # follow its edge nowhere exactly.
    wished, heights = [5, 4, 7, 9], [4, 5, 6, 8]
    _, rows = leave_rows(wished, [1] * 4, parity=1, end=20, style=ONE, heights=heights)
    real = [height + row - wish for height, row, wish in zip(heights, rows, wished, strict=True)]
    assert real == sorted(real)


def test_an_edge_that_lies_higher_moves_as_many_rows_later() -> None:
    heights, wished, earliest = [4, 4, 7, 9, 12], [4, 5, 6, 9, 11], [1, 2, 3, 5, 6]
    joined = join_rows(heights, wished, parity=0, start=3, starters=1)
    left = leave_rows(wished, earliest, parity=1, end=11, style=ONE, heights=heights, done=[False] * 5)
    for up in (1, 2, 7, 40):
        higher = [[row + up for row in rows] for rows in (heights, wished, earliest)]
        again = join_rows(higher[0], higher[1], parity=up % 2, start=3 + up, starters=1)
        assert again == (joined[0], [row + up for row in joined[1]])
        again = leave_rows(higher[1], higher[2], parity=(1 + up) % 2, end=11 + up, style=ONE, heights=higher[0], done=[False] * 5)
        assert again == (left[0], [row + up for row in left[1]])
    assert joined != join_rows(heights, wished, parity=1, start=3, starters=1)
