"""Named layouts: parameters, defaults, what is wrong said all at once."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from pieces import diamond, drawn, piece
from wedgework.formats.design import Design, DrawnLayout, NamedLayout
from wedgework.layout import drawn_layout, layout_problems, resolve
from wedgework.problems import Refused


def shapes_of(design: Design) -> DrawnLayout:
    return drawn_layout(design, resolve(design))


def test_the_diamond_touches_the_middle_of_all_four_sides() -> None:
    shape = shapes_of(diamond()).shapes[0]
    assert set(shape.points) == {(Fraction(1, 2), 0), (1, Fraction(1, 2)), (Fraction(1, 2), 1), (0, Fraction(1, 2))}
    assert shape.yarn == "b"


def test_yarns_default_to_the_design_in_order() -> None:
    layout = shapes_of(piece(NamedLayout("nested-diamonds", {"bands": Fraction(4)}), 40, 80))
    assert layout.background == "a"
    assert [shape.yarn for shape in layout.shapes] == ["b", "c", "b", "c"]


def test_chevron_borders_lie_inside_the_panel_and_evenly() -> None:
    layout = shapes_of(piece(NamedLayout("chevron-bands", {"bands": Fraction(3), "rise": Fraction(1, 4)}), 40, 80))
    valleys = [min(y for _, y in shape.points) for shape in layout.shapes]
    assert valleys == [Fraction(5, 12) - Fraction(1, 4), Fraction(5, 6) - Fraction(1, 4)]


def test_everything_wrong_with_a_layout_is_said_at_once() -> None:
    design = piece(NamedLayout("nested-diamonds", {"bands": Fraction(99), "corners": "z", "glitter": Fraction(1)}), 40, 80)
    found = {(p.where, p.code) for p in layout_problems(design)}
    assert found == {
        ("layout.parameters.glitter", "layout.unknown-parameter"),
        ("layout.parameters.bands", "layout.parameter-range"),
        ("layout.parameters.corners", "layout.unknown-yarn"),
    }
    with pytest.raises(Refused):
        drawn_layout(design, resolve(design))


def test_an_unknown_layout_names_those_that_there_are() -> None:
    (problem,) = layout_problems(piece(NamedLayout("spirals"), 40, 80))
    assert problem.where == "layout.name"
    assert "nested-diamonds" in problem.way_out


def test_drawn_shapes_are_checked_each_at_its_path() -> None:
    design = piece(
        drawn(
            "a", ("q", [(0, 0), (1, 0), (1, 1)]), ("b", [(0, 0), (1, 1), (1, 0), (0, 1)]), ("b", [(0, 0), ("0.5", "0.5"), (1, 1)])
        ),
        40,
        80,
    )
    assert [(p.where, p.code) for p in layout_problems(design)] == [
        ("layout.shapes[0].yarn", "layout.unknown-yarn"),
        ("layout.shapes[1].points", "layout.crossing-edges"),
        ("layout.shapes[2].points", "layout.no-area"),
    ]


def test_two_yarns_of_one_id_are_refused() -> None:
    design = diamond()
    doubled = replace(design, yarns=(*design.yarns, design.yarns[0]))
    assert [(p.where, p.code) for p in layout_problems(doubled)] == [("yarns[3].id", "layout.yarn-twice")]
