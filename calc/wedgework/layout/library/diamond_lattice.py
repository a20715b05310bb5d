"""Diamonds side by side and above each other, point to point."""

from __future__ import annotations

from fractions import Fraction

from wedgework.formats.design import DrawnLayout, Shape
from wedgework.layout.library.declared import LayoutDeclaration, Parameter, Values
from wedgework.layout.library.figures import diamond

__all__ = ["LAYOUT"]


def draw(values: Values) -> DrawnLayout:
    """Yarns are taken in turn across and up, so that neighbours differ wherever there are two."""
    across, up, yarns = values.whole("across"), values.whole("up"), values.yarns("blocks")
    reach, rise = Fraction(1, 2 * across), Fraction(1, 2 * up)
    shapes = [
        Shape(yarns[(i + j) % len(yarns)], diamond((2 * i + 1) * reach, (2 * j + 1) * rise, reach, rise))
        for j in range(up)
        for i in range(across)
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
