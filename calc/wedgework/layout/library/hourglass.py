"""Hourglasses: two triangles point to point, side by side and above each other."""

from __future__ import annotations

from fractions import Fraction

from wedgework.formats.design import DrawnLayout, Shape
from wedgework.layout.library.declared import LayoutDeclaration, Parameter, Values

__all__ = ["LAYOUT"]


def draw(values: Values) -> DrawnLayout:
    """The waist is two needles wide, so that an hourglass stays in one piece."""
    columns, storeys = values.columns(values.whole("across")), values.storeys(values.whole("up"))
    yarns, waist = values.yarns("blocks"), min(values.needle, Fraction(1, 4 * len(columns)))
    shapes = []
    for j, (low, high) in enumerate(storeys):
        for i, (left, right) in enumerate(columns):
            x, y = (left + right) / 2, (low + high) / 2
            outline = ((left, low), (right, low), (x + waist, y), (right, high), (left, high), (x - waist, y))
            shapes.append(Shape(yarns[(i + j) % len(yarns)], outline))
    return DrawnLayout(values.yarn("ground"), tuple(shapes))


LAYOUT = LayoutDeclaration(
    "hourglass",
    (
        Parameter("across", "whole", Fraction(2), Fraction(1), Fraction(12)),
        Parameter("up", "whole", Fraction(2), Fraction(1), Fraction(12)),
        Parameter("ground", "yarn", default_yarn=0),
        Parameter("blocks", "yarns", default_yarn=1),
    ),
    draw,
)
