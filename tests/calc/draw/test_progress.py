"""The front in numbers: each stitch of the finished piece once, and at each row exactly what is knitted by then."""

from __future__ import annotations

import json

import pytest

from pieces import diamond, hemmed, lopsided
from wedgework.draw.progress import progress_value
from wedgework.formats.plan import Knit, Plan
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan

PLANS = {"diamond": plan_piece(diamond()), "lopsided": plan_piece(lopsided())}


def value_of(plan: Plan):
    return progress_value(plan, replay_plan(plan))


@pytest.mark.parametrize("plan", PLANS.values(), ids=PLANS.keys())
def test_every_stitch_stands_once_without_a_gap(plan: Plan) -> None:
    value = value_of(plan)
    across, high = value["box"]
    tops = [0] * across
    stacks = sorted(stack for part in value["parts"] for stack in part["columns"])
    for column, low, rows, _, _ in stacks:
        assert low == tops[column], "each stands on what is below it"
        tops[column] += rows
    assert max(tops) == high
    assert sum(tops) == sum(replay_plan(plan).block_stitches.values())


@pytest.mark.parametrize("kind", ["plain", "picot"])
def test_of_a_hem_only_the_outside_is_seen(kind: str) -> None:
    plan = plan_piece(hemmed(diamond(20, 40), bottom=kind, top=kind, rows=6))
    value = value_of(plan)
    assert {part["block"] for part in value["parts"] if part["block"].startswith("hem")} == {"hem-bottom", "hem-top"}
    assert value["box"][1] == replay_plan(plan).rows_max + 2 * (6 + 2)
    tops = [0] * value["box"][0]
    for column, low, rows, _, _ in sorted(stack for part in value["parts"] for stack in part["columns"]):
        assert low == tops[column]
        tops[column] += rows


@pytest.mark.parametrize("plan", PLANS.values(), ids=PLANS.keys())
def test_a_stitch_belongs_to_a_row_of_its_own_block(plan: Plan) -> None:
    block_of = {step.row: step.block for step in plan.steps if isinstance(step, Knit)}
    for part in value_of(plan)["parts"]:
        for _, _, rows, first, last in part["columns"]:
            assert block_of[first] == block_of[last] == part["block"]
            assert last - first + 1 >= rows


@pytest.mark.parametrize("plan", PLANS.values(), ids=PLANS.keys())
def test_the_outline_holds_its_stitches(plan: Plan) -> None:
    """The area inside the closed lines (shoelace) is the number of stitches."""
    for part in value_of(plan)["parts"]:
        area = 0
        for loop in part["outline"]:
            area += sum(x * next_y - next_x * y for (x, y), (next_x, next_y) in zip(loop, loop[1:] + loop[:1], strict=True))
        assert area == 2 * sum(rows for _, _, rows, _, _ in part["columns"])


def test_the_front_is_the_mirror_image_of_the_bed() -> None:
    plan = PLANS["lopsided"]
    columns = replay_plan(plan).piece.columns
    value = value_of(plan)
    seen = {(stack[0], part["block"]) for part in value["parts"] for stack in part["columns"] if part["number"]}
    assert seen == {(len(columns) - 1 - at, run.block) for at, runs in enumerate(columns) for run in runs}
    assert json.loads(json.dumps(value)) == value
