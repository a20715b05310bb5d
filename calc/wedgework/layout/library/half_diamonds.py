"""Half diamonds that stand on the two side edges, those of one side between those of the other."""

from __future__ import annotations

from fractions import Fraction

from wedgework.formats.design import DrawnLayout, Shape
from wedgework.layout.library.declared import LayoutDeclaration, Parameter, Values
from wedgework.layout.library.figures import ONE, ZERO, diamond

__all__ = ["LAYOUT"]


def draw(values: Values) -> DrawnLayout:
    """Whole diamonds about points of the side edges; the panel cuts them in half.

    A turn of ground lies between two of one side, so that those of one yarn do not grow together at the edge.
    """
    up, depth, yarns = values.whole("up"), values.number("depth"), values.yarns("blocks")
    step = Fraction(1, 2 * up)
    rise = max(step - values.turn / 2, step / 2)
    # Heights are counted in half steps: odd ones on the left, even ones on the right.
    shapes = [
        Shape(yarns[(k + 1) // 2 % len(yarns)], diamond(ZERO if k % 2 else ONE, k * step, depth, rise)) for k in range(2 * up + 1)
    ]
    return DrawnLayout(values.yarn("ground"), tuple(shapes))


LAYOUT = LayoutDeclaration(
    "half-diamonds",
    (
        Parameter("up", "whole", Fraction(3), Fraction(1), Fraction(12)),
        Parameter("depth", "fraction", Fraction(2, 5), Fraction(1, 20), Fraction(1)),
        Parameter("ground", "yarn", default_yarn=0),
        Parameter("blocks", "yarns", default_yarn=1),
    ),
    draw,
)
