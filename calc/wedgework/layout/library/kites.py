"""Kites side by side and above each other, their long points downward."""

from __future__ import annotations

from fractions import Fraction

from wedgework.formats.design import DrawnLayout, Shape
from wedgework.layout.library.declared import LayoutDeclaration, Parameter, Values
from wedgework.layout.library.figures import kite

__all__ = ["LAYOUT"]

SHOULDER = Fraction(3, 5)
"""How far up a kite its side corners lie."""


def draw(values: Values) -> DrawnLayout:
    """The side corners lie at three fifths of a kite's height; the yarns are taken in turn across and up."""
    columns, storeys = values.columns(values.whole("across")), values.storeys(values.whole("up"))
    yarns = values.yarns("blocks")
    shapes = [
        Shape(yarns[(i + j) % len(yarns)], kite(left, right, low, high, SHOULDER))
        for j, (low, high) in enumerate(storeys)
        for i, (left, right) in enumerate(columns)
    ]
    return DrawnLayout(values.yarn("ground"), tuple(shapes))


LAYOUT = LayoutDeclaration(
    "kites",
    (
        Parameter("across", "whole", Fraction(2), Fraction(1), Fraction(12)),
        Parameter("up", "whole", Fraction(3), Fraction(1), Fraction(12)),
        Parameter("ground", "yarn", default_yarn=0),
        Parameter("blocks", "yarns", default_yarn=1),
    ),
    draw,
)
