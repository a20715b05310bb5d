"""The picture of a piece at once: what was typed is drawn, and nothing is planned yet.

sketch_of("panel-plan", {"title": "Lap blanket"})    # '<figure><svg ...', or '' where the picture alone would mislead
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from wedgework.calculators import panel_plan, short_row_shape
from wedgework.catalogue import calculator
from wedgework.declare import Inputs
from wedgework.declare.calculator import read_all
from wedgework.draw.sketch import sketch_svg
from wedgework.faces.markup import Html, element
from wedgework.formats.design import Design
from wedgework.layout import drawn_layout, is_shaped, layout_problems, resolve, size_problems
from wedgework.problems import Refused
from wedgework.say import say

__all__ = ["SKETCHED", "sketch_of"]

SKETCHED: Mapping[str, Callable[[Inputs], Design]] = {
    "short-row-shape": short_row_shape.design_from,
    **dict.fromkeys(("panel-plan", "written-pattern", "carry-on", "stripes", "scraps"), panel_plan.design_from),
}
"""Calculators that plan a whole piece and show its front, or its fabric, and the design of that."""


def sketch_of(slug: str, typed: Mapping[str, str]) -> str:
    """HTML. Raises Refused as the calculator does, with places of the design where those of fields are not known yet; LookupError
    for a calculator that has no such picture."""
    asked = calculator(slug)
    if asked is None or slug not in SKETCHED:
        raise LookupError(slug)
    design = SKETCHED[slug](read_all(asked, typed))
    found = size_problems(design) + layout_problems(design)
    if found:
        raise Refused(found)
    if is_shaped(design) or design.panel.part is not None:
        return ""  # its outline comes of the rows of each needle
    sizes = resolve(design)
    svg = sketch_svg(design, drawn_layout(design, sizes), sizes)
    return str(element("figure", Html(svg), element("figcaption", say("faces.sketch-caption"))))
