"""Cues: one thing to do at a time, in the order in which a person does it."""

from __future__ import annotations

import itertools
import json
from dataclasses import replace

import pytest

from pieces import diamond, lopsided
from wedgework.bed import across
from wedgework.formats.design import Design, Machine
from wedgework.formats.plan import Block, Edges, Hold, Knit, Plan, Set, Start, Step, Summary, Thread, Work
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan
from wedgework.words import BedView, Cue, cue_value, cues, instructions
from wedgework.words.instructions import block_sections

PLANS = {
    "diamond": plan_piece(diamond()),
    "lopsided": plan_piece(lopsided()),
    "by hand": plan_piece(lopsided(step_style="by-hand")),
}


def by_hand(steps: list[Step], first: int, last: int, carriage: str = "R", block: str = "b1") -> Plan:
    """A plan of one block, of steps that a person wrote."""
    design: Design = diamond(24, 24)
    return Plan(
        design,
        first,
        last,
        Start(carriage, (first, last)),  # type: ignore[arg-type]
        Edges(base_rows_bottom=0, base_rows_top=0),
        (Block(block, "a", "", 0, len(steps) - 1),),
        tuple(steps),
        Summary(24, 24, 0, 0, 0, 0, 0),
    )


def test_the_taste_of_the_trade() -> None:
    """Several needles in one step: all but one away from the carriage, the last at its side."""
    steps: list[Step] = [Set("hold"), Thread("a")]
    steps += [Knit("L" if row % 2 else "R", row, "b1", row) for row in range(1, 25)]
    steps += [Hold((-15, -14)), Knit("L", 25, "b1", 25), Hold((-13,)), Knit("R", 26, "b1", 26)]
    _, _, third, fourth, *_ = cues(by_hand(steps, -15, 15))
    assert (third.where, third.before, third.knit) == (
        "COR. RC 024.",
        ("Opposite the carriage: L15, L14 to HP.", "Move the weights up, close to both ends of the needles that knit."),
        "Knit 1 row to the left.",
    )
    assert (fourth.where, fourth.before, fourth.knit) == (
        "COL. RC 025.",
        ("At the carriage: L13 to HP.",),
        "Knit 1 row to the right.",
    )
    assert fourth.check == "The yarn goes round L13 and over no other held needle."
    assert third.next == "Next: hold 1 needle at the carriage, knit 1 row."
    assert third.bed == BedView(-15, 15, ((-13, 15),), (), (), ((-15, -14),), "R", None, "a")


@pytest.mark.parametrize("plan", PLANS.values(), ids=PLANS.keys())
def test_every_step_is_in_one_cue_in_order(plan: Plan) -> None:
    covered = [step for cue in cues(plan) for step in range(cue.first_step, cue.last_step + 1)]
    assert covered == list(range(len(plan.steps)))


@pytest.mark.parametrize("plan", PLANS.values(), ids=PLANS.keys())
def test_cues_join_end_to_end(plan: Plan) -> None:
    found = cues(plan)
    for before, after in itertools.pairwise(found):
        assert before.row_after == after.row_before
        assert before.carriage_after == after.bed.carriage or after.kind == "block-change"
        if after.kind != "block-change" and before.kind not in ("start", "block-change"):
            assert before.counter_after == after.counter_before
    assert found[-1].row_after == sum(isinstance(step, Knit) for step in plan.steps)


@pytest.mark.parametrize("plan", PLANS.values(), ids=PLANS.keys())
def test_moves_are_named_and_agree_with_the_bed(plan: Plan) -> None:
    for cue in cues(plan):
        if cue.kind == "knit":
            moved = [step for step in plan.steps[cue.first_step : cue.last_step + 1] if isinstance(step, Hold | Work)]
            held = {n for step in moved if isinstance(step, Hold) for n in step.needles}
            returned = {n for step in moved if isinstance(step, Work) for n in step.needles}
            assert {n for run in cue.bed.holding for n in across(*run)} == held
            assert {n for run in cue.bed.returning for n in across(*run)} == returned
            assert bool(held) == any(" to HP." in words for words in cue.before)
            assert bool(returned) == any(" to UWP." in words for words in cue.before)


def test_kinds_of_the_diamond() -> None:
    found = cues(PLANS["diamond"])
    assert [cue.kind for cue in found[:3]] == ["start", "base", "block-change"]
    assert found[-1].kind == "end"
    assert sum(cue.kind == "block-change" for cue in found) == 6, "five blocks and the closing rows"
    assert {cue.kind for cue in found} == {"start", "base", "block-change", "knit", "end"}


def test_runs_are_counted() -> None:
    runs = [cue.run for cue in cues(PLANS["diamond"]) if cue.block == "b1" and cue.run]
    assert runs[0] == "1st of 22 times"
    assert runs[6] == "7th of 22 times"
    assert runs[-1] == "22nd of 22 times"


def test_a_pattern_of_several_steps_says_which() -> None:
    steps: list[Step] = [Set("hold"), Thread("a"), Knit("L", 1, "b1", 1)]
    row, needle = 1, -12
    for _ in range(3):
        for count in (1, 2):
            steps.append(Hold(tuple(range(needle, needle + count))))
            needle += count
            steps += [Knit("R", row + 1, "b1", row + 1), Knit("L", row + 2, "b1", row + 2)]
            row += 2
    runs = [cue.run for cue in cues(by_hand(steps, -12, 12)) if cue.kind == "knit"]
    assert runs == ["", *(f"{n} of 3 times, step {part} of 2" for n in ("1st", "2nd", "3rd") for part in (1, 2))]


def test_the_yarn_and_good_places_to_stop() -> None:
    found = cues(PLANS["diamond"])
    stops = [cue for cue in found if cue.good_to_stop]
    assert stops
    assert all(cue.kind in ("block-change", "end") for cue in stops)
    for cue in found:
        if cue.rows:
            assert cue.yarn_at == "feeder"
            assert cue.bed.yarn == cue.yarn


def test_the_start_goes_from_a_bare_bed_to_the_first_row() -> None:
    first = cues(PLANS["diamond"])[0]
    said = " ".join(first.before)
    assert "Bring L24 to R24 to WP: 48 needles." in said
    assert "Cast on 48 stitches with Chalk, closed edge, and end COR." in said
    assert first.before[-1] == "Counter to 000."


def test_the_end_takes_the_piece_off() -> None:
    found = cues(PLANS["diamond"])
    assert found[-2].next == "Next: take the piece off."
    assert found[-1].before[0] == "Take the weights off."
    assert "Bind off L24-R24 loosely." in found[-1].before
    assert found[-1].next == "Next: finishing."


def test_a_plan_without_binding_off_says_it_all_the_same() -> None:
    plan = by_hand([Thread("a"), Knit("L", 1, "b1", 1)], -3, 3)
    assert any("Bind off 6 stitches" in words for words in cues(plan)[-1].before)


def test_weights_are_moved_every_eight_to_ten_rows() -> None:
    rows = 0
    for cue in cues(PLANS["diamond"]):
        if cue.kind != "knit":
            rows = 0
        elif any(words.startswith("Move the weights up") for words in cue.before):
            assert 8 <= rows <= 10
            rows = 0
        rows += cue.rows
        assert rows <= 10


def test_the_value_is_plain_data() -> None:
    for cue in cues(PLANS["lopsided"]):
        value = cue_value(cue)
        assert json.loads(json.dumps(value)) == value
        assert set(value) == set(Cue.__dataclass_fields__)


def test_own_names_of_the_positions_are_used() -> None:
    design = diamond()
    own = Machine(position_names={"holding": "front"})
    plan = plan_piece(replace(design, bed=replace(design.bed, machine=own)))
    said = [words for cue in cues(plan) for words in (*cue.before, cue.check)]
    assert "At the carriage: R2 to front." in said
    assert not any("HP" in words for words in said)


def test_steps_in_a_wrong_order_are_still_covered_once() -> None:
    """Words are no judge: a plan with faults can be read too."""
    plan = PLANS["lopsided"]
    steps = (*plan.steps[40:90], *plan.steps[:40:-1], *plan.steps[::3])
    found = cues(replace(plan, steps=steps))
    covered = [step for cue in found for step in range(cue.first_step, cue.last_step + 1)]
    assert covered == list(range(len(steps)))


def test_a_cue_of_several_rows_can_be_opened_into_them() -> None:
    """Each row says where the carriage stands and which way it goes; together they are the cue."""
    for plan in PLANS.values():
        for cue in cues(plan):
            if cue.rows < 2:
                assert cue.passes == ()
                continue
            assert len(cue.passes) == cue.rows
            ways = ["right" if one.carriage == "L" else "left" for one in cue.passes]
            assert [one.knit for one in cue.passes] == [f"Knit 1 row to the {way}." for way in ways]
            assert all(a != b for a, b in itertools.pairwise(ways))
            counters = [one.where.split()[-1] for one in cue.passes]
            assert counters == [f"{n:03}." for n in range(cue.counter_before, cue.counter_after)]
            assert cue.passes[0].where.startswith("COL" if cue.to == "R" else "COR")
            assert cue.passes[0].beside == cue.bed.beside


@pytest.mark.parametrize("name", PLANS)
def test_the_cues_of_some_blocks_are_those_of_the_whole_piece(name: str) -> None:
    """Which of all stands before a block is another one then, so only the count differs; instructions alike."""
    plan = PLANS[name]
    blocks = {plan.blocks[0].id, plan.blocks[2].id, plan.blocks[3].id}
    some = cues(plan, blocks)
    assert [cue.index for cue in some] == list(range(len(some)))
    assert [replace(cue, index=0) for cue in some] == [replace(cue, index=0) for cue in cues(plan) if cue.block in blocks]
    judged = replay_plan(plan)
    wanted = [section for section in instructions(plan, judged).sections if section.key in blocks]
    assert block_sections(plan, judged, blocks) == wanted
