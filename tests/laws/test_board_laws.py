"""Laws of the board: what was traced paints to the same cells, and what is offered is never worse by its own measure."""

from __future__ import annotations

import json

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from pieces import grid_from, letters, piece, points
from wedgework.board import effort_of, judge, surface, weighed
from wedgework.faces.wire import answer
from wedgework.formats import canonical, design_value, read_design
from wedgework.formats.design import Design, DrawnLayout, Shape
from wedgework.layout import layout_problems
from wedgework.layout.picture import paint
from wedgework.layout.tracing import traced

many = settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])
few = settings(max_examples=12, deadline=None, suppress_health_check=[HealthCheck.too_slow])


@st.composite
def painted(draw: st.DrawFn) -> tuple[list[str], int]:
    """A picture of polygons with corners on needles and turns, and how many rows it has."""
    needles, turns = draw(st.integers(6, 40)), draw(st.integers(4, 40))
    corner = st.tuples(st.integers(-2, needles + 2), st.integers(-2, turns + 2))
    ring = st.lists(corner, min_size=3, max_size=5)
    shapes = draw(st.lists(st.tuples(st.sampled_from("abc"), ring), max_size=5))
    layout = DrawnLayout(
        "a",
        tuple(Shape(yarn, tuple((x / needles, y / turns) for x, y in points(*ring))) for yarn, ring in shapes),
    )
    rows = 2 * turns - draw(st.integers(0, 1))
    return letters(layout, needles, rows), rows


@many
@given(painted())
def test_tracing_gives_back_the_same_cells(picture: tuple[list[str], int]) -> None:
    lines, rows = picture
    layout = traced(grid_from(*lines), rows)
    assert letters(layout, len(lines[0]), rows) == lines


@many
@given(st.integers(2, 12), st.integers(1, 12), st.data())
def test_tracing_gives_back_any_cells_at_all(needles: int, turns: int, data: st.DataObject) -> None:
    lines = [data.draw(st.text("abc", min_size=needles, max_size=needles)) for _ in range(turns)]
    layout = traced(grid_from(*lines), 2 * turns)
    assert letters(layout, needles, 2 * turns) == lines


@many
@given(painted(), st.integers(1, 3))
def test_straightened_borders_are_still_a_drawing(picture: tuple[list[str], int], straighten: int) -> None:
    """Whatever the freedom: no outline crosses itself, and there are no more corners than without it, by much."""
    lines, rows = picture
    layout = traced(grid_from(*lines), rows, straighten)
    design = _design(layout, len(lines[0]), rows)
    assert [problem for problem in layout_problems(design) if problem.code != "layout.no-area"] == []
    paint(layout, len(lines[0]), rows)


def _design(layout: DrawnLayout, needles: int, rows: int) -> Design:
    return piece(layout, needles, rows)


@few
@given(painted().filter(lambda picture: len(picture[0][0]) >= 16 and len(picture[0]) >= 12))
def test_an_offer_is_never_worse_by_its_own_measure(picture: tuple[list[str], int]) -> None:
    """Through the one door, as the page asks: every change that it would offer is planned anew here and weighed."""
    lines, rows = picture
    design = _design(traced(grid_from(*lines), rows), len(lines[0]), rows)
    text = canonical(design_value(surface(design).design))
    told = json.loads(answer(json.dumps({"ask": "board-judge", "design": text})))
    if told["judged"] is None:
        return
    before = told["judged"]["effort"]
    first = judge(read_design(text))
    for change in told["changes"][:6]:
        changed = json.loads(text)
        for at, shape in change["shapes"]:
            changed["layout"]["shapes"][at] = shape
        changed["options"].update(change["options"])
        tried = {"ask": "board-try", "design": json.dumps(changed), "before": json.dumps(before)}
        weighing = json.loads(answer(json.dumps(tried)))
        if not weighing["better"]:
            continue
        after = judge(read_design(json.dumps(changed)))
        mine = weighed(effort_of(first.plan, first.replay), effort_of(after.plan, after.replay))
        assert mine.better
        assert mine.minutes > 0
        assert weighing["words"]


@few
@given(st.text(max_size=60), st.sampled_from(["board-open", "board-judge", "board-link", "board-inputs"]))
def test_whatever_is_sent_as_a_design_is_answered(text: str, ask: str) -> None:
    told = json.loads(answer(json.dumps({"ask": ask, "design": text})))
    assert told["problems"]
