"""What the layout board asks: a design laid out to be drawn on, judged, changed, or made of a picture.

    {"ask": "board-open", "design": "{...}"}                      ->  {"sheet", "problems"}
    {"ask": "board-layout", "design": "{...}", "name": "kites"}   ->  {"sheet", "problems"}; a layout that ships, drawn out
    {"ask": "board-letters", "design": "{...}", "letters": "..."} ->  {"sheet", "problems"}
    {"ask": "board-cells", "design": "{...}", "colours": "#.. #..", "cells": "aab\\n...", "least": "6", "straighten": "1"}
                                                                  ->  {"sheet", "problems"}
    {"ask": "board-typed", "inputs": {...}}                       ->  {"sheet", "problems"}; what stands in the panel plan
    {"ask": "board-judge", "design": "{...}"}                     ->  {"judged", "changes", "problems"}
    {"ask": "board-try", "design": "{...}", "before": "{...}"}    ->  {"better", "minutes", "words", "problems"}
    {"ask": "board-inputs", "design": "{...}"}                    ->  {"inputs", "problems"}; as typed into the panel plan
    {"ask": "board-link", "design": "{...}"}                      ->  {"fragment", "problems"}

`design` is always the text of a design file. A sheet is ``{"design", "needles", "rows", "stitch", "row", "moved"}``: the design
as JSON with every shape drawn out and counted, and a stitch and a row in thousandths of a millimetre. A change is ``{"kind",
"words", "at", "shapes", "options"}``: the places of shapes that are others then, and what replaces options; the page lays them
over its own drawing. `before` is the ``effort`` of a judgement.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from wedgework.bed import USUAL_BEDS
from wedgework.board import (
    Change,
    Surface,
    changes,
    effort_of,
    from_cells,
    from_letters,
    judge,
    judged_value,
    rules_value,
    surface,
    weighed,
)
from wedgework.board.effort import Effort
from wedgework.board.surface import with_layout
from wedgework.calculators import panel_plan
from wedgework.calculators.drawing_field import typed_of
from wedgework.declare.calculator import read_all
from wedgework.exact import nearest
from wedgework.faces.answers import Json, Teller, Told, refusing
from wedgework.faces.link import make_design_link
from wedgework.formats import canonical, design_value, read_design
from wedgework.formats.design import Design
from wedgework.formats.text import parse
from wedgework.layout.library import LAYOUTS
from wedgework.problems import Refused
from wedgework.say import say
from wedgework.units import decimal_text, point_text

__all__ = ["BOARD_ASKS", "board_default"]

Asked = dict[str, Any]
_MOST_WHOLE = 4  # digits of a number that is asked with


def sheet_value(found: Surface) -> Told:
    sizes = found.sizes
    return {
        "design": _plain(design_value(found.design)),
        "needles": sizes.across,
        "rows": sizes.rows,
        "stitch": nearest(1000 * sizes.stitch_mm),
        "row": nearest(1000 * sizes.row_mm),
        "moved": found.moved,
    }


def board_default(design_text: str) -> Told:
    """What the page holds before anything is asked: the first drawing, judged, and all that drawing has to know."""
    found = surface(read_design(design_text))
    return {
        "sheet": sheet_value(found),
        "judged": {**judged_value(judge(found.design))},
        "rules": {**rules_value()},
        "layouts": [[layout.name, layout.title] for layout in LAYOUTS],
        "beds": [[point_text(bed.pitch_mm, 1), bed.needles] for bed in USUAL_BEDS],
    }


def _plain(value: Any) -> Any:
    """Through the canonical form: it writes fractions as the decimals that they are."""
    return json.loads(canonical(value))


def _sheet(design: Design) -> Told:
    return {"sheet": sheet_value(surface(design))}


def _open(asked: Asked) -> Told:
    return _sheet(read_design(asked["design"]))


def _layout(asked: Asked) -> Told:
    return _sheet(with_layout(read_design(asked["design"]), asked["name"]))


def _letters(asked: Asked) -> Told:
    return _sheet(from_letters(read_design(asked["design"]), asked["letters"]))


def _cells(asked: Asked) -> Told | None:
    least, straighten = _whole(asked["least"]), _whole(asked["straighten"])
    if least is None or straighten is None:
        return None
    return _sheet(from_cells(read_design(asked["design"]), asked["colours"].split(), asked["cells"], least, straighten))


def _whole(text: str) -> int | None:
    return int(text) if text.isascii() and text.isdigit() and len(text) <= _MOST_WHOLE else None


def _typed(asked: Asked) -> Told:
    """The whole picture of the panel plan, whatever panel of it is being planned."""
    design = panel_plan.design_from(read_all(panel_plan.CALCULATOR, asked["inputs"]))
    return _sheet(replace(design, panel=replace(design.panel, part=None)))


def _judge(asked: Asked) -> Told:
    found = judge(surface(read_design(asked["design"])).design)
    before = _plain(design_value(found.design))
    offered: list[Json] = [_change(change, before) for change in changes(found)]
    return {"judged": {**judged_value(found)}, "changes": offered}


def _change(change: Change, before: Mapping[str, Any]) -> Told:
    """Only what differs from the design that was judged; both have the same number of shapes."""
    after = _plain(design_value(change.design))
    pairs = zip(before["layout"]["shapes"], after["layout"]["shapes"], strict=True)
    shapes: list[Json] = [[i, new] for i, (old, new) in enumerate(pairs) if old != new]
    options = {key: each for key, each in after["options"].items() if before["options"].get(key) != each}
    at: list[Json] = [nearest(2 * change.at[0]), nearest(change.at[1])]
    return {"kind": change.kind, "words": change.words, "at": at, "shapes": shapes, "options": options}


def _try(asked: Asked) -> Told | None:
    try:
        value = parse(asked["before"], 2_000)
    except Refused:
        return None
    before = Effort.read(value) if isinstance(value, dict) else None
    if before is None:
        return None
    found = judge(surface(read_design(asked["design"])).design)
    told = weighed(before, effort_of(found.plan, found.replay))
    words = list(told.words)
    if told.better:
        words.insert(0, say("board.fewer-minutes", minutes=decimal_text(told.minutes, 0)))
    return {"better": told.better, "minutes": nearest(100 * told.minutes), "words": ", ".join(words)}


def _inputs(asked: Asked) -> Told:
    return {"inputs": {**typed_of(surface(read_design(asked["design"])).design)}}


def _link(asked: Asked) -> Told:
    return {"fragment": make_design_link(read_design(asked["design"]))}


_DESIGN = {"design"}
_NO_SHEET: Told = {"sheet": None}
BOARD_ASKS: Mapping[str, tuple[set[str], set[str], Teller]] = {
    "board-open": (_DESIGN, set(), refusing(_NO_SHEET, _open)),
    "board-layout": (_DESIGN | {"name"}, set(), refusing(_NO_SHEET, _layout)),
    "board-letters": (_DESIGN | {"letters"}, set(), refusing(_NO_SHEET, _letters)),
    "board-cells": (_DESIGN | {"colours", "cells", "least", "straighten"}, set(), refusing(_NO_SHEET, _cells)),
    "board-typed": ({"inputs"}, set(), refusing(_NO_SHEET, _typed)),
    "board-judge": (_DESIGN, set(), refusing({"judged": None, "changes": []}, _judge)),
    "board-try": (_DESIGN | {"before"}, set(), refusing({"better": False, "minutes": 0, "words": ""}, _try)),
    "board-inputs": (_DESIGN, set(), refusing({"inputs": {}}, _inputs)),
    "board-link": (_DESIGN, set(), refusing({"fragment": ""}, _link)),
}
"""Keys that must be there, keys that may, and who answers; as `asks` has them."""
