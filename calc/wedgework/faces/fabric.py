"""The fabric of a piece as plain data, from which a page paints every stitch and moves the stripes without asking again.

    fabric_of("stripes", {"offset": "3 m"})

    {"version": 1, "title", "box": [106, 198], "cell": [714, 526], "inks": [["#efe8d8", "Chalk"], ...], "places": "...",
     "stripes": {"ends": [900000, ...], "inks": [5, ...], "offsets": [0]} or null, "marks": [["1", 20, 160], ...],
     "blocks": [{"number": 1, "block": "b1", "costs": ["0.0", ...]}, ...]}

`cell` is the width of a stitch and the height of a row in hundredths of a millimetre. `places` are whole numbers of 32 bits,
the lower byte first, in base64: row by row from the top of the front, each from the left. The highest bit (2 to the 31)
means that the rest is an entry of `inks`, counted from 1, and 0 no stitch; else bit 30 the second ball, bit 29 that the
offset is in it already, and the rest how far into the repeat the stitch lies, in hundredths of a millimetre like `ends` and
`offsets`. `costs` are the metres that would be wound off to begin a block with each colour of the repeat.
"""

from __future__ import annotations

import base64
import sys
from array import array
from collections.abc import Mapping, Sequence

from wedgework.calculators import panel_plan, scraps, stripes
from wedgework.calculators.plan_groups import PLAN_GROUPS
from wedgework.calculators.scraps_view import in_leftovers
from wedgework.calculators.stripes import Striping
from wedgework.calculators.stripes_view import begin_costs, inks_of, marks_of
from wedgework.catalogue import calculator
from wedgework.declare import Inputs
from wedgework.declare.calculator import read_all
from wedgework.draw.fabric import Ink
from wedgework.exact import nearest
from wedgework.faces.answers import Json
from wedgework.formats.plan import Plan
from wedgework.layout.sizes import resolve
from wedgework.problems import Problem, Refused
from wedgework.say import say
from wedgework.units import decimal_text
from wedgework.yarn.fabric import FIXED, UNIT, Fabric, colours_of, places_of
from wedgework.yarn.path import YarnPath, path_of

__all__ = ["FABRIC_VERSION", "fabric_of"]

FABRIC_VERSION = 1


def fabric_of(slug: str, typed: Mapping[str, str]) -> dict[str, Json] | None:
    """The fabric for what was typed into a calculator that takes a whole piece; None for another one. Raises Refused."""
    if slug == stripes.CALCULATOR.slug:
        return _striped(stripes.striping(read_all(stripes.CALCULATOR, typed)))
    if slug == scraps.CALCULATOR.slug:
        return _in_leftovers(read_all(scraps.CALCULATOR, typed))
    names = {field.name for group in PLAN_GROUPS for field in group.fields}
    asked = calculator(slug)
    if asked is None or not names <= asked.defaults.keys():
        return None
    inputs = read_all(panel_plan.CALCULATOR, {name: text for name, text in typed.items() if name in names})
    plan, judged = panel_plan.planned(inputs)
    path = path_of(plan, judged)
    inks, by_yarn, _ = inks_of(plan.design)
    return _plain(plan, path, colours_of(path, by_yarn), inks)


def _plain(plan: Plan, path: YarnPath, fabric: Fabric, inks: Sequence[Ink]) -> dict[str, Json]:
    """Every stitch has its ink, whatever is slid."""
    frame = _frame(plan, path, array("I", [FIXED | ink for ink in fabric.cells]))
    return frame | {"inks": [[ink.colour, ink.name] for ink in inks], "stripes": None, "blocks": []}


def _in_leftovers(inputs: Inputs) -> dict[str, Json]:
    shown, _ = scraps.assigned(inputs)
    if not shown.chosen:
        why = say("calculators.scraps.none-proved" if shown.found.proved else "calculators.scraps.none-found")
        raise Refused([Problem("leftovers", "scraps.nothing-chosen", why)])
    fabric, inks = in_leftovers(shown)
    return _plain(shown.plan, shown.path, fabric, inks)


def _striped(found: Striping) -> dict[str, Json]:
    inks, by_yarn, own = inks_of(found.plan.design, found.colours)
    places = places_of(found.laid, by_yarn, found.striped)
    blocks: list[Json] = []
    for number, block, costs in begin_costs(found.laid, found.striped):
        if number:
            metres: list[Json] = [decimal_text(cost, 1) for cost in costs]
            blocks.append({"number": number, "block": block, "costs": metres})
    repeat = found.striped.repeat
    frame = _frame(found.plan, found.laid.path, places.cells)
    return frame | {
        "inks": [[ink.colour, ink.name] for ink in inks],
        "stripes": {
            "ends": [end // UNIT for end in repeat.ends],
            "inks": list(own),
            "offsets": [offset // UNIT for offset in found.striped.offsets],
        },
        "blocks": blocks,
    }


def _frame(plan: Plan, path: YarnPath, cells: array[int]) -> dict[str, Json]:
    sizes = resolve(plan.design)
    if sys.byteorder == "big":
        cells.byteswap()
    return {
        "version": FABRIC_VERSION,
        "title": plan.design.title,
        "box": [path.needles, len(cells) // path.needles],
        "cell": [nearest(100 * sizes.stitch_mm), nearest(100 * sizes.row_mm)],
        "places": base64.b64encode(cells.tobytes()).decode(),
        "marks": [[mark.words, nearest(mark.x), nearest(mark.y)] for mark in marks_of(path, plan.design)],
    }
