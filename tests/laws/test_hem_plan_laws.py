"""Laws of planned hems: stitches counted, loops closed, heights added, whatever the size, the sides and the kinds."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from pieces import drawn, piece
from wedgework.finish import END_HEMS, end_hem
from wedgework.formats.design import Design, Extent, Hem, Hems
from wedgework.formats.plan import BindOff, CastOn, Hang, Knit, Plan, Transfer, Waste, is_facing, is_hem
from wedgework.layout import layout_problems, resolve
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan
from wedgework.whereabouts import sights
from wedgework.words import cues, expand, passages
from wedgework.words.finishing import finished_mm
from wedgework.yarn.fabric import size_of
from wedgework.yarn.path import path_of

few = settings(max_examples=25, deadline=None)
depths = st.one_of(
    st.integers(1, 12).map(lambda rows: Extent(count=rows)), st.integers(5, 80).map(lambda mm: Extent(mm=Fraction(mm)))
)
hems = st.one_of(st.just(Hem()), st.builds(Hem, st.sampled_from(["plain", "picot"]), depths))


@st.composite
def designs(draw: st.DrawFn) -> Design:
    corners = draw(st.lists(st.tuples(st.integers(0, 10), st.integers(0, 10)), min_size=3, max_size=3, unique=True))
    layout = drawn("a", ("b", [(Fraction(x, 10), Fraction(y, 10)) for x, y in corners]))  # type: ignore[misc]
    design = piece(
        layout,
        draw(st.integers(4, 31)),
        draw(st.integers(8, 40)),
        start_side=draw(st.sampled_from("LR")),
        base_rows_bottom=draw(st.integers(1, 3)),
        base_rows_top=draw(st.integers(1, 3)),
        base_yarn_top=draw(st.sampled_from([None, "c"])),
    )
    tension = draw(st.sampled_from([None, Fraction(13, 2)]))
    yarns = tuple(replace(yarn, tension=tension) for yarn in design.yarns)
    design = replace(design, hems=Hems(draw(hems), draw(hems), draw(hems)), yarns=yarns)
    assume(not layout_problems(design))
    return design


@few
@given(designs())
def test_every_hemmed_piece_is_legal_and_counts_its_hems(design: Design) -> None:
    plan = plan_piece(design)
    judged = replay_plan(plan)
    assert [p for p in judged.problems if p.code != "level.uneven"] == []
    assert not {w.code for w in judged.warnings} & {"steps.open-on-waste", "steps.left-on"}
    sizes = resolve(design)
    wanted = {end: end_hem(design, sizes, end) for end in END_HEMS}
    rows = sum(hem.rows for hem in wanted.values() if hem) + plan.edges.base_rows_bottom + plan.edges.base_rows_top
    assert sum(judged.summary.edge_stitches.values()) == rows * sizes.needles
    assert judged.piece.rows_below - plan.edges.base_rows_bottom == (wanted["bottom"].outside if wanted["bottom"] else 0)
    assert judged.piece.rows_above - plan.edges.base_rows_top == (wanted["top"].outside if wanted["top"] else 0)


def loops_at_the_end(plan: Plan) -> tuple[dict[int, int], int]:
    """By the steps alone, in the plainest way: loops on each needle, and loops of the first row that hang on waste yarn."""
    first, last = plan.start.working
    loops = {needle: 1 for needle in range(first, last + 1) if needle}
    open_ = 0
    before, begun = "", False
    for step in plan.steps:
        match step:
            case Transfer(from_needle=one, to_needle=other):
                loops[other] += loops[one]
                loops[one] = 0
            case Hang(needles=needles):
                for needle in needles:
                    loops[needle] += 1
                if is_hem(before) and not is_facing(before) and open_:
                    open_ -= len(needles)
            case CastOn(needles=needles):
                loops.update(dict.fromkeys(needles, 1))
            case BindOff(needles=needles):
                loops.update(dict.fromkeys(needles, 0))
            case Knit():
                before = step.block
                if not begun and plan.edges.cast_on == "waste":
                    open_ = len(loops)
                begun = True
                assert max(loops.values()) <= 2
                if is_hem(step.block):
                    loops.update(dict.fromkeys(loops, 1))
    return loops, open_


@few
@given(designs())
def test_every_loop_ends_bound_off_and_none_hangs_on_waste_yarn(design: Design) -> None:
    plan = plan_piece(design)
    loops, open_ = loops_at_the_end(plan)
    assert set(loops.values()) == {0}
    assert open_ == 0
    assert (plan.edges.cast_on == "waste") == (design.hems.bottom.kind != "none") == any(isinstance(s, Waste) for s in plan.steps)


@few
@given(designs())
def test_the_finished_height_is_picture_base_rows_and_outsides(design: Design) -> None:
    plan = plan_piece(design)
    _, height = finished_mm(plan, replay_plan(plan))
    seen = {step.row for step in plan.steps if isinstance(step, Knit) and is_hem(step.block) and not is_facing(step.block)}
    sizes = resolve(design)
    rows = sizes.rows + plan.edges.base_rows_bottom + plan.edges.base_rows_top + len(seen)
    assert height == rows * 100 / sizes.rows_per_10cm


@few
@given(designs())
def test_the_fabric_of_a_hemmed_piece_is_as_high_as_it_is(design: Design) -> None:
    """The picture stitch by stitch, made from the path of the yarn, leaves out what lies behind a hem."""
    plan = plan_piece(design)
    judged = replay_plan(plan)
    path = path_of(plan, judged)
    assert size_of(path)[1] == judged.rows_max + judged.piece.rows_below + judged.piece.rows_above
    assert sum(path.stitches) == sum(judged.block_stitches.values())


@few
@given(designs())
def test_cues_and_places_cover_hems_too(design: Design) -> None:
    plan = plan_piece(design)
    found = cues(plan)
    covered = [step for cue in found for step in range(cue.first_step, cue.last_step + 1)]
    assert covered == list(range(len(plan.steps)))
    assert {one.cue for one in sights(plan)} == {cue.index for cue in found}
    for passage in passages(plan)[:-1]:
        first, last = passage.handfuls[0].first, passage.handfuls[-1].last
        assert expand(passage.handfuls[0].bed, passage.grouped) == plan.steps[first : last + 1]
