"""Corners of a drawing in needles and rows, moved without tearing what they share with others."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from wedgework.formats import nearest_decimal
from wedgework.formats.design import DrawnLayout, Point
from wedgework.layout.checks import crossing
from wedgework.layout.straight import JOINED_ROWS

__all__ = ["Ring", "Spot", "edges_near", "moved_line", "points_of", "with_bend", "with_points"]

Spot = tuple[Fraction, Fraction]
Ring = list[Spot]
Edge = tuple[Spot, Spot]
NEAR = Fraction(3, 2)
"""Needles within which a border is the one that the model bed found: what is knitted lies up to a needle beside what is drawn."""


def points_of(layout: DrawnLayout, across: int, rows: int) -> list[list[Ring]]:
    """For each shape its outline, then its holes."""
    return [[[(x * across, y * rows) for x, y in ring] for ring in (shape.points, *shape.holes)] for shape in layout.shapes]


def with_points(layout: DrawnLayout, rings: Sequence[Sequence[Ring]], across: int, rows: int) -> DrawnLayout | None:
    """The drawing with these corners; None where one lies too far outside, or an outline crosses itself or encloses nothing."""
    shapes = []
    for shape, own in zip(layout.shapes, rings, strict=True):
        parts: list[tuple[Point, ...]] = []
        for ring in own:
            points = tuple((nearest_decimal(x) / across, nearest_decimal(y) / rows) for x, y in ring)
            if not all(-1 <= c <= 2 for point in points for c in point) or _area(points) == 0 or crossing(points) is not None:
                return None
            parts.append(points)
        shapes.append(replace(shape, points=parts[0], holes=tuple(parts[1:])))
    return replace(layout, shapes=tuple(shapes))


def _area(points: Sequence[Point]) -> Fraction:
    pairs = zip(points, [*points[1:], points[0]], strict=True)
    return sum((ax * by - ay * bx for (ax, ay), (bx, by) in pairs), Fraction(0))


def edges_near(
    rings: Sequence[Sequence[Ring]], x: Fraction, low: Fraction, high: Fraction, across: int, steep: bool = True
) -> list[Edge]:
    """Edges that pass within `NEAR` needles of x between two rows, from their lower end, the highest first; those of the panel
    itself are none. Steep ones, which do not join by themselves, or all that are not level."""
    found: dict[Edge, Fraction] = {}
    for shape in rings:
        for ring in shape:
            for one, other in zip(ring, [*ring[1:], ring[0]], strict=True):
                below, above = sorted((one, other), key=lambda spot: spot[1])
                height = above[1] - below[1]
                if height <= 0 or min(above[1], high) < max(below[1], low):
                    continue
                if all(spot[0] <= 0 for spot in (one, other)) or all(spot[0] >= across for spot in (one, other)):
                    continue
                if steep and height <= JOINED_ROWS * abs(above[0] - below[0]):
                    continue
                middle = (max(below[1], low) + min(above[1], high)) / 2
                there = below[0] + (above[0] - below[0]) * (middle - below[1]) / height
                if abs(there - x) <= NEAR:
                    found[below, above] = height
    return sorted(found, key=lambda edge: (-found[edge], edge))


def moved_line(rings: Sequence[Sequence[Ring]], edge: Edge, to: Edge, across: int) -> list[list[Ring]]:
    """Every corner on the edge moves with it, whatever shape it is of; none beyond the sides of the panel."""
    (ax, ay), (bx, by) = edge
    (cx, _), (dx, _) = to

    def moved(spot: Spot) -> Spot:
        x, y = spot
        if not ay <= y <= by or (bx - ax) * (y - ay) != (by - ay) * (x - ax):
            return spot
        part = (y - ay) / (by - ay)
        shift = (cx - ax) * (1 - part) + (dx - bx) * part
        return min(max(x + shift, Fraction(0)), Fraction(across)), y

    return [[[moved(spot) for spot in ring] for ring in shape] for shape in rings]


def with_bend(rings: Sequence[Sequence[Ring]], edge: Edge, bends: int, needles: Fraction) -> list[list[Ring]]:
    """The edge in `bends` + 1 parts, every second corner so many needles to one side, in every shape that has this edge."""
    (ax, ay), (bx, by) = edge
    extra: list[Spot] = []
    for k in range(1, bends + 1):
        part = Fraction(k, bends + 1)
        y = Fraction(2 * round((ay + (by - ay) * part) / 2))
        extra.append((ax + (bx - ax) * part + (needles if k % 2 else 0), y))
    found = []
    for shape in rings:
        own = []
        for ring in shape:
            made: Ring = []
            for one, other in zip(ring, [*ring[1:], ring[0]], strict=True):
                made.append(one)
                if (one, other) == edge:
                    made += extra
                elif (other, one) == edge:
                    made += extra[::-1]
            own.append(made)
        found.append(own)
    return found
