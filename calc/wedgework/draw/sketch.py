"""The picture alone: shapes and yarns at true proportions, before anything is planned. It is there while the plan is made."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from wedgework.draw.hatch import Hatches
from wedgework.draw.marks import legend
from wedgework.draw.svg import Child, Element, document, group, label, number, path, rect
from wedgework.formats.design import Design, DrawnLayout, Point
from wedgework.layout.sizes import Sizes
from wedgework.say import say

__all__ = ["sketch_svg"]

LEFT, TOP = 4, 8
WIDEST, HIGHEST = 172, 190
TEXT = Fraction(3)
THIN = Fraction(1, 5)


def sketch_svg(design: Design, layout: DrawnLayout, sizes: Sizes, *, prefix: str = "sketch", bare: bool = False) -> str:
    """`layout` is the design's, drawn out; `prefix` makes its ids its own on a page.

    `bare` leaves out caption and legend, for a picture that is seen small. Edges are straight here; knitted, they are stairs of
    stitches and rows.
    """
    wide, high = sizes.needles * sizes.stitch_mm, sizes.rows * sizes.row_mm
    scale = min(Fraction(1), WIDEST / wide, HIGHEST / high)
    wide, high = wide * scale, high * scale
    left, top = (0, 0) if bare else (LEFT, TOP)
    hatches = Hatches(design.yarns, prefix)
    panel = rect(left, top, wide, high)
    shapes = [rect(left, top, wide, high, fill=hatches.fill(layout.background))]
    shapes += [
        path(
            "".join(_ring(ring, left, top, wide, high) for ring in (shape.points, *shape.holes)),
            fill=hatches.fill(shape.yarn),
            fill_rule="evenodd",
            stroke=hatches.edge(shape.yarn),
            stroke_width=THIN,
        )
        for shape in layout.shapes
    ]
    children: list[Child] = [
        hatches.definitions(),
        Element("defs", {}, (Element("clipPath", {"id": f"{prefix}-clip"}, (panel,)),)),
        group(shapes, clip_path=f"url(#{prefix}-clip)"),
        rect(left, top, wide, high, fill="none", stroke="currentColor", stroke_width=THIN),
    ]
    title, desc = say("draw.front-title", title=design.title), say("draw.sketch-desc")
    if bare:
        return document(wide, high, title, desc, children, prefix=prefix, kind="front")
    seen = {layout.background, *(shape.yarn for shape in layout.shapes)}
    rows, count = legend([(yarn.id, yarn.name) for yarn in design.yarns if yarn.id in seen], hatches, Fraction(WIDEST))
    children.insert(2, label(LEFT, 4, say("draw.front-caption"), TEXT, font_weight="600"))
    foot = TOP + high + 6
    children += [group(row, transform=f"translate({LEFT} {number(foot + 6 * i)})") for i, row in enumerate(rows)]
    return document(WIDEST + 2 * LEFT, foot + 6 * count, title, desc, children, prefix=prefix, kind="front")


def _ring(points: Sequence[Point], left: int, top: int, wide: Fraction, high: Fraction) -> str:
    places = [f"{number(left + x * wide)} {number(top + (1 - y) * high)}" for x, y in points]
    return "M" + "L".join(places) + "Z"
