"""The picture of a panel plan at once: what was typed is drawn, and nothing is planned yet.

sketch_of({"title": "Lap blanket"})    # '<figure><svg ...', or '' where the picture alone would mislead
"""

from __future__ import annotations

from collections.abc import Mapping

from wedgework.calculators import panel_plan
from wedgework.declare.calculator import read_all
from wedgework.draw.sketch import sketch_svg
from wedgework.faces.markup import Html, element
from wedgework.layout import drawn_layout, is_shaped, layout_problems, resolve, size_problems
from wedgework.problems import Refused
from wedgework.say import say

__all__ = ["sketch_of"]


def sketch_of(typed: Mapping[str, str]) -> str:
    """HTML. Raises Refused as the calculator does, with places of the design where those of fields are not known yet."""
    design = panel_plan.design_from(read_all(panel_plan.CALCULATOR, typed))
    found = size_problems(design) + layout_problems(design)
    if found:
        raise Refused(found)
    if is_shaped(design) or design.panel.part is not None:
        return ""  # its outline comes of the rows of each needle
    sizes = resolve(design)
    svg = sketch_svg(design, drawn_layout(design, sizes), sizes)
    return str(element("figure", Html(svg), element("figcaption", say("faces.sketch-caption"))))
