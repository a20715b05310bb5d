"""The planner's fields for panels and for an edging: a picture wider than the bed is cut, and one of its panels is planned."""

from __future__ import annotations

from dataclasses import replace

from wedgework.calculators.panel_cutting import MOST_PANELS, SEAMS, Cutting, cut_picture
from wedgework.calculators.panel_design import design_values, design_view
from wedgework.declare import Bullets, Field, Inputs, Only, Plain, Shown, choice, whole
from wedgework.finish import joins
from wedgework.formats.design import Design, Edging, EdgingAlong, EdgingCorner
from wedgework.layout import drawn_layout
from wedgework.layout.sizes import Sizes, picture_sizes
from wedgework.problems import Problem, Refused
from wedgework.say import say
from wedgework.words.joining import join_sentences

__all__ = ["EDGING_FIELDS", "PART_FIELDS", "edging_from", "part_problems", "parted", "whole_values", "whole_view"]

NONE, EQUAL, DESIGN = "none", "equal", "design"
ALONG: tuple[EdgingAlong, ...] = ("all", "sides", "ends")
CORNERS: tuple[EdgingCorner, ...] = ("eased", "square", "none")
_SPLIT = Only("split", (EQUAL, DESIGN))
_EDGED, _ROUND = Only("edging", ALONG), Only("edging", ("all",))

PART_FIELDS: tuple[Field, ...] = (
    choice("split", NONE, (NONE, EQUAL, DESIGN)),
    whole("panel_number", "1", 1, MOST_PANELS, only=_SPLIT),
    whole("panels", "", 1, MOST_PANELS, optional=True, only=_SPLIT),
    choice("seam_stitches", "one", tuple(SEAMS), only=_SPLIT),
)

EDGING_FIELDS: tuple[Field, ...] = (
    choice("edging", NONE, (NONE, *ALONG)),
    whole("edging_stitches", "8", 1, 100, "stitches", only=_EDGED),
    whole("edging_repeat", "2", 1, 200, "rows", only=_EDGED),
    choice("edging_corner", "eased", CORNERS, only=_ROUND),
)


def _say(key: str, **values: object) -> str:
    return say(f"calculators.panel-plan.{key}", **values)


def edging_from(inputs: Inputs) -> Edging | None:
    """The edging that was chosen, joined every second row, when the carriage is back on the side away from the piece."""
    along = next((one for one in ALONG if one == inputs.text("edging")), None)
    if along is None:
        return None
    corner = next(one for one in CORNERS if along != "all" or one == inputs.text("edging_corner"))
    return Edging(along, inputs.whole("edging_stitches"), inputs.whole("edging_repeat"), corner=corner)


def part_problems(inputs: Inputs) -> list[Problem]:
    """A panel beyond the number of panels that was typed."""
    if not (inputs.has("panels") and inputs.has("panel_number")) or inputs.whole("panel_number") <= inputs.whole("panels"):
        return []
    return [_no_such_panel(inputs.whole("panel_number"), inputs.whole("panels"))]


def _no_such_panel(number: int, panels: int) -> Problem:
    sentence = _say("no-such-panel", number=number)
    return Problem("panel_number", "panel-plan.no-such-panel", sentence, _say("no-such-panel.way-out", panels=panels))


def parted(inputs: Inputs, design: Design) -> tuple[Design, Cutting | None]:
    """`design` of the whole picture as the panel of it that was chosen, and where the whole is cut; as it is, without a cut.

    Raises Refused, with the names of fields or with paths in the design.
    """
    if inputs.text("split") == NONE:
        return design, None
    sizes, number = picture_sizes(design), inputs.whole("panel_number")
    wanted = inputs.whole("panels") if inputs.has("panels") else None
    drawn = drawn_layout(design, sizes)
    seam, equal = SEAMS[inputs.text("seam_stitches")], inputs.text("split") == EQUAL
    found = cut_picture(drawn, sizes.across, sizes.rows, design.bed.needles, seam, wanted, equal)
    panels = len(found.widths)
    if number > panels:
        raise Refused([_no_such_panel(number, panels)])
    title = _say("panel-title", title=design.title, number=number, panels=panels)[:200]
    return replace(design, title=title, panel=replace(design.panel, part=found.part(number))), found


def whole_values(found: Cutting, number: int) -> dict[str, Plain]:
    """Of all panels; the other figures are those of the one that is planned."""
    order = joins(len(found.widths))
    return {
        "panels": len(found.widths),
        "panel_number": number,
        "panel_needles": list(found.needles),
        "joins": [{"left": list(range(a, b + 1)), "right": list(range(c, d + 1))} for (a, b), (c, d) in order],
        **design_values(found),
    }


def whole_view(found: Cutting, design: Design, sizes: Sizes) -> tuple[Shown, ...]:
    """The whole picture with its cuts, each panel, each cut, the order of joining."""
    part = design.panel.part
    colours = {yarn.id: yarn.colour for yarn in design.yarns}
    view = design_view(found, sizes.stitch_mm, sizes.height_mm, colours, part.number if part else None)
    if len(found.widths) == 1:
        return view
    return (*view, Bullets(say("calculators.panels.order"), join_sentences(len(found.widths)), ordered=True))
