"""Bands that run up the panel side by side and bend to and fro."""

from __future__ import annotations

from fractions import Fraction

from wedgework.formats.design import DrawnLayout, Point, Shape
from wedgework.layout.library.declared import LayoutDeclaration, Parameter, Values
from wedgework.layout.library.figures import ONE, ZERO

__all__ = ["LAYOUT"]


def draw(values: Values) -> DrawnLayout:
    """Every border leans by one needle a turn and bends at the same heights; each band covers all to its right.

    The bends lie between needles and between turns, so that all borders of a bend turn together.
    """
    bands, bends, yarns = values.whole("bands"), values.whole("bends"), values.yarns("yarns")
    heights = [values.storey(k, bends + 1) for k in range(bends + 1)] + [ONE]
    shapes = []
    for band in range(1, bands):
        # In the middle of a needle at the foot, so that in the middle of each turn it is between two.
        x = values.to_needle(Fraction(band, bands) - min(values.lean(heights[1]), ONE) / 2) + values.needle / 2
        border: list[Point] = [(x, ZERO)]
        for k in range(bends + 1):
            swing = min(values.lean(heights[k + 1] - heights[k]), ONE)
            x += -swing if k % 2 else swing
            border.append((x, heights[k + 1]))
        shapes.append(Shape(yarns[band % len(yarns)], (*border, (ONE + ONE, ONE), (ONE + ONE, ZERO))))
    return DrawnLayout(yarns[0], tuple(shapes))


LAYOUT = LayoutDeclaration(
    "zigzag-bands",
    (
        Parameter("bands", "whole", Fraction(4), Fraction(2), Fraction(20)),
        Parameter("bends", "whole", Fraction(5), Fraction(1), Fraction(20)),
        Parameter("yarns", "yarns", default_yarn=0),
    ),
    draw,
)
