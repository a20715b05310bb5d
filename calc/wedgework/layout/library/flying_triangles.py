"""Rows of triangles that all point up, each on the points of the row below."""

from __future__ import annotations

from fractions import Fraction

from wedgework.formats.design import DrawnLayout, Shape
from wedgework.layout.library.declared import LayoutDeclaration, Parameter, Values

__all__ = ["LAYOUT"]


def draw(values: Values) -> DrawnLayout:
    """A point is two needles wide, so that the ground beside it stays in two pieces."""
    columns, storeys = values.columns(values.whole("across")), values.storeys(values.whole("up"))
    yarns, tip = values.yarns("blocks"), min(values.needle, Fraction(1, 4 * len(columns)))
    shapes = []
    for j, (low, high) in enumerate(storeys):
        for i, (left, right) in enumerate(columns):
            middle = (left + right) / 2
            outline = ((left, low), (right, low), (middle + tip, high), (middle - tip, high))
            shapes.append(Shape(yarns[(i + j) % len(yarns)], outline))
    return DrawnLayout(values.yarn("ground"), tuple(shapes))


LAYOUT = LayoutDeclaration(
    "flying-triangles",
    (
        Parameter("across", "whole", Fraction(1), Fraction(1), Fraction(12)),
        Parameter("up", "whole", Fraction(4), Fraction(1), Fraction(12)),
        Parameter("ground", "yarn", default_yarn=0),
        Parameter("blocks", "yarns", default_yarn=1),
    ),
    draw,
)
