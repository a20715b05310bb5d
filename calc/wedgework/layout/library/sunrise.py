"""A sun on the lower edge and wedges that spread from it over the whole panel."""

from __future__ import annotations

from fractions import Fraction

from wedgework.formats.design import DrawnLayout, Shape
from wedgework.layout.library.declared import LayoutDeclaration, Parameter, Values
from wedgework.layout.library.figures import HALF, ONE, ZERO

__all__ = ["LAYOUT"]


def draw(values: Values) -> DrawnLayout:
    """The wedges end at even heights of the side edges; the borders of the middle one lean by one needle a turn.

    Each wedge covers all above it, the next one lies on it, and the sun on all of them: half a hexagon as high as
    its sides lean, so that the middle wedge begins on its level top.
    """
    rays, shoulder = values.whole("rays"), max(values.to_needle(values.number("sun_width") / 4), values.needle)
    highest = min(values.climb(HALF), Fraction(3, 2))
    top, sky, light = ONE + ONE, values.yarn("sky"), values.yarn("light")
    shapes = []
    for k in range(1, rays + 1):
        y = highest * k / rays
        shapes.append(Shape(light if k % 2 else sky, ((HALF, ZERO), (ONE, y), (ONE, top), (ZERO, top), (ZERO, y))))
    high = min(values.climb(shoulder), HALF)
    outline = ((HALF - 2 * shoulder, ZERO), (HALF + 2 * shoulder, ZERO), (HALF + shoulder, high), (HALF - shoulder, high))
    return DrawnLayout(sky, (*shapes, Shape(values.yarn("sun"), outline)))


LAYOUT = LayoutDeclaration(
    "sunrise",
    (
        Parameter("rays", "whole", Fraction(3), Fraction(1), Fraction(8)),
        Parameter("sun_width", "fraction", Fraction(3, 10), Fraction(1, 10), Fraction(9, 10)),
        Parameter("sky", "yarn", default_yarn=0),
        Parameter("light", "yarn", default_yarn=1),
        Parameter("sun", "yarn", default_yarn=2),
    ),
    draw,
)
