"""The fabric as plain data: what a page reads out of it is what the core counted."""

from __future__ import annotations

import base64
import json
from array import array
from typing import Any

from wedgework.calculators import panel_plan, stripes
from wedgework.calculators.stripes_view import inks_of
from wedgework.declare.calculator import read_all
from wedgework.faces.fabric import fabric_of
from wedgework.faces.wire import answer
from wedgework.yarn.fabric import FIXED, PINNED, SECOND, UNIT, colours_of

SMALL = {"size_in": "counts", "needles": "24", "rows": "48", "layout": "diamond-in-corners"}


def told(slug: str, inputs: dict[str, str]) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(answer(json.dumps({"ask": "fabric", "calculator": slug, "inputs": inputs})))
    return found


def cells(data: dict[str, Any]) -> array[int]:
    read = base64.b64decode(data["places"])
    return array("I", [int.from_bytes(read[i : i + 4], "little") for i in range(0, len(read), 4)])


def test_a_striped_piece_can_be_painted_from_it() -> None:
    inputs = SMALL | {"offset": "3 m", "balls": "two", "begins": "2: Clay"}
    found = told("stripes", inputs)
    assert found["problems"] == []
    data = found["fabric"]
    laid_out = stripes.striping(read_all(stripes.CALCULATOR, inputs))
    inks, by_yarn, own = inks_of(laid_out.plan.design, laid_out.colours)
    assert data["inks"] == [[ink.colour, ink.name] for ink in inks]
    assert data["stripes"]["inks"] == list(own)
    ends, offsets = data["stripes"]["ends"], data["stripes"]["offsets"]
    assert [end * UNIT for end in ends] == list(laid_out.colours.repeat.ends)

    def ink(cell: int) -> int:
        if cell >= FIXED:
            return cell - FIXED
        place = cell % PINNED + (0 if cell & PINNED else offsets[bool(cell & SECOND)])
        return int(data["stripes"]["inks"][next(i for i, end in enumerate(ends) if place % ends[-1] < end)])

    painted = bytes(map(ink, cells(data)))
    assert painted == colours_of(laid_out.laid, by_yarn, laid_out.striped, own).cells
    assert data["box"][0] * data["box"][1] == len(painted)


def test_any_plan_has_a_fabric() -> None:
    data = told("panel-plan", SMALL)["fabric"]
    assert data["stripes"] is None
    plan, judged = panel_plan.planned(read_all(panel_plan.CALCULATOR, SMALL))
    for number, yarn in enumerate(plan.design.yarns, 1):
        stitches = judged.summary.stitches.get(yarn.id, 0) + judged.summary.edge_stitches.get(yarn.id, 0)
        assert sum(cell == FIXED + number for cell in cells(data)) == stitches
    assert told("yarn-needs", SMALL)["fabric"] == data
    numbers = [mark[0] for mark in data["marks"]]
    assert numbers == [str(i) for i in range(1, len(numbers) + 1)]


def test_leftovers_have_a_fabric_where_something_is_chosen() -> None:
    lines = "#112233 Night, 500 g, 2 m/g\n#ddccbb Sand, 500 g, 2 m/g"
    inputs = SMALL | {"leftovers": lines}
    data = told("scraps", inputs)["fabric"]
    names = [name for _, name in data["inks"]]
    assert names[-2:] == ["Night", "Sand"]
    seen = set(cells(data)) - {FIXED}
    assert {FIXED + names.index("Night") + 1, FIXED + names.index("Sand") + 1} <= seen
    assert data["stripes"] is None
    # One colour alone cannot stand in two neighbours, however much there is of it.
    nothing = told("scraps", inputs | {"leftovers": "#112233 Night, 500 g, 2 m/g"})
    assert nothing["fabric"] is None
    assert [problem["code"] for problem in nothing["problems"]] == ["scraps.nothing-chosen"]


def test_marks_stand_inside_the_picture_on_their_block() -> None:
    data = told("stripes", SMALL)["fabric"]
    width, height = data["box"]
    assert all(0 <= x <= width and 0 <= y <= height for _, x, y in data["marks"])


def test_what_has_no_fabric() -> None:
    assert fabric_of("gauge", {}) is None
    assert "problems" in told("gauge", {})["answer"]
    refused = told("stripes", {"repeat": "nothing"})
    assert refused["fabric"] is None
    assert refused["problems"][0]["code"] == "stripes.line"
