"""The questions beside an answer, through the one door."""

from __future__ import annotations

import json

import pytest

from wedgework.faces.piece import PIECE_VERSION
from wedgework.faces.wire import answer, default_answer


def asked(**question: object) -> dict:
    return json.loads(answer(json.dumps(question)))


def test_a_link_is_made_and_opened() -> None:
    made = asked(ask="link", calculator="gauge", inputs={"stitches": "38"}, digest="abc")
    assert list(made) == ["fragment", "problems"]
    opened = asked(ask="open", fragment=made["fragment"])
    assert list(opened) == ["calculator", "title", "inputs", "made_by", "newer", "digest", "about", "problems"]
    assert opened["calculator"] == "gauge"
    assert opened["inputs"] == {**json.loads(default_answer("gauge"))["answer"]["inputs"], "stitches": "38"}
    assert (opened["newer"], opened["digest"], opened["problems"]) == (False, "abc", [])


def test_a_link_carries_wrong_inputs_too() -> None:
    made = asked(ask="link", calculator="gauge", inputs={"stitches": "<b>forty"})
    assert asked(ask="open", fragment=made["fragment"])["inputs"]["stitches"] == "<b>forty"


def test_what_is_refused_is_told_as_problems() -> None:
    told = asked(ask="open", fragment="w1.broken")
    assert told["calculator"] == ""
    assert [problem["code"] for problem in told["problems"]] == ["faces.link-broken"]
    told = asked(ask="link", calculator="gauge", inputs={"nothing": "1"})
    assert told["fragment"] == ""
    assert [problem["code"] for problem in told["problems"]] == ["faces.link-fields"]
    told = asked(ask="piece", inputs={"width": "3 apples"})
    assert told["piece"] is None
    assert [problem["where"] for problem in told["problems"]] == ["width"]


def test_a_piece_is_all_that_the_machine_page_needs() -> None:
    small = {"size_in": "counts", "needles": "24", "rows": "48", "title": "Small"}
    piece = asked(ask="piece", inputs=small)["piece"]
    assert piece["version"] == PIECE_VERSION
    assert piece["title"] == piece["design"]["title"] == "Small"
    told = json.loads(answer(json.dumps({"calculator": "panel-plan", "inputs": small})))["answer"]["result"]
    assert piece["digest"] == told["steps_digest"]
    assert piece["cues"][0]["row_before"] == 0
    assert piece["cues"][-1]["row_after"] == piece["rows"] == told["passes"]
    assert [cue["index"] for cue in piece["cues"]] == list(range(len(piece["cues"])))
    yarns = {yarn["id"] for yarn in piece["yarns"]}
    assert {block["yarn"] for block in piece["blocks"]} <= yarns
    assert {cue["block"] for cue in piece["cues"]} - {""} == {block["id"] for block in piece["blocks"]}
    assert piece["front"].startswith("<svg ")


@pytest.mark.parametrize(
    "question",
    [
        {"ask": "nothing"},
        {"ask": 7},
        {"ask": None},
        {"ask": []},
        {"ask": "link"},
        {"ask": "link", "calculator": "nothing", "inputs": {}},
        {"ask": "link", "calculator": ["gauge"], "inputs": {}},
        {"ask": "link", "calculator": "gauge", "inputs": {"stitches": 40}},
        {"ask": "link", "calculator": "gauge", "inputs": []},
        {"ask": "link", "calculator": "gauge", "inputs": {}, "more": 1},
        {"ask": "open"},
        {"ask": "open", "fragment": 1},
        {"ask": "open", "fragment": "w1.", "inputs": {}},
        {"ask": "piece", "calculator": "panel-plan", "inputs": {}},
        {"ask": "piece", "inputs": "all"},
    ],
)
def test_a_misshapen_question_is_told_like_any_other(question: dict) -> None:
    told = asked(**question)
    assert [problem["code"] for problem in told["answer"]["problems"]] == ["faces.unreadable-question"]
