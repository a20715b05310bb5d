"""Crumbs of a picture given to a neighbour: regions of fewer stitches than the person wants to knit as a block of their own."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from heapq import heapify, heappop, heappush

from wedgework.layout.grid import Cells, Grid

__all__ = ["merged"]


@dataclass(slots=True)
class _Region:
    """Cells of one yarn that hang together."""

    yarn: str
    shape: int
    stitches: int = 0
    beside: dict[int, int] = field(default_factory=dict)
    """Number of each neighbouring region -> sides of cells along the common border."""


def merged(grid: Grid, rows: int, least: int) -> Grid:
    """`grid` without regions of fewer than `least` stitches: each takes the yarn of the neighbour with the longest common border.

    The smallest goes first, of equals the lowest, then the one farthest left; of equally long borders the larger neighbour.
    `rows` is the panel's height, since the highest turn may be a single row.
    """
    numbers, regions = _regions(grid, rows)
    owner = list(range(len(regions)))

    def of(number: int) -> int:
        while owner[number] != number:
            owner[number] = owner[owner[number]]
            number = owner[number]
        return number

    def join(one: int, other: int) -> int:
        """Two neighbouring regions of one yarn are one: the second is taken into the first."""
        owner[other] = one
        into, gone = regions[one], regions[other]
        into.stitches += gone.stitches
        for third, sides in gone.beside.items():
            del regions[third].beside[other]
            if third != one:
                into.beside[third] = into.beside.get(third, 0) + sides
                regions[third].beside[one] = into.beside[third]
        gone.beside = {}
        return one

    small = [(region.stitches, number) for number, region in enumerate(regions) if region.stitches < least]
    heapify(small)
    while small:
        stitches, number = heappop(small)
        region = regions[number]
        if of(number) != number or region.stitches != stitches or not region.beside:
            continue
        taker = max(region.beside, key=lambda k: (region.beside[k], regions[k].stitches, -k))
        taker = join(taker, number)
        # What the crumb kept apart may touch now and have one yarn.
        for other in [k for k in regions[taker].beside if regions[k].yarn == regions[taker].yarn]:
            taker = join(taker, other)
        if regions[taker].stitches < least:
            heappush(small, (regions[taker].stitches, taker))
    turns = tuple(
        tuple(_together((cells, regions[of(number)]) for cells, number in zip(turn, here, strict=True)))
        for turn, here in zip(grid.turns, numbers, strict=True)
    )
    return Grid(grid.needles, turns, grid.tops)


def _regions(grid: Grid, rows: int) -> tuple[list[list[int]], list[_Region]]:
    """For each turn the region of each run of cells, and the regions, numbered from below, then from the left."""
    parent: list[int] = []

    def root(k: int) -> int:
        while parent[k] != k:
            parent[k] = parent[parent[k]]
            k = parent[k]
        return k

    runs: list[list[int]] = []
    for t, turn in enumerate(grid.turns):
        here = []
        for i, cells in enumerate(turn):
            parent.append(len(parent))
            here.append(len(parent) - 1)
            if i and turn[i - 1].yarn == cells.yarn and turn[i - 1].last + 1 == cells.first:
                parent[root(here[i])] = root(here[i - 1])
        for i, k, _ in _touching(grid.turns[t - 1], turn) if t else ():
            if grid.turns[t - 1][i].yarn == turn[k].yarn:
                one, other = sorted((root(runs[t - 1][i]), root(here[k])))
                parent[other] = one
        runs.append(here)
    number: dict[int, int] = {}
    regions: list[_Region] = []
    for turn, here in zip(grid.turns, runs, strict=True):
        for cells, k in zip(turn, here, strict=True):
            if root(k) not in number:
                number[root(k)] = len(regions)
                regions.append(_Region(cells.yarn, cells.shape))
    numbers = [[number[root(k)] for k in here] for here in runs]
    for t, (turn, here) in enumerate(zip(grid.turns, numbers, strict=True)):
        height = min(2, rows - 2 * t)
        for i, cells in enumerate(turn):
            regions[here[i]].stitches += (cells.last - cells.first + 1) * height
            if i and turn[i - 1].last + 1 == cells.first:
                _side(regions, here[i - 1], here[i], 1)
        for i, k, needles in _touching(grid.turns[t - 1], turn) if t else ():
            _side(regions, numbers[t - 1][i], here[k], needles)
    return numbers, regions


def _side(regions: list[_Region], one: int, other: int, sides: int) -> None:
    if one != other:
        regions[one].beside[other] = regions[one].beside.get(other, 0) + sides
        regions[other].beside[one] = regions[other].beside.get(one, 0) + sides


def _touching(below: tuple[Cells, ...], above: tuple[Cells, ...]) -> Iterator[tuple[int, int, int]]:
    """Which runs of two turns lie over each other, and over how many needles."""
    i = k = 0
    while i < len(below) and k < len(above):
        first, last = max(below[i].first, above[k].first), min(below[i].last, above[k].last)
        if first <= last:
            yield i, k, last - first + 1
        if below[i].last <= above[k].last:
            i += 1
        else:
            k += 1


def _together(runs: Iterator[tuple[Cells, _Region]]) -> Iterator[Cells]:
    """Runs of one turn in the yarns that they have now; those that a merged crumb kept apart are one."""
    before: Cells | None = None
    for cells, region in runs:
        shape = cells.shape if cells.yarn == region.yarn else region.shape
        beside = before is not None and before.last + 1 == cells.first
        if before is not None and beside and before.yarn == region.yarn and before.shape == shape:
            before = Cells(before.first, cells.last, shape, region.yarn)
            continue
        if before is not None:
            yield before
        before = Cells(cells.first, cells.last, shape, region.yarn)
    if before is not None:
        yield before
