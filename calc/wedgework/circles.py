"""Round things: discs, cones, domes and ruffles, knitted sideways in short-row wedges or from the rim inward.

A round thing is an inner edge, an outer edge, and the way across the fabric from one to the other:

    >>> round_thing = disc(Fraction(400))
    >>> round_thing.outer.count(Fraction(19, 100)), round_thing.across.count(Fraction(14, 100))
    (239, 28)

Knitted sideways, a row runs from the inner edge to the outer one, so the stitches of a row are the way across and the rows
at each needle are the length there. What the outer edge has more than the inner one is knitted by short rows, in wedges: with
R rows to a stitch and k stitches held every two rows a wedge turns by 2 / (k R) radians, and pi k R wedges make a
flat disc. Both follow from circumference = 2 pi r. Lengths in mm, gauges per mm here.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from wedgework.angles import PI, PI_ABOVE, PI_BELOW, sine
from wedgework.exact import down, nearest, square_root

__all__ = [
    "Length",
    "RoundThing",
    "cone",
    "corner_mm",
    "disc",
    "dome",
    "inward",
    "middle_mm",
    "ruffle",
    "wedge_steps",
    "wedge_stitches",
]


@dataclass(frozen=True, slots=True)
class Length:
    """`plain` + `pis` times pi, in mm."""

    plain: Fraction
    pis: Fraction = Fraction(0)

    @property
    def mm(self) -> Fraction:
        """With 50 decimals of pi."""
        return self.plain + self.pis * PI

    def count(self, per_mm: Fraction) -> int:
        """The nearest whole number of stitches, rows or turns: the same from both bounds of pi."""
        low = nearest((self.plain + self.pis * PI_BELOW) * per_mm)
        if low != nearest((self.plain + self.pis * PI_ABOVE) * per_mm):
            raise ArithmeticError("50 decimals of pi do not decide this")
        return low


@dataclass(frozen=True, slots=True)
class RoundThing:
    inner: Length
    outer: Length
    across: Length
    """From the inner edge to the outer one, along the fabric."""
    curved: bool = False
    """A dome: the length at a part of the way across follows a sine and not a straight line."""

    def level(self, part: Fraction) -> Fraction:
        """How far the length has come from that of the inner edge (0) to that of the outer one (1), at a part of the way."""
        return sine(part / 4) if self.curved else part

    @property
    def gain_mm(self) -> Length:
        """What the outer edge has more."""
        return Length(self.outer.plain - self.inner.plain, self.outer.pis - self.inner.pis)

    @property
    def turn(self) -> Fraction:
        """What all wedges together turn, in full turns: one for a disc. Only where it lies flat when it is cut open."""
        return self.gain_mm.mm / self.across.mm / (2 * PI)


def disc(diameter_mm: Fraction) -> RoundThing:
    """Flat and round."""
    return RoundThing(Length(Fraction(0)), Length(Fraction(0), diameter_mm), Length(diameter_mm / 2))


def cone(diameter_mm: Fraction, height_mm: Fraction) -> RoundThing:
    """A pointed hat: its side is the root of radius squared and height squared (Pythagoras), cut at nine decimals."""
    side = square_root((diameter_mm / 2) ** 2 + height_mm**2)
    return RoundThing(Length(Fraction(0)), Length(Fraction(0), diameter_mm), Length(side))


def dome(diameter_mm: Fraction) -> RoundThing:
    """Half a ball: from pole to rim is a quarter of a circumference; at an angle from the pole the circle is 2 pi r sine."""
    return RoundThing(Length(Fraction(0)), Length(Fraction(0), diameter_mm), Length(Fraction(0), diameter_mm / 4), curved=True)


def ruffle(edge_mm: Fraction, fullness: Fraction, depth_mm: Fraction) -> RoundThing:
    """A strip whose free edge is `fullness` times as long as the one that is sewn on."""
    return RoundThing(Length(edge_mm), Length(edge_mm * fullness), Length(depth_mm))


def wedge_steps(thing: RoundThing, stitches: int, turns: int) -> tuple[int, ...]:
    """One wedge in groups of needles, from the inner edge outward; they add up to `stitches`, and none may be needed at a step.

    The carriage begins at the outer edge, knits one row over all to the inner edge, and stands where the next group is held:
    group i is held after 2 i - 1 rows, so that its turns wrap themselves. The last group knits all 2 x `turns` rows and leaves
    the carriage at the outer edge again. Each needle is in the group whose rows come nearest to what its place asks for.
    """
    if stitches < 1 or turns < 1:
        raise ValueError("a wedge has stitches and turns")
    asked = [down(turns * thing.level(Fraction(2 * j + 1, 2 * stitches))) + 1 for j in range(stitches)]
    asked[-1] = turns
    found = Counter(min(turns, one) for one in asked)
    return tuple(found[i] for i in range(1, turns + 1))


def wedge_stitches(steps: Sequence[int]) -> int:
    """Stitches knitted in such a wedge."""
    return sum((2 * i - 1) * held for i, held in enumerate(steps, 1)) + steps[-1]


def inward(thing: RoundThing, parts: int, rows: int) -> tuple[tuple[int, int], ...]:
    """From the rim inward: after which rows (row, how often) every section loses a stitch, from `parts` stitches in it to 1.

    With an inner edge, `parts` is what a section loses in all, and nothing has to be left.
    """
    closed = not thing.inner.mm
    found, now = [], parts
    for row in range(1, rows + 1):
        then = max(nearest(parts * thing.level(1 - Fraction(row, rows))), int(closed))
        if then < now:
            found.append((row, now - then))
            now = then
    return tuple(found)


def corner_mm(outer_mm: Fraction, sides: int) -> Fraction:
    """From the middle to a corner, if an edge of this length is a polygon of so many straight sides: side / (2 sin(pi / n))."""
    return outer_mm / sides / (2 * sine(Fraction(1, 2 * sides)))


def middle_mm(outer_mm: Fraction, sides: int) -> Fraction:
    """From the middle to the middle of a side: side / (2 tan(pi / n))."""
    return corner_mm(outer_mm, sides) * sine(Fraction(1, 4) + Fraction(1, 2 * sides))
