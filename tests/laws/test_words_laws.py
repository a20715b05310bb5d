"""Laws of the words room: groups go back to the steps, cues cover every step once, whatever the plan."""

from __future__ import annotations

import json

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from pieces import drawn, piece
from wedgework.bed import across, span
from wedgework.formats.design import DrawnLayout
from wedgework.formats.plan import Cut, Free, Hold, Knit, Step, Thread, Weigh, Work, Wrap
from wedgework.layout import layout_problems
from wedgework.plan import plan_piece
from wedgework.words import Leaf, Move, cue_value, cues, expand, group, passages, read, unfold
from wedgework.words.walk import Bed

moves = st.builds(Move, st.sampled_from(["hold", "work"]), st.integers(0, 2), st.integers(0, 1))
leaves = st.builds(Leaf, st.lists(moves, max_size=2).map(tuple), st.integers(1, 3))
rhythms = st.recursive(
    st.lists(leaves, min_size=1, max_size=3),
    lambda inner: st.tuples(st.lists(inner, min_size=1, max_size=3), st.integers(1, 4)).map(
        lambda found: [leaf for part in found[0] for leaf in part] * found[1]
    ),
    max_leaves=5,
)


@given(rhythms)
@settings(max_examples=60, deadline=None)
def test_unfolding_a_group_gives_its_leaves(found: list[Leaf]) -> None:
    short = found[:80]
    grouped = group(short)
    assert list(unfold(grouped)) == short
    assert len(grouped) <= len(short)


@given(leaves, st.integers(2, 40))
@settings(max_examples=30, deadline=None)
def test_what_is_always_the_same_is_one_repeat(leaf: Leaf, times: int) -> None:
    assert len(group([leaf] * times)) == 1


needles = st.sampled_from(across(-6, 6))
several = st.lists(needles, min_size=1, max_size=4, unique=True).map(tuple)
steps = st.one_of(
    st.builds(Hold, several),
    st.builds(Work, several),
    st.builds(Wrap, needles),
    st.builds(Weigh, several),
    st.builds(Knit, st.sampled_from(["L", "R"]), st.integers(1, 4), st.just("x"), st.integers(1, 4)),
    st.builds(Free, st.sampled_from(["L", "R"])),
    st.builds(Thread, st.just("a")),
    st.just(Cut()),
)


@given(st.lists(steps, max_size=30), st.sampled_from(["L", "R"]))
@settings(max_examples=200, deadline=None)
def test_any_steps_go_there_and_back(found: list[Step], carriage: str) -> None:
    bed = Bed(across(-6, 6), frozenset({-6, -5, 6}), carriage, 0, lever="hold", block="x")  # type: ignore[arg-type]
    assert expand(bed, group(read(bed, found))) == tuple(found)


tenths = st.integers(0, 10).map(lambda n: f"{n / 10:.1f}")
shapes = st.tuples(st.sampled_from("abc"), st.lists(st.tuples(tenths, tenths), min_size=3, max_size=4, unique=True))
layouts = st.lists(shapes, max_size=3).map(lambda found: drawn("a", *found))


@given(layouts, st.integers(8, 40), st.integers(8, 60), st.sampled_from(["split", "carriage-side", "by-hand"]))
@settings(max_examples=25, deadline=None)
def test_cues_and_groups_of_any_plan(layout: DrawnLayout, wide: int, high: int, style: str) -> None:
    design = piece(layout, wide, high, step_style=style)
    assume(not layout_problems(design))
    plan = plan_piece(design)
    found = cues(plan)

    covered = [step for cue in found for step in range(cue.first_step, cue.last_step + 1)]
    assert covered == list(range(len(plan.steps)))
    assert [cue.index for cue in found] == list(range(len(found)))
    for cue in found:
        passes = [step for step in plan.steps[cue.first_step : cue.last_step + 1] if isinstance(step, Knit)]
        assert cue.rows == len(passes) == cue.row_after - cue.row_before
        assert bool(cue.knit) == bool(passes)
        bed = cue.bed
        runs = sorted(bed.knitting + bed.held + bed.returning + bed.holding)
        assert sum(span(*run) for run in runs) == wide, "every needle is in one state"
        assert json.loads(json.dumps(cue_value(cue))) == cue_value(cue)
    for passage in passages(plan)[:-1]:
        first, last = passage.handfuls[0].first, passage.handfuls[-1].last
        assert expand(passage.handfuls[0].bed, passage.grouped) == plan.steps[first : last + 1]
