"""Bands of trapezoids, wide below and wide above by turns."""

from __future__ import annotations

from fractions import Fraction

from wedgework.formats.design import DrawnLayout, Point, Shape
from wedgework.layout.library.declared import LayoutDeclaration, Parameter, Values
from wedgework.layout.library.figures import ONE, ZERO

__all__ = ["LAYOUT"]


def draw(values: Values) -> DrawnLayout:
    """The sloped sides lean by one needle a turn, in every band the other way; the yarns move on by one in every band."""
    bands, across, yarns = values.whole("bands"), values.whole("across"), values.yarns("yarns")
    height, width = Fraction(1, bands), Fraction(1, across)
    lean = min(values.lean(height), width * Fraction(3, 4)) / 2
    shapes = []
    for j in range(bands):
        low, high = j * height, (j + 1) * height
        for i in range(across):
            tilt = lean if (i + j) % 2 else -lean
            # At the side edges of the panel there is nothing to lean over.
            left, right = (tilt if i else ZERO), (tilt if i < across - 1 else ZERO)
            outline: tuple[Point, ...] = (
                (i * width - left, low),
                ((i + 1) * width + right, low),
                ((i + 1) * width - right, high),
                (i * width + left, high),
            )
            shapes.append(Shape(yarns[(i + j) % len(yarns)], outline))
    return DrawnLayout(yarns[0], tuple(shapes))


LAYOUT = LayoutDeclaration(
    "trapezoid-bands",
    (
        Parameter("bands", "whole", Fraction(6), Fraction(1), Fraction(20)),
        Parameter("across", "whole", Fraction(4), Fraction(2), Fraction(12)),
        Parameter("yarns", "yarns", default_yarn=0),
    ),
    draw,
)
