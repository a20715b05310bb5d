"""Side hem: stitches to hang along an edge, in what rhythm, in sections, and the corners, of one side or all four."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from wedgework.calculators.side_hem_view import Along, SideHem, side_hem_view
from wedgework.declare import Calculator, Group, Inputs, Only, Plain, Result, choice, decimal, length, whole
from wedgework.exact import nearest
from wedgework.hems import FACINGS, Facing, corner_stitches, facing_rows, mitre, mitre_back, picot
from wedgework.pickups import PickUp, pick_up, sections
from wedgework.problems import Problem
from wedgework.say import say, say_n
from wedgework.units import decimal_text, signed_text

__all__ = ["CALCULATOR"]

# What picking up takes from the piece at each side, in stitches.
TAKES = {"none": Fraction(0), "half": Fraction(1, 2), "one": Fraction(1)}
RHYTHMS = {"three-for-four": Fraction(3, 4), "two-for-three": Fraction(2, 3), "every": Fraction(1)}
CORNERS = ("lapped", "mitred", "butted")
PLAIN, PICOT = "plain", "picot"
FEWEST_ROWS = 2
# A rhythm by heart further than this from what the gauges ask for makes a wave or pulls in. Our own choice, in per cent.
FAR_OFF = 5


def _say(key: str, **values: object) -> str:
    return say(f"calculators.side-hem.{key}", **values)


@dataclass(frozen=True, slots=True)
class _Gauge:
    """Of the piece and of its hem, per 10 cm."""

    stitches: Fraction
    rows: Fraction
    hem_stitches: Fraction
    hem_rows: Fraction

    @classmethod
    def of(cls, inputs: Inputs) -> _Gauge:
        stitches, rows = inputs.number("stitches_per_10cm"), inputs.number("rows_per_10cm")
        hem_stitches = inputs.number("hem_stitches_per_10cm") if inputs.has("hem_stitches_per_10cm") else stitches
        return cls(stitches, rows, hem_stitches, inputs.number("hem_rows_per_10cm") if inputs.has("hem_rows_per_10cm") else rows)


def _exact(inputs: Inputs, gauge: _Gauge) -> Fraction:
    """Stitches along a side edge that the gauges ask for."""
    return inputs.whole("rows") * gauge.hem_stitches / gauge.rows


def _along_rows(inputs: Inputs, gauge: _Gauge) -> PickUp:
    chosen, rows = inputs.text("pick_up"), inputs.whole("rows")
    exact = _exact(inputs, gauge) if chosen == "gauge" else rows * RHYTHMS[chosen]
    return pick_up(rows, max(1, nearest(exact)))


def compute(inputs: Inputs) -> Result:
    gauge = _Gauge.of(inputs)
    outside = max(FEWEST_ROWS, nearest(inputs.mm("depth") * gauge.hem_rows / 100))
    way: Facing = next(one for one in FACINGS if one == inputs.text("facing"))
    facing = facing_rows(outside, way)
    corner = corner_stitches(outside, gauge.hem_stitches, gauge.hem_rows)
    corners = inputs.text("corners")
    side = _along_rows(inputs, gauge)
    four = inputs.text("edges") == "all"
    alongs = [_along(inputs, "side", side, corner if corners == "lapped" else 0, corner if corners == "mitred" else 0)]
    if four:
        across = pick_up(inputs.whole("stitches"), nearest(inputs.whole("stitches") * gauge.hem_stitches / gauge.stitches) or 1)
        wider = corner if corners == "butted" else 0
        alongs.append(_along(inputs, "end", across, wider, corner if corners == "mitred" else 0))
    depth_mm = outside * 100 / gauge.hem_rows
    hem = SideHem(
        four=four,
        picot=inputs.text("kind") == PICOT,
        corners=corners,
        outside=outside,
        facing=facing,
        corner=corner,
        alongs=tuple(alongs),
        depth_mm=depth_mm,
        height_mm=inputs.whole("rows") * 100 / gauge.rows,
        width_mm=_body(inputs, gauge) if four else None,
    )
    values = _values(hem, inputs, gauge, side)
    return Result(values, side_hem_view(hem, values), tuple(_warnings(inputs, gauge, hem)))


def _body(inputs: Inputs, gauge: _Gauge) -> Fraction:
    """Width of the piece that is left between two side hems."""
    return (inputs.whole("stitches") - 2 * TAKES[inputs.text("edge_takes")]) * 100 / gauge.stitches


def _along(inputs: Inputs, key: str, hung: PickUp, wider: int, grows: int) -> Along:
    """`wider`: stitches that a hem has more at each end from the start; `grows`: those that it gains up to the fold."""
    stitches = hung.stitches + 2 * wider
    at_fold = stitches + 2 * grows
    parts = sections(at_fold, inputs.whole("bed_needles"), inputs.whole("seam_stitches"))
    return Along(key, hung, wider, grows, parts)


def _values(hem: SideHem, inputs: Inputs, gauge: _Gauge, side: PickUp) -> dict[str, Plain]:
    rhythm = side.rhythm()
    body = hem.height_mm
    values: dict[str, Plain] = {
        "picked_up": side.stitches,
        "picked_up_exact": _exact(inputs, gauge),
        "rhythm": {"stitches": rhythm.numerator, "rows": rhythm.denominator},
        "positions": list(side.positions),
        "left_out": list(side.left_out),
        "outside_rows": hem.outside,
        "fold_rows": 0 if hem.picot else 1,
        "facing_rows": hem.facing,
        "depth_mm": hem.depth_mm,
        "corner_stitches": hem.corner,
        "sides": [
            {
                "side": name,
                "picked_up": one.hung.stitches,
                "stitches": one.stitches,
                "at_fold": one.at_fold,
                "sections": [{"from": s.first, "to": s.last, "needles": s.needles} for s in one.sections],
            }
            for name, one in hem.sides
        ],
        "edge_takes_mm": TAKES[inputs.text("edge_takes")] * 100 / gauge.stitches,
        "height_mm": body,
    }
    if hem.corners == "mitred":
        values["outside_changes"] = [{"row": row, "stitches": n} for row, n in mitre(hem.outside, hem.corner)]
        values["facing_changes"] = [{"row": row, "stitches": n} for row, n in mitre_back(hem.facing, hem.corner)]
    if hem.width_mm is not None:
        values["width_mm"] = hem.width_mm
        values["finished_width_mm"] = hem.width_mm + 2 * hem.depth_mm
        values["finished_height_mm"] = body + 2 * hem.depth_mm
    if hem.picot:
        values["eyelets"] = {name: sum(picot(s.needles).eyelets for s in one.sections) for name, one in hem.sides}
    return values


def _warnings(inputs: Inputs, gauge: _Gauge, hem: SideHem) -> Iterable[Problem]:
    exact = _exact(inputs, gauge)
    off = (hem.alongs[0].hung.stitches / exact - 1) * 100
    if inputs.text("pick_up") != "gauge" and abs(off) > FAR_OFF:
        key = "waves" if off > 0 else "pulls"
        sentence = _say(key, percent=signed_text(off, 1))
        yield Problem("pick_up", f"side-hem.{key}", sentence, _say("far-off.way-out", exact=decimal_text(exact, 1)))
    if hem.four and hem.corners == "mitred" and any(len(one.sections) > 1 for one in hem.alongs):
        most = max(len(one.sections) for one in hem.alongs)
        yield Problem(
            "corners",
            "side-hem.mitred-sections",
            say_n("calculators.side-hem.mitred-sections", most),
            _say("mitred-sections.way-out"),
        )


FOUR = Only("edges", ("all",))

CALCULATOR = Calculator(
    "side-hem",
    (
        Group(
            "piece",
            (
                choice("edges", "all", ("all", "side")),
                whole("stitches", "106", 4, 400, "stitches", only=FOUR),
                whole("rows", "194", 4, 5000, "rows"),
                choice("edge_takes", "one", tuple(TAKES)),
            ),
        ),
        Group(
            "gauge",
            (
                decimal("stitches_per_10cm", "14", 2, 80, "stitches-per-10cm"),
                decimal("rows_per_10cm", "19", 2, 120, "rows-per-10cm"),
                decimal("hem_stitches_per_10cm", "", 2, 80, "stitches-per-10cm", optional=True),
                decimal("hem_rows_per_10cm", "", 2, 120, "rows-per-10cm", optional=True),
            ),
        ),
        Group(
            "hem",
            (
                choice("kind", PLAIN, (PLAIN, PICOT)),
                length("depth", "4", Fraction(1, 2), 30, "cm"),
                choice("facing", "equal", FACINGS),
                choice("corners", "lapped", CORNERS),
            ),
        ),
        Group(
            "hanging",
            (
                choice("pick_up", "gauge", ("gauge", *RHYTHMS)),
                whole("bed_needles", "200", 10, 400, "needles"),
                whole("seam_stitches", "1", 0, 4, "stitches"),
            ),
        ),
    ),
    compute,
)
