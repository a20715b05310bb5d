"""Panels side by side, to scale, with their numbers, and the seams in the order in which they are sewn."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from wedgework.draw.svg import Child, document, label, line, rect
from wedgework.say import say, say_n

__all__ = ["panels_svg"]

WIDEST, HIGHEST = 168, 150
LEFT, TOP = 6, 12
TEXT, LARGE = Fraction(3), Fraction(5)


def panels_svg(widths_mm: Sequence[Fraction], height_mm: Fraction, seam_order: Sequence[int]) -> str:
    """`widths_mm` as seen on the front, from left to right; `seam_order[i]` is the turn of the seam right of panel i."""
    scale = min(Fraction(1), WIDEST / sum(widths_mm, Fraction(0)), HIGHEST / height_mm)
    high, x = height_mm * scale, Fraction(LEFT)
    children: list[Child] = []
    for i, width in enumerate(widths_mm):
        wide = width * scale
        shade = "0.18" if i % 2 else "0.08"
        children.append(rect(x, TOP, wide, high, fill="currentColor", fill_opacity=shade, stroke="none"))
        middle = x + wide / 2
        children.append(label(middle, TOP + high / 2 + 2, f"{i + 1}", LARGE, text_anchor="middle", font_weight="700"))
        x += wide
        if i < len(seam_order):
            children.append(line(x, TOP - 2, x, TOP + high, stroke_width=Fraction(2, 5), stroke_dasharray="2 1.5"))
            words = say("draw.panels-seam", order=seam_order[i])
            children.append(label(x, TOP - 4, words, TEXT, text_anchor="middle"))
    children.append(rect(LEFT, TOP, x - LEFT, high, fill="none", stroke="currentColor", stroke_width=Fraction(2, 5)))
    words = say_n("draw.panels", len(widths_mm))
    children.append(label(LEFT, TOP + high + 6, words, TEXT))
    sheet = max(x + LEFT, Fraction(90))
    return document(sheet, TOP + high + 9, say("draw.panels-title"), words, children, prefix="panels", kind="panels")
