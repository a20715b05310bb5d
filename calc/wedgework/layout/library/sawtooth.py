"""Bands across the panel whose upper borders are rows of teeth, each slow on one side and steep on the other."""

from __future__ import annotations

from fractions import Fraction

from wedgework.formats.design import DrawnLayout, Point, Shape
from wedgework.layout.library.declared import LayoutDeclaration, Parameter, Values
from wedgework.layout.library.figures import ONE, ZERO

__all__ = ["LAYOUT"]


def draw(values: Values) -> DrawnLayout:
    """A tooth rises to the right and falls by one needle a turn; the borders lie evenly, the teeth included.

    Corners lie between needles and between turns, so that all teeth of a border begin and end together.
    """
    bands, teeth, yarns = values.whole("bands"), values.whole("teeth"), values.yarns("yarns")
    rise, width = max(values.to_turn(values.number("rise")), values.turn), Fraction(1, teeth)
    fall = min(values.lean(rise), width / 2)
    shapes = []
    for band in range(1, bands):
        low = values.to_turn((ONE + rise) * band / bands - rise)
        border: list[Point] = [(ZERO, low)]
        for tooth in range(1, teeth + 1):
            end = values.column(tooth, teeth)
            border += [(end - fall, low + rise), (end, low)]
        shapes.append(Shape(yarns[band % len(yarns)], (*border, (ONE, ONE + rise), (ZERO, ONE + rise))))
    return DrawnLayout(yarns[0], tuple(shapes))


LAYOUT = LayoutDeclaration(
    "sawtooth",
    (
        Parameter("bands", "whole", Fraction(4), Fraction(2), Fraction(20)),
        Parameter("teeth", "whole", Fraction(4), Fraction(1), Fraction(12)),
        Parameter("rise", "fraction", Fraction(1, 10), Fraction(1, 50), Fraction(1)),
        Parameter("yarns", "yarns", default_yarn=0),
    ),
    draw,
)
