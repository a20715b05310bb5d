"""What holds for every named layout, whichever joins the list."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

import pytest

from pieces import YARNS, piece
from wedgework.formats.decimals import nearest_decimal
from wedgework.formats.design import Design, DrawnLayout, NamedLayout
from wedgework.layout import drawn_layout, layout_problems, resolve
from wedgework.layout.checks import crossing
from wedgework.layout.library import LAYOUTS, LayoutDeclaration, Parameter, named
from wedgework.plan import plan_piece
from wedgework.problems import Refused
from wedgework.replay import replay_plan
from wedgework.replay.result import Replay

EVERY = pytest.mark.parametrize("one", LAYOUTS, ids=lambda one: one.name)
PARAMETERS = pytest.mark.parametrize(
    ("one", "parameter"),
    [(one, parameter) for one in LAYOUTS for parameter in one.parameters],
    ids=lambda part: part.name,
)
# A blanket on a bulky bed and one on a standard bed, each at a usual gauge.
USUAL = {
    "bulky": {"needles": 106, "rows": 194, "pitch": Fraction(9), "gauge": (14, 19)},
    "standard": {"needles": 174, "rows": 400, "pitch": Fraction(9, 2), "gauge": (28, 40)},
}
SIZES = pytest.mark.parametrize("size", USUAL)
Given = Mapping[str, str | Fraction]


def design_of(layout: LayoutDeclaration, given: Given | None = None, size: str = "bulky", yarns: int = 3) -> Design:
    design = piece(NamedLayout(layout.name, dict(given or {})), **USUAL[size])  # type: ignore[arg-type]
    return replace(design, yarns=YARNS[:yarns])


def shapes_of(design: Design) -> DrawnLayout:
    return drawn_layout(design, resolve(design))


def knitted(design: Design) -> Replay:
    return replay_plan(plan_piece(design))


def test_there_are_at_least_eighteen_of_different_names_and_titles() -> None:
    assert len({one.name for one in LAYOUTS}) == len({one.title for one in LAYOUTS}) == len(LAYOUTS) >= 18
    assert all(re.fullmatch(r"[a-z]+(-[a-z]+)*", one.name) and named(one.name) is one for one in LAYOUTS)


@EVERY
def test_it_says_how_it_knits(one: LayoutDeclaration) -> None:
    assert one.title
    assert re.fullmatch(r"[A-Z].{60,}\.", one.how_it_knits)


@PARAMETERS
def test_each_parameter_has_a_label_a_range_and_a_default_that_a_file_can_hold(
    one: LayoutDeclaration, parameter: Parameter
) -> None:
    assert one.label(parameter)
    assert re.fullmatch(r"[a-z]+(_[a-z]+)*", parameter.name)
    if parameter.kind in ("whole", "fraction"):
        assert parameter.default is not None
        assert parameter.least <= parameter.default <= parameter.most
        assert parameter.least < parameter.most
        for value in (parameter.least, parameter.default, parameter.most):
            assert nearest_decimal(value) == value, "a file holds decimals"
    else:
        assert parameter.default is None


@EVERY
@SIZES
@pytest.mark.parametrize("yarns", [2, 3])
def test_it_is_sound_at_its_defaults(one: LayoutDeclaration, size: str, yarns: int) -> None:
    """Legal, level within two rows, its own picture, true, and no slit: or its sentence says what has to be linked."""
    design = design_of(one, size=size, yarns=yarns)
    judged = knitted(design)
    assert judged.problems == ()
    assert judged.rows_max - judged.rows_min <= 2
    assert judged.joined or "link" in one.how_it_knits
    assert judged.warnings == () or "link" in one.how_it_knits
    assert len(judged.block_stitches) > 3
    assert set(judged.stitches) >= {"a", "b"}


@EVERY
@SIZES
def test_its_shapes_are_simple_and_lie_near_the_panel(one: LayoutDeclaration, size: str) -> None:
    for shape in shapes_of(design_of(one, size=size)).shapes:
        assert crossing(shape.points) is None
        assert len(set(shape.points)) >= 3
        assert all(-1 <= coordinate <= 2 for point in shape.points for coordinate in point)


@PARAMETERS
def test_at_the_least_and_the_most_of_each_parameter_it_can_still_be_knitted(
    one: LayoutDeclaration, parameter: Parameter
) -> None:
    given: list[str | Fraction] = [parameter.least, parameter.most]
    if parameter.kind == "yarn":
        given = ["a", "c"]
    elif parameter.kind == "yarns":
        given = ["a", "b", "c b", "c b a b"]
    for value in given:
        design = design_of(one, {parameter.name: value})
        assert layout_problems(design) == []
        for shape in shapes_of(design).shapes:
            assert crossing(shape.points) is None
            assert all(-1 <= coordinate <= 2 for point in shape.points for coordinate in point)
        judged = knitted(design)
        # Too fine a picture cannot always be levelled; nothing else may go wrong.
        assert [p for p in judged.problems if p.code != "level.uneven"] == []
        if parameter.kind in ("yarn", "yarns"):
            assert judged.problems == ()


@PARAMETERS
def test_what_is_wrong_with_a_parameter_is_said_at_its_path(one: LayoutDeclaration, parameter: Parameter) -> None:
    wrong: list[tuple[str | Fraction, str]] = [(parameter.most + 1, "layout.parameter-range"), ("a", "layout.parameter-range")]
    if parameter.kind == "whole":
        wrong.append((parameter.least + Fraction(1, 2), "layout.parameter-range"))
    elif parameter.kind == "yarn":
        wrong = [("z", "layout.unknown-yarn"), ("a b", "layout.yarn-wanted"), (Fraction(1), "layout.yarn-wanted")]
    elif parameter.kind == "yarns":
        wrong = [("a z", "layout.unknown-yarn"), ("", "layout.yarn-wanted"), (Fraction(1), "layout.yarn-wanted")]
    for value, code in wrong:
        design = design_of(one, {parameter.name: value})
        found = layout_problems(design)
        assert [(p.where, p.code) for p in found] == [(f"layout.parameters.{parameter.name}", code)]
        assert found[0].sentence
        assert found[0].way_out
        with pytest.raises(Refused):
            plan_piece(design)


@EVERY
def test_the_plan_writes_every_parameter_out(one: LayoutDeclaration) -> None:
    layout = plan_piece(design_of(one)).design.layout
    assert isinstance(layout, NamedLayout)
    assert set(layout.parameters) == {parameter.name for parameter in one.parameters}
    # And written out it is the same picture.
    assert shapes_of(design_of(one, layout.parameters)) == shapes_of(design_of(one))
