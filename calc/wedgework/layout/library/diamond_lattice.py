"""Diamonds side by side and above each other, point to point."""

from __future__ import annotations

from fractions import Fraction

from wedgework.formats.design import DrawnLayout, Shape
from wedgework.layout.library.declared import LayoutDeclaration, Parameter, Values
from wedgework.layout.library.figures import HALF, kite

__all__ = ["LAYOUT"]


def draw(values: Values) -> DrawnLayout:
    """Yarns are taken in turn across and up, so that neighbours differ wherever there are two."""
    columns, storeys = values.columns(values.whole("across")), values.storeys(values.whole("up"))
    yarns = values.yarns("blocks")
    shapes = [
        Shape(yarns[(i + j) % len(yarns)], kite(left, right, low, high, HALF))
        for j, (low, high) in enumerate(storeys)
        for i, (left, right) in enumerate(columns)
    ]
    return DrawnLayout(values.yarn("ground"), tuple(shapes))


LAYOUT = LayoutDeclaration(
    "diamond-lattice",
    (
        Parameter("across", "whole", Fraction(2), Fraction(1), Fraction(12)),
        Parameter("up", "whole", Fraction(2), Fraction(1), Fraction(12)),
        Parameter("ground", "yarn", default_yarn=0),
        Parameter("blocks", "yarns", default_yarn=1),
    ),
    draw,
)
