"""A plan as plain values for JSON: the design whole, and one object for each step.

`FIELDS` is the one table of how a step is spelled in a file; the reader uses it too.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import asdict
from fractions import Fraction
from typing import Any

from wedgework.formats.decimals import carried
from wedgework.formats.plan import (
    BindOff,
    Block,
    CastOn,
    Cut,
    Edges,
    Free,
    Hang,
    Hold,
    Join,
    Knit,
    Plan,
    Remind,
    Rest,
    Set,
    Slit,
    Step,
    Summary,
    Thread,
    Transfer,
    Waste,
    Weigh,
    Work,
    Wrap,
)
from wedgework.formats.values_design import Value, design_value
from wedgework.formats.values_state import state_value
from wedgework.version import VERSION

__all__ = ["FIELDS", "edges_value", "plan_value", "step_value", "summary_value"]

# Word in "do", class, and (key in the file, field) for each key.
FIELDS: dict[str, tuple[Callable[..., Step], tuple[tuple[str, str], ...]]] = {
    "set": (Set, (("hold_lever", "hold_lever"), ("tension", "tension"))),
    "thread": (Thread, (("yarn", "yarn"), ("around", "around"))),
    "cut": (Cut, ()),
    "rest": (Rest, ()),
    "join": (Join, ()),
    "hold": (Hold, (("needles", "needles"),)),
    "work": (Work, (("needles", "needles"),)),
    "knit": (Knit, (("to", "to"), ("row", "row"), ("block", "block"), ("block_row", "block_row"))),
    "free": (Free, (("to", "to"),)),
    "wrap": (Wrap, (("needle", "needle"),)),
    "transfer": (Transfer, (("from", "from_needle"), ("to", "to_needle"))),
    "hang": (Hang, (("needles", "needles"),)),
    "cast_on": (CastOn, (("needles", "needles"),)),
    "waste": (Waste, (("rows", "rows"),)),
    "bind_off": (BindOff, (("needles", "needles"),)),
    "weigh": (Weigh, (("needles", "needles"),)),
    "remind": (Remind, (("about", "about"),)),
}
_WORDS = {made: (word, fields) for word, (made, fields) in FIELDS.items()}


def plan_value(plan: Plan) -> Value:
    """The plan as it stands in a file; `made_by` is this copy's version (see `design_value`)."""
    value = {
        "format": "wedgework-plan",
        "version": 1,
        "made_by": VERSION,
        "design": design_value(plan.design),
        "bed": {"first": plan.first_needle, "last": plan.last_needle},
        "start": {"carriage": plan.start.carriage, "working": list(plan.start.working)},
        "edges": edges_value(plan.edges),
        "blocks": [_block(block) for block in plan.blocks],
        "steps": [step_value(step) for step in plan.steps],
        "summary": summary_value(plan.summary),
    }
    return value if plan.state is None else {**value, "state": state_value(plan.state)}


def edges_value(edges: Edges) -> Value:
    return {
        "cast_on": edges.cast_on,
        "base_rows_bottom": edges.base_rows_bottom,
        "base_yarn_bottom": edges.base_yarn_bottom,
        "base_rows_top": edges.base_rows_top,
        "base_yarn_top": edges.base_yarn_top,
    }


def _block(block: Block) -> Value:
    return {
        "id": block.id,
        "yarn": block.yarn,
        "name": block.name,
        "first_step": block.first_step,
        "last_step": block.last_step,
    }


def step_value(step: Step) -> Value:
    """``{"do": "knit", "to": "L", ...}``: what is None has no key."""
    word, fields = _WORDS[type(step)]
    value: Value = {"do": word}
    for key, field in fields:
        each = getattr(step, field)
        if each is not None:
            value[key] = _plain(each)
    return value


def _plain(value: Any) -> Any:
    if isinstance(value, tuple):
        return list(value)
    return carried(value) if isinstance(value, Fraction) else value


def summary_value(summary: Summary) -> Value:
    return {
        "rows_min": summary.rows_min,
        "rows_max": summary.rows_max,
        "steepest_fold": summary.steepest_fold,
        "ends": summary.ends,
        "ends_inside": summary.ends_inside,
        "free_passes": summary.free_passes,
        "inside_starts": summary.inside_starts,
        "slits": [_slit(slit) for slit in summary.slits],
        "stairs": [asdict(stair) for stair in summary.stairs],
        "holes": [{"needle": hole.needle, "row": hole.row} for hole in summary.holes],
        "floats": summary.floats,
        "dropped": summary.dropped,
        "uneven": [{"needle": each.needle, "rows": each.rows, "why": each.why} for each in summary.uneven],
        "stitches": dict(summary.stitches),
        "edge_stitches": dict(summary.edge_stitches),
    }


def _slit(slit: Slit) -> Value:
    value: Value = {"needle": slit.needle, "from_row": slit.from_row, "rows": slit.rows}
    if slit.steps != 1:
        value["steps"] = slit.steps
    return value if slit.to_needle is None else {**value, "to_needle": slit.to_needle}
