"""The gauge measured in the middle of a piece against its plan, and what that means for the rest.

measured_told({"stitches": "29", "width": "200 mm", "rows": "39", "height": "200 mm",
               "planned_stitches": "14", "planned_rows": "19", "needles": "106", "height_rows": "198", "rows_left": "412"})
{"said": ["Measured: 14.5 stitches ...", ...], "problems": []}
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction

from wedgework.faces.answers import Json, problem_object
from wedgework.problems import Problem, Refused
from wedgework.say import say, say_n
from wedgework.units import both_text, decimal_text, length_mm, number, short_decimal, signed_text

__all__ = ["MEASURED", "NEAR_PERCENT", "measured_told"]

NEAR_PERCENT = 2
"""On the machine a gauge can hardly be measured nearer than this (common practice, no source)."""


def _length(text: str) -> Fraction:
    return length_mm(text, "mm")


MEASURED: Mapping[str, Callable[[str], Fraction]] = {
    "stitches": number,
    "width": _length,
    "rows": number,
    "height": _length,
    "planned_stitches": number,
    "planned_rows": number,
    "needles": number,
    "height_rows": number,
    "rows_left": number,
}
"""What is asked, each as text; how it is read."""


def measured_told(typed: Mapping[str, str]) -> dict[str, Json]:
    """Sentences, and problems with the names of fields; all of them at once."""
    given: dict[str, Fraction] = {}
    problems: list[Problem] = []
    for name, reading in MEASURED.items():
        try:
            given[name] = reading(typed.get(name, ""))
        except Refused as refused:
            problems += [Problem(name, one.code, one.sentence, one.way_out) for one in refused.problems]
            continue
        if name != "rows_left" and given[name] <= 0:
            problems.append(Problem(name, "machine.not-positive", say("machine.gauge-wrong"), ""))
    if problems:
        return {"said": [], "problems": [problem_object(one) for one in problems]}
    return {"said": list(_said(given)), "problems": []}


def _said(given: Mapping[str, Fraction]) -> tuple[str, ...]:
    stitches, rows = given["stitches"] * 100 / given["width"], given["rows"] * 100 / given["height"]
    planned = given["planned_stitches"], given["planned_rows"]
    across, along = (100 * (new / old - 1) for new, old in zip((stitches, rows), planned, strict=True))
    width, height = given["needles"] * 100 / stitches, given["height_rows"] * 100 / rows
    was = given["needles"] * 100 / planned[0], given["height_rows"] * 100 / planned[1]
    said = [
        say(
            "machine.gauge-measured",
            stitches=decimal_text(stitches, 1),
            rows=decimal_text(rows, 1),
            planned_stitches=short_decimal(planned[0], 2),
            planned_rows=short_decimal(planned[1], 2),
            across=signed_text(across, 1),
            along=signed_text(along, 1),
        ),
        say(
            "machine.gauge-size",
            width=both_text(width),
            height=both_text(height),
            planned_width=both_text(was[0]),
            planned_height=both_text(was[1]),
        ),
    ]
    if max(abs(across), abs(along)) <= NEAR_PERCENT:
        return (*said, say("machine.gauge-near", percent=NEAR_PERCENT))
    said.append(say("machine.gauge-far", left=say_n("common.rows", int(given["rows_left"]))))
    stretched = (100 + across) / (100 + along)
    if abs(100 * (stretched - 1)) > NEAR_PERCENT:
        said.append(say("machine.gauge-slopes"))
    return tuple(said)
