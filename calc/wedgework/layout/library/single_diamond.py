"""One diamond about the middle of the panel, as large as it is wanted."""

from __future__ import annotations

from fractions import Fraction

from wedgework.formats.design import DrawnLayout, Shape
from wedgework.layout.library.declared import LayoutDeclaration, Parameter, Values
from wedgework.layout.library.figures import HALF, diamond

__all__ = ["LAYOUT"]


def draw(values: Values) -> DrawnLayout:
    """Width and height are those of the diamond, the ground lies all round it."""
    reach, rise = values.number("diamond_width") / 2, values.number("diamond_height") / 2
    return DrawnLayout(values.yarn("ground"), (Shape(values.yarn("diamond"), diamond(HALF, HALF, reach, rise)),))


LAYOUT = LayoutDeclaration(
    "single-diamond",
    (
        Parameter("diamond_width", "fraction", Fraction(3, 4), Fraction(1, 10), Fraction(1)),
        Parameter("diamond_height", "fraction", Fraction(3, 4), Fraction(1, 10), Fraction(1)),
        Parameter("ground", "yarn", default_yarn=0),
        Parameter("diamond", "yarn", default_yarn=1),
    ),
    draw,
)
