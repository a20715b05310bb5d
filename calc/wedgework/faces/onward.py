"""What one calculator's answer fills in another: the gauge goes to the planner, the plan to its yarn and its time.

    ways("gauge")                                      ("panel-plan", "size", "panels", ...)
    carried("gauge", "size", {"stitches": "40"})       {"stitches_per_10cm": "14.035", ...}, texts as they would be typed

Only what the answer knows is carried; every other field of the other page stays as the person left it there.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import Any

from wedgework.calculators import panel_plan
from wedgework.calculators.plan_groups import PLAN_GROUPS
from wedgework.catalogue import calculator
from wedgework.declare import Inputs, Plain, work_out
from wedgework.declare.calculator import read_all
from wedgework.formats.plan import Hold, Knit, Plan, Work
from wedgework.layout.sizes import resolve
from wedgework.problems import Refused
from wedgework.units import short_decimal

__all__ = ["carried", "ways"]

Typed = dict[str, str]
Carry = Callable[[Mapping[str, str], Mapping[str, Any]], Typed]

PIECE = tuple(field.name for group in PLAN_GROUPS for field in group.fields)
GAUGE = ("stitches_per_10cm", "rows_per_10cm")
OFF = ("stitches_off_percent", "rows_off_percent")


def ways(slug: str) -> tuple[str, ...]:
    """Where the answer of a calculator can go; in the order of the buttons."""
    return tuple(_WAYS.get(slug, {}))


def carried(slug: str, to: str, typed: Mapping[str, str]) -> Typed:
    """What is filled in there. Raises Refused where the answer is none, LookupError where no way leads there."""
    found = calculator(slug)
    if found is None:
        raise LookupError(slug)
    carry = _WAYS[slug][to]
    if set(PIECE) <= found.defaults.keys():
        # A whole piece is carried as it was typed, or planned by the way itself: its answer is long and is not needed.
        read_all(found, typed)
        return carry({**found.defaults, **typed}, {})
    answer = work_out(found, typed)
    if answer.result is None:
        raise Refused(answer.problems)
    return {name: text for name, text in carry(answer.inputs, answer.result.values).items() if text}


def _text(value: Plain, digits: int = 3) -> str:
    """As it would be typed; nothing for nothing."""
    if value is None:
        return ""
    return short_decimal(value, digits) if isinstance(value, (int, Fraction)) else str(value)


def _cm(value: Any) -> str:
    return f"{_text(Fraction(value) / 10, 2)} cm"


def _typed(*names: str, **renamed: str) -> Carry:
    """Fields that stand there too, under the same name or, `there=here`, under another."""
    pairs = {**{name: name for name in names}, **renamed}
    return lambda inputs, _: {there: inputs[here] for there, here in pairs.items()}


def _found(*names: str, **renamed: str) -> Carry:
    """Figures of the answer, in the same way."""
    pairs = {**{name: name for name in names}, **renamed}
    return lambda _, values: {there: _text(values[here]) for there, here in pairs.items()}


def _fixed(**texts: str) -> Carry:
    return lambda _inputs, _values: texts


def _all(*carries: Carry) -> Carry:
    def together(inputs: Mapping[str, str], values: Mapping[str, Any]) -> Typed:
        return {name: text for carry in carries for name, text in carry(inputs, values).items()}

    return together


def _swatch(inputs: Mapping[str, str], values: Mapping[str, Any]) -> Typed:
    """The swatch itself, so that the planner knows how far the gauge can be off."""
    washed = "washed_" if inputs["washed_width"].strip() else ""
    return {
        "gauge_from": "swatch",
        "swatch_stitches": _text(values.get("stitches_between_marks")) or inputs["stitches"],
        "swatch_rows": inputs["rows"],
        "swatch_width": inputs[f"{washed}width"],
        "swatch_height": inputs[f"{washed}height"],
    }


def _nothing(_inputs: Mapping[str, str], _values: Mapping[str, Any]) -> Typed:
    return {}


# --- from a plan ---


def _plan(inputs: Mapping[str, str]) -> Plan:
    return panel_plan.planned(_piece(inputs))[0]


def _piece(inputs: Mapping[str, str]) -> Inputs:
    return read_all(panel_plan.CALCULATOR, {name: inputs[name] for name in PIECE})


def _plan_gauge(plan: Plan) -> Typed:
    sizes = resolve(plan.design)
    return {"stitches_per_10cm": _text(sizes.stitches_per_10cm), "rows_per_10cm": _text(sizes.rows_per_10cm)}


def _plan_size(inputs: Mapping[str, str], _values: Mapping[str, Any]) -> Typed:
    """Stitches and rows of the piece with its gauge."""
    plan = _plan(inputs)
    return _plan_stitches(plan) | {"rows": f"{resolve(plan.design).rows}"}


def _plan_across(inputs: Mapping[str, str], _values: Mapping[str, Any]) -> Typed:
    return _plan_stitches(_plan(inputs))


def _plan_stitches(plan: Plan) -> Typed:
    return _plan_gauge(plan) | {"stitches": f"{resolve(plan.design).needles}"}


def _plan_blocking(inputs: Mapping[str, str], _values: Mapping[str, Any]) -> Typed:
    sizes = resolve(_plan(inputs).design)
    width, height = _cm(sizes.width_mm), _cm(sizes.height_mm)
    return {"stitches": f"{sizes.needles}", "rows": f"{sizes.rows}", "width": width, "height": height}


def _plan_panels(inputs: Mapping[str, str], _values: Mapping[str, Any]) -> Typed:
    plan = _plan(inputs)
    sizes = resolve(plan.design)
    size = {"width": _cm(sizes.width_mm), "height": _cm(sizes.height_mm), "bed_needles": f"{plan.design.bed.needles}"}
    there = calculator("panels")
    names = there.defaults if there else {}
    parts = {name: inputs[name] for name in ("layout", *_LAYOUT_PARTS) if name in names}
    return _plan_gauge(plan) | size | parts


def _plan_time(inputs: Mapping[str, str], _values: Mapping[str, Any]) -> Typed:
    """Passes, needles set, blocks, ends and hems, as the model bed counted them."""
    plan, judged = panel_plan.planned(_piece(inputs))
    knitted = sum(isinstance(step, Knit) for step in plan.steps)
    return {
        "passes": f"{knitted + judged.summary.free_passes}",
        "needle_changes": f"{sum(isinstance(step, (Hold, Work)) for step in plan.steps)}",
        "block_changes": f"{len({step.block for step in plan.steps if isinstance(step, Knit)})}",
        "ends": f"{judged.summary.ends}",
        "hems": f"{_hems(plan)}",
        "sewing": "0 cm",
    }


def _hems(plan: Plan) -> int:
    """Each side of the piece one."""
    hems = plan.design.hems
    return sum(each.kind != "none" for each in (hems.bottom, hems.top)) + 2 * (hems.sides.kind != "none")


_LAYOUT_PARTS = tuple(field.name for group in PLAN_GROUPS if group.key == "layout" for field in group.fields)
_FIGURES = _fixed(gauge_from="figures")
_TO_PLAN = _all(_FIGURES, _typed(*GAUGE))
_GAUGE_THERE = {
    slug: _found(*GAUGE) for slug in ("panels", "even-shaping", "circle", "hem", "side-hem", "edging", "short-row-shape")
}

_WAYS: Mapping[str, Mapping[str, Carry]] = {
    "gauge": {"panel-plan": _swatch, "size": _found(*GAUGE, *OFF), **_GAUGE_THERE},
    "tension": {
        "gauge": _nothing,
        "size": _found(stitches_per_10cm="stitches_per_10cm_at_mark", rows_per_10cm="rows_per_10cm_at_mark"),
        "panel-plan": _all(
            _FIGURES, _found(stitches_per_10cm="stitches_per_10cm_at_mark", rows_per_10cm="rows_per_10cm_at_mark")
        ),
    },
    "size": {
        "panel-plan": _all(_TO_PLAN, _fixed(size_in="counts"), _found(needles="stitches", rows="rows")),
        "panels": _all(_typed(*GAUGE), lambda _, values: {k: _cm(values[f"{k}_unwashed_mm"]) for k in ("width", "height")}),
        "side-hem": _all(_typed(*GAUGE), _found("stitches", "rows")),
        "edging": _all(_typed(*GAUGE), _found("stitches", "rows")),
    },
    "panels": {
        "panel-plan": _all(_TO_PLAN, _fixed(size_in="counts"), _found(needles="needles_per_panel", rows="rows")),
        "blocking": _all(
            _found(stitches="needles_per_panel", rows="rows"),
            lambda _, values: {
                "width": _cm(Fraction(values["width_mm"]) / int(values["panels"])),
                "height": _cm(values["height_mm"]),
            },
        ),
        "time": lambda _, values: {"sewing": _cm(values["seams_mm"])},
    },
    "blocking": {
        "size": _found(*GAUGE),
        "panel-plan": _all(_FIGURES, _found(*GAUGE), _fixed(size_in="counts"), _found(needles="next_stitches", rows="next_rows")),
    },
    "yarn-count": {
        "yarn-needs": lambda _, values: {"need_1_ball_g": "100 g", "need_1_ball_m": f"{_text(values['metres_per_100g'])} m"},
        "shelf": _all(
            _fixed(known="ball", ball_g="100 g"), lambda _, values: {"ball_m": f"{_text(values['metres_per_100g'])} m"}
        ),
    },
    "panel-plan": {
        "yarn-needs": _typed(*PIECE),
        "stripes": _typed(*PIECE),
        "scraps": _typed(*PIECE),
        "practice-piece": _typed(*PIECE),
        "carry-on": _typed(*PIECE),
        "time": _plan_time,
        "panels": _plan_panels,
        "hem": _plan_across,
        "side-hem": _plan_size,
        "edging": _plan_size,
        "blocking": _plan_blocking,
    },
    "yarn-needs": {"panel-plan": _typed(*PIECE), "stripes": _typed(*PIECE), "scraps": _typed(*PIECE)},
    "stripes": {"panel-plan": _typed(*PIECE)},
    "scraps": {"panel-plan": _typed(*PIECE)},
    "practice-piece": {"panel-plan": _typed(*PIECE)},
    "carry-on": {"panel-plan": _typed(*PIECE)},
}
