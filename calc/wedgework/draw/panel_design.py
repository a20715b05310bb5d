"""A design over several panels, to scale: its blocks, the seams between the panels, and the order in which these are sewn."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction
from itertools import accumulate

from wedgework.draw.svg import Child, Element, document, group, label, line, number, path, rect
from wedgework.formats.design import DrawnLayout, Point
from wedgework.say import say, say_n

__all__ = ["panel_design_svg"]

WIDEST, HIGHEST = 168, 150
LEFT, TOP = 6, 10
TEXT = Fraction(4)
EDGE = "#1a1a1a"


def panel_design_svg(
    layout: DrawnLayout,
    colours: Mapping[str, str],
    widths_mm: Sequence[Fraction],
    height_mm: Fraction,
    seam_order: Sequence[int],
    chosen: int | None = None,
) -> str:
    """`widths_mm` as seen on the front, from left to right; `seam_order[i]` is the turn of the seam right of panel i; `chosen`:
    the panel, from 1, that is marked as the one of the page."""
    across = sum(widths_mm, Fraction(0))
    scale = min(Fraction(1), WIDEST / across, HIGHEST / height_mm)
    wide, high = across * scale, height_mm * scale
    clip = rect(LEFT, TOP, wide, high)
    shapes = [rect(LEFT, TOP, wide, high, fill=colours[layout.background])]
    shapes += [
        path(
            "".join(_ring(ring, wide, high) for ring in (shape.points, *shape.holes)),
            fill=colours[shape.yarn],
            fill_rule="evenodd",
            stroke=EDGE,
            stroke_width=Fraction(1, 5),
        )
        for shape in layout.shapes
    ]
    children: list[Child] = [
        Element("defs", {}, (Element("clipPath", {"id": "panel-design-clip"}, (clip,)),)),
        group(shapes, clip_path="url(#panel-design-clip)"),
        rect(LEFT, TOP, wide, high, fill="none", stroke="currentColor", stroke_width=Fraction(2, 5)),
    ]
    foot = TOP + high
    ends = list(accumulate(width * scale for width in widths_mm))
    for i, (end, width) in enumerate(zip(ends, widths_mm, strict=True)):
        middle = LEFT + end - width * scale / 2
        children.append(label(middle, TOP - 3, say("draw.panel-number", n=i + 1), TEXT, text_anchor="middle", font_weight="700"))
        if i + 1 == chosen:
            start, bar = LEFT + end - width * scale, TOP - Fraction(3, 2)
            children.append(rect(start, bar, width * scale, 1, fill="currentColor", stroke="none"))
        if i < len(seam_order):
            x = LEFT + end
            # a light line under a dashed dark one is seen on every yarn
            children.append(line(x, TOP, x, foot, stroke="#ffffff", stroke_width=Fraction(7, 5)))
            children.append(line(x, TOP, x, foot, stroke=EDGE, stroke_width=Fraction(3, 5), stroke_dasharray="3 1.5"))
            children.append(label(x, foot + 6, say("draw.panels-seam", order=seam_order[i]), TEXT, text_anchor="middle"))
    words = say_n("draw.panels", len(widths_mm))
    children.append(label(LEFT, foot + 13, words, TEXT))
    sheet = max(LEFT + wide + LEFT, Fraction(90))
    return document(sheet, foot + 17, say("draw.panels-title"), words, children, prefix="panel-design", kind="panels")


def _ring(points: Sequence[Point], wide: Fraction, high: Fraction) -> str:
    places = [f"{number(LEFT + x * wide)} {number(TOP + (1 - y) * high)}" for x, y in points]
    return "M" + "L".join(places) + "Z"
