"""New balls: what lies between two of them fits on one, each is joined at an edge, and the model bed agrees with the plan."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from pieces import diamond, lopsided, piece
from wedgework.calculators import panel_plan
from wedgework.declare import work_out
from wedgework.declare.calculator import read_all
from wedgework.formats import read_plan, write_plan
from wedgework.formats.design import Design, NamedLayout
from wedgework.formats.plan import Cut, Join, Knit, Plan, Thread, Wrap
from wedgework.plan import plan_piece, replan
from wedgework.replay import replay_plan, state_at
from wedgework.words import cues
from wedgework.yarn.balls import ball_mm, with_new_balls
from wedgework.yarn.laid import lay
from wedgework.yarn.needs import planned_measures, planned_needs
from wedgework.yarn.path import path_of


def with_balls(design: Design, grams: int, rate: Fraction = Fraction(6, 5)) -> Design:
    return replace(design, yarns=tuple(replace(yarn, ball_g=Fraction(grams), metres_per_gram=rate) for yarn in design.yarns))


DESIGNS = {
    "diamond": diamond(60, 120),
    "harbour": lopsided(),
    "bands": piece(NamedLayout("chevron-bands"), 100, 160),
    "steps": piece(NamedLayout("steps"), 100, 160),
}


def stretches(plan: Plan) -> dict[str, list[int]]:
    """By yarn, micrometres between one new ball and the next, laid anew along the joined plan. A ball ends where a join says so;
    where a yarn is threaded anew and the ball would not have done for the next stretch, the knitter takes a new one."""
    laid = lay(path_of(plan, replay_plan(plan)), planned_measures(plan.design))
    path = laid.path
    passes = [i for i, step in enumerate(plan.steps) if isinstance(step, Knit)]
    between = [plan.steps[(passes[t - 1] + 1 if t else 0) : i] for t, i in enumerate(passes)]
    joined = {t for t, steps in enumerate(between) if any(isinstance(step, Join) for step in steps)}
    found: dict[str, list[int]] = {}
    for stretch in path.stretches:
        of = laid.measures[stretch.yarn]
        lengths = found.setdefault(stretch.yarn, [0])
        for t in range(stretch.begin, stretch.end):
            if t in joined:
                lengths.append(of.tail)
            lengths[-1] += path.stitches[t] * of.loop + path.crossed[t] * of.pitch
    return found


@pytest.mark.parametrize("name", DESIGNS)
@pytest.mark.parametrize("grams", [20, 50])
def test_between_two_balls_there_is_never_more_than_is_on_one(name: str, grams: int) -> None:
    plan = plan_piece(with_balls(DESIGNS[name], grams))
    joined, judged = with_new_balls(plan, replay_plan(plan))
    assert judged.problems == (), "the figures that the plan claims are the replay's"
    number = sum(isinstance(step, Join) for step in joined.steps)
    assert judged.summary.ends == plan.summary.ends + 2 * number
    assert [step for step in joined.steps if not isinstance(step, Join)] == list(plan.steps)
    whole = ball_mm(plan.design.yarns[0])
    assert whole
    needs = planned_needs(plan, replay_plan(plan))
    for one in plan.design.yarns:
        lengths = stretches(joined).get(one.id, [0])
        starts = sum(isinstance(step, Thread) and step.yarn == one.id for step in plan.steps)
        # A new ball begins at a join or at a new thread: so there are no more stretches than both together.
        assert needs.total_mm(one.id) <= (len(lengths) + starts) * whole
        if starts == 1:
            assert max(lengths) <= whole * 1000
        # A ball is left over by its margin (a tenth) and by the way to a better edge (a tenth), not by more.
        assert len(lengths) - 1 <= needs.total_mm(one.id) / (whole * Fraction(8, 10))


@pytest.mark.parametrize("name", DESIGNS)
def test_a_join_stands_between_two_rows_of_its_yarn(name: str) -> None:
    plan = plan_piece(with_balls(DESIGNS[name], 20))
    joined, _ = with_new_balls(plan, replay_plan(plan))
    steps = joined.steps
    for i, step in enumerate(steps):
        if not isinstance(step, Join):
            continue
        before = next(s for s in reversed(steps[:i]) if isinstance(s, Knit | Thread | Cut))
        after = next(s for s in steps[i:] if isinstance(s, Knit | Thread | Cut))
        assert isinstance(before, Knit)
        assert isinstance(after, Knit)
        assert not isinstance(steps[i + 1], Wrap), "the old ball lays the wrap of its last turn"
    for block in joined.blocks:
        knitted = [s for s in steps[block.first_step : block.last_step + 1] if isinstance(s, Knit)]
        assert {s.block for s in knitted} == {block.id}
    assert read_plan(write_plan(joined)).steps == joined.steps
    said = [line for cue in cues(joined) for line in cue.before if "new ball" in line]
    assert len(said) == sum(isinstance(step, Join) for step in steps)
    assert all("at the edge" in line for line in said)


@pytest.mark.parametrize("name", DESIGNS)
def test_of_what_the_model_bed_found_a_join_changes_only_the_ends(name: str) -> None:
    """So a page may change the balls of a piece without knitting it anew."""
    plan = plan_piece(with_balls(DESIGNS[name], 20))
    before = replay_plan(plan)
    joined, after = with_new_balls(plan, before)
    assert after.summary.ends > before.summary.ends
    ends = {"ends": before.summary.ends, "ends_inside": before.summary.ends_inside}
    assert replace(after, summary=replace(after.summary, **ends)) == before
    assert path_of(joined, before) == path_of(joined, after)


def test_where_nothing_is_known_the_plan_is_as_it_was() -> None:
    plan = plan_piece(diamond())
    judged = replay_plan(plan)
    assert with_new_balls(plan, judged) == (plan, judged)
    huge = plan_piece(with_balls(diamond(), 10_000))
    assert with_new_balls(huge, replay_plan(huge))[0] == huge


def test_of_the_rest_of_a_piece_nobody_knows_what_is_on_the_ball() -> None:
    design = with_balls(diamond(60, 120), 20)
    plan = plan_piece(design)
    rest = replan(design, state_at(plan, len(plan.steps) // 2))
    judged = replay_plan(rest)
    assert with_new_balls(rest, judged) == (rest, judged)


def test_a_selvedge_a_little_earlier_is_better_than_an_edge_inside() -> None:
    """Of a flat band every second row ends at each selvedge: no end of a ball lies inside."""
    plan = plan_piece(with_balls(piece(NamedLayout("steps"), 100, 160), 50))
    _, judged = with_new_balls(plan, replay_plan(plan))
    assert judged.summary.ends > plan.summary.ends
    assert judged.summary.ends_inside == plan.summary.ends_inside


def test_the_planner_says_where_when_both_figures_of_a_ball_are_typed() -> None:
    typed = {"yarn_1_ball_g": "50 g", "yarn_1_ball_m": "60 m"}
    plan, judged = panel_plan.planned(read_all(panel_plan.CALCULATOR, typed))
    assert judged.problems == ()
    assert sum(isinstance(step, Join) for step in plan.steps) > 0
    without, _ = panel_plan.planned(read_all(panel_plan.CALCULATOR, {}))
    assert not any(isinstance(step, Join) for step in without.steps)
    half = work_out(panel_plan.CALCULATOR, {"yarn_1_ball_g": "50 g"})
    assert [(p.where, p.code) for p in half.problems] == [("yarn_1_ball_m", "panel-plan.half-a-ball")]
