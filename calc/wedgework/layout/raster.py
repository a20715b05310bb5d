"""Polygons to cells, exactly: whole numbers only, no rounding anywhere.

A polygon is closed: a centre on its border belongs to it (and so to the later of two shapes that share the border).
On one scan line the closed polygon is the union of what lies just above the line and what lies just below it,
each as closed intervals; so corners and level edges need no case of their own.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction
from math import lcm

from wedgework.formats.design import Point

__all__ = ["Outline", "outline", "spans"]


class Outline:
    """The edges of one shape (holes too), in whole units, ready to be cut by scan lines."""

    __slots__ = ("edges", "high", "low", "unit")

    def __init__(self, edges: list[tuple[int, int, int, int]], unit: int) -> None:
        self.edges = edges
        """(x0, y0, x1, y1) with y0 < y1."""
        self.unit = unit
        """So many units are the whole panel, across and up."""
        self.low = min((e[1] for e in edges), default=0)
        self.high = max((e[3] for e in edges), default=0)


def outline(rings: Iterable[Sequence[Point]]) -> Outline:
    """The outline of a shape given by its rings of points (fractions of the panel); even-odd, so holes are holes."""
    kept = [list(ring) for ring in rings]
    unit = lcm(1, *(c.denominator for ring in kept for point in ring for c in point))
    edges: list[tuple[int, int, int, int]] = []
    for ring in kept:
        whole = [(_whole(x, unit), _whole(y, unit)) for x, y in ring]
        for (x0, y0), (x1, y1) in zip(whole, whole[1:] + whole[:1], strict=True):
            if y0 < y1:
                edges.append((x0, y0, x1, y1))
            elif y1 < y0:
                edges.append((x1, y1, x0, y0))
    return Outline(edges, unit)


def _whole(value: Fraction, unit: int) -> int:
    return value.numerator * (unit // value.denominator)


def spans(shape: Outline, needles: int, row: int, rows: int) -> list[tuple[int, int]]:
    """First and last column whose centre the shape covers on the line `row` rows up of `rows`, clipped to the panel.

    Columns are 0 ... `needles` - 1; the centre of column j is (2j + 1) / (2 `needles`). Spans may touch or overlap.
    """
    level = row * shape.unit
    if not shape.low * rows <= level <= shape.high * rows:
        return []
    above: list[tuple[int, int]] = []
    below: list[tuple[int, int]] = []
    for x0, y0, x1, y1 in shape.edges:
        low, high = y0 * rows, y1 * rows
        if not low <= level <= high:
            continue
        rise = high - low
        cut = (x0 * rise + (x1 - x0) * (level - low), rise)  # x of the edge on this line, as a fraction
        if level < high:
            above.append(cut)
        if level > low:
            below.append(cut)
    found = _columns(above, needles, shape.unit)
    if above != below:
        found += _columns(below, needles, shape.unit)
    return found


def _columns(cuts: list[tuple[int, int]], needles: int, unit: int) -> list[tuple[int, int]]:
    """Pairs of cuts to columns."""
    if len(cuts) == 2:  # the usual case, without the cost of fractions
        (a, b), (c, d) = cuts
        if a * d > c * b:
            cuts = [cuts[1], cuts[0]]
    else:
        cuts = sorted(cuts, key=lambda cut: Fraction(*cut))
    found: list[tuple[int, int]] = []
    for (left, left_over), (right, right_over) in zip(cuts[::2], cuts[1::2], strict=True):
        # centre (2j + 1) * unit / (2 needles) >= left / left_over, and <= right / right_over
        first = -((left_over * unit - 2 * needles * left) // (2 * left_over * unit))
        last = (2 * needles * right - right_over * unit) // (2 * right_over * unit)
        first, last = max(first, 0), min(last, needles - 1)
        if first <= last:
            found.append((first, last))
    return found
