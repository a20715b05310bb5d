"""The gauge measured in the middle of a piece: what it says of the size and of the rest."""

from __future__ import annotations

import json

from wedgework.faces.measured import measured_told
from wedgework.faces.wire import answer

PLAN = {"planned_stitches": "14", "planned_rows": "19", "needles": "106", "height_rows": "198", "rows_left": "412"}


def told(stitches: str, width: str, rows: str, height: str) -> list[str]:
    found = measured_told({**PLAN, "stitches": stitches, "width": width, "rows": rows, "height": height})
    assert found["problems"] == []
    return found["said"]  # type: ignore[return-value]


def test_near_enough_goes_on() -> None:
    said = told("28", "20 cm", "38", "200")
    assert said[0].startswith("Measured: 14.0 stitches and 19.0 rows per 10 cm. Planned: 14 and 19.")
    assert "75.7 cm" in said[1], "106 stitches at 14 per 10 cm"
    assert said[2].startswith("Both are within 2 %")


def test_far_off_says_what_becomes_of_the_size_and_the_rest() -> None:
    said = told("30", "200", "38", "200")
    assert "15.0 stitches" in said[0]
    assert "+7.1 %" in said[0]
    assert "70.7 cm" in said[1], "106 stitches at 15 per 10 cm"
    assert "412 rows" in said[2]
    assert "slanted edges" in said[3], "stitches and rows differ otherwise"
    assert len(told("30", "200", "40.7", "200")) == 3, "both 7 % closer: the slopes stay"


def test_every_wrong_field_is_told_at_once() -> None:
    asked = {"ask": "measured", "inputs": {**PLAN, "stitches": "many", "width": "0", "rows": "38", "height": "3 apples"}}
    found = json.loads(answer(json.dumps(asked)))
    assert found["said"] == []
    assert [one["where"] for one in found["problems"]] == ["stitches", "width", "height"]
