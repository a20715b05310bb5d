"""Two columns of leaning parallelograms whose upper ends lie over each other by turns, as in a braid."""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from wedgework.formats.design import DrawnLayout, Point, Shape
from wedgework.layout.library.declared import LayoutDeclaration, Parameter, Values
from wedgework.layout.library.figures import HALF

__all__ = ["LAYOUT"]


def draw(values: Values) -> DrawnLayout:
    """Both ways the strips lean by one needle a turn or a little more. (u, v) counts strips up to the right and up to the left.

    Left strip i lies at v from i to i + 1 and ends at u = i + 1; right strip i lies on that end, at u from i + 1 to
    i + 2, and ends at v = i + 1, where left strip i + 1 lies on it. So each strip lies on the one before.
    """
    strips, yarns = values.whole("strips"), values.yarns("yarns")
    rise = Fraction(1, 2 * strips)
    lean = min(max(values.lean(rise), rise), HALF)

    def at(u: Fraction | int, v: Fraction | int) -> Point:
        return HALF + (u - v) * lean, (u + v) * rise

    # Where a strip ends beyond the side edge: so many strips out.
    out = HALF / lean
    shapes = []
    for i in range(-1, strips + ceil(out / 2)):
        end = i + 1
        left = (at(end, i), at(end, i + 1), at(i + 1 - out - 1, i + 1), at(i - out - 1, i))
        right = (at(i + 1, i + 1), at(i + 2, i + 1), at(i + 2, i + 1 - out), at(i + 1, i - out))
        shapes += [Shape(yarns[i % len(yarns)], left), Shape(yarns[(i + 2) % len(yarns)], right)]
    return DrawnLayout(yarns[0], tuple(shapes))


LAYOUT = LayoutDeclaration(
    "parallelogram-braid",
    (
        Parameter("strips", "whole", Fraction(4), Fraction(3), Fraction(20)),
        Parameter("yarns", "yarns", default_yarn=0),
    ),
    draw,
)
