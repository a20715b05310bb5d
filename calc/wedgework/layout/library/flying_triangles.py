"""Rows of triangles that all point up, each on the points of the row below."""

from __future__ import annotations

from fractions import Fraction

from wedgework.formats.design import DrawnLayout, Shape
from wedgework.layout.library.declared import LayoutDeclaration, Parameter, Values

__all__ = ["LAYOUT"]


def draw(values: Values) -> DrawnLayout:
    """A point is two needles wide, so that the ground beside it stays in two pieces."""
    across, up, yarns = values.whole("across"), values.whole("up"), values.yarns("blocks")
    width, height, tip = Fraction(1, across), Fraction(1, up), values.needle
    shapes = []
    for j in range(up):
        for i in range(across):
            left, right, middle = i * width, (i + 1) * width, i * width + width / 2
            low, high = j * height, (j + 1) * height
            outline = ((left, low), (right, low), (middle + tip, high), (middle - tip, high))
            shapes.append(Shape(yarns[(i + j) % len(yarns)], outline))
    return DrawnLayout(values.yarn("ground"), tuple(shapes))


LAYOUT = LayoutDeclaration(
    "flying-triangles",
    (
        Parameter("across", "whole", Fraction(1), Fraction(1), Fraction(12)),
        Parameter("up", "whole", Fraction(4), Fraction(1), Fraction(20)),
        Parameter("ground", "yarn", default_yarn=0),
        Parameter("blocks", "yarns", default_yarn=1),
    ),
    draw,
)
