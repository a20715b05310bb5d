"""One wedge as its short rows, and a disc as the polygon that it really is, to scale."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from wedgework.angles import cosine, sine
from wedgework.draw.svg import Child, Element, document, label, line, number, path, rect
from wedgework.say import say, say_n

__all__ = ["disc_svg", "wedge_svg"]

WIDEST, HIGHEST = 168, 150
MARGIN = 8
TEXT = Fraction(3)
THIN = Fraction(1, 4)


def wedge_svg(steps: Sequence[int], stitch_mm: Fraction, row_mm: Fraction) -> str:
    """The needles of a wedge from the inner edge (left) to the outer one, turn upon turn; `steps` as of `wedge_steps`."""
    stitches, turns = sum(steps), len(steps)
    scale = min(Fraction(1), (WIDEST - 2 * MARGIN) / (stitches * stitch_mm), (HIGHEST - 30) / (2 * turns * row_mm))
    wide, row, high = stitches * stitch_mm * scale, row_mm * scale, 2 * turns * row_mm * scale
    foot = MARGIN + 4 + high
    children: list[Child] = []
    held, below = 0, 0
    for i, (hold, rows) in enumerate(zip((0, *steps[:-1], 0), (1, *(2,) * (turns - 1), 1), strict=True)):
        held += hold
        below += rows
        x = MARGIN + held * stitch_mm * scale
        shade = "0.3" if i % 2 else "0.15"
        children.append(rect(x, foot - below * row, MARGIN + wide - x, rows * row, fill="currentColor", fill_opacity=shade))
    children.append(line(MARGIN, foot, MARGIN + wide, foot, stroke_width=THIN))
    children.append(line(MARGIN + wide, foot, MARGIN + wide, foot - high, stroke_width=Fraction(1, 2)))
    children.append(label(MARGIN, foot + 5, say("draw.wedge-inner"), TEXT))
    children.append(label(MARGIN + max(wide, Fraction(60)), foot + 5, say("draw.wedge-outer"), TEXT, text_anchor="end"))
    words = say("draw.wedge", stitches=say_n("common.stitches", stitches), rows=say_n("common.rows", 2 * turns))
    children.append(label(MARGIN, foot + 11, words, TEXT))
    sheet = max(wide + 2 * MARGIN, Fraction(100))
    return document(sheet, foot + 14, say("draw.wedge-title"), words, children, prefix="wedge", kind="wedge")


def disc_svg(radius_mm: Fraction, corner_mm: Fraction, sides: int) -> str:
    """The true circle dashed, the polygon of straight sides on it, the seam thick."""
    scale = min(Fraction(1), Fraction(60) / corner_mm)
    reach = corner_mm * scale
    centre = MARGIN + reach
    corners = [(centre + reach * sine(Fraction(i, sides)), centre - reach * cosine(Fraction(i, sides))) for i in range(sides)]
    d = "M" + "L".join(f"{number(x)} {number(y)}" for x, y in corners) + "Z"
    children: list[Child] = [
        path(d, fill="currentColor", fill_opacity="0.12", stroke="currentColor", stroke_width=Fraction(2, 5))
    ]
    children += [line(centre, centre, x, y, stroke_width=THIN, stroke_opacity="0.6") for x, y in corners[1:]]
    children.append(line(centre, centre, *corners[0], stroke_width=Fraction(1)))
    ring: dict[str, str | int | Fraction] = {"cx": centre, "cy": centre, "r": radius_mm * scale, "fill": "none"}
    ring |= {"stroke": "currentColor", "stroke-width": Fraction(2, 5), "stroke-dasharray": "2 1.5"}
    children.append(Element("circle", ring))
    words = say_n("draw.disc", sides)
    children.append(label(MARGIN, centre + reach + 7, words, TEXT))
    sheet = max(2 * centre, Fraction(100))
    return document(sheet, centre + reach + 10, say("draw.disc-title"), words, children, prefix="disc", kind="disc")
