"""The borders of a picture: regions of one yarn that hang together, and the lines between two of them.

Places are in half cells, so that the middle of a cell's side is a whole number: the lower left corner of cell (x, t) is
(2x, 2t), its centre (2x + 1, 2t + 1).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from wedgework.layout.grid import Grid

__all__ = ["Border", "Contours", "Step", "contours_of"]

OUTSIDE = -1
Place = tuple[int, int]
_WAYS = ((2, 0), (0, 2), (-2, 0), (0, -2))


@dataclass(frozen=True, slots=True)
class Step:
    """So many cell sides in one direction, from `start` to `end`."""

    start: Place
    end: Place
    way: Place
    """Two half cells long."""


@dataclass(frozen=True, slots=True)
class Border:
    """A line between two regions from one meeting of three to the next; or all round, where there is none."""

    left: int
    right: int
    steps: tuple[Step, ...]

    @property
    def corners(self) -> tuple[Place, ...]:
        """The line along the cells."""
        return (self.steps[0].start, *(step.end for step in self.steps))


@dataclass(frozen=True, slots=True)
class Contours:
    labels: tuple[tuple[int, ...], ...]
    """For each turn the region of each cell."""
    yarns: tuple[str, ...]
    sizes: tuple[int, ...]
    """Cells of each region."""
    borders: tuple[Border, ...]
    rings: tuple[tuple[tuple[int, bool], ...], ...]
    """For each region its outer ring: borders in order, and whether each runs the other way."""
    extents: tuple[int, ...]

    def extent(self, region: int) -> int:
        """Cells of the rectangle round the region: what encloses another is larger."""
        return self.extents[region]

    def ring(self, region: int, lines: Sequence[Sequence[Place]]) -> list[Place]:
        """The outer ring of a region, its borders drawn as `lines`."""
        found: list[Place] = []
        for border, back in self.rings[region]:
            found += lines[border][::-1] if back else lines[border]
        return found

    def around(self, place: int, turn: int) -> set[int]:
        """The regions of the cells round a cell."""
        high, wide = len(self.labels), len(self.labels[0])
        return {
            self.labels[t][x]
            for t in range(max(0, turn - 1), min(high, turn + 2))
            for x in range(max(0, place - 1), min(wide, place + 2))
        }


def contours_of(grid: Grid) -> Contours:
    """Regions and borders of a picture without gaps."""
    labels, yarns = _labels(grid)
    sizes = [0] * len(yarns)
    boxes = [[grid.needles, len(labels), 0, 0] for _ in yarns]
    for turn, row in enumerate(labels):
        for place, region in enumerate(row):
            sizes[region] += 1
            box = boxes[region]
            box[0], box[1] = min(box[0], place), min(box[1], turn)
            box[2], box[3] = max(box[2], place + 1), max(box[3], turn + 1)
    edges = _edges(labels)
    borders, of_edge = _borders(edges)
    lowest = {region: ((2 * place, 2 * turn), (2, 0)) for turn, place, region in _downward(labels)}
    rings = tuple(_ring(region, lowest[region], edges, of_edge) for region in range(len(yarns)))
    extents = tuple((right - left) * (high - low) for left, low, right, high in boxes)
    return Contours(tuple(map(tuple, labels)), tuple(yarns), tuple(sizes), tuple(borders), rings, extents)


def _downward(labels: Sequence[Sequence[int]]) -> Iterator[tuple[int, int, int]]:
    """Turn, place and region of every cell, the lowest last."""
    for turn in reversed(range(len(labels))):
        for place, region in enumerate(labels[turn]):
            yield turn, place, region


def _labels(grid: Grid) -> tuple[list[list[int]], list[str]]:
    """Numbers from below, then from the left."""
    rows = [[cells.yarn for cells in turn for _ in range(cells.first, cells.last + 1)] for turn in grid.turns]
    labels = [[-1] * grid.needles for _ in rows]
    yarns: list[str] = []
    for turn, row in enumerate(rows):
        for place, yarn in enumerate(row):
            if labels[turn][place] >= 0:
                continue
            number = len(yarns)
            yarns.append(yarn)
            labels[turn][place] = number
            open_ = [(place, turn)]
            while open_:
                x, t = open_.pop()
                for nx, nt in ((x - 1, t), (x + 1, t), (x, t - 1), (x, t + 1)):
                    if 0 <= nx < grid.needles and 0 <= nt < len(rows) and labels[nt][nx] < 0 and rows[nt][nx] == yarn:
                        labels[nt][nx] = number
                        open_.append((nx, nt))
    return labels, yarns


Edge = tuple[Place, Place]
"""Where it starts, and its way."""


def _edges(labels: Sequence[Sequence[int]]) -> dict[Edge, tuple[int, int]]:
    """Every cell side between two regions, both ways round: start and way -> region at its left and at its right."""
    found: dict[Edge, tuple[int, int]] = {}
    high, wide = len(labels), len(labels[0])

    def label(x: int, t: int) -> int:
        return labels[t][x] if 0 <= x < wide and 0 <= t < high else OUTSIDE

    for t in range(high + 1):
        for x in range(wide + 1):
            above, below, before = label(x, t), label(x, t - 1), label(x - 1, t)
            if above != below:
                found[(2 * x, 2 * t), (2, 0)] = above, below
                found[(2 * x + 2, 2 * t), (-2, 0)] = below, above
            if above != before:
                found[(2 * x, 2 * t), (0, 2)] = before, above
                found[(2 * x, 2 * t + 2), (0, -2)] = above, before
    return found


def _end(edge: Edge) -> Place:
    (x, y), (dx, dy) = edge
    return x + dx, y + dy


def _back(edge: Edge) -> Edge:
    return _end(edge), (-edge[1][0], -edge[1][1])


def _borders(edges: dict[Edge, tuple[int, int]]) -> tuple[list[Border], dict[Edge, tuple[int, bool]]]:
    """Borders from meeting to meeting, then those that have none; and for each cell side its border, and if it runs back."""
    leaving: dict[Place, list[Edge]] = {}
    for edge in edges:
        leaving.setdefault(edge[0], []).append(edge)
    meetings = {place for place, here in leaving.items() if len(here) > 2}
    borders: list[Border] = []
    of_edge: dict[Edge, tuple[int, bool]] = {}

    def follow(first: Edge) -> None:
        run = [first]
        while _end(run[-1]) not in meetings and _end(run[-1]) != first[0]:
            run.append(next(edge for edge in leaving[_end(run[-1])] if edge != _back(run[-1])))
        for edge in run:
            of_edge[edge] = len(borders), False
            of_edge[_back(edge)] = len(borders), True
        left, right = edges[first]
        borders.append(Border(left, right, _steps(run)))

    for place in sorted(meetings):
        for edge in leaving[place]:
            if edge not in of_edge:
                follow(edge)
    for edge in sorted(edges):  # the lowest corner, of these the leftmost: a corner that any line has too
        if edge not in of_edge:
            follow(edge)
    return borders, of_edge


def _steps(run: Sequence[Edge]) -> tuple[Step, ...]:
    found: list[Step] = []
    for edge in run:
        if found and found[-1].way == edge[1]:
            found[-1] = Step(found[-1].start, _end(edge), edge[1])
        else:
            found.append(Step(edge[0], _end(edge), edge[1]))
    return tuple(found)


def _ring(
    region: int, first: Edge, edges: dict[Edge, tuple[int, int]], of_edge: dict[Edge, tuple[int, bool]]
) -> tuple[tuple[int, bool], ...]:
    """The outer ring, the region at its left, from the lower side of one of its lowest cells. Rings of holes nobody needs."""
    found: list[tuple[int, bool]] = []
    edge = first
    while True:
        if not found or found[-1] != of_edge[edge]:
            found.append(of_edge[edge])
        at, (dx, dy) = _end(edge), edge[1]
        # Where two cells touch in a corner, the ring stays with its own.
        edge = next(
            onward for way in ((-dy, dx), (dx, dy), (dy, -dx)) if edges.get(onward := (at, way), (OUTSIDE, OUTSIDE))[0] == region
        )
        if edge == first:
            break
    if len(found) > 1 and found[0] == found[-1]:
        del found[-1]
    return tuple(found)
