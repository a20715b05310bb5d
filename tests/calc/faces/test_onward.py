"""From one answer to the next calculator: only fields that are there, in texts that are accepted, meaning the same."""

from __future__ import annotations

import json
from fractions import Fraction
from typing import Any

import pytest

from wedgework.catalogue import CALCULATORS, calculator
from wedgework.declare import work_out
from wedgework.faces.onward import carried, ways
from wedgework.faces.wire import answer
from wedgework.problems import Refused
from wedgework.say import has

F = Fraction
EVERY = [(one.slug, to) for one in CALCULATORS for to in ways(one.slug)]
SMALL = {"size_in": "counts", "needles": "24", "rows": "48", "layout": "diamond-in-corners", "yarn_3_name": ""}


def values(slug: str, typed: dict[str, str]) -> dict[str, Any]:
    found = calculator(slug)
    assert found is not None
    answered = work_out(found, typed)
    assert answered.problems == ()
    assert answered.result is not None
    return dict(answered.result.values)


@pytest.mark.parametrize(("slug", "to"), EVERY)
def test_what_is_carried_is_accepted_there(slug: str, to: str) -> None:
    target = calculator(to)
    assert target is not None
    piece = "layout" in (source.defaults if (source := calculator(slug)) else {}) and slug != "panels"
    # The rows that are knitted by default belong to the default piece.
    typed = carried(slug, to, SMALL if piece and "carry-on" not in (slug, to) else {})
    assert set(typed) <= set(target.defaults)
    wide = {"bed": "own", "bed_pitch": "4.5 mm", "bed_needles": "400"} if to == "panel-plan" else {}
    answered = work_out(target, typed | wide)
    assert answered.problems == ()
    assert has(f"app.onward-from-{slug}")
    assert has(f"app.onward-to-{to}")


def test_a_gauge_goes_on() -> None:
    swatch = {"stitches": "40", "width": "28.5 cm", "rows": "60", "height": "31.6 cm"}
    size = carried("gauge", "size", swatch)
    assert size["stitches_per_10cm"] == "14.035"
    assert values("size", size)["stitches"] == 126
    plan = carried("gauge", "panel-plan", swatch)
    assert plan["gauge_from"] == "swatch"
    assert plan["swatch_width"] == "28.5 cm"
    washed = carried("gauge", "panel-plan", swatch | {"washed_width": "27 cm", "washed_height": "31 cm"})
    assert washed["swatch_width"] == "27 cm"
    marks = carried("gauge", "panel-plan", swatch | {"counted": "needles", "first_mark": "L16", "last_mark": "R16"})
    assert marks["swatch_stitches"] == "30"


def test_a_plan_goes_on() -> None:
    gauge = {"stitches_per_10cm": "14", "rows_per_10cm": "19"}
    assert carried("panel-plan", "hem", SMALL) == gauge | {"stitches": "24"}
    assert carried("panel-plan", "side-hem", SMALL) == gauge | {"stitches": "24", "rows": "48"}
    time = carried("panel-plan", "time", SMALL | {"hem_bottom": "plain", "hem_sides": "plain"})
    assert time["hems"] == "3"
    plan = values("panel-plan", SMALL)
    time = carried("panel-plan", "time", SMALL)
    assert int(time["passes"]) == plan["passes"] + plan["free_passes"]
    assert int(time["ends"]) == plan["ends"]
    yarn = carried("panel-plan", "yarn-needs", SMALL)
    assert values("yarn-needs", yarn)["blocks"]


def test_a_count_goes_on_to_the_yarn() -> None:
    """Nm 15 is 1500 m in 100 g."""
    assert carried("yarn-count", "yarn-needs", {"value": "15"}) == {"need_1_ball_g": "100 g", "need_1_ball_m": "1500 m"}


def test_over_the_wire() -> None:
    def told(**asked: Any) -> dict[str, Any]:
        found: dict[str, Any] = json.loads(answer(json.dumps({"ask": "onward", **asked})))
        return found

    found = told(calculator="gauge", to="size", inputs={})
    assert found["problems"] == []
    assert found["title"] == "Gauge"
    wrong = told(calculator="gauge", to="size", inputs={"stitches": "many"})
    assert [problem["where"] for problem in wrong["problems"]] == ["stitches"]
    assert wrong["inputs"] == {}
    assert told(calculator="gauge", to="shelf", inputs={})["answer"]["problems"], "no way leads there"
    assert told(calculator="puce", to="shelf", inputs={})["answer"]["problems"]


def test_a_piece_that_cannot_be_planned_is_told() -> None:
    with pytest.raises(Refused):
        carried("panel-plan", "time", {"needles": "1", "size_in": "counts"})
