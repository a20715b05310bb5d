"""Hexagons that fill the panel, flat below and above, every second column half a hexagon higher."""

from __future__ import annotations

from fractions import Fraction

from wedgework.formats.design import DrawnLayout, Shape
from wedgework.layout.library.declared import LayoutDeclaration, Parameter, Values

__all__ = ["LAYOUT"]


def draw(values: Values) -> DrawnLayout:
    """The sides lean by one needle a turn; where that is more than a column is wide, the level edges get short.

    With three yarns or more no two neighbours share one: the yarns are taken in turn with every half hexagon upwards.
    """
    across, halves, yarns = values.whole("across"), 2 * values.whole("up"), values.yarns("yarns")
    lean = min(values.lean(Fraction(1, halves)), Fraction(3, 4 * across)) / 2
    shapes = []
    for k in range(halves + 1):
        turn = k if len(yarns) > 2 else k // 2
        low, middle, high = (values.storey(h, halves) for h in (k - 1, k, k + 1))
        for i in range(-1, across + 1):
            if (i + k) % 2:
                left, right = (values.column(c, across) for c in (i, i + 1))
                outline = (
                    (left + lean, low),
                    (right - lean, low),
                    (right + lean, middle),
                    (right - lean, high),
                    (left + lean, high),
                    (left - lean, middle),
                )
                shapes.append(Shape(yarns[turn % len(yarns)], outline))
    return DrawnLayout(yarns[0], tuple(shapes))


LAYOUT = LayoutDeclaration(
    "hexagons",
    (
        Parameter("across", "whole", Fraction(3), Fraction(2), Fraction(12)),
        Parameter("up", "whole", Fraction(3), Fraction(1), Fraction(12)),
        Parameter("yarns", "yarns", default_yarn=0),
    ),
    draw,
)
