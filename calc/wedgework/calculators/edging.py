"""Edging: a narrow strip knitted on along the piece: its rows, where it is joined, how corners are eased."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from math import lcm

from wedgework.calculators.edging_view import edging_view
from wedgework.declare import Calculator, Group, Inputs, Only, Plain, Result, choice, decimal, whole
from wedgework.finish.edging import Run, Strip, corner_rows, run_along
from wedgework.problems import Problem
from wedgework.say import say
from wedgework.units import decimal_text, signed_text

__all__ = ["CALCULATOR"]

ALONG = ("all", "side", "end")
CORNERS = ("eased", "square", "none")
# Beyond this the edging pulls the piece in, or waves. Our own choice, in per cent.
FAR_OFF = 3


def _say(key: str, **values: object) -> str:
    return say(f"calculators.edging.{key}", **values)


def compute(inputs: Inputs) -> Result:
    edging = _edging(inputs)
    values = _values(edging)
    return Result(values, edging_view(edging, values), tuple(_warnings(edging)))


def _edging(inputs: Inputs) -> Strip:
    row_mm, join = 100 / inputs.number("edging_rows_per_10cm"), inputs.whole("join_every")
    step = lcm(inputs.whole("repeat"), join)
    width_mm = inputs.whole("edging_stitches") * 100 / inputs.number("edging_stitches_per_10cm")
    along = inputs.text("along")
    runs: list[Run] = []
    if along in ("all", "end"):
        runs.append(run_along("end", inputs.whole("stitches"), 100 / inputs.number("stitches_per_10cm"), row_mm, step, join))
    if along in ("all", "side"):
        runs.append(run_along("side", inputs.whole("rows"), 100 / inputs.number("rows_per_10cm"), row_mm, step, join))
    corner = corner_rows(inputs.text("corner"), width_mm / row_mm, step) if along == "all" else 0
    return Strip(
        round=along == "all",
        runs=tuple(runs),
        stitches=inputs.whole("edging_stitches"),
        width_mm=width_mm,
        row_mm=row_mm,
        join_every=join,
        step=step,
        repeat=inputs.whole("repeat"),
        corner=inputs.text("corner") if along == "all" else "none",
        corner_rows=corner,
    )


def _values(edging: Strip) -> dict[str, Plain]:
    values: dict[str, Plain] = {
        "rows": edging.rows,
        "repeats": Fraction(edging.rows, edging.repeat),
        "joins": edging.joins,
        "join_every": edging.join_every,
        "edging_mm": edging.width_mm,
        "stitches_knitted": edging.rows * edging.stitches,
        "corner_rows": edging.corner_rows,
        "edges": [
            {
                "edge": name,
                "places": run.places,
                "rows_exact": run.exact,
                "rows": run.rows,
                "joins": run.joins,
                "off_mm": run.off_mm(edging.row_mm),
                "off_percent": run.off_percent,
                "joined_at": list(run.hung.positions),
            }
            for name, run in edging.edges
        ],
    }
    return values


def _warnings(edging: Strip) -> Iterable[Problem]:
    """Rounding to repeats that are long against the edge; more joins than there are places."""
    for run in edging.runs:
        if abs(run.off_percent) > FAR_OFF:
            percent = signed_text(run.off_percent, 1)
            sentence = _say("far-off", edge=_say(f"edge-{run.key}"), percent=percent, rows=decimal_text(run.exact, 1))
            yield Problem("repeat", "edging.far-off", sentence, _say("far-off.way-out"))
        if run.joins > run.places:
            sentence = _say("crowded", edge=_say(f"edge-{run.key}"), joins=run.joins, places=run.places)
            yield Problem("join_every", "edging.crowded", sentence, _say("crowded.way-out"))


ENDS, SIDES, ROUND = Only("along", ("all", "end")), Only("along", ("all", "side")), Only("along", ("all",))

CALCULATOR = Calculator(
    "edging",
    (
        Group(
            "piece",
            (
                choice("along", "all", ALONG),
                whole("stitches", "106", 4, 1000, "stitches", only=ENDS),
                whole("rows", "194", 4, 5000, "rows", only=SIDES),
                decimal("stitches_per_10cm", "14", 2, 80, "stitches-per-10cm"),
                decimal("rows_per_10cm", "19", 2, 120, "rows-per-10cm"),
            ),
        ),
        Group(
            "edging",
            (
                whole("edging_stitches", "8", 1, 100, "stitches"),
                decimal("edging_stitches_per_10cm", "14", 2, 80, "stitches-per-10cm"),
                decimal("edging_rows_per_10cm", "19", 2, 120, "rows-per-10cm"),
                whole("repeat", "4", 1, 200, "rows"),
                whole("join_every", "2", 1, 12, "rows"),
            ),
        ),
        Group("corners", (choice("corner", "eased", CORNERS, only=ROUND),)),
    ),
    compute,
)
