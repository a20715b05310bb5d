"""Four blades about the middle of the panel."""

from __future__ import annotations

from fractions import Fraction

from wedgework.formats.design import DrawnLayout, Shape
from wedgework.layout.library.declared import LayoutDeclaration, Parameter, Values
from wedgework.layout.library.figures import HALF, ONE, ZERO

__all__ = ["LAYOUT"]


def draw(values: Values) -> DrawnLayout:
    """The blades to the sides lie on the level line through the middle, one above it, one below it.

    The borders of the two others are the steepest that join: one needle a turn.
    """
    height, yarns, ground = values.number("blade_height"), values.yarns("blocks"), values.yarn("ground")
    lean = min(values.lean(HALF), ONE + HALF)
    middle = (HALF, HALF)
    blades = (
        (middle, (ONE, HALF), (ONE, HALF + height)),
        (middle, (HALF + lean, ONE), (HALF - lean, ONE)),
        (middle, (ZERO, HALF), (ZERO, HALF - height)),
        (middle, (HALF - lean, ZERO), (HALF + lean, ZERO)),
    )
    return DrawnLayout(ground, tuple(Shape(yarns[k % len(yarns)], blade) for k, blade in enumerate(blades)))


LAYOUT = LayoutDeclaration(
    "pinwheel",
    (
        Parameter("blade_height", "fraction", Fraction(1, 4), Fraction(1, 20), Fraction(1, 2)),
        Parameter("ground", "yarn", default_yarn=0),
        Parameter("blocks", "yarns", default_yarn=1),
    ),
    draw,
)
