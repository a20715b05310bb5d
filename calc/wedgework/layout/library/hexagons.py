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
    across, up, yarns = values.whole("across"), values.whole("up"), values.yarns("yarns")
    column, rise = Fraction(1, across), Fraction(1, 2 * up)
    lean = min(values.lean(rise), column * Fraction(3, 4))
    level, reach = (column - lean) / 2, (column + lean) / 2
    shapes = []
    for halves in range(2 * up + 1):
        turn = halves if len(yarns) > 2 else halves // 2
        for i in range(-1, across + 1):
            if (i + halves) % 2:
                x, y = i * column + column / 2, halves * rise
                outline = (
                    (x - level, y - rise),
                    (x + level, y - rise),
                    (x + reach, y),
                    (x + level, y + rise),
                    (x - level, y + rise),
                    (x - reach, y),
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
