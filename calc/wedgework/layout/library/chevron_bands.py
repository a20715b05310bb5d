"""Bands across the panel whose borders go up and down in points."""

from __future__ import annotations

from fractions import Fraction

from wedgework.formats.design import DrawnLayout, Point, Shape
from wedgework.layout.library.declared import LayoutDeclaration, Parameter, Values

__all__ = ["LAYOUT"]


def draw(values: Values) -> DrawnLayout:
    """The lowest and the highest band fill up to the edges, so every border has all its points inside the panel."""
    bands, points = values.whole("bands"), values.whole("points")
    rise, yarns = values.number("rise"), values.yarns("yarns")
    one, low = Fraction(1), Fraction(0)
    shapes = []
    for band in range(1, bands):
        # Valleys of border `band`; the borders lie evenly, the points included, between bottom and top.
        valley = (one + rise) * band / bands - rise
        border: list[Point] = [(Fraction(k, 2 * points), valley + (rise if k % 2 else low)) for k in range(2 * points + 1)]
        shapes.append(Shape(yarns[band % len(yarns)], (*border, (one, one + rise), (low, one + rise))))
    return DrawnLayout(yarns[0], tuple(shapes))


LAYOUT = LayoutDeclaration(
    "chevron-bands",
    (
        Parameter("bands", "whole", Fraction(5), Fraction(2), Fraction(40)),
        Parameter("points", "whole", Fraction(1), Fraction(1), Fraction(12)),
        Parameter("rise", "fraction", Fraction(1, 5), Fraction(1, 50), Fraction(1)),
        Parameter("yarns", "yarns", default_yarn=0),
    ),
    draw,
)
