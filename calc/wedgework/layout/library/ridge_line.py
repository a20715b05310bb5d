"""Mountains: ridges behind each other, with peaks of different heights, under a sky."""

from __future__ import annotations

from fractions import Fraction

from wedgework.formats.design import DrawnLayout, Point, Shape
from wedgework.layout.library.declared import LayoutDeclaration, Parameter, Values
from wedgework.layout.library.figures import ONE, ZERO

__all__ = ["LAYOUT"]


# Heights of the peaks as parts of the rise, taken in turn.
HEIGHTS = (ONE, Fraction(3, 5), Fraction(4, 5))


def draw(values: Values) -> DrawnLayout:
    """The farthest ridge is the highest; each nearer one lies over it, its peaks where that one has its saddles.

    The saddles of a ridge are level with each other, so that its peaks and the ground between them begin together.
    """
    ridges, peaks, yarns = values.whole("ridges"), values.whole("peaks"), values.yarns("yarns")
    rise = values.number("rise")
    shapes = []
    for ridge in range(ridges):
        low = values.to_turn((ONE - rise) * (ridges - ridge) / (ridges + 1))
        border: list[Point] = []
        for k in range(2 * peaks + 1):
            height = HEIGHTS[(k // 2 + ridge) % len(HEIGHTS)] if (k + ridge) % 2 == 0 else ZERO
            border.append((values.column(k, 2 * peaks), low + values.to_turn(rise * height)))
        shapes.append(Shape(yarns[(ridge + 1) % len(yarns)], ((ZERO, -ONE), *border, (ONE, -ONE))))
    return DrawnLayout(yarns[0], tuple(shapes))


LAYOUT = LayoutDeclaration(
    "ridge-line",
    (
        Parameter("ridges", "whole", Fraction(3), Fraction(1), Fraction(12)),
        Parameter("peaks", "whole", Fraction(3), Fraction(1), Fraction(12)),
        Parameter("rise", "fraction", Fraction(3, 20), Fraction(1, 50), Fraction(1)),
        Parameter("yarns", "yarns", default_yarn=0),
    ),
    draw,
)
