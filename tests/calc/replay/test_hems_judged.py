"""Hems on the model bed: loops that are moved, hung and closed; broken copies of good hems, all refused for the right reason."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from pieces import diamond, drawn, hemmed, piece
from wedgework.formats.design import Extent, Hem, HemKind, Hems
from wedgework.formats.plan import (
    BindOff,
    Block,
    CastOn,
    Cut,
    Edges,
    Hang,
    Hold,
    Knit,
    Plan,
    Set,
    Start,
    Step,
    Summary,
    Thread,
    Transfer,
    Waste,
)
from wedgework.plan import plan_piece
from wedgework.replay import Replay, replay_plan

ALL = (-3, -2, -1, 1, 2, 3)


def by_hand(*steps: Step, cast_on: str = "closed") -> Replay:
    """Four rows of one block on L3 ... R3, with these steps among them; the figures are made true."""
    plan = Plan(
        piece(drawn("a"), 6, 4),
        -3,
        3,
        Start("R", (-3, 3)),
        Edges(cast_on, base_rows_bottom=0, base_rows_top=0),  # type: ignore[arg-type]
        (Block("b1", "a", "", 0, len(steps) - 1),),
        steps,
        Summary(0, 0, 0, 0, 0, 0, 0),
    )
    return replay_plan(replace(plan, summary=replay_plan(plan).summary))


def codes(*steps: Step) -> list[str]:
    return [p.code.removeprefix("steps.") for p in by_hand(*steps).problems]


def rows(first: int, last: int) -> list[Step]:
    return [Knit("L" if row % 2 else "R", row, "b1", row) for row in range(first, last + 1)]


def end() -> tuple[Step, Step]:
    return BindOff(ALL), Cut()


def test_a_needle_knits_two_loops_and_no_third() -> None:
    assert codes(Thread("a"), *rows(1, 2), Hang(ALL), *rows(3, 4), *end()) == []
    assert codes(Thread("a"), *rows(1, 2), Hang(ALL), Hang((1,)), *rows(3, 4), *end()) == ["too-many-loops"]
    three = codes(Thread("a"), *rows(1, 2), Transfer(-1, 1), Transfer(2, 1), *rows(3, 4), *end())
    assert three == ["too-many-loops"]


def test_a_loop_goes_to_a_neighbour_only() -> None:
    assert codes(Thread("a"), *rows(1, 2), Transfer(-2, 1), *rows(3, 4), *end()) == ["not-neighbours"]
    assert codes(Thread("a"), *rows(1, 2), Transfer(-1, 1), *rows(3, 4), *end()) == [], "across the middle they are neighbours"


def test_two_needles_emptied_side_by_side_make_no_stitches() -> None:
    moves = [Transfer(-1, -2), Transfer(1, 2)]
    assert codes(Thread("a"), *rows(1, 2), *moves, *rows(3, 4), *end()) == ["empty-together"]
    filled = [*moves[:1], *rows(3, 3), *moves[1:], *rows(4, 4)]
    assert codes(Thread("a"), *rows(1, 2), *filled, *end()) == [], "a row between them"


def test_nothing_is_hung_before_there_is_a_row_or_on_an_empty_needle() -> None:
    assert codes(Thread("a"), Hang(ALL), *rows(1, 4), *end()) == ["nothing-to-hang"]
    assert codes(Thread("a"), *rows(1, 2), Transfer(-2, -3), Hang((-2,)), *rows(3, 4), *end()) == ["no-loop"]


def test_waste_yarn_goes_over_every_needle() -> None:
    assert codes(Set("hold"), Hold((2, 3)), Waste(8), Thread("a"), Set("knit"), *rows(1, 4), *end()) == ["waste-held"]
    assert codes(BindOff((3,)), Waste(8), CastOn((3,)), Thread("a"), *rows(1, 4), *end())[-1] == "no-loop"


def test_a_first_row_left_open_on_waste_yarn_is_told() -> None:
    judged = by_hand(Waste(8), Thread("a"), *rows(1, 4), *end(), cast_on="waste")
    assert judged.problems == ()
    (warning,) = [w for w in judged.warnings if w.code == "steps.open-on-waste"]
    assert warning.sentence.startswith("6 loops of the first row")
    assert "steps.open-on-waste" not in {w.code for w in by_hand(Thread("a"), *rows(1, 4), *end()).warnings}


def test_a_planned_hem_leaves_nothing_open() -> None:
    for kind in ("plain", "picot"):
        judged = replay_plan(plan_piece(hemmed(diamond(), bottom=kind, top=kind)))
        assert judged.sound
        assert not {"steps.open-on-waste", "steps.left-on"} & {w.code for w in judged.warnings}


# --- broken copies ------------------------------------------------------------------------------------------------

PLANS = {kind: plan_piece(hemmed(diamond(), rows=6, bottom=kind, top=kind)) for kind in ("plain", "picot")}


def with_steps(plan: Plan, change: Callable[[list[Step]], list[Step]], *blocks: str) -> Plan:
    """Other steps in these blocks; blocks, counts and the summary are put right, so that only the hem itself is wrong."""
    steps: list[Step] = []
    found: list[Block] = []
    for block in plan.blocks:
        own = list(plan.steps[block.first_step : block.last_step + 1])
        own = change(own) if block.id in blocks else own
        found.append(replace(block, first_step=len(steps), last_step=len(steps) + len(own) - 1))
        steps += own
    row, in_block = 0, dict[str, int]()
    for i, step in enumerate(steps):
        if isinstance(step, Knit):
            row, in_block[step.block] = row + 1, in_block.get(step.block, 0) + 1
            steps[i] = replace(step, row=row, block_row=in_block[step.block])
    broken = replace(plan, steps=tuple(steps), blocks=tuple(found))
    return replace(broken, summary=replay_plan(broken).summary)


def without(kind: type, nth: int = 0) -> Callable[[list[Step]], list[Step]]:
    def change(steps: list[Step]) -> list[Step]:
        at = [i for i, step in enumerate(steps) if isinstance(step, kind)]
        return [step for i, step in enumerate(steps) if i != at[nth]]

    return change


def two_rows_fewer(steps: list[Step]) -> list[Step]:
    at = [i for i, step in enumerate(steps) if isinstance(step, Knit)][-2:]
    return [step for i, step in enumerate(steps) if i not in at]


def one_loop_missed(steps: list[Step]) -> list[Step]:
    return [Hang(step.needles[:-1]) if isinstance(step, Hang) else step for step in steps]


def hung_twice(steps: list[Step]) -> list[Step]:
    return [one for step in steps for one in ((step, step) if isinstance(step, Hang) else (step,))]


def some_held(steps: list[Step]) -> list[Step]:
    return [Set("hold"), Hold((1, 2, 3)), *steps, Set("knit")]


def one_more_moved(steps: list[Step]) -> list[Step]:
    """The needle between two that are emptied already; its loop goes to the left as theirs."""
    at = next(i for i, step in enumerate(steps) if isinstance(step, Transfer))
    first = steps[at]
    assert isinstance(first, Transfer)
    return [*steps[:at], Transfer(first.from_needle + 1, first.from_needle), *steps[at:]]


def tension_left(steps: list[Step]) -> list[Step]:
    return [step for step in steps if not (isinstance(step, Set) and step.tension is not None)]


FACING, OUTSIDE, CLOSE = "hem-bottom-facing", "hem-bottom", "hem-top-facing-close"
BREAKS: dict[str, tuple[str, str, Callable[[list[Step]], list[Step]], str]] = {
    "nothing hung": ("plain", OUTSIDE, without(Hang), "hem.open"),
    "nothing hung at the top": ("picot", CLOSE, without(Hang), "hem.open"),
    "a loop missed": ("plain", OUTSIDE, one_loop_missed, "hem.open"),
    "a loop missed at the top": ("plain", CLOSE, one_loop_missed, "hem.open"),
    "hung twice": ("plain", OUTSIDE, hung_twice, "steps.too-many-loops"),
    "an outside too short": ("plain", OUTSIDE, two_rows_fewer, "hem.depth"),
    "a facing too short": ("picot", FACING, two_rows_fewer, "hem.facing"),
    "a facing too short at the top": ("plain", "hem-top-facing", two_rows_fewer, "hem.facing"),
    "needles left out": ("plain", OUTSIDE, some_held, "hem.short"),
    "an eyelet missing": ("picot", OUTSIDE, without(Transfer, 3), "hem.eyelets"),
    "two emptied together": ("picot", OUTSIDE, one_more_moved, "steps.too-many-loops"),
    "the dial left loose": ("plain", OUTSIDE, tension_left, "steps.tension-left"),
    "the dial left loose at the top": ("plain", "hem-top-facing", without(Set, 1), "hem.fold"),
    "a fold that is not loose": ("plain", FACING, without(Set, 1), "hem.fold"),
    "the dial left tight": ("picot", OUTSIDE, tension_left, "steps.tension-left"),
}


@pytest.mark.parametrize("name", BREAKS)
def test_a_broken_hem_is_refused_for_the_right_reason(name: str) -> None:
    kind, block, change, code = BREAKS[name]
    assert replay_plan(PLANS[kind]).problems == ()
    judged = replay_plan(with_steps(PLANS[kind], change, block))
    assert not judged.sound
    assert code in {p.code for p in judged.problems}


def test_a_copy_with_nothing_changed_is_sound() -> None:
    assert replay_plan(with_steps(PLANS["picot"], list, OUTSIDE)).sound


def test_a_hem_that_the_design_wants_and_the_plan_does_not_have() -> None:
    plan = plan_piece(diamond())
    wanted = replace(plan, design=replace(plan.design, hems=Hems(top=Hem("plain", Extent(count=4)))))
    assert [(p.where, p.code) for p in replay_plan(wanted).problems] == [("design.hems.top", "hem.missing")]


@pytest.mark.parametrize(("kind", "rows", "code"), [("picot", 6, "hem.eyelets"), ("plain", 9, "hem.depth")])
def test_a_hem_of_another_kind_or_depth_than_the_design_wants(kind: HemKind, rows: int, code: str) -> None:
    asked = Hem(kind, Extent(count=rows))
    plan = PLANS["plain"]
    other = replace(plan, design=replace(plan.design, hems=replace(plan.design.hems, bottom=asked)))
    assert code in {p.code for p in replay_plan(other).problems}


def test_more_hems_than_the_design_wants_are_no_fault() -> None:
    """A plan written by hand may have one; its figures are counted like all others."""
    plan = PLANS["plain"]
    judged = replay_plan(replace(plan, design=replace(plan.design, hems=Hems())))
    assert judged.problems == ()
    assert sum(judged.summary.edge_stitches.values()) == sum(
        48 for step in plan.steps if isinstance(step, Knit) and step.block.startswith(("base", "hem"))
    )
