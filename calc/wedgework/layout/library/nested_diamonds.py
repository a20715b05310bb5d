"""Diamonds one inside the other about the middle of the panel; the outermost touches all four sides."""

from __future__ import annotations

from fractions import Fraction

from wedgework.formats.design import DrawnLayout, Shape
from wedgework.layout.library.declared import LayoutDeclaration, Parameter, Values

__all__ = ["LAYOUT"]

HALF = Fraction(1, 2)


def draw(values: Values) -> DrawnLayout:
    """Bands of equal width from the outside in; their yarns are taken in turn."""
    bands, yarns = values.whole("bands"), values.yarns("diamonds")
    shapes = []
    for band in range(bands):
        reach = HALF * (bands - band) / bands
        points = ((HALF, HALF - reach), (HALF + reach, HALF), (HALF, HALF + reach), (HALF - reach, HALF))
        shapes.append(Shape(yarns[band % len(yarns)], points))
    return DrawnLayout(values.yarn("corners"), tuple(shapes))


LAYOUT = LayoutDeclaration(
    "nested-diamonds",
    (
        Parameter("bands", "whole", Fraction(3), Fraction(2), Fraction(12)),
        Parameter("corners", "yarn", default_yarn=0),
        Parameter("diamonds", "yarns", default_yarn=1),
    ),
    draw,
)
