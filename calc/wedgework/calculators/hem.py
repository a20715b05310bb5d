"""Hem: plain or picot, bottom or top, by its depth: rows, fold, tensions, needles to empty, where the carriage ends."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from wedgework.bed import Side, across, name, panel_needles
from wedgework.calculators.hem_view import hem_view
from wedgework.declare import Calculator, Group, Inputs, Only, Plain, Result, choice, decimal, length, whole
from wedgework.exact import nearest
from wedgework.hems import FACINGS, Facing, Hem, facing_rows, picot
from wedgework.problems import Problem
from wedgework.say import say
from wedgework.units import short_decimal
from wedgework.yarn.loops import from_gauge

__all__ = ["CALCULATOR"]

PLAIN, PICOT = "plain", "picot"
SIDES: dict[str, Side] = {"left": "L", "right": "R"}
FEWEST_ROWS = 2
# A dial goes from 0 to 10 on most machines; common practice, no source.
TENSION_MOST = 12


def _say(key: str, **values: object) -> str:
    return say(f"calculators.hem.{key}", **values)


def hem_of(inputs: Inputs) -> Hem:
    stitches = inputs.whole("stitches")
    outside = max(FEWEST_ROWS, nearest(inputs.mm("depth") * inputs.number("rows_per_10cm") / 100))
    way: Facing = next(one for one in FACINGS if one == inputs.text("facing"))
    kind = inputs.text("kind")
    return Hem(
        top=inputs.text("where") == "top",
        needles=across(*panel_needles(stitches)),
        outside=outside,
        facing=facing_rows(outside, way),
        way=way,
        start=SIDES[inputs.text("carriage")],
        stitch_mm=100 / inputs.number("stitches_per_10cm"),
        row_mm=100 / inputs.number("rows_per_10cm"),
        tension=inputs.number("tension"),
        tighter=inputs.number("facing_tighter"),
        looser=inputs.number("fold_looser") if kind == PLAIN else Fraction(0),
        picot=picot(stitches) if kind == PICOT else None,
    )


def check(inputs: Inputs) -> Iterable[Problem]:
    """The dial has an end."""
    if not (inputs.has("tension") and inputs.has("facing_tighter")):
        return
    tension, tighter = inputs.number("tension"), inputs.number("facing_tighter")
    if tighter > tension:
        sentence = _say("too-tight", tighter=short_decimal(tighter, 2), tension=short_decimal(tension, 2))
        yield Problem("facing_tighter", "hem.too-tight", sentence, _say("too-tight.way-out"))


def compute(inputs: Inputs) -> Result:
    hem = hem_of(inputs)
    loop = from_gauge(inputs.number("stitches_per_10cm"), inputs.number("rows_per_10cm"))
    yarn, off = hem.rows * hem.stitches * loop.mm / 1000, loop.off_percent / 100
    values: dict[str, Plain] = {
        "outside_rows": hem.outside,
        "facing_rows": hem.facing,
        "fold_rows": hem.fold,
        "closing_rows": hem.closing,
        "rows": hem.rows,
        "depth_mm": hem.adds_mm,
        "adds_mm": hem.adds_mm,
        "tension_outside": hem.tension,
        "tension_facing": hem.tension - hem.tighter,
        "tension_fold": None if hem.picot else hem.tension + hem.looser,
        "carriage_after": "left" if hem.side_after(hem.rows) == "L" else "right",
        "first_needle": name(hem.needles[0]),
        "last_needle": name(hem.needles[-1]),
        "stitches_knitted": hem.rows * hem.stitches,
        "yarn_m": yarn,
        "yarn_least_m": yarn * (1 - off),
        "yarn_most_m": yarn * (1 + off),
    }
    if hem.picot:
        values |= {
            "emptied": [name(needle) for needle in hem.emptied],
            "eyelets": hem.picot.eyelets,
            "points": hem.picot.points,
            "point_pitch_mm": 2 * hem.stitch_mm,
            "untouched_stitches": hem.picot.untouched,
        }
    return Result(values, hem_view(hem, values), tuple(_warnings(hem, inputs)))


def _warnings(hem: Hem, inputs: Inputs) -> Iterable[Problem]:
    if hem.tension + hem.looser > TENSION_MOST:
        sentence = _say("too-loose", tension=short_decimal(hem.tension + hem.looser, 2), most=TENSION_MOST)
        yield Problem("fold_looser", "hem.too-loose", sentence, _say("too-loose.way-out"))
    off = abs(hem.adds_mm - inputs.mm("depth"))
    if off > hem.row_mm:
        sentence = _say("shallow", rows=FEWEST_ROWS)
        yield Problem("depth", "hem.shallow", sentence, _say("shallow.way-out"))


CALCULATOR = Calculator(
    "hem",
    (
        Group(
            "hem",
            (
                choice("kind", PICOT, (PLAIN, PICOT)),
                choice("where", "bottom", ("bottom", "top")),
                length("depth", "4", Fraction(1, 2), 30, "cm"),
                choice("facing", "equal", FACINGS),
            ),
        ),
        Group(
            "piece",
            (
                whole("stitches", "105", 6, 400, "stitches"),
                decimal("stitches_per_10cm", "14", 2, 80, "stitches-per-10cm"),
                decimal("rows_per_10cm", "19", 2, 120, "rows-per-10cm"),
                choice("carriage", "right", tuple(SIDES)),
            ),
        ),
        Group(
            "tension",
            (
                decimal("tension", "7", 0, TENSION_MOST),
                decimal("facing_tighter", "1", 0, 4),
                decimal("fold_looser", "3", 0, 6, only=Only("kind", (PLAIN,))),
            ),
        ),
    ),
    compute,
    check,
)
