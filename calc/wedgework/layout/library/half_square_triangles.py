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
    across, up, yarns = values.whole("across"), values.whole("up"), values.yarns("blocks")
    width, height, tip = Fraction(1, across), Fraction(1, up), values.needle
    lean = min(values.lean(height), ONE)
    shapes = []
    for j in range(up):
        for i in range(-ceil(lean / width), across):
            left, right = i * width, (i + 1) * width
            low, high = j * height, (j + 1) * height
            lower: tuple[Point, ...] = ((left + tip, low), (right, low), (right + lean, high), (right + lean - tip, high))
            upper: tuple[Point, ...] = ((left, low), (left + tip, low), (right + lean - tip, high), (left + lean, high))
            if j % 2:  # the same with left and right exchanged
                lower, upper = (tuple((ONE - x, y) for x, y in ring) for ring in (lower, upper))
            shapes += [Shape(yarns[(i + j) % len(yarns)], lower), Shape(values.yarn("ground"), upper)]
    return DrawnLayout(values.yarn("ground"), tuple(shapes))


LAYOUT = LayoutDeclaration(
    "half-square-triangles",
    (
        Parameter("across", "whole", Fraction(3), Fraction(1), Fraction(12)),
        Parameter("up", "whole", Fraction(3), Fraction(1), Fraction(12)),
        Parameter("ground", "yarn", default_yarn=0),
        Parameter("blocks", "yarns", default_yarn=1),
    ),
    draw,
)
