"""Named layouts with any parameters on panels of any size: nothing raises, and what is knitted is the picture."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from pieces import letters, piece
from wedgework.formats.design import Design, NamedLayout
from wedgework.layout import drawn_layout, layout_problems, resolve
from wedgework.layout.checks import crossing
from wedgework.layout.library import LAYOUTS, LayoutDeclaration, Parameter, named
from wedgework.plan import plan_piece
from wedgework.problems import Refused
from wedgework.replay import replay_plan


def allowed(parameter: Parameter) -> st.SearchStrategy[str | Fraction]:
    if parameter.kind == "yarn":
        return st.sampled_from("abc")
    if parameter.kind == "yarns":
        return st.lists(st.sampled_from("abc"), min_size=1, max_size=4).map(" ".join)
    if parameter.kind == "whole":
        return st.integers(int(parameter.least), int(parameter.most)).map(Fraction)
    span = parameter.most - parameter.least
    return st.integers(0, 40).map(lambda n: parameter.least + span * n / 40)


@st.composite
def chosen(draw: st.DrawFn, least_needles: int = 2, most_needles: int = 120, least_rows: int = 2, most_rows: int = 240) -> Design:
    layout: LayoutDeclaration = draw(st.sampled_from(LAYOUTS))
    given_ones = {p.name: draw(allowed(p)) for p in layout.parameters if draw(st.booleans())}
    needles, rows = draw(st.integers(least_needles, most_needles)), draw(st.integers(least_rows, most_rows))
    return piece(NamedLayout(layout.name, given_ones), needles, rows, start_side=draw(st.sampled_from("LR")))


many = settings(max_examples=200, deadline=None, suppress_health_check=[HealthCheck.too_slow])
few = settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])


@many
@given(chosen())
def test_any_parameters_give_simple_shapes_near_the_panel(design: Design) -> None:
    assert layout_problems(design) == []
    layout = drawn_layout(design, resolve(design))
    for shape in layout.shapes:
        assert crossing(shape.points) is None
        assert all(-1 <= coordinate <= 2 for point in shape.points for coordinate in point)
    needles, rows = design.panel.width.count or 0, design.panel.height.count or 0
    assert {len(turn) for turn in letters(layout, needles, rows)} == {needles}


@few
@given(chosen(most_needles=60, most_rows=120))
def test_any_parameters_can_be_knitted(design: Design) -> None:
    judged = replay_plan(plan_piece(design))
    # Blocks of a few stitches cannot always be levelled, nor lie where they are drawn; nothing else goes wrong.
    assert [p for p in judged.problems if p.code not in ("level.uneven", "picture.differs")] == []
    assert judged.summary.dropped == judged.summary.floats == 0


def coarse(design: Design) -> Design:
    """The same with no more repeats than leave each of them eight needles and sixteen rows."""
    layout = design.layout
    assert isinstance(layout, NamedLayout)
    declared = named(layout.name)
    assert declared is not None
    least = {p.name: p.least for p in declared.parameters if p.kind == "whole"}
    most = min((design.panel.width.count or 0) // 8, (design.panel.height.count or 0) // 16)
    kept = {
        name: max(min(value, Fraction(most)), least[name]) if isinstance(value, Fraction) and name in least else value
        for name, value in layout.parameters.items()
    }
    return replace(design, layout=NamedLayout(layout.name, kept))


@few
@given(chosen(least_needles=40, most_needles=110, least_rows=80, most_rows=200).map(coarse))
def test_blocks_that_are_not_too_fine_give_the_picture(design: Design) -> None:
    judged = replay_plan(plan_piece(design))
    assert [p for p in judged.problems if p.code != "level.uneven"] == []
    assert judged.rows_max - judged.rows_min <= 4


@few
@given(st.sampled_from(LAYOUTS), st.data())
def test_what_is_not_allowed_is_refused_and_nothing_else_is_raised(layout: LayoutDeclaration, data: st.DataObject) -> None:
    odd = st.one_of(st.text(max_size=5), st.integers(-(10**6), 10**6).map(Fraction), st.fractions(max_denominator=50))
    names = [p.name for p in layout.parameters]
    given_ones = data.draw(st.dictionaries(st.sampled_from([*names, "glitter"]), odd, max_size=4))
    design = piece(NamedLayout(layout.name, given_ones), 40, 80)
    found = layout_problems(design)
    if found:
        with pytest.raises(Refused) as refused:
            drawn_layout(design, resolve(design))
        assert list(refused.value.problems) == found
    else:
        assert drawn_layout(design, resolve(design)).shapes
    assert all(p.where.startswith("layout.parameters.") and p.sentence and p.way_out for p in found)
