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
    assert has(f"faces.onward-from-{slug}")
    assert has(f"faces.onward-to-{to}")


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
    assert carried("panel-plan", "side-hem", SMALL) == gauge | {"stitches": "24", "rows": "52", "bed_needles": "110"}
    sides = carried("panel-plan", "side-hem", SMALL | {"hem_sides": "picot", "hem_sides_depth": "3 cm"})
    assert (sides["kind"], sides["depth"]) == ("picot", "3 cm")
    assert carried("panel-plan", "hem", SMALL | {"hem_top": "plain", "hem_top_depth": "5 cm"})["where"] == "top"
    edging = carried("panel-plan", "edging", SMALL | {"edging": "ends", "edging_stitches": "5"})
    assert (edging["along"], edging["edging_stitches"], edging["edging_rows_per_10cm"]) == ("end", "5", "19")
    time = carried("panel-plan", "time", SMALL | {"hem_bottom": "plain", "hem_sides": "plain"})
    assert time["hems"] == "3"
    plan = values("panel-plan", SMALL)
    time = carried("panel-plan", "time", SMALL)
    assert int(time["passes"]) == plan["passes"] + plan["free_passes"]
    assert int(time["ends"]) == plan["ends"]
    edged, strip = carried("panel-plan", "time", SMALL | {"edging": "all"}), values("panel-plan", SMALL | {"edging": "all"})
    assert int(edged["passes"]) - int(time["passes"]) == strip["edging_rows"]
    assert int(edged["needle_changes"]) - int(time["needle_changes"]) == strip["edging_joins"]
    yarn = carried("panel-plan", "yarn-needs", SMALL)
    assert values("yarn-needs", yarn)["blocks"]


def test_a_panel_goes_on() -> None:
    """One panel is blocked by itself; the whole goes to the side hems; each seam is counted with the panel on its left."""
    typed = {
        "split": "equal",
        "width": "200 cm",
        "height": "60 cm",
        "layout": "zigzag-bands",
        "panel_number": "2",
        "hem_sides": "plain",
    }
    plan = values("panel-plan", typed)
    assert carried("panel-plan", "blocking", typed)["stitches"] == str(plan["needles"])
    assert carried("panel-plan", "side-hem", typed)["stitches"] == "280"
    time = carried("panel-plan", "time", typed)
    assert (time["hems"], time["sewing"]) == ("0", "62.11 cm")
    last = carried("panel-plan", "time", typed | {"panel_number": "3"})
    assert (last["hems"], last["sewing"]) == ("1", "0 cm")
    panels = carried("panel-plan", "panels", typed)
    assert panels["seam_stitches"] == "one"
    assert values("panels", panels)["stitches"] == 280


@pytest.mark.parametrize(
    ("typed", "split"), [({}, "equal"), ({"layout": "zigzag-bands", "panels": "4", "seam_stitches": "half"}, "design")]
)
def test_panels_go_into_the_planner_and_come_out_the_same(typed: dict[str, str], split: str) -> None:
    there = carried("panels", "panel-plan", typed)
    assert (there["split"], there["bed"]) == (split, "bulky-9")
    mine, theirs = values("panels", typed), values("panel-plan", there | {"layout": "zigzag-bands"})
    assert theirs["panels"] == mine["panels"]
    assert theirs["rows"] == mine["rows"]
    if split == "design":
        assert theirs["panel_needles"] == mine["panel_needles"]
    own = carried("panels", "panel-plan", typed | {"bed_needles": "107"})
    assert (own["bed"], own["bed_needles"]) == ("own", "107")


@pytest.mark.parametrize(
    ("slug", "typed", "expected"),
    [
        ("hem", {"where": "top", "kind": "plain", "depth": "5 cm"}, {"hem_top": "plain", "hem_top_depth": "5 cm"}),
        ("side-hem", {"kind": "picot"}, {"hem_bottom": "picot", "hem_top": "picot", "hem_sides": "picot", "edging": "none"}),
        ("side-hem", {"kind": "picot", "corners": "mitred"}, {"hem_sides": "picot", "edging": "none"}),
        ("edging", {"along": "side", "edging_stitches": "5"}, {"edging": "sides", "edging_stitches": "5", "hem_sides": "none"}),
        ("edging", {}, {"edging": "all", "hem_bottom": "none", "hem_top": "none", "hem_sides": "none"}),
        ("shelf", {"name": "Moss"}, {"yarn_1_name": "Moss"}),
    ],
)
def test_what_goes_round_a_piece_goes_into_its_plan(slug: str, typed: dict[str, str], expected: dict[str, str]) -> None:
    found = carried(slug, "panel-plan", typed)
    assert expected.items() <= found.items()
    kinds = {name for name in found if name.startswith("hem_") and not name.endswith("_depth")}
    assert kinds == {name for name in expected if name.startswith("hem_") and not name.endswith("_depth")}


def test_a_yarn_of_the_shelf_goes_on() -> None:
    """50 g of 60 m are 1.2 m to the gram, which is 833.3 tex."""
    assert carried("shelf", "yarn-count", {}) == {"value": "833.333", "system": "tex"}
    needs = carried("shelf", "yarn-needs", {})
    assert (needs["need_1_ball_g"], needs["need_1_ball_m"], needs["need_1_on_hand_g"]) == ("50 g", "60 m", "175 g")
    stripe = carried("shelf", "stripes", {"stripe": "#7d5a7c Plum 9 m"})
    assert (stripe["stripe_yarn"], stripe["repeat"]) == ("1", "#7d5a7c Plum 9 m")


def test_shapes_go_on() -> None:
    """A disc of 40 cm: its edge is as many rows of edging as there are rows; a row of 124 and 14 more is 138 for the hem."""
    round_ = carried("circle", "edging", {})
    assert round_["rows"] == str(values("circle", {})["outer_rows"])
    assert carried("even-shaping", "hem", {"along": "stitches"})["stitches"] == "138"
    assert carried("even-shaping", "side-hem", {})["rows"] == "124"
    assert "stitches" not in carried("even-shaping", "hem", {})


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
