"""A checked value of a plan to its frozen classes."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from wedgework.formats.building_design import Value, design_from, given
from wedgework.formats.plan import Block, Edges, Hole, Plan, Set, Slit, Stair, Start, Step, Summary, Uneven
from wedgework.formats.values_plan import FIELDS
from wedgework.formats.values_state import state_from

__all__ = ["plan_from"]


def plan_from(value: Value) -> Plan:
    """The plan that `value` describes; it has passed the schema."""
    bed, start = value["bed"], value["start"]
    first, last = start["working"]
    return Plan(
        design=design_from(value["design"]),
        first_needle=bed["first"],
        last_needle=bed["last"],
        start=Start(start["carriage"], (first, last)),
        edges=Edges(**value.get("edges", {})),
        blocks=tuple(Block(**block) for block in value["blocks"]),
        steps=tuple(_step(step) for step in value["steps"]),
        summary=_summary(value["summary"]),
        made_by=value.get("made_by", ""),
        state=state_from(value["state"]) if "state" in value else None,
    )


def _step(value: Value) -> Step:
    made, fields = FIELDS[value["do"]]
    if made is Set:
        return Set(**given({key: value[key] for key in value if key != "do"}, tension=Fraction))
    keys: dict[str, Any] = {}
    for key, field in fields:
        if key in value:
            each = value[key]
            keys[field] = tuple(each) if isinstance(each, list) else each
    return made(**keys)


def _summary(value: Value) -> Summary:
    return Summary(
        **given(
            value,
            slits=lambda slits: tuple(Slit(**slit) for slit in slits),
            stairs=lambda stairs: tuple(Stair(**stair) for stair in stairs),
            holes=lambda holes: tuple(Hole(**hole) for hole in holes),
            uneven=lambda needles: tuple(Uneven(**needle) for needle in needles),
            stitches=dict,
            edge_stitches=dict,
        )
    )
