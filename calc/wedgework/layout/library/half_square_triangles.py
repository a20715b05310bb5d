"""Rows of squares, each cut by its diagonal into two triangles."""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from wedgework.formats.design import DrawnLayout, Point, Shape
from wedgework.layout.library.declared import LayoutDeclaration, Parameter, Values
from wedgework.layout.library.figures import ONE

__all__ = ["LAYOUT"]


def draw(values: Values) -> DrawnLayout:
    """The upright sides lean by one needle a turn, in every row the other way, and every point is one needle wide.

    Both triangles of a square are shapes, so that a point never grows together with one of the next row.
    """
    across, storeys, yarns = values.whole("across"), values.storeys(values.whole("up")), values.yarns("blocks")
    tip = min(values.needle, Fraction(1, 4 * across))
    shapes = []
    for j, (low, high) in enumerate(storeys):
        lean = min(values.lean(high - low), ONE - values.needle)
        for i in range(-ceil(lean * across), across):
            # In the middle of a needle at the foot, so that in the middle of each turn it is between two.
            left, right = (values.column(k, across) + values.needle / 2 for k in (i, i + 1))
            lower: tuple[Point, ...] = ((left + tip, low), (right, low), (right + lean, high), (right + lean - tip, high))
            upper: tuple[Point, ...] = ((left, low), (left + tip, low), (right + lean - tip, high), (left + lean, high))
            if j % 2:  # the same leaning to the left
                ends = left + right + lean
                lower, upper = (tuple((ends - x, y) for x, y in ring) for ring in (lower, upper))
            shapes += [Shape(yarns[(i + j) % len(yarns)], lower), Shape(values.yarn("ground"), upper)]
    return DrawnLayout(values.yarn("ground"), tuple(shapes))


LAYOUT = LayoutDeclaration(
    "half-square-triangles",
    (
        Parameter("across", "whole", Fraction(3), Fraction(1), Fraction(12)),
        Parameter("up", "whole", Fraction(4), Fraction(1), Fraction(12)),
        Parameter("ground", "yarn", default_yarn=0),
        Parameter("blocks", "yarns", default_yarn=1),
    ),
    draw,
)
