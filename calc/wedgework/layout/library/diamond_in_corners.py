"""One diamond that touches the middle of all four sides, between four corner triangles."""

from __future__ import annotations

from fractions import Fraction

from wedgework.formats.design import DrawnLayout, Shape
from wedgework.layout.library.declared import LayoutDeclaration, Parameter, Values

__all__ = ["LAYOUT"]

HALF = Fraction(1, 2)


def draw(values: Values) -> DrawnLayout:
    """The diamond lies on the corners' yarn."""
    corners = ((HALF, Fraction(0)), (Fraction(1), HALF), (HALF, Fraction(1)), (Fraction(0), HALF))
    return DrawnLayout(values.yarn("corners"), (Shape(values.yarn("diamond"), corners),))


LAYOUT = LayoutDeclaration(
    "diamond-in-corners",
    (Parameter("diamond", "yarn", default_yarn=1), Parameter("corners", "yarn", default_yarn=0)),
    draw,
)
