"""The one door: any string in, a JSON string out."""

from __future__ import annotations

import json

import pytest

from wedgework.faces.wire import LONGEST_QUESTION, answer, default_answer


def asked(**inputs: str) -> dict:
    return json.loads(answer(json.dumps({"calculator": "gauge", "inputs": inputs})))


def test_an_answer_is_the_record_and_the_html() -> None:
    told = asked(stitches="30", width="10 cm", rows="39", height="10 cm")
    assert list(told) == ["answer", "html"]
    assert list(told["answer"]) == ["calculator", "inputs", "result", "problems", "warnings"]
    assert told["answer"]["result"]["stitches_per_10cm"] == 30
    assert "30.00" in told["html"]


def test_problems_are_told_in_both() -> None:
    told = asked(stitches="<b>x</b>")
    assert told["answer"]["result"] == {}
    assert told["answer"]["problems"] == [
        {
            "where": "stitches",
            "code": "units.not-a-number",
            "sentence": '"<b>x</b>" is not a number.',
            "way_out": "Type it like 12, 12.4, 12,4 or 7 1/2. Allowed: 1 to 1000 stitches.",
        }
    ]
    assert "&lt;b&gt;x" in told["html"]
    assert "<b>x" not in told["html"]


def test_the_defaults_need_no_inputs() -> None:
    assert default_answer("gauge") == answer('{"calculator":"gauge"}')
    assert asked() == json.loads(default_answer("gauge"))


@pytest.mark.parametrize(
    "question",
    [
        "",
        "null",
        "[]",
        "7",
        '"gauge"',
        "{",
        "{}",
        '{"calculator": "nothing"}',
        '{"calculator": 7}',
        '{"calculator": "gauge", "inputs": []}',
        '{"calculator": "gauge", "inputs": {"stitches": 40}}',
        '{"calculator": "gauge", "inputs": {"stitches": null}}',
        '{"calculator": "gauge", "more": 1}',
        '{"calculator": "gauge", "inputs": {"stitches": "\\ud800"}}',
        '{"calculator": "gauge", "inputs": {"stitches": NaN}}',
        "\ud800",
        "[" * 15_000,
        '{"a":' * 3_000,
        " " * (LONGEST_QUESTION + 1),
        "\x00",
    ],
)
def test_no_string_makes_it_fall(question: str) -> None:
    told = json.loads(answer(question))
    assert told["answer"]["problems"]
    assert told["answer"]["result"] == {}
    assert told["html"]


def test_an_answer_can_be_written_as_utf_8_whatever_was_asked() -> None:
    answer('{"calculator": "gauge", "inputs": {"x\\ud83d": "y", "stitches": "\\udc00"}}').encode("utf-8")
    told = asked(stitches="\u202e40", width="\u0661\u0660 cm")
    assert [p["where"] for p in told["answer"]["problems"]] == ["stitches", "width"]
