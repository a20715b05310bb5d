"""What the page at the machine needs of a piece, as plain data: it shows cues and keeps the place without asking again.

    piece_of({"title": "Lap blanket"})      # what was typed into the panel plan; what is not there has its default

    {"version": 1, "made_by", "title", "digest", "design", "yarns", "rows", "blocks", "cues", "sights", "rests",
     "gauge", "front", "picture"}

`digest` names the steps: the same digest, the same places. `rows` are the passes with yarn in the whole piece, `cues`
what `wedgework.words.cue_value` gives for each, `sights` what is seen at each place (`wedgework.whereabouts`), `rests` which
yarns wait on the mast, `gauge` stitches and rows per 10 cm, `front` the finished front as SVG text, `picture` the same in numbers
(`wedgework.draw.progress`), from which the page fills in what is knitted so far; `plan` is the plan itself, for the project file.
A plan of the rest of a piece has `state` beside it, the bed on which it begins.
"""

from __future__ import annotations

import json
from collections.abc import Mapping

from wedgework.calculators import panel_plan
from wedgework.declare.calculator import read_all
from wedgework.draw import front_svg
from wedgework.draw.progress import progress_value
from wedgework.faces.answers import Json
from wedgework.formats import canonical, design_value, steps_digest
from wedgework.formats.plan import Knit, Plan
from wedgework.formats.values_plan import plan_value
from wedgework.formats.values_state import state_value
from wedgework.layout.sizes import resolve
from wedgework.replay.result import Replay
from wedgework.units import decimal_text, short_point
from wedgework.version import VERSION
from wedgework.whereabouts import resting_values, sight_values, sights
from wedgework.words import cue_value, cues
from wedgework.words.finish_cues import finishing_cues
from wedgework.words.finishing import finish_list
from wedgework.yarn.needs import planned_needs

__all__ = ["PIECE_VERSION", "machine_piece", "piece_of"]

PIECE_VERSION = 1


def piece_of(typed: Mapping[str, str]) -> dict[str, Json]:
    """The piece for what was typed into the panel plan. Raises Refused as the calculator does, with the names of fields."""
    return machine_piece(*panel_plan.planned(read_all(panel_plan.CALCULATOR, typed)))


def machine_piece(plan: Plan, judged: Replay, carries: tuple[int, int] | None = None) -> dict[str, Json]:
    """The piece as the page keeps it; only text, whole numbers and decimals, lists and objects. `carries`: see `sights`."""
    design, sizes = plan.design, resolve(plan.design)
    ids = [yarn.id for yarn in design.yarns]
    needs = {block.block: block.mm for block in planned_needs(plan, judged).blocks}
    record = {
        "version": PIECE_VERSION,
        "made_by": VERSION,
        "title": design.title,
        "digest": steps_digest(plan.steps),
        "design": design_value(design),
        "yarns": [{"id": yarn.id, "name": yarn.name, "colour": yarn.colour} for yarn in design.yarns],
        "rows": max((step.row for step in plan.steps if isinstance(step, Knit)), default=0),
        "blocks": [
            {"id": block.id, "name": block.name, "yarn": block.yarn}
            | ({"yarn_m": decimal_text(needs[block.id] / 1000, 1)} if block.id in needs else {})
            for block in plan.blocks
        ],
        "cues": _cues(plan, judged),
        "gauge": [short_point(100 / one, 2) for one in (sizes.stitch_mm, sizes.row_mm)],
        "sights": sight_values(sights(plan, carries), ids),
        "rests": resting_values(plan, ids),
        "front": front_svg(plan, judged, prefix="piece"),
        "picture": progress_value(plan, judged),
    }
    record["plan"] = plan_value(plan)
    if plan.state is not None:
        record["state"] = state_value(plan.state)
    # Through the canonical form: it writes fractions as the decimals that they are, and puts every key in its place.
    done: dict[str, Json] = json.loads(canonical(record))
    return done


def _cues(plan: Plan, judged: Replay) -> list[dict[str, object]]:
    """Those of the machine, and after them the finishing: side hems, seams and edging are ticked off like everything before."""
    made = [cue_value(cue) for cue in cues(plan)]
    return [*made, *finishing_cues(made[-1], finish_list(plan, judged))]
