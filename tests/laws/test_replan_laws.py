"""The rest of a piece planned anew: from every place of a plan, and from beds that no plan foresaw; judged by the model bed."""

from __future__ import annotations

import random
from collections.abc import Iterator
from dataclasses import replace

import pytest

from pieces import diamond, piece
from wedgework.formats.design import Design, NamedLayout
from wedgework.formats.plan import Knit, Plan, is_edge
from wedgework.formats.state import State
from wedgework.layout.library import LAYOUTS, LayoutDeclaration
from wedgework.plan import plan_piece, replan
from wedgework.replay import replay_plan, state_at
from wedgework.replay.result import Replay


def off(judged: Replay, rows: int) -> int:
    return max(judged.rows_max - judged.rows_min, abs(judged.rows_max - rows), abs(judged.rows_min - rows))


def places(plan: Plan, rnd: random.Random, count: int) -> Iterator[int]:
    """Steps of the picture after which somebody might stop: between two passes, needles just moved, yarn just changed."""
    knitted = [i for i, step in enumerate(plan.steps) if isinstance(step, Knit) and not is_edge(step.block)]
    for i in rnd.sample(knitted, min(count, len(knitted))):
        yield i + rnd.randint(0, 2)


def stitches_and_rows(state: State, judged: Replay) -> tuple[int, int]:
    """What is there and what the rest knits, together; and all rows of the piece in the end."""
    in_the_end = sum(run.rows for column in judged.piece.columns for run in column)
    return sum(state.rows) + sum(judged.stitches.values()), in_the_end


@pytest.mark.parametrize("layout", LAYOUTS, ids=lambda layout: layout.name)
def test_the_rest_of_every_layout_from_where_its_plan_stands(layout: LayoutDeclaration) -> None:
    rnd = random.Random(layout.name)
    design = piece(NamedLayout(layout.name), 60, 110)
    plan = plan_piece(design)
    for steps in places(plan, rnd, 5):
        state = state_at(plan, steps)
        judged = replay_plan(replan(design, state))
        assert judged.problems == ()
        assert off(judged, 110) <= 2
        both, whole = stitches_and_rows(state, judged)
        assert both == whole


@pytest.mark.parametrize("layout", LAYOUTS, ids=lambda layout: layout.name)
def test_the_rest_from_a_bed_that_no_plan_foresaw(layout: LayoutDeclaration) -> None:
    """A few needles have rows too many or too few. The rest is legal and shows its picture, and what stays is listed."""
    rnd = random.Random(layout.name)
    design = piece(NamedLayout(layout.name), 60, 110)
    plan = plan_piece(design)
    for steps in places(plan, rnd, 4):
        state = state_at(plan, steps)
        rows = list(state.rows)
        for needle in rnd.sample(range(60), 3):
            rows[needle] = min(max(0, rows[needle] + rnd.choice((-4, -2, -1, 1, 2, 3))), 110)
        judged = replay_plan(replan(design, replace(state, rows=tuple(rows))))
        assert [p for p in judged.problems if p.code != "level.uneven"] == []
        assert off(judged, 110) <= 6
        if off(judged, 110) > 2:
            assert judged.summary.uneven


def some_states(design: Design) -> list[State]:
    plan = plan_piece(design)
    return [state_at(plan, block.last_step + 1) for block in plan.blocks[:-1]]


def test_between_two_blocks_the_rest_costs_no_end_more() -> None:
    """The plan itself is one way to go on, so a best one from there has no more ends. Yarns on the mast are cut first."""
    design = diamond()
    plan = plan_piece(design)
    without_mast = [state for state in some_states(design) if not state.mast]
    assert len(without_mast) >= 3
    for state in without_mast:
        rest = replan(design, state)
        assert replay_plan(rest).problems == ()
        assert rest.summary.ends <= plan.summary.ends
        assert rest.summary.free_passes <= plan.summary.free_passes + 1


def test_the_last_state_leaves_only_the_closing_rows() -> None:
    design = diamond()
    rest = replan(design, some_states(design)[-1])
    assert [block.id for block in rest.blocks] == ["base-top"]
    assert replay_plan(rest).problems == ()


def test_a_plan_of_the_rest_can_be_planned_anew_itself() -> None:
    """Called away twice."""
    design = diamond()
    plan = plan_piece(design)
    first = replan(design, state_at(plan, 150))
    second = replan(design, state_at(first, 60))
    judged = replay_plan(second)
    assert judged.problems == ()
    assert off(judged, 96) <= 2
