"""The planner as a whole: what it writes out, what it refuses, tensions."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

import wedgework.plan.piece as planner
from pieces import diamond, drawn, piece
from wedgework.formats.design import Extent, Hem, Hems, Machine, NamedLayout, Options
from wedgework.formats.plan import BindOff, Cut, Knit, Set, Thread
from wedgework.plan import plan_piece
from wedgework.plan.order import best_order
from wedgework.problems import Refused
from wedgework.remembered import Remembered
from wedgework.replay import replay_plan


def test_the_plan_keeps_its_design_with_every_default_written_out() -> None:
    plan = plan_piece(diamond())
    assert isinstance(plan.design.layout, NamedLayout)
    assert plan.design.layout.parameters == {"diamond": "b", "corners": "a"}


def test_each_yarn_is_knitted_at_its_own_tension() -> None:
    design = diamond()
    yarns = (replace(design.yarns[0], tension=Fraction(7)), replace(design.yarns[1], tension=Fraction(15, 2)), design.yarns[2])
    plan = plan_piece(replace(design, yarns=yarns))
    after: list[tuple[str, Fraction]] = []
    yarn = ""
    for step in plan.steps:
        if isinstance(step, Thread):
            yarn = step.yarn
        elif isinstance(step, Set) and step.tension is not None:
            after.append((yarn, step.tension))
    assert after == [("a", Fraction(7)), ("b", Fraction(15, 2)), ("a", Fraction(7))]
    assert replay_plan(plan).sound


def test_it_ends_bound_off_and_cut() -> None:
    assert [type(step) for step in plan_piece(diamond()).steps[-2:]] == [BindOff, Cut]


def test_without_base_rows_the_first_block_begins_at_once() -> None:
    plan = plan_piece(diamond(base_rows_bottom=0, base_rows_top=0))
    assert plan.blocks[0].yarn == "a"
    assert plan.blocks[0].first_step == 0
    assert replay_plan(plan).sound


def test_base_rows_of_another_yarn_are_a_stripe_of_their_own() -> None:
    plan = plan_piece(diamond(base_yarn_bottom="c", base_rows_bottom=6))
    judged = replay_plan(plan)
    assert judged.sound
    assert judged.piece.base_below == (("c", 6),)
    assert judged.summary.edge_stitches == {"c": 6 * 48, "a": 2 * 48}


def test_an_odd_number_of_base_rows_leaves_the_carriage_on_the_other_side() -> None:
    plan = plan_piece(diamond(base_rows_bottom=3, start_side="R"))
    first = next(step for step in plan.steps if isinstance(step, Knit) and step.block == "b1")
    assert first.to == "R"
    assert replay_plan(plan).sound


def test_everything_in_the_way_is_said_at_once() -> None:
    design = replace(
        piece(drawn("q", ("a", [(0, 0), (1, 1), (1, 0), (0, 1)])), 300, 40, bed=200),
        hems=Hems(bottom=Hem("plain", Extent(count=8))),
        options=Options(base_yarn_top="nobody", base_rows_bottom=0),
    )
    machine = Machine(tension_min=Fraction(9), tension_max=Fraction(2))
    with pytest.raises(Refused) as refused:
        plan_piece(replace(design, bed=replace(design.bed, machine=machine)))
    assert {p.where for p in refused.value.problems} == {
        "layout.background",
        "layout.shapes[0].points",
        "panel.width",
        "options.base_yarn_top",
        "options.base_rows_bottom",
        "bed.machine.tension_min",
    }


def test_a_tension_that_the_dial_does_not_have() -> None:
    design = diamond()
    with pytest.raises(Refused) as refused:
        plan_piece(replace(design, yarns=(replace(design.yarns[0], tension=Fraction(12)), *design.yarns[1:])))
    assert [p.where for p in refused.value.problems] == ["yarns[0].tension"]


def test_the_same_design_gives_the_same_plan() -> None:
    assert plan_piece(diamond()) == plan_piece(diamond())


def test_the_order_is_searched_again_only_where_something_of_it_has_changed(monkeypatch: pytest.MonkeyPatch) -> None:
    searches = []
    monkeypatch.setattr(planner, "best_order", lambda *asked: searches.append(asked) or best_order(*asked))
    monkeypatch.setattr(planner, "_searched", Remembered(3))
    design = diamond()
    first = plan_piece(design)
    named = replace(design.yarns[1], name="Other", colour="#123456", tension=Fraction(6))
    again = plan_piece(replace(design, title="Another title", yarns=(design.yarns[0], named, *design.yarns[2:])))
    assert len(searches) == 1
    assert [block.id for block in again.blocks] == [block.id for block in first.blocks]
    assert again.design.title == "Another title"
    assert any("Other" in block.name for block in again.blocks)
    other_side = plan_piece(replace(design, options=replace(design.options, start_side="L")))
    assert len(searches) == 2
    assert other_side == plan_piece(replace(design, options=replace(design.options, start_side="L")))
    assert plan_piece(design) == first
    assert len(searches) == 2
