"""What the board asks through the one door: sheets, judgements, ways on, links."""

from __future__ import annotations

import json
from dataclasses import replace
from typing import Any

import pytest

from pieces import hemmed, lopsided, piece
from wedgework.board import surface
from wedgework.calculators import panel_plan
from wedgework.calculators.drawing_field import typed_of
from wedgework.declare import work_out
from wedgework.declare.calculator import read_all
from wedgework.faces.link import MOST_CHARACTERS, make_design_link
from wedgework.faces.wire import answer
from wedgework.formats import canonical, design_value, read_design, write_design
from wedgework.formats.brief import brief_value
from wedgework.formats.design import Design, NamedLayout
from wedgework.plan import plan_piece
from wedgework.problems import Refused

KITES = write_design(piece(NamedLayout("kites"), 48, 96))


def ask(kind: str, **more: Any) -> dict[str, Any]:
    told: dict[str, Any] = json.loads(answer(json.dumps({"ask": kind, **more})))
    return told


def test_a_sheet_is_the_design_drawn_out_in_needles_and_rows() -> None:
    told = ask("board-open", design=KITES)
    assert told["problems"] == []
    sheet = told["sheet"]
    assert (sheet["needles"], sheet["rows"]) == (48, 96)
    assert (sheet["stitch"], sheet["row"]) == (7143, 5263)
    assert not sheet["moved"]
    layout = sheet["design"]["layout"]
    assert layout["counted"] == {"needles": 48, "rows": 96}
    assert layout["shapes"][0]["points"][0] == [12, 0]
    assert read_design(json.dumps(sheet["design"])) == surface(read_design(KITES)).design


def test_a_judgement_comes_with_changes_that_can_be_laid_over() -> None:
    design = json.dumps(ask("board-open", design=write_design(lopsided()))["sheet"]["design"])
    told = ask("board-judge", design=design)
    assert told["problems"] == []
    assert {figure["key"] for figure in told["judged"]["figures"]} >= {"needles", "rows", "ends", "slits"}
    assert told["changes"]
    for change in told["changes"]:
        assert change["shapes"] or change["options"]
        assert all(set(shape) == {"yarn", "points", "holes"} for _, shape in change["shapes"])
    tried = ask("board-try", design=design, before=json.dumps(told["judged"]["effort"]))
    assert not tried["better"], "the same drawing is no better than itself"


def test_what_cannot_be_drawn_on_is_said() -> None:
    assert ask("board-open", design="{}")["problems"]
    assert ask("board-layout", design=KITES, name="glitter")["problems"][0]["code"] == "layout.unknown-name"
    assert ask("board-judge", design=KITES.replace('"kites"', '"glitter"'))["judged"] is None
    unreadable = ask("board-try", design=KITES, before="{}")
    assert unreadable["answer"]["problems"]
    assert ask("board-cells", design=KITES, colours="#000000", cells="a", least="x", straighten="0")["answer"]["problems"]
    assert ask("board-cells", design=KITES, colours="#000000", cells="a", least="0", straighten="0")["sheet"] is None


def test_a_link_holds_the_whole_design_and_opens_forever() -> None:
    fragment = ask("board-link", design=KITES)["fragment"]
    opened = ask("open", fragment=fragment)
    assert opened["calculator"] == "board"
    assert opened["problems"] == []
    assert read_design(opened["inputs"]["design"]) == read_design(KITES)


def test_a_brief_design_is_the_design() -> None:
    for design in (lopsided(), hemmed(lopsided(), bottom="picot"), read_design(KITES)):
        text = canonical(brief_value(design))
        assert read_design(text) == design
        assert len(text) < len(canonical(design_value(design)))


def test_a_design_too_long_for_a_link_is_refused() -> None:
    many = {**json.loads(KITES), "notes": "".join(chr(0x4E00 + i * 7919 % 20_000) for i in range(4_000))}
    with pytest.raises(Refused):
        make_design_link(read_design(json.dumps(many)))
    assert len(ask("board-link", design=KITES)["fragment"]) < MOST_CHARACTERS


@pytest.mark.parametrize(
    "design",
    [
        lopsided(),
        hemmed(piece(NamedLayout("diamond-in-corners"), 48, 96), bottom="picot", sides="plain"),
        piece(NamedLayout("steps"), 40, 80),
    ],
    ids=["harbour", "hems", "steps"],
)
def test_the_planner_knits_what_was_drawn(design: Design) -> None:
    """By what is typed there: the same steps, but for the names of the yarns."""
    own = surface(design).design
    typed = typed_of(own)
    told = ask("board-inputs", design=write_design(own))
    assert told["inputs"] == typed
    there = panel_plan.design_from(read_all(panel_plan.CALCULATOR, typed))
    names = {yarn.id: f"yarn-{i}" for i, yarn in enumerate(own.yarns, 1)}
    one, other = plan_piece(there), plan_piece(own)
    assert [renamed(step, names) for step in other.steps] == [repr(step) for step in one.steps]
    back = ask("board-typed", inputs=typed)["sheet"]["design"]
    assert back["layout"]["counted"] == {"needles": own.panel.width.count, "rows": own.panel.height.count}


def renamed(step: object, names: dict[str, str]) -> str:
    words = repr(step)
    for old, new in names.items():
        words = words.replace(f"yarn='{old}'", f"yarn='{new}'")
    return words


def test_a_title_with_a_semicolon_and_many_spaces_survives_the_field() -> None:
    own = surface(lopsided()).design
    odd = replace(own, notes="one; two   three")
    design = panel_plan.design_from(read_all(panel_plan.CALCULATOR, typed_of(odd)))
    assert design.notes == odd.notes


@pytest.mark.parametrize(
    ("drawing", "code"),
    [
        ("", "panel-plan.no-drawing"),
        ("{", "formats.not-json"),
        (KITES, "panel-plan.not-drawn"),
        ('{"format": "wedgework-design", "version": 1}', "formats.missing-key"),
    ],
)
def test_what_is_no_drawing_is_said_under_its_field(drawing: str, code: str) -> None:
    found = work_out(panel_plan.CALCULATOR, {"layout": "drawn", "drawing": drawing})
    assert found.result is None
    assert {problem.where for problem in found.problems} == {"drawing"}
    assert code in {problem.code for problem in found.problems}


def test_more_yarns_than_the_form_has_come_from_the_file() -> None:
    base = json.loads(write_design(surface(lopsided()).design))
    base["yarns"] += [{"id": f"more-{i}", "name": f"More {i}", "colour": "#123456"} for i in range(3)]
    base["layout"]["shapes"][0]["yarn"] = "more-2"
    typed = typed_of(read_design(json.dumps(base))) | {"yarn_1_colour": "#ffffff"}
    design = panel_plan.design_from(read_all(panel_plan.CALCULATOR, typed))
    assert [yarn.id for yarn in design.yarns] == [f"yarn-{i}" for i in range(1, 7)]
    assert design.yarns[0].colour == "#ffffff"
    assert design.yarns[5].name == "More 2"
    assert design.layout.shapes[0].yarn == "yarn-6"  # type: ignore[union-attr]
