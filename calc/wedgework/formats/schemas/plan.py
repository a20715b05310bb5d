"""Schema of the plan. What each step does to the loops on the needles stands in its description."""

from __future__ import annotations

from wedgework.formats.plan import Edges
from wedgework.formats.schemas.design import DESIGN_INSIDE
from wedgework.formats.schemas.pieces import (
    Schema,
    block_id,
    closed,
    document,
    exactly,
    many,
    needle,
    number,
    numbers_by_name,
    one_of,
    side,
    text,
    whole,
    words,
    yarn_id,
)
from wedgework.formats.schemas.state import STATE_INSIDE
from wedgework.formats.values_plan import edges_value
from wedgework.say import say

__all__ = ["PLAN", "PLAN_INSIDE", "STEP"]

# A piece of 1000 needles and 20,000 rows is beyond every bed; a usual blanket takes two or three thousand steps.
MOST_STEPS = 200_000
MOST_ROWS = 200_000
MOST_STITCHES = 1_000_000_000
MOST_NEEDLES = 1000


def _step(word: str, keys: dict[str, Schema] | None = None, optional: tuple[str, ...] = (), least: int = 0) -> Schema:
    return closed(f"step.{word}", {"do": exactly("step.do", word), **(keys or {})}, optional=optional, least=least)


def _on_needles(word: str) -> Schema:
    return _step(word, {"needles": many("step.needles", needle("needle"), 1, MOST_NEEDLES)})


STEP = one_of(
    "step",
    _step(
        "set",
        {"hold_lever": words("step.hold_lever", "hold", "knit"), "tension": number("step.tension", 0, 100)},
        optional=("hold_lever", "tension"),
        least=2,
    ),
    _step("thread", {"yarn": yarn_id("step.yarn"), "around": needle("step.around")}, optional=("around",)),
    _step("cut"),
    _step("rest"),
    _step("join"),
    _on_needles("hold"),
    _on_needles("work"),
    _step(
        "knit",
        {
            "to": side("step.to"),
            "row": whole("step.row", 1, MOST_ROWS),
            "block": block_id("step.block"),
            "block_row": whole("step.block_row", 1, MOST_ROWS),
        },
    ),
    _step("free", {"to": side("step.to")}),
    _step("wrap", {"needle": needle("step.wrapped")}),
    _step("transfer", {"from": needle("step.from-needle"), "to": needle("step.to-needle")}),
    _on_needles("hang"),
    _on_needles("cast_on"),
    _step("waste", {"rows": whole("step.waste-rows", 1, 1000)}),
    _on_needles("bind_off"),
    _on_needles("weigh"),
    _step("remind", {"about": text("step.about", 500, least=1)}),
)

BLOCK = closed(
    "block",
    {
        "id": block_id("block.id"),
        "yarn": yarn_id("block.yarn"),
        "name": text("block.name", 200),
        "first_step": whole("block.first_step", 0, MOST_STEPS),
        "last_step": whole("block.last_step", 0, MOST_STEPS),
    },
)

EDGES = closed(
    "edges",
    {
        "cast_on": words("edges.cast_on", "closed", "waste"),
        "base_rows_bottom": whole("edges.base_rows_bottom", 0, 200),
        "base_yarn_bottom": yarn_id("edges.base_yarn_bottom", least=0),
        "base_rows_top": whole("edges.base_rows_top", 0, 200),
        "base_yarn_top": yarn_id("edges.base_yarn_top", least=0),
    },
    defaults=edges_value(Edges()),
)


def _stitches(about: str) -> Schema:
    return numbers_by_name(about, yarn_id("yarn.id"), whole("summary.stitch-count", 0, MOST_STITCHES), 64)


SUMMARY = closed(
    "summary",
    {
        **{key: whole(f"summary.{key}", 0, MOST_ROWS) for key in ("rows_min", "rows_max", "steepest_fold")},
        **{key: whole(f"summary.{key}", 0, MOST_STEPS) for key in ("ends", "ends_inside", "free_passes", "inside_starts")},
        "slits": many(
            "summary.slits",
            closed(
                "slit",
                {
                    "needle": needle("slit.needle"),
                    "from_row": whole("slit.from_row", 1, MOST_ROWS),
                    "rows": whole("slit.rows", 1, MOST_ROWS),
                    "steps": whole("slit.steps", 1, MOST_NEEDLES),
                    "to_needle": needle("slit.to_needle"),
                },
                optional=("steps", "to_needle"),
            ),
            0,
            100_000,
        ),
        "stairs": many(
            "summary.stairs",
            closed(
                "stair",
                {
                    "needle": needle("stair.needle"),
                    "to_needle": needle("stair.to_needle"),
                    "from_row": whole("stair.from_row", 0, MOST_ROWS),
                    "to_row": whole("stair.to_row", 0, MOST_ROWS),
                    "steps": whole("stair.steps", 1, MOST_NEEDLES),
                    "widest": whole("stair.widest", 1, MOST_NEEDLES),
                },
            ),
            0,
            100_000,
        ),
        "holes": many(
            "summary.holes",
            closed("hole", {"needle": needle("hole.needle"), "row": whole("hole.row", 0, MOST_ROWS)}),
            0,
            100_000,
        ),
        "floats": whole("summary.floats", 0, MOST_STITCHES),
        "dropped": whole("summary.dropped", 0, MOST_STITCHES),
        "uneven": many(
            "summary.uneven",
            closed(
                "uneven",
                {
                    "needle": needle("uneven.needle"),
                    "rows": whole("uneven.rows", 0, MOST_ROWS),
                    "why": text("uneven.why", 200),
                },
                defaults={"why": ""},
            ),
            0,
            MOST_NEEDLES,
        ),
        "stitches": _stitches("summary.stitches"),
        "edge_stitches": _stitches("summary.edge_stitches"),
    },
    defaults={
        "slits": [],
        "stairs": [],
        "holes": [],
        "floats": 0,
        "dropped": 0,
        "uneven": [],
        "stitches": {},
        "edge_stitches": {},
    },
)

PLAN = document(
    "plan",
    "plan",
    {
        "design": DESIGN_INSIDE,
        "bed": closed("plan-bed", {"first": needle("plan-bed.first"), "last": needle("plan-bed.last")}),
        "start": closed(
            "start",
            {"carriage": side("start.carriage"), "working": many("start.working", needle("needle"), 2, 2)},
        ),
        "edges": EDGES,
        "blocks": many("blocks", BLOCK, 0, 5000),
        "steps": many("steps", STEP, 0, MOST_STEPS),
        "summary": SUMMARY,
        "state": {**STATE_INSIDE, "description": say("formats.about.plan-state")},
    },
    defaults={"edges": edges_value(Edges())},
    optional=("state",),
)

PLAN_INSIDE = {key: value for key, value in PLAN.items() if key != "$schema"}
"""The same inside another file."""
