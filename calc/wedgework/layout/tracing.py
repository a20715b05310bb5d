"""From cells back to polygons: borders become straight lines wherever straight lines give the same cells.

    traced(grid, rows)                   # a drawing that paints to exactly this grid
    traced(grid, rows, straighten=1)     # borders may move by a cell where that makes them straight

Regions of one yarn that hang together become shapes, in files counted in needles and rows; what encloses others lies below
them. The two sides of a border share its line, so that it can be moved as one. A line has to leave the centre of each cell
beside it on its own side. Every border is cut at the places where three regions meet, and of all lines that fit those with the
fewest corners are taken, lines that join by themselves before others.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from wedgework.formats.design import DrawnLayout, Point, Shape
from wedgework.layout.checks import crossing
from wedgework.layout.contours import Border, Contours, contours_of
from wedgework.layout.grid import Grid
from wedgework.layout.picture import paint
from wedgework.layout.straight import straightened

__all__ = ["MOST_STRAIGHTENING", "traced"]

MOST_STRAIGHTENING = 3


@dataclass(frozen=True, slots=True)
class _Drawing:
    """`order` are the regions from below; each has a rank, those of the background that need no shape have -1."""

    contours: Contours
    order: tuple[int, ...]
    ranks: tuple[int, ...]
    background: str
    needles: int
    rows: int

    def layout(self, lines: Sequence[Sequence[tuple[int, int]]]) -> DrawnLayout:
        """The shapes, each border as the line that was found for it; places are in half cells."""
        rings = [(self.contours.yarns[region], self.ring(region, lines)) for region in self.order]
        shapes = tuple(Shape(yarn, ring) for yarn, ring in rings if len(ring) >= 3)
        return DrawnLayout(self.background, shapes, counted=(self.needles, self.rows))

    def ring(self, region: int, lines: Sequence[Sequence[tuple[int, int]]]) -> tuple[Point, ...]:
        points = _tidy(self.contours.ring(region, lines))
        return tuple((Fraction(x, 2 * self.needles), Fraction(y, self.rows)) for x, y in points)


def traced(grid: Grid, rows: int, straighten: int = 0) -> DrawnLayout:
    """`grid`, seen from the finished front, as a drawing. With `straighten` a border may move by so many cells."""
    contours = contours_of(grid)
    drawing = _drawing(contours, grid, rows)
    straight = [_line(border, drawing, 0) for border in contours.borders]
    if straighten:
        moved = [_line(border, drawing, 2 * straighten) for border in contours.borders]
        # Lines that moved may cross one another; those stay where they are.
        crossed = {region for region in drawing.order if _crosses(drawing.ring(region, moved))}
        mixed = [
            line if crossed & {border.left, border.right} else other
            for border, line, other in zip(contours.borders, straight, moved, strict=True)
        ]
        if not any(_crosses(drawing.ring(region, mixed)) for region in drawing.order):
            return drawing.layout(mixed)
    found = drawing.layout(straight)
    bad = _differing(contours, grid, found, rows)
    if bad:
        # What no straight lines could say is said cell by cell.
        beside = [bool(bad & {border.left, border.right}) for border in contours.borders]
        lines = [
            border.corners if exact else line for border, line, exact in zip(contours.borders, straight, beside, strict=True)
        ]
        found = drawing.layout(lines)
        if _differing(contours, grid, found, rows):
            found = drawing.layout([border.corners for border in contours.borders])
    return found


def _crosses(points: Sequence[Point]) -> bool:
    return crossing(points) is not None


def _line(border: Border, drawing: _Drawing, slack: int) -> Sequence[tuple[int, int]]:
    if border.left < 0 or border.right < 0:  # along the panel's own edge
        return border.corners
    left_later = drawing.ranks[border.left] > drawing.ranks[border.right]
    return straightened(border.steps, left_later, slack)


def _drawing(contours: Contours, grid: Grid, rows: int) -> _Drawing:
    cells: dict[str, int] = {}
    for yarn, size in zip(contours.yarns, contours.sizes, strict=True):
        cells[yarn] = cells.get(yarn, 0) + size
    background = max(sorted(cells), key=lambda yarn: cells[yarn])
    every = sorted(range(len(contours.yarns)), key=lambda region: (-contours.extent(region), region))
    exact = [border.corners for border in contours.borders]

    def drawing(order: Sequence[int]) -> _Drawing:
        ranks = [-1] * len(every)
        for rank, region in enumerate(order):
            ranks[region] = rank
        return _Drawing(contours, tuple(order), tuple(ranks), background, grid.needles, rows)

    without = drawing([region for region in every if contours.yarns[region] != background])
    needed = _differing(contours, grid, without.layout(exact), rows)
    return drawing([region for region in every if contours.yarns[region] != background or region in needed])


def _differing(contours: Contours, grid: Grid, layout: DrawnLayout, rows: int) -> set[int]:
    """Regions of which a cell has another yarn in the drawing, and those whose yarn it has."""
    painted = paint(layout, grid.needles, rows)
    found: set[int] = set()
    for turn, (wanted, there) in enumerate(zip(grid.turns, painted.turns, strict=True)):
        if [(c.first, c.last, c.yarn) for c in wanted] == [(c.first, c.last, c.yarn) for c in there]:
            continue
        yarns = [cells.yarn for cells in there for _ in range(cells.first, cells.last + 1)]
        for place, region in enumerate(contours.labels[turn]):
            if yarns[place] != contours.yarns[region]:
                found.add(region)
                found |= {r for r in contours.around(place, turn) if contours.yarns[r] == yarns[place]}
    return found


def _tidy(points: Sequence[tuple[int, int]]) -> list[tuple[int, int]]:
    """Without points that repeat the one before or lie on the line between their neighbours."""
    kept = [at for i, at in enumerate(points) if at != points[i - 1]]
    changed = True
    while changed and len(kept) > 3:
        changed = False
        for i, at in enumerate(kept):
            (ax, ay), (bx, by) = kept[i - 1], kept[(i + 1) % len(kept)]
            across = (at[0] - ax) * (by - at[1]) - (at[1] - ay) * (bx - at[0])
            if across == 0:
                del kept[i]
                changed = True
                break
    return kept
