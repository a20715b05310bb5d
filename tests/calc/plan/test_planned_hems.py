"""Hems as steps: what is knitted in which order, in which yarn, at which tension, and where the carriage goes on."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from pieces import diamond, hemmed, piece
from wedgework.formats import read_plan, steps_digest, write_plan
from wedgework.formats.design import Design, DrawnLayout, Extent, Hem, Hems
from wedgework.formats.plan import BindOff, Cut, Hang, Knit, Plan, Remind, Set, Step, Thread, Transfer, Waste, is_edge, is_hem
from wedgework.plan import plan_piece, replan
from wedgework.problems import Refused
from wedgework.replay import replay_plan, state_at

Told = list[str | int]


def _short(step: Step, before: Told) -> str | int:
    if isinstance(step, Knit):
        if before and isinstance(before[-1], int):
            before[-1] += 1
            return ""
        return 1
    if isinstance(step, Transfer):
        if before and isinstance(before[-1], str) and before[-1].startswith("transfer"):
            before[-1] += "+"
            return ""
        return "transfer"
    if isinstance(step, Set):
        return f"T{step.tension}" if step.tension is not None else f"lever {step.hold_lever}"
    words = {Waste: "waste", Thread: "thread", Hang: "hang", BindOff: "off", Cut: "cut"}
    return step.about if isinstance(step, Remind) else words[type(step)]


BOTTOM, TOP = ("hem-bottom-facing", "hem-bottom"), ("hem-top", "hem-top-facing", "hem-top-facing-close")


def sequence(plan: Plan, *blocks: str) -> Told:
    """The steps of these blocks in short: rows as a number, a plus for each transfer after the first."""
    found: Told = []
    for block in plan.blocks:
        if block.id in blocks:
            for step in plan.steps[block.first_step : block.last_step + 1]:
                short = _short(step, found)
                if short != "":
                    found.append(short)
    return found


def test_a_plain_hem_at_the_bottom() -> None:
    plan = plan_piece(hemmed(diamond(), bottom="plain", rows=8))
    assert plan.edges.cast_on == "waste"
    assert sequence(plan, *BOTTOM) == ["waste", "thread", "T6", 8, "hem-fold", "T10", 1, "T7", 8, "hang"]
    assert sequence(plan, "base-bottom") == ["lever knit", 2]


def test_a_plain_hem_at_the_top_is_the_other_way_round() -> None:
    plan = plan_piece(hemmed(diamond(), top="plain", rows=8))
    assert plan.edges.cast_on == "closed"
    assert sequence(plan, *TOP) == ["hem-mark", 8, "hem-fold", "T10", 1, "T6", 8, "hang", "T9", 1, "off", "cut"]


def test_picot_hems_move_every_second_stitch_and_have_no_loose_row() -> None:
    plan = plan_piece(hemmed(diamond(12, 24), bottom="picot", top="picot"))
    assert sequence(plan, *BOTTOM) == ["waste", "thread", "T6", 4, "transfer++++", "T7", 4, "hang"]
    assert sequence(plan, *TOP) == ["hem-mark", 4, "transfer++++", "T6", 4, "hang", "T9", 1, "off", "cut"]
    moves = [(step.from_needle, step.to_needle) for step in plan.steps if isinstance(step, Transfer)]
    assert moves == [(-5, -6), (-3, -4), (-1, -2), (2, 1), (4, 3)] * 2, "of an even number the last two stay"


def test_an_odd_number_of_stitches_keeps_one_at_each_end() -> None:
    plan = plan_piece(hemmed(piece(diamond().layout, 13, 26), bottom="picot"))
    moves = [step.from_needle for step in plan.steps if isinstance(step, Transfer)]
    assert moves == [-5, -3, -1, 2, 4, 6]
    assert plan.last_needle == 7


def test_without_tensions_the_steps_only_remind() -> None:
    plan = plan_piece(hemmed(diamond(), tension=None, bottom="plain", top="plain"))
    assert not any(isinstance(step, Set) and step.tension is not None for step in plan.steps)
    assert sequence(plan, *BOTTOM) == ["waste", "thread", "hem-tighter", 4, "hem-fold-loose", 1, "hem-back", 4, "hang"]
    assert sequence(plan, *TOP) == ["hem-mark", 4, "hem-fold-loose", 1, "hem-tighter", 4, "hang", "hem-loose", 1, "off", "cut"]


@pytest.mark.parametrize("tension", [0, 10])
def test_where_the_dial_ends_it_is_not_turned_further(tension: int) -> None:
    plan = plan_piece(hemmed(diamond(), tension=tension, bottom="plain", top="plain"))
    dial = [step.tension for step in plan.steps if isinstance(step, Set) and step.tension is not None]
    assert all(0 <= number <= 10 for number in dial)
    assert replay_plan(plan).problems == ()


@pytest.mark.parametrize("side", ["L", "R"])
@pytest.mark.parametrize(("kind", "base"), [("plain", 2), ("plain", 3), ("picot", 2), ("picot", 3)])
def test_the_side_at_the_first_block_follows_from_all_rows_before_it(kind: str, base: int, side: str) -> None:
    plan = plan_piece(hemmed(diamond(base_rows_bottom=base, start_side=side), bottom=kind))
    before = next(step.row for step in plan.steps if isinstance(step, Knit) and not is_edge(step.block)) - 1
    first = next(step for step in plan.steps if isinstance(step, Knit) and step.row == before + 1)
    assert before == 4 + 4 + (kind == "plain") + base
    stands = side if before % 2 == 0 else "L" if side == "R" else "R"
    assert first.to != stands
    assert replay_plan(plan).problems == ()


def test_a_hem_has_the_yarn_of_the_rows_beside_it() -> None:
    plan = plan_piece(hemmed(diamond(base_yarn_bottom="c"), bottom="plain", top="plain"))
    assert {block.yarn for block in plan.blocks if block.id in BOTTOM} == {"c"}
    assert {block.yarn for block in plan.blocks if block.id in TOP} == {plan.edges.base_yarn_top}
    found = replay_plan(plan).summary.edge_stitches
    assert found == {"c": 48 * (4 + 1 + 4 + 2), plan.edges.base_yarn_top: 48 * (2 + 4 + 1 + 4 + 1)}
    assert sum(isinstance(step, Thread) and step.yarn == "c" for step in plan.steps) == 1, "the hem costs no end"


def test_what_a_hem_adds_is_its_outside() -> None:
    judged = replay_plan(plan_piece(hemmed(diamond(), bottom="picot", top="plain", rows=6)))
    assert judged.problems == ()
    assert judged.piece.hem_below == judged.piece.hem_above == (("a", 6),)
    assert (judged.piece.rows_below, judged.piece.rows_above) == (2 + 6, 2 + 6)
    assert judged.summary.rows_max == 96, "rows of the picture are counted apart"


def test_side_hems_are_no_steps() -> None:
    plain, sides = plan_piece(hemmed(diamond())), plan_piece(hemmed(diamond(), sides="picot"))
    assert steps_digest(plain.steps) == steps_digest(sides.steps)


def test_a_design_without_hems_is_planned_as_before() -> None:
    """No step of hems in it, the cast-on closed."""
    plan = plan_piece(diamond())
    assert plan.edges.cast_on == "closed"
    assert not any(isinstance(step, Waste | Hang | Transfer | Remind) for step in plan.steps)


def refused(design: Design) -> list[tuple[str, str]]:
    with pytest.raises(Refused) as found:
        plan_piece(design)
    return [(problem.where, problem.code) for problem in found.value.problems]


def test_a_hem_needs_rows_to_be_joined_to() -> None:
    bare = diamond(base_rows_bottom=0, base_rows_top=0)
    assert refused(hemmed(bare, bottom="plain", top="picot")) == [
        ("options.base_rows_bottom", "plan.hem-without-rows"),
        ("options.base_rows_top", "plan.hem-without-rows"),
    ]


def test_a_picot_fold_needs_three_stitches() -> None:
    narrow = piece(DrawnLayout("a"), 2, 10)
    assert refused(hemmed(narrow, bottom="picot")) == [("hems.bottom", "plan.hem-narrow")]
    assert replay_plan(plan_piece(hemmed(narrow, bottom="plain"))).problems == ()


def test_a_depth_in_mm() -> None:
    design = replace(diamond(), hems=Hems(bottom=Hem("plain", Extent(mm=Fraction(42)))))
    assert replay_plan(plan_piece(design)).piece.hem_below == (("a", 8),)


def test_a_plan_with_hems_is_written_and_read() -> None:
    plan = plan_piece(hemmed(diamond(), bottom="picot", top="plain"))
    again = read_plan(write_plan(plan))
    assert again == plan
    assert replay_plan(again).problems == ()


@pytest.mark.parametrize("kind", ["plain", "picot"])
def test_a_piece_carried_on_has_its_bottom_hem_behind_it_and_its_top_hem_before_it(kind: str) -> None:
    design = hemmed(diamond(), bottom=kind, top=kind)
    plan = plan_piece(design)
    picture = [block for block in plan.blocks if not is_edge(block.id)]
    for at in (picture[0].last_step, (picture[2].first_step + picture[2].last_step) // 2, picture[-1].last_step):
        rest = replan(design, state_at(plan, at))
        judged = replay_plan(rest)
        assert judged.problems == ()
        assert not {"steps.open-on-waste", "steps.left-on"} & {w.code for w in judged.warnings}
        assert [block.id for block in rest.blocks if is_hem(block.id)] == list(TOP)
        assert not any(isinstance(step, Waste) for step in rest.steps)
