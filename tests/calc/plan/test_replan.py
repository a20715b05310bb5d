"""Carrying on from what is there: what goes on with what, and states that are not of the piece."""

from __future__ import annotations

from dataclasses import replace

import pytest

from pieces import diamond, grid_from, letters_of
from wedgework.formats.design import OrderWish
from wedgework.formats.plan import Knit, Thread, Work
from wedgework.formats.state import Hanging, State
from wedgework.plan import plan_piece, replan
from wedgework.plan.remaining import remaining
from wedgework.problems import Refused
from wedgework.replay import replay_plan, state_at


def left(heights: list[int], held: set[int], *lines: str) -> list[str]:
    """What is left of a picture, a dot where something is knitted already."""
    grid = grid_from(*lines)
    found = []
    for turn in reversed(remaining(grid, heights, held).turns):
        row = ["."] * grid.needles
        for cells in turn:
            row[cells.first : cells.last + 1] = [cells.yarn] * (cells.last - cells.first + 1)
        found.append("".join(row))
    return found


def test_what_is_left_lies_above_the_rows_that_are_there() -> None:
    assert left([2, 2, 2, 4, 4, 4], {3, 4, 5}, "aaaaaa", "bbbbbb", "aaaaaa") == ["aaaaaa", "bbb...", "......"]


def test_a_row_or_two_beside_a_border_is_at_the_border() -> None:
    picture = ("aaaaaa", "aaaaaa", "bbbbbb", "bbbbbb")
    assert left([3, 4, 5, 4, 2, 6], set(range(6)), *picture) == ["aaaaaa", "aaaaaa", "......", "......"]


def test_the_needles_that_knit_go_on_together() -> None:
    assert left([3, 4, 4, 3, 8, 8], {4, 5}, "aaaaaa", "aaaaaa", "aaaaaa", "aaaaaa") == ["aaaa..", "aaaa..", "aaaa..", "......"]


def test_nothing_is_left_of_a_finished_picture() -> None:
    grid = grid_from("abab", "abab")
    assert letters_of(remaining(grid, [4, 3, 4, 5], set())) == ["", ""]


def test_a_yarn_that_is_threaded_knits_on_without_a_new_end() -> None:
    plan = plan_piece(diamond())
    block = plan.blocks[1]
    state = state_at(plan, (block.first_step + block.last_step) // 2)
    rest = replan(diamond(), state)
    assert rest.blocks[0].yarn == block.yarn
    first = next(i for i, step in enumerate(rest.steps) if isinstance(step, Knit))
    assert not any(isinstance(step, Thread) for step in rest.steps[:first])
    assert rest.state == state


def test_without_a_yarn_in_the_feeder_one_is_threaded() -> None:
    plan = plan_piece(diamond())
    state = replace(state_at(plan, 60), feeder=None)
    rest = replan(diamond(), state)
    threads = [i for i, step in enumerate(rest.steps) if isinstance(step, Thread)]
    assert threads[0] < next(i for i, step in enumerate(rest.steps) if isinstance(step, Knit))
    assert replay_plan(rest).problems == ()


def test_needles_that_were_held_and_should_not_be_are_returned_where_they_may() -> None:
    plan = plan_piece(diamond())
    state = state_at(plan, 60)
    everything = tuple(n for n in (*range(-24, 0), *range(1, 25)))
    rest = replan(diamond(), replace(state, held=everything))
    assert isinstance(next(step for step in rest.steps if isinstance(step, Work | Knit)), Work)
    assert replay_plan(rest).problems == ()


def test_a_needle_knitted_too_often_is_evened_out_or_listed() -> None:
    plan = plan_piece(diamond())
    state = state_at(plan, 60)
    rows = list(state.rows)
    rows[30] += 1
    judged = replay_plan(replan(diamond(), replace(state, rows=tuple(rows))))
    assert judged.problems == ()
    assert judged.rows_max - judged.rows_min <= 2


def test_a_state_that_is_not_of_this_piece_is_refused_with_every_place() -> None:
    state = State(-24, (0,) * 47 + (200,), (30, -1), "L", Hanging("wool", 40), (Hanging("a", -90),))
    with pytest.raises(Refused) as refused:
        replan(diamond(), state)
    assert [p.where for p in refused.value.problems] == ["rows[47]", "held[0]", "feeder.yarn", "feeder.needle", "mast[0].needle"]
    with pytest.raises(Refused) as refused:
        replan(diamond(), State(-20, (0,) * 30, (), "L"))
    assert [p.where for p in refused.value.problems] == ["first_needle", "rows"]
    assert all(p.way_out for p in refused.value.problems)


def test_wishes_for_the_order_are_of_the_whole_piece_and_not_of_the_rest() -> None:
    """Blocks of the rest have ids of their own, so old wishes say nothing about them."""
    wished = diamond(order=(OrderWish("b1", before="b3"),))
    state = state_at(plan_piece(wished), 300)
    assert replan(wished, state).steps == replan(diamond(), state).steps
