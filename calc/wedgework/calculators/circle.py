"""Circle: discs, cones, domes and ruffles from short-row wedges, or from the rim inward."""

from __future__ import annotations

from fractions import Fraction

from wedgework.calculators.circle_view import inward_result, wedges_result
from wedgework.circles import RoundThing, cone, disc, dome, inward, ruffle
from wedgework.declare import Calculator, Group, Inputs, Only, Result, choice, decimal, length, whole
from wedgework.exact import even_spread, nearest
from wedgework.problems import Problem, Refused
from wedgework.say import say

__all__ = ["CALCULATOR"]

ROUND = Only("shape", ("disc", "cone", "dome"))
CONE, RUFFLE = Only("shape", ("cone",)), Only("shape", ("ruffle",))
WEDGES, INWARD = Only("made", ("wedges",)), Only("made", ("inward",))
MOST_WEDGES = 60


def _say(key: str, **values: object) -> str:
    return say(f"calculators.circle.{key}", **values)


def thing_of(inputs: Inputs) -> RoundThing:
    """The round thing that is asked for."""
    shape = inputs.text("shape")
    if shape == "ruffle":
        return ruffle(inputs.mm("edge"), inputs.number("fullness"), inputs.mm("depth"))
    if shape == "cone":
        return cone(inputs.mm("diameter"), inputs.mm("cone_height"))
    return dome(inputs.mm("diameter")) if shape == "dome" else disc(inputs.mm("diameter"))


def compute(inputs: Inputs) -> Result:
    thing = thing_of(inputs)
    return _wedges(inputs, thing) if inputs.text("made") == "wedges" else _inward(inputs, thing)


def _wedges(inputs: Inputs, thing: RoundThing) -> Result:
    """Turns at the outer edge are shared out to the wedges, so that the sum is right whatever their number."""
    stitch, turn = inputs.number("stitches_per_10cm") / 100, inputs.number("rows_per_10cm") / 200
    stitches = max(2, thing.across.count(stitch))
    turns = thing.outer.count(turn) - thing.inner.count(turn)
    # wedges if exactly one stitch were held every two rows
    one_by_one = thing.gain_mm.mm * turn / (thing.across.mm * stitch)
    if inputs.has("wedges"):
        wedges = inputs.whole("wedges")
        per_step = max(1, nearest(wedges / one_by_one))
    else:
        per_step = inputs.whole("per_step")
        wedges = min(MOST_WEDGES, max(1, nearest(one_by_one * per_step)))
    if turns < wedges:
        where = "wedges" if inputs.has("wedges") else "per_step"
        sentence = _say("too-few-rows", turns=turns)
        raise Refused([Problem(where, "circle.too-few-rows", sentence, _say("too-few-rows.way-out", most=turns))])
    return wedges_result(inputs, thing, stitches, even_spread(turns, wedges), one_by_one * per_step, per_step)


def _inward(inputs: Inputs, thing: RoundThing) -> Result:
    """Sections lose a stitch all in the same row; near the middle, in every row if need be."""
    stitch, row = inputs.number("stitches_per_10cm") / 100, inputs.number("rows_per_10cm") / 100
    sections = inputs.whole("sections")
    parts = max(1, thing.gain_mm.count(stitch / sections))
    rows = max(1, thing.across.count(row))
    places = inward(thing, parts, rows)
    if any(times > 1 for _, times in places):
        raise Refused(
            [Problem("sections", "circle.too-few-sections", _say("too-few-sections"), _say("too-few-sections.way-out"))]
        )
    inner = thing.inner.count(stitch)
    return inward_result(inputs, thing, sections, inner + parts * sections, rows, places)


CALCULATOR = Calculator(
    "circle",
    (
        Group(
            "shape",
            (
                choice("shape", "disc", ("disc", "cone", "dome", "ruffle")),
                length("diameter", "40", 5, 300, "cm", only=ROUND),
                length("cone_height", "20", 1, 300, "cm", only=CONE),
                length("edge", "50", 5, 1000, "cm", only=RUFFLE),
                decimal("fullness", "2", Fraction(21, 20), 6, only=RUFFLE),
                length("depth", "8", 1, 60, "cm", only=RUFFLE),
            ),
        ),
        Group(
            "gauge",
            (
                decimal("stitches_per_10cm", "14", 2, 80, "stitches-per-10cm"),
                decimal("rows_per_10cm", "19", 2, 120, "rows-per-10cm"),
            ),
        ),
        Group(
            "made",
            (
                choice("made", "wedges", ("wedges", "inward")),
                whole("wedges", "", 1, MOST_WEDGES, optional=True, only=WEDGES),
                whole("per_step", "2", 1, 20, "stitches", only=WEDGES),
                whole("sections", "8", 3, 60, only=INWARD),
                whole("bed_needles", "", 10, 400, "needles", optional=True),
            ),
        ),
    ),
    compute,
)
