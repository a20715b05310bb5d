"""Bands whose borders climb like stairs from the lower left to the upper right."""

from __future__ import annotations

from fractions import Fraction

from wedgework.formats.design import DrawnLayout, Point, Shape
from wedgework.layout.library.declared import LayoutDeclaration, Parameter, Values
from wedgework.layout.library.figures import ONE, ZERO

__all__ = ["LAYOUT"]


def draw(values: Values) -> DrawnLayout:
    """Treads are level, risers lean by one needle a turn; the borders lie evenly, the whole stair included."""
    bands, steps, yarns = values.whole("bands"), values.whole("steps"), values.yarns("yarns")
    rise = values.number("rise")
    riser, tread = rise / (steps - 1), Fraction(1, steps)
    lean = min(values.lean(riser), tread) / 2
    shapes = []
    for band in range(1, bands):
        low = (ONE + rise) * band / bands - rise
        border: list[Point] = [(ZERO, low)]
        for step in range(1, steps):
            border += [(step * tread - lean, low + (step - 1) * riser), (step * tread + lean, low + step * riser)]
        shapes.append(Shape(yarns[band % len(yarns)], (*border, (ONE, low + rise), (ONE, ONE + rise), (ZERO, ONE + rise))))
    return DrawnLayout(yarns[0], tuple(shapes))


LAYOUT = LayoutDeclaration(
    "steps",
    (
        Parameter("bands", "whole", Fraction(3), Fraction(2), Fraction(20)),
        Parameter("steps", "whole", Fraction(5), Fraction(2), Fraction(12)),
        Parameter("rise", "fraction", Fraction(2, 5), Fraction(1, 50), Fraction(1)),
        Parameter("yarns", "yarns", default_yarn=0),
    ),
    draw,
)
