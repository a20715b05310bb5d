"""The report of a test knitter as a file."""

from __future__ import annotations

import json
from fractions import Fraction
from typing import Any

import pytest

from wedgework.formats import Report, read_report, write_report
from wedgework.problems import Refused

BARE: dict[str, Any] = {
    "format": "wedgework-report",
    "version": 1,
    "title": "Lap blanket",
    "digest": "0123456789ab",
    "steps": 40,
    "steps_done": 12,
}


def test_what_is_not_written_is_not_there() -> None:
    report = read_report(json.dumps(BARE))
    assert report == Report("Lap blanket", "0123456789ab", 40, 12)
    assert report.minutes == 0
    assert read_report(write_report(report)) == report


def test_minutes_and_grams_are_exact() -> None:
    value = {**BARE, "minutes": 0.1, "yarns": [{"yarn": "a", "grams": 87.5}], "blocks": [{"block": "b1", "minutes": 0.3}]}
    report = read_report(json.dumps(value))
    assert (report.minutes, report.yarns[0].grams, report.blocks[0].minutes) == (
        Fraction(1, 10),
        Fraction(175, 2),
        Fraction(3, 10),
    )


@pytest.mark.parametrize(
    ("changes", "where"),
    [
        ({"digest": "0123456789AB"}, "digest"),
        ({"digest": "0123456789a"}, "digest"),
        ({"knitter": "x" * 101}, "knitter"),
        ({"knitter": "a\u0000b"}, "knitter"),
        ({"minutes": -1}, "minutes"),
        ({"minutes": 1e9}, "minutes"),
        ({"blocks": [{"block": "b 1", "minutes": 1}]}, "blocks[0].block"),
        ({"notes": [{"steps_done": 1, "text": ""}]}, "notes[0].text"),
        ({"mishaps": [{"steps_done": 1, "kind": "storm"}]}, "mishaps[0].kind"),
        ({"counts": [{"steps_done": 1, "planned": 4}]}, "counts[0].counted"),
        ({"notes": [{"steps_done": 1, "text": "x"}] * 1001}, "notes"),
        ({"plan": {}}, "plan"),
    ],
)
def test_a_wrong_value_is_named_by_its_path(changes: dict[str, Any], where: str) -> None:
    with pytest.raises(Refused) as caught:
        read_report(json.dumps({**BARE, **changes}))
    assert [problem.where for problem in caught.value.problems] == [where]
