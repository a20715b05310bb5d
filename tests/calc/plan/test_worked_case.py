"""The worked case, needle by needle: a diamond between four corner triangles on 48 needles and 96 rows.

Common practice, counted by hand; the figures of the triangles and of the diamond are those of the trade: n changes in each
triangle, 2n - 2 or 2n - 1 passes in a lower one begun at its outer edge, one needle a row on alternate sides in the diamond.
"""

from __future__ import annotations

import itertools

import pytest

from pieces import diamond
from wedgework.bed import place
from wedgework.formats.plan import Free, Hold, Knit, Plan, Thread, Work
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan


@pytest.fixture(scope="module")
def plan() -> Plan:
    return plan_piece(diamond(48, 96))


def passes(plan: Plan, block: str) -> int:
    return sum(isinstance(step, Knit) and step.block == block for step in plan.steps)


def test_diamond_between_four_corner_triangles(plan: Plan) -> None:
    judged = replay_plan(plan)
    assert judged.problems == ()
    assert judged.sound
    assert (judged.rows_min, judged.rows_max) == (96, 96)
    assert judged.summary.slits == ()
    assert judged.summary.holes == ()
    assert judged.summary.floats == judged.summary.dropped == 0
    assert sum(judged.stitches.values()) == 48 * 96
    assert judged.summary.edge_stitches == {"a": 4 * 48}


def test_five_blocks_and_base_rows_around_them(plan: Plan) -> None:
    assert [b.yarn for b in plan.blocks] == ["a", "a", "a", "b", "a", "a", "a"]
    # Ids are counted from below, then from the left on the bed, whatever the order: the diamond's lowest turn lies between two
    # corners, its upper corners begin above.
    ids = [b.id for b in plan.blocks]
    assert (ids[0], set(ids[1:3]), ids[3], set(ids[4:6]), ids[6]) == ("base-bottom", {"b1", "b3"}, "b2", {"b4", "b5"}, "base-top")


def test_one_needle_a_change(plan: Plan) -> None:
    """Within the five blocks every movement is of one needle; only at their start and end do more move."""
    knitted: str | None = None
    for number, step in enumerate(plan.steps):
        following = plan.steps[number + 1] if number + 1 < len(plan.steps) else None
        if isinstance(step, Knit):
            knitted = step.block
        elif isinstance(step, Hold | Work) and isinstance(following, Knit) and following.block == knitted:
            assert len(step.needles) == 1
            assert knitted is not None


def test_lower_triangles_have_the_passes_of_the_trade(plan: Plan) -> None:
    # The drawing gives the diamond the two needles in the middle, so each triangle has n = 23 needles.
    assert {passes(plan, "b1"), passes(plan, "b3")} <= {2 * 23 - 2, 2 * 23 - 1}
    assert passes(plan, "b2") == 96


def test_the_diamond_grows_by_one_needle_a_row_on_alternate_sides(plan: Plan) -> None:
    block = next(b for b in plan.blocks if b.id == "b2")
    sides = [
        "L" if step.needles[0] < 0 else "R"
        for step in plan.steps[block.first_step : block.last_step + 1]
        if isinstance(step, Work) and len(step.needles) == 1
    ]
    assert len(sides) == 46
    assert all(a != b for a, b in itertools.pairwise(sides))


def test_no_pass_is_empty_and_none_goes_twice_the_same_way(plan: Plan) -> None:
    carriage = plan.start.carriage
    working = set(range(place(plan.first_needle), place(plan.last_needle) + 1))
    for step in plan.steps:
        if isinstance(step, Hold):
            working -= {place(n) for n in step.needles}
        elif isinstance(step, Work):
            working |= {place(n) for n in step.needles}
        elif isinstance(step, Knit | Free):
            assert step.to != carriage
            carriage = step.to
            assert bool(working) == isinstance(step, Knit)


def test_the_corners_begin_at_the_selvedge_and_only_the_diamond_inside(plan: Plan) -> None:
    inside = [step for step in plan.steps if isinstance(step, Thread) and step.around is not None]
    assert [step.yarn for step in inside] == ["b"]
    assert plan.summary.ends_inside == 2


@pytest.mark.parametrize(("needles", "rows"), [(40, 80), (48, 96), (60, 120), (90, 180), (20, 40)])
def test_every_diamond_of_one_needle_a_turn_is_exactly_level(needles: int, rows: int) -> None:
    judged = replay_plan(plan_piece(diamond(needles, rows)))
    assert judged.sound
    assert (judged.rows_min, judged.rows_max) == (rows, rows)
