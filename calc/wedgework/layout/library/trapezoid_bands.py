"""Bands of trapezoids, wide below and wide above by turns."""

from __future__ import annotations

from fractions import Fraction

from wedgework.formats.design import DrawnLayout, Shape
from wedgework.layout.library.declared import LayoutDeclaration, Parameter, Values
from wedgework.layout.library.figures import ZERO

__all__ = ["LAYOUT"]


def draw(values: Values) -> DrawnLayout:
    """The sloped sides lean by one needle a turn, in every band the other way; the yarns move on by one in every band."""
    columns, storeys = values.columns(values.whole("across")), values.storeys(values.whole("bands"))
    yarns = values.yarns("yarns")
    shapes = []
    for j, (low, high) in enumerate(storeys):
        lean = min(values.lean(high - low), Fraction(3, 4 * len(columns))) / 2
        for i, (left, right) in enumerate(columns):
            tilt = lean if (i + j) % 2 else -lean
            # The side edges of the panel stay upright.
            a, b = (tilt if i else ZERO), (tilt if i < len(columns) - 1 else ZERO)
            outline = ((left - a, low), (right + b, low), (right - b, high), (left + a, high))
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
