"""The checker is checked: broken copies of good plans, each broken in one way, are all refused, and for the right reason."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from pieces import diamond, lopsided, mirrored
from wedgework.formats.design import DrawnLayout
from wedgework.formats.plan import Cut, Free, Hold, Knit, Plan, Step, Thread, Work
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan


def with_steps(plan: Plan, steps: list[Step]) -> Plan:
    """The plan with other steps and blocks moved along, so that only the steps themselves are wrong."""
    moved = len(steps) - len(plan.steps)
    if not moved:
        return replace(plan, steps=tuple(steps))
    at = next(i for i, (a, b) in enumerate(zip(plan.steps, [*steps, None], strict=False)) if a is not b)
    blocks = tuple(
        replace(
            block,
            first_step=block.first_step + (moved if block.first_step > at else 0),
            last_step=block.last_step + (moved if block.last_step >= at else 0),
        )
        for block in plan.blocks
    )
    return replace(plan, steps=tuple(steps), blocks=blocks)


def first(plan: Plan, kind: type, after: int = 0) -> int:
    return next(i for i, step in enumerate(plan.steps) if isinstance(step, kind) and i >= after)


def third_block(plan: Plan) -> int:
    return plan.blocks[3].first_step


def a_pass_twice_the_same_way(plan: Plan) -> Plan:
    steps = list(plan.steps)
    at = first(plan, Knit, third_block(plan) + 6)
    step = steps[at]
    assert isinstance(step, Knit)
    steps[at] = replace(step, to="L" if step.to == "R" else "R")
    return with_steps(plan, steps)


def a_hold_lost(plan: Plan) -> Plan:
    steps = list(plan.steps)
    at = next(i for i, s in enumerate(steps) if isinstance(s, Hold) and len(s.needles) == 1)
    del steps[at]
    return with_steps(plan, steps)


def a_yarn_exchanged(plan: Plan) -> Plan:
    steps = list(plan.steps)
    at = first(plan, Thread, third_block(plan))
    step = steps[at]
    assert isinstance(step, Thread)
    steps[at] = replace(step, yarn="c")
    return with_steps(plan, steps)


def a_yarn_exchanged_everywhere(plan: Plan) -> Plan:
    """Threaded and declared alike: only the picture tells."""
    broken = a_yarn_exchanged(plan)
    block = next(b for b in broken.blocks if b.first_step == third_block(plan))
    stitches = dict(broken.summary.stitches)
    moved = replay_plan(plan).block_stitches[block.id]
    stitches[block.yarn] -= moved
    stitches["c"] = stitches.get("c", 0) + moved
    return replace(
        broken,
        blocks=tuple(replace(b, yarn="c") if b.id == block.id else b for b in broken.blocks),
        summary=replace(broken.summary, stitches=stitches),
    )


def rows_gone(plan: Plan) -> Plan:
    """Four passes of the last block are missing, the counts of all others put right."""
    last = plan.blocks[-2]
    gone = [i for i, s in enumerate(plan.steps) if isinstance(s, Knit) and s.block == last.id][-4:]
    steps: list[Step] = []
    for i, step in enumerate(plan.steps):
        if i in gone:
            continue
        steps.append(replace(step, row=step.row - 4) if isinstance(step, Knit) and i > gone[-1] else step)
    return with_steps(plan, steps)


def a_cut_gone(plan: Plan) -> Plan:
    steps = list(plan.steps)
    del steps[first(plan, Cut)]
    return with_steps(plan, steps)


def a_yarn_carried_across(plan: Plan) -> Plan:
    """A cut and the new start after it are both missing: the yarn would lie across half the bed."""
    at = first(plan, Cut, plan.blocks[2].first_step)
    thread = first(plan, Thread, at)
    return with_steps(plan, [step for i, step in enumerate(plan.steps) if i not in (at, thread)])


def a_free_pass_over_stitches(plan: Plan) -> Plan:
    steps = list(plan.steps)
    at = first(plan, Free) if any(isinstance(s, Free) for s in steps) else first(plan, Cut)
    hold = max(i for i, s in enumerate(steps[:at]) if isinstance(s, Hold))
    step = steps[hold]
    assert isinstance(step, Hold)
    if len(step.needles) > 1:
        steps[hold] = replace(step, needles=step.needles[1:])
    else:
        del steps[hold]
    return with_steps(plan, steps)


def a_false_summary(plan: Plan) -> Plan:
    return replace(plan, summary=replace(plan.summary, ends=plan.summary.ends - 1))


def a_hidden_slit(plan: Plan) -> Plan:
    return replace(plan, summary=replace(plan.summary, steepest_fold=0))


def a_needle_returned_at_the_carriage(plan: Plan) -> Plan:
    """Two returns of a widening block change places in time, so that each falls on the wrong side."""
    block = plan.blocks[3]
    at = [i for i in range(block.first_step + 4, block.last_step) if isinstance(plan.steps[i], Work)][:2]
    steps = list(plan.steps)
    steps[at[0]], steps[at[1]] = steps[at[1]], steps[at[0]]
    return with_steps(plan, steps)


def an_empty_pass(plan: Plan) -> Plan:
    steps = list(plan.steps)
    at = third_block(plan)
    while not isinstance(steps[at], Work):
        at += 1
    del steps[at]
    return with_steps(plan, steps)


def other_needles(plan: Plan) -> Plan:
    return replace(plan, design=replace(plan.design, options=replace(plan.design.options, shift_needles=5)))


def a_block_that_claims_too_much(plan: Plan) -> Plan:
    blocks = list(plan.blocks)
    blocks[2] = replace(blocks[2], last_step=blocks[2].last_step + 3)
    return replace(plan, blocks=tuple(blocks))


BREAKS: dict[Callable[[Plan], Plan], str] = {
    a_pass_twice_the_same_way: "steps.same-way",
    a_hold_lost: "steps.not-held",
    a_yarn_exchanged: "steps.wrong-yarn",
    a_yarn_exchanged_everywhere: "picture.differs",
    rows_gone: "level.uneven",
    a_cut_gone: "steps.feeder-full",
    a_yarn_carried_across: "steps.float",
    a_free_pass_over_stitches: "steps.dropped",
    a_false_summary: "summary.false",
    a_hidden_slit: "summary.false",
    a_needle_returned_at_the_carriage: "steps.returned-at-carriage",
    an_empty_pass: "steps.empty-pass",
    other_needles: "steps.other-needles",
    a_block_that_claims_too_much: "steps.block-order",
}


@pytest.mark.parametrize("make", [diamond, lopsided], ids=["diamond", "lopsided"])
@pytest.mark.parametrize("broken", BREAKS, ids=lambda f: f.__name__)
def test_a_broken_copy_is_refused(make: Callable[[], object], broken: Callable[[Plan], Plan]) -> None:
    plan = plan_piece(make())  # type: ignore[arg-type]
    assert replay_plan(plan).problems == ()
    judged = replay_plan(broken(plan))
    assert not judged.sound
    assert judged.problems


@pytest.mark.parametrize("broken", BREAKS, ids=lambda f: f.__name__)
def test_and_for_the_right_reason(broken: Callable[[Plan], Plan]) -> None:
    codes = {p.code for p in replay_plan(broken(plan_piece(diamond()))).problems}
    assert BREAKS[broken] in codes


def test_the_mirror_image_of_a_lopsided_picture_is_refused() -> None:
    """Every step is legal and every figure true; but it is the other way round."""
    plan = plan_piece(lopsided())
    assert isinstance(plan.design.layout, DrawnLayout)
    turned = replace(plan, design=replace(plan.design, layout=mirrored(plan.design.layout)))
    assert [p.code for p in replay_plan(turned).problems] == ["picture.differs"]
