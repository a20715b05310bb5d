"""What a plan gives to other calculators, and what these give to the plan."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from wedgework.bed import USUAL_BEDS
from wedgework.calculators import panel_plan
from wedgework.calculators.layout_fields import DRAWN
from wedgework.calculators.panel_design import NO_LAYOUT
from wedgework.calculators.plan_groups import PLAN_GROUPS
from wedgework.catalogue import calculator
from wedgework.declare import Inputs
from wedgework.declare.calculator import read_all
from wedgework.faces.onward_parts import GAUGE, Typed, as_text, fixed, in_cm, together, typed_there
from wedgework.finish import outer_sides, strip_of
from wedgework.formats.plan import Hold, Knit, Plan, Work
from wedgework.layout.sizes import resolve
from wedgework.words.finishing import base_rows, panel_mm

__all__ = [
    "FIGURES",
    "FROM_PLAN",
    "PIECE",
    "TO_PLAN",
    "edging_to_plan",
    "hem_to_plan",
    "panels_to_plan",
    "shape_to_plan",
    "side_hem_to_plan",
]

PIECE = tuple(field.name for group in PLAN_GROUPS for field in group.fields)
_LAYOUT_PARTS = tuple(field.name for group in PLAN_GROUPS if group.key == "layout" for field in group.fields)
FIGURES = fixed(gauge_from="figures")
TO_PLAN = together(FIGURES, typed_there(*GAUGE))


def _plan(inputs: Mapping[str, str]) -> Plan:
    return panel_plan.planned(_piece(inputs))[0]


def _piece(inputs: Mapping[str, str]) -> Inputs:
    return read_all(panel_plan.CALCULATOR, {name: inputs[name] for name in PIECE})


def _plan_gauge(plan: Plan) -> Typed:
    sizes = resolve(plan.design)
    return {"stitches_per_10cm": as_text(sizes.stitches_per_10cm), "rows_per_10cm": as_text(sizes.rows_per_10cm)}


def _plan_size(inputs: Mapping[str, str], _values: Mapping[str, Any]) -> Typed:
    """Stitches and rows of the piece with its gauge, base rows too; of panels those of the whole, joined."""
    plan, judged = panel_plan.planned(_piece(inputs))
    sizes = resolve(plan.design)
    return _plan_gauge(plan) | {"stitches": f"{sizes.across}", "rows": f"{sizes.rows + base_rows(judged)}"}


def _plan_side_hem(inputs: Mapping[str, str], values: Mapping[str, Any]) -> Typed:
    """With the hem that the piece asks for."""
    hem = {"bed_needles": f"{_plan(inputs).design.bed.needles}"}
    if inputs["hem_sides"] != "none":
        hem |= {"kind": inputs["hem_sides"], "depth": inputs["hem_sides_depth"]}
    return _plan_size(inputs, values) | hem


def _plan_hem(inputs: Mapping[str, str], values: Mapping[str, Any]) -> Typed:
    """With the first hem that the piece asks for."""
    where = next((end for end in ("bottom", "top") if inputs[f"hem_{end}"] != "none"), None)
    hem = {} if where is None else {"where": where, "kind": inputs[f"hem_{where}"], "depth": inputs[f"hem_{where}_depth"]}
    return _plan_across(inputs, values) | hem


def _plan_edging(inputs: Mapping[str, str], values: Mapping[str, Any]) -> Typed:
    """With the edging that the piece asks for."""
    found = _plan_size(inputs, values)
    own = {f"edging_{name}": found[name] for name in GAUGE}
    if inputs["edging"] == "none":
        return found | own
    along = {"all": "all", "sides": "side", "ends": "end"}[inputs["edging"]]
    return (
        found
        | own
        | {
            "along": along,
            "edging_stitches": inputs["edging_stitches"],
            "repeat": inputs["edging_repeat"],
            "corner": inputs["edging_corner"],
        }
    )


def _plan_across(inputs: Mapping[str, str], _values: Mapping[str, Any]) -> Typed:
    return _plan_stitches(_plan(inputs))


def _plan_stitches(plan: Plan) -> Typed:
    return _plan_gauge(plan) | {"stitches": f"{resolve(plan.design).needles}"}


def _plan_blocking(inputs: Mapping[str, str], _values: Mapping[str, Any]) -> Typed:
    sizes = resolve(_plan(inputs).design)
    width, height = in_cm(sizes.width_mm), in_cm(sizes.height_mm)
    # One panel of several is blocked by itself, before it is sewn.
    return {"stitches": f"{sizes.needles}", "rows": f"{sizes.rows}", "width": width, "height": height}


def _plan_panels(inputs: Mapping[str, str], _values: Mapping[str, Any]) -> Typed:
    plan = _plan(inputs)
    sizes = resolve(plan.design)
    size = {
        "width": in_cm(sizes.across * sizes.stitch_mm),
        "height": in_cm(sizes.height_mm),
        "bed_needles": f"{plan.design.bed.needles}",
    }
    there = calculator("panels")
    names = there.defaults if there else {}
    drawn = inputs["layout"] == DRAWN  # which that page cannot show
    parts = {name: inputs[name] for name in ("layout", *_LAYOUT_PARTS) if name in names and not drawn}
    if plan.design.panel.part is not None:
        parts |= {name: inputs[name] for name in ("panels", "seam_stitches")}
    return _plan_gauge(plan) | size | parts


def _plan_time(inputs: Mapping[str, str], _values: Mapping[str, Any]) -> Typed:
    """Passes, needles set, blocks, ends and hems, as the model bed counted them; those of an edging too."""
    plan, judged = panel_plan.planned(_piece(inputs))
    part, sizes = plan.design.panel.part, resolve(plan.design)
    strip = strip_of(plan.design, sizes, sizes.rows + base_rows(judged))
    edged = strip if strip is not None and (part is None or part.number == part.panels) else None
    rows, joins = (edged.strips * edged.rows, edged.strips * edged.joins) if edged else (0, 0)
    # Each seam is counted with the panel on its left.
    sewn = panel_mm(plan, judged)[1] if part is not None and part.number < part.panels else 0
    knitted = sum(isinstance(step, Knit) for step in plan.steps)
    return {
        "passes": f"{knitted + judged.summary.free_passes + rows}",
        "needle_changes": f"{sum(isinstance(step, (Hold, Work)) for step in plan.steps) + joins}",
        "block_changes": f"{len({step.block for step in plan.steps if isinstance(step, Knit)})}",
        "ends": f"{judged.summary.ends}",
        "hems": f"{_hems(plan)}",
        "sewing": in_cm(sewn),
    }


def _hems(plan: Plan) -> int:
    """Each side of the piece one; of panels only the outer sides."""
    hems = plan.design.hems
    sides = outer_sides(plan.design.panel.part) if hems.sides.kind != "none" else 0
    return sum(each.kind != "none" for each in (hems.bottom, hems.top)) + sides


def hem_to_plan(inputs: Mapping[str, str], _values: Mapping[str, Any]) -> Typed:
    where = inputs["where"]
    return {f"hem_{where}": inputs["kind"], f"hem_{where}_depth": inputs["depth"]}


def side_hem_to_plan(inputs: Mapping[str, str], _values: Mapping[str, Any]) -> Typed:
    """All four edges where corners are lapped, which the planner does; of other corners the sides alone."""
    everywhere = inputs["edges"] == "all" and inputs["corners"] == "lapped"
    edges = ("bottom", "top", "sides") if everywhere else ("sides",)
    kinds = {f"hem_{edge}": inputs["kind"] for edge in edges}
    return kinds | {f"hem_{edge}_depth": inputs["depth"] for edge in edges} | {"edging": "none"}


def edging_to_plan(inputs: Mapping[str, str], _values: Mapping[str, Any]) -> Typed:
    """An edge that gets an edging keeps no hem."""
    along = {"all": "all", "side": "sides", "end": "ends"}[inputs["along"]]
    bare = {"all": ("bottom", "top", "sides"), "sides": ("sides",), "ends": ("bottom", "top")}[along]
    return {
        "edging": along,
        "edging_stitches": inputs["edging_stitches"],
        "edging_repeat": inputs["repeat"],
        "edging_corner": inputs["corner"],
        **{f"hem_{edge}": "none" for edge in bare},
    }


def panels_to_plan(inputs: Mapping[str, str], values: Mapping[str, Any]) -> Typed:
    """The whole, split there in the same way; repeats of a panel are not known there, so equal panels come without them."""
    designed = inputs["layout"] != NO_LAYOUT
    usual = next((bed.key for bed in USUAL_BEDS if f"{bed.needles}" == inputs["bed_needles"].strip()), None)
    bed = {"bed": usual} if usual else {"bed": "own", "bed_needles": inputs["bed_needles"]}
    whole = {"size_in": "lengths", "width": inputs["width"], "height": inputs["height"]}
    split = {"split": "design" if designed else "equal", "panels": as_text(values["panels"]), "panel_number": "1"}
    parts = {name: inputs[name] for name in ("layout", *_LAYOUT_PARTS) if name in inputs} if designed else {}
    return bed | whole | split | {"seam_stitches": inputs["seam_stitches"]} | parts


def shape_to_plan(inputs: Mapping[str, str], values: Mapping[str, Any]) -> Typed:
    """The same bed and gauge, and the room that the shape takes: a picture of one block is laid out there."""
    bed = {"bed": "own", "bed_pitch": inputs["bed_pitch"], "bed_needles": inputs["bed_needles"]}
    return bed | {"size_in": "counts", "needles": as_text(values["needles"]), "rows": as_text(values["rows"])}


FROM_PLAN = {
    "yarn-needs": typed_there(*PIECE),
    "stripes": typed_there(*PIECE),
    "scraps": typed_there(*PIECE),
    "practice-piece": typed_there(*PIECE),
    "written-pattern": typed_there(*PIECE),
    "carry-on": typed_there(*PIECE),
    "time": _plan_time,
    "panels": _plan_panels,
    "hem": _plan_hem,
    "side-hem": _plan_side_hem,
    "edging": _plan_edging,
    "blocking": _plan_blocking,
}
