"""More swatches of the same yarn at other tensions, beside the one of the gauge: the tension for a wanted gauge."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from wedgework.calculators.tension_line import LIMITS, MOST_SWATCHES, Swatch, line_result, numbers_in
from wedgework.declare import Field, Inputs, Result, choice, decimal, text
from wedgework.gauge import MeasuredGauge
from wedgework.problems import Problem, Refused
from wedgework.say import say

__all__ = ["TENSION_FIELDS", "tension_problems", "tension_result"]

NEEDED = ("own_tension", "other_tensions", "other_stitches", "wanted_stitches_per_10cm")
LISTS = {"other_tensions": "tensions", "other_stitches": "stitches"}
# Where a problem of the line belongs in this form.
PLACES = {kind: name for name, kind in LISTS.items()}
THIRDS = "3"


def _list(name: str) -> Field:
    least, most = LIMITS[LISTS[name]]
    words = {"least": least, "most": most, "count": MOST_SWATCHES - 1}
    return replace(text(name, "", longest=120, optional=True), allowed_words=lambda: say("calculators.tension.list", **words))


TENSION_FIELDS: tuple[Field, ...] = (
    decimal("own_tension", "", *LIMITS["tensions"], optional=True),
    _list("other_tensions"),
    _list("other_stitches"),
    decimal("wanted_stitches_per_10cm", "", *LIMITS["stitches"], "stitches-per-10cm", optional=True),
    choice(
        "marks_per_number",
        THIRDS,
        ("1", "2", "3", "4", "10"),
        words=lambda key: say(f"calculators.tension.marks_per_number.{key}"),
    ),
)


def tension_problems(inputs: Inputs) -> Iterable[Problem]:
    """All four or none; lists of numbers, equally long, with another tension than the swatch's own among them."""
    missing = [name for name in NEEDED if not inputs.given(name)]
    if len(missing) == len(NEEDED):
        return
    for name in missing:
        sentence = say("calculators.gauge.line-needs", field=say(f"calculators.gauge.{name}.label"))
        yield Problem(name, "gauge.line-needs", sentence, say("calculators.gauge.line-needs.way-out"))
    lists = {}
    for name, kind in LISTS.items():
        try:
            lists[name] = numbers_in(inputs, name, kind)
        except Refused as refused:
            yield from refused.problems
    tensions, stitches = lists.get("other_tensions"), lists.get("other_stitches")
    if not tensions or not stitches:
        return
    if len(tensions) != len(stitches):
        yield _problem("other_stitches", "not-alike", found=len(stitches), wanted=len(tensions))
    if inputs.has("own_tension") and (set(tensions) == {inputs.number("own_tension")} or len(tensions) >= MOST_SWATCHES):
        yield _problem("other_tensions", "how-many", found=len(tensions), most=MOST_SWATCHES - 1)


def _problem(where: str, key: str, **values: object) -> Problem:
    sentence, way_out = (say(f"calculators.tension.{one}", **values) for one in (key, f"{key}.way-out"))
    return Problem(where, f"tension.{key}", sentence, way_out)


def tension_result(inputs: Inputs, main: MeasuredGauge) -> Result | None:
    """What the line says, with the names of this form; None without other swatches. Raises Refused like `line_result`."""
    if not inputs.has("other_tensions"):
        return None
    others = zip(*(numbers_in(inputs, name, kind) for name, kind in LISTS.items()), strict=True)
    swatches = [Swatch(inputs.number("own_tension"), main.stitches_per_10cm), *(Swatch(*one) for one in others)]
    parts = int(inputs.text("marks_per_number"))
    try:
        found = line_result(swatches, inputs.number("wanted_stitches_per_10cm"), main.across.off_percent, parts)
    except Refused as refused:
        raise Refused(_here(refused.problems)) from None
    values = {key: value for key, value in found.values.items() if key != "rows_per_10cm_at_mark"}
    return Result(values, found.view, tuple(_here(found.warnings)))


def _here(problems: Iterable[Problem]) -> list[Problem]:
    return [replace(one, where=PLACES.get(one.where, one.where)) for one in problems]
