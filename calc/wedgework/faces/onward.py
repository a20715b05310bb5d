"""What one calculator's answer fills in another: the gauge goes to the planner, the plan to its yarn and its time.

    ways("gauge")                                      ("panel-plan", "size", "panels", ...)
    carried("gauge", "size", {"stitches": "40"})       {"stitches_per_10cm": "14.035", ...}, texts as they would be typed

Only what the answer knows is carried; every other field of the other page stays as the person left it there.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from wedgework.catalogue import calculator
from wedgework.declare import work_out
from wedgework.declare.calculator import read_all
from wedgework.faces.onward_parts import GAUGE, Carry, Typed, as_text, fixed, found_there, in_cm, nothing, together, typed_there
from wedgework.faces.onward_piece import (
    FIGURES,
    FROM_PLAN,
    PIECE,
    TO_PLAN,
    edging_to_plan,
    hem_to_plan,
    panels_to_plan,
    shape_to_plan,
    side_hem_to_plan,
)
from wedgework.problems import Refused

__all__ = ["carried", "ways"]

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


def _swatch(inputs: Mapping[str, str], values: Mapping[str, Any]) -> Typed:
    """The swatch itself, so that the planner knows how far the gauge can be off."""
    washed = "washed_" if inputs["washed_width"].strip() else ""
    return {
        "gauge_from": "swatch",
        "swatch_stitches": as_text(values.get("stitches_between_marks")) or inputs["stitches"],
        "swatch_rows": inputs["rows"],
        "swatch_width": inputs[f"{washed}width"],
        "swatch_height": inputs[f"{washed}height"],
    }


def _shape_time(_inputs: Mapping[str, str], values: Mapping[str, Any]) -> Typed:
    return {
        "passes": as_text(values["block_rows"]),
        "needle_changes": as_text(len(values["turns"])),
        "block_changes": "1",
        "ends": "2",
        "hems": "0",
        "sewing": "0 cm",
    }


def _round_time(inputs: Mapping[str, str], values: Mapping[str, Any]) -> Typed:
    """Of wedges each pass reaches the outer edge; inward every row goes all round."""
    passes = values["outer_rows"] if inputs["made"] == "wedges" else values["rows"]
    return {"passes": as_text(passes), "ends": "2", "hems": "0", "sewing": in_cm(values["seam_mm"])}


def _row_done(inputs: Mapping[str, str], values: Mapping[str, Any]) -> Typed:
    """The stitches after a row of changes, or at the end of an edge given by points."""
    after = values.get("stitches_after") or values.get("stitches_end")
    return {} if after is None else {"stitches": as_text(after)}


def _edge_rows(inputs: Mapping[str, str], values: Mapping[str, Any]) -> Typed:
    """The rows of the edge."""
    if inputs["along"] == "stitches":
        return {}
    return {"rows": as_text(values["rows"]) if inputs["along"] == "points" else inputs["over"]}


# --- from the shelf ---


def _shelf_needs(_inputs: Mapping[str, str], values: Mapping[str, Any]) -> Typed:
    """As yarn 1 of the piece."""
    found = {"yarn_1_name": as_text(values["name"]), "yarn_1_colour": as_text(values["colour"])}
    if values.get("on_hand_g") is not None:
        found["need_1_on_hand_g"] = f"{as_text(values['on_hand_g'])} g"
    if values.get("ball_g") is not None and values.get("ball_m") is not None:
        return found | {"need_1_ball_g": f"{as_text(values['ball_g'])} g", "need_1_ball_m": f"{as_text(values['ball_m'])} m"}
    if values.get("metres_per_gram") is not None:
        return found | {"need_1_ball_g": "100 g", "need_1_ball_m": f"{as_text(100 * Fraction(values['metres_per_gram']))} m"}
    return found


def _shelf_stripes(inputs: Mapping[str, str], values: Mapping[str, Any]) -> Typed:
    found = {"yarn_1_name": as_text(values["name"]), "yarn_1_colour": as_text(values["colour"])}
    return found | ({"stripe_yarn": "1", "repeat": inputs["stripe"]} if inputs["stripe"].strip() else {})


def _shelf_count(_inputs: Mapping[str, str], values: Mapping[str, Any]) -> Typed:
    return {"value": as_text(values["tex"]), "system": "tex"} if values.get("tex") is not None else {}


_GAUGE_THERE = {
    slug: found_there(*GAUGE) for slug in ("panels", "even-shaping", "circle", "hem", "side-hem", "edging", "short-row-shape")
}

_WAYS: Mapping[str, Mapping[str, Carry]] = {
    "gauge": {"panel-plan": _swatch, "size": found_there(*GAUGE, *OFF), **_GAUGE_THERE},
    "tension": {
        "gauge": nothing,
        "size": found_there(stitches_per_10cm="stitches_per_10cm_at_mark", rows_per_10cm="rows_per_10cm_at_mark"),
        "panel-plan": together(
            FIGURES, found_there(stitches_per_10cm="stitches_per_10cm_at_mark", rows_per_10cm="rows_per_10cm_at_mark")
        ),
    },
    "size": {
        "panel-plan": together(TO_PLAN, fixed(size_in="counts"), found_there(needles="stitches", rows="rows")),
        "panels": together(
            typed_there(*GAUGE), lambda _, values: {k: in_cm(values[f"{k}_unwashed_mm"]) for k in ("width", "height")}
        ),
        "side-hem": together(typed_there(*GAUGE), found_there("stitches", "rows")),
        "edging": together(typed_there(*GAUGE), found_there("stitches", "rows")),
    },
    "panels": {
        "panel-plan": together(TO_PLAN, panels_to_plan),
        "blocking": together(
            found_there(stitches="needles_per_panel", rows="rows"),
            lambda _, values: {
                "width": in_cm(Fraction(values["width_mm"]) / int(values["panels"])),
                "height": in_cm(values["height_mm"]),
            },
        ),
        "time": lambda _, values: {"sewing": in_cm(values["seams_mm"])},
    },
    "blocking": {
        "size": found_there(*GAUGE),
        "panel-plan": together(
            FIGURES, found_there(*GAUGE), fixed(size_in="counts"), found_there(needles="next_stitches", rows="next_rows")
        ),
    },
    "yarn-count": {
        "yarn-needs": lambda _, values: {"need_1_ball_g": "100 g", "need_1_ball_m": f"{as_text(values['metres_per_100g'])} m"},
        "shelf": together(
            fixed(known="ball", ball_g="100 g"), lambda _, values: {"ball_m": f"{as_text(values['metres_per_100g'])} m"}
        ),
    },
    "panel-plan": FROM_PLAN,
    "hem": {
        "panel-plan": together(TO_PLAN, hem_to_plan),
        "side-hem": typed_there(*GAUGE, "kind", "depth", "facing", "stitches"),
        "yarn-needs": together(typed_there(hems="where"), found_there(hem_rows="outside_rows")),
    },
    "side-hem": {
        "panel-plan": together(TO_PLAN, side_hem_to_plan),
        "hem": typed_there(*GAUGE, "kind", "depth", "facing", "stitches"),
        "yarn-needs": found_there(side_hem_rows="outside_rows"),
        "edging": typed_there(*GAUGE, "stitches", "rows"),
    },
    "edging": {"panel-plan": together(TO_PLAN, edging_to_plan), "side-hem": typed_there(*GAUGE, "stitches", "rows")},
    "even-shaping": {
        "hem": together(typed_there(*GAUGE), _row_done),
        "side-hem": together(typed_there(*GAUGE), _row_done, _edge_rows),
        "edging": together(typed_there(*GAUGE), _row_done, _edge_rows),
        "panel-plan": TO_PLAN,
    },
    "circle": {
        "time": _round_time,
        "edging": together(typed_there(*GAUGE), fixed(along="side"), found_there(rows="outer_rows")),
        "panel-plan": TO_PLAN,
    },
    "short-row-shape": {
        "panel-plan": together(TO_PLAN, shape_to_plan),
        "time": _shape_time,
        "edging": together(typed_there(*GAUGE), found_there(stitches="needles", rows="rows")),
    },
    "time": {"panel-plan": nothing},
    "shelf": {
        "yarn-needs": _shelf_needs,
        "panel-plan": found_there(yarn_1_name="name", yarn_1_colour="colour"),
        "stripes": _shelf_stripes,
        "yarn-count": _shelf_count,
    },
    "yarn-needs": {"panel-plan": typed_there(*PIECE), "stripes": typed_there(*PIECE), "scraps": typed_there(*PIECE)},
    "stripes": {"panel-plan": typed_there(*PIECE)},
    "scraps": {"panel-plan": typed_there(*PIECE)},
    "practice-piece": {"panel-plan": typed_there(*PIECE)},
    "written-pattern": {"panel-plan": typed_there(*PIECE)},
    "carry-on": {"panel-plan": typed_there(*PIECE)},
}
