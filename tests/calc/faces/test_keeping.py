"""The project file of a device: written whole, read whole, and refused with the place of what is wrong."""

from __future__ import annotations

import json
from typing import Any

import pytest

from wedgework.faces.piece import piece_of
from wedgework.faces.wire import answer
from wedgework.formats import read_project, steps_digest

SMALL = {"size_in": "counts", "needles": "40", "rows": "60", "layout": "diamond-in-corners"}
RUST = {"name": "Rust", "colour": "#b4533f", "ball_g": "50 g", "ball_m": "60 m", "on_hand_g": "175 g", "rate": "1.2"}


@pytest.fixture(scope="module")
def piece() -> dict[str, Any]:
    return piece_of(SMALL)


def told(**asked: str) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(answer(json.dumps(asked)))
    return found


def written(**kept: Any) -> dict[str, Any]:
    whole = {"pieces": [], "yarns": [], "fields": [], "designs": []} | kept
    return told(ask="project-write", kept=json.dumps(whole))


def test_everything_there_and_back(piece: dict[str, Any]) -> None:
    place = {
        "steps_done": 70,
        "row_seconds": [14.25],
        "change_seconds": [60],
        "pauses": [{"at": "2026-11-29T20:00:00Z", "seconds": 900}],
    }
    note = {"step_notes": [{"steps_done": 70, "text": "loose end at R3"}]}
    head = {"format": "wedgework-report", "version": 1, "title": "Mine", "digest": piece["digest"]}
    report = head | {
        "steps": 100,
        "steps_done": 70,
        "minutes": 12.25,
        "blocks": [{"block": "b1", "minutes": 12.25, "rows": 9}],
        "text": "A pleasure.",
    }
    report["mishaps"] = [{"kind": "jam", "steps_done": 7, "block": "b1"}]
    swatch = {"stitches": "41", "width": "28.5 cm", "rows": "60", "height": "31.6 cm"}
    found = written(
        pieces=[{"plan": piece["plan"], **place, **note, "report": report}, {"plan": piece["plan"], "carried_from": 0}],
        yarns=[RUST],
        fields=[{"calculator": "gauge", "inputs": swatch}, {"calculator": "panel-plan", "inputs": SMALL}],
        designs=[piece["design"]],
    )
    assert (found["problems"], found["left_out"]) == ([], [])
    project = read_project(found["text"])
    assert project.swatches[0].swatch.stitches == 41
    assert len(project.machines) == 1, "the same bed is written once"
    looked = told(ask="project-look", text=found["text"])
    first, second = looked["pieces"]
    assert first["digest"] == piece["digest"]
    assert (first["steps_done"], first["row_ms"], first["change_ms"]) == (70, [14250], [60000])
    assert first["pauses"] == [["2026-11-29T20:00:00Z", 900_000]]
    assert first["step_notes"] == [[70, "loose end at R3"]]
    assert {key: first["report"][key] for key in report} == report | {"mishaps": [report["mishaps"][0] | {"text": ""}]}
    assert second["report"] is None
    assert second["from"] == 0
    assert [yarn["rate"] for yarn in looked["yarns"]] == ["1.2"]
    assert [each["inputs"] for each in looked["fields"]] == [swatch, SMALL]
    assert looked["swatches"][0]["inputs"]["width"] == "285 mm"
    assert looked["machines"][0]["inputs"]["bed"] == "bulky-9"
    again = told(ask="project-piece", text=found["text"], number="0")["piece"]
    assert again == piece


def test_a_piece_that_is_stored_without_its_plan_is_planned_again_or_told(piece: dict[str, Any]) -> None:
    old = {"design": piece["design"], "digest": piece["digest"], "steps_done": 5}
    found = written(
        pieces=[old, old | {"digest": "0123456789ab"}, {"plan": piece["plan"], "carried_from": 1}, old | {"carried_from": 0}]
    )
    assert found["left_out"] == ["Lap blanket"]
    progress = read_project(found["text"]).progress
    assert {steps_digest(one.plan.steps) for one in progress} == {piece["digest"]}
    assert [one.carried_from for one in progress] == [None, None, 0], "places in the list stay right"


@pytest.mark.parametrize("kept", ["7", "{}", '{"pieces": 7}', '{"pieces": [7], "yarns": [], "fields": [], "designs": []}', "{"])
def test_what_is_no_list_of_things_kept_is_refused(kept: str) -> None:
    found = told(ask="project-write", kept=kept)
    assert found["problems"]
    assert found["text"] == ""


def test_a_wrong_yarn_is_told_with_its_place() -> None:
    assert [p["where"] for p in written(yarns=[RUST, RUST | {"ball_g": "many"}])["problems"]] == ["yarns[1].ball_g"]


def test_a_plan_that_cannot_be_knitted_is_no_piece(piece: dict[str, Any]) -> None:
    plan = json.loads(json.dumps(piece["plan"]))
    knit = next(i for i, step in enumerate(plan["steps"]) if step["do"] == "knit")
    plan["steps"][knit]["to"] = "R" if plan["steps"][knit]["to"] == "L" else "L"
    text = json.dumps({"format": "wedgework-project", "version": 1, "progress": [{"plan": plan}]})
    assert told(ask="project-look", text=text)["problems"] == []
    found = told(ask="project-piece", text=text, number="0")
    assert found["piece"] is None
    assert found["problems"][0]["where"].startswith("progress[0].plan")
    assert told(ask="project-piece", text=text, number="1")["problems"][0]["code"] == "faces.no-such-piece"
