"""Where a design is cut into panels: beside blocks rather than through them, as far as the bed and even widths allow.

    cuts = best_cuts(inside(grid), panels=3, most=(108, 107, 108))

A cut runs between two stitches from bottom to top. Where a border of the picture lies there it costs nothing; else it goes
through a block. Chosen are the cuts through the fewest blocks, then those with the least of their height inside blocks (in
tenths of the height, so that a row or two decide nothing), then those that leave the most even widths. A cut may lie a quarter
of a panel from where equal panels have it, no further. All of this is our own choice.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from wedgework.exact import down, nearest, up
from wedgework.layout.grid import Grid

__all__ = ["Cut", "best_cuts", "cut_at", "equal_cuts", "inside"]

PARTS = 10
REACH = Fraction(1, 4)
LEAST_WIDTH = 2

Cost = tuple[int, int, Fraction]


@dataclass(frozen=True, slots=True)
class Cut:
    """After so many stitches from the left of the front."""

    after: int
    turns_inside: int
    """Turns in which it goes through a block."""
    blocks: int
    """Blocks that it goes through."""

    def inside_share(self, turns: int) -> Fraction:
        """Part of the height that lies inside blocks."""
        return Fraction(self.turns_inside, turns)


@dataclass(frozen=True, slots=True)
class _Columns:
    """For each place between two stitches: turns inside a block, and blocks cut."""

    turns: int
    inside: tuple[int, ...]
    blocks: tuple[int, ...]


def inside(grid: Grid) -> _Columns:
    """Counted from the runs of each turn: a place within a run lies inside its block, and a new block begins where the run of
    the turn below had another shape there."""
    size = grid.needles + 1
    inside_steps, block_steps = [0] * (size + 1), [0] * (size + 1)
    below: list[tuple[int, int, int]] = []
    for turn in grid.turns:
        runs = [(cells.first + 1, cells.last, cells.shape) for cells in turn if cells.last > cells.first]
        for first, last, shape in runs:
            _add(inside_steps, first, last)
            for a, b in _without((first, last), [(low, high) for low, high, other in below if other == shape]):
                _add(block_steps, a, b)
        below = runs
    return _Columns(len(grid.turns), tuple(_summed(inside_steps, size)), tuple(_summed(block_steps, size)))


def _add(steps: list[int], first: int, last: int) -> None:
    steps[first] += 1
    steps[last + 1] -= 1


def _summed(steps: Sequence[int], size: int) -> Iterable[int]:
    total = 0
    for i in range(size):
        total += steps[i]
        yield total


def _without(interval: tuple[int, int], others: Sequence[tuple[int, int]]) -> Iterable[tuple[int, int]]:
    """What is left of whole numbers first ... last (both counted) without those of `others`, which lie in order."""
    first, last = interval
    for low, high in others:
        if high < first or low > last:
            continue
        if low > first:
            yield first, low - 1
        first = high + 1
    if first <= last:
        yield first, last


def cut_at(columns: _Columns, after: int) -> Cut:
    return Cut(after, columns.inside[after], columns.blocks[after])


def equal_cuts(columns: _Columns, panels: int) -> tuple[Cut, ...]:
    """Those of equal panels, to the nearest stitch."""
    stitches = len(columns.inside) - 1
    return tuple(cut_at(columns, nearest(Fraction(i * stitches, panels))) for i in range(1, panels))


def best_cuts(columns: _Columns, panels: int, most: Sequence[int]) -> tuple[Cut, ...] | None:
    """`most`: stitches that each panel can show. None where no cuts in reach leave every panel narrow enough."""
    stitches = len(columns.inside) - 1
    even = Fraction(stitches, panels)
    best: dict[int, tuple[Cost, tuple[int, ...]]] = {0: ((0, 0, Fraction(0)), ())}
    for i in range(1, panels + 1):
        ends = range(stitches, stitches + 1) if i == panels else _reach(i * even, even, stitches)
        found: dict[int, tuple[Cost, tuple[int, ...]]] = {}
        for end in ends:
            own = _cost(columns, end) if i < panels else (0, 0)
            for start, (cost, cuts) in best.items():
                width = end - start
                if LEAST_WIDTH <= width <= most[i - 1]:
                    total = (cost[0] + own[0], cost[1] + own[1], cost[2] + (width - even) ** 2)
                    if end not in found or (total, cuts) < found[end]:
                        found[end] = (total, cuts)
        best = {end: (cost, (*cuts, end)) for end, (cost, cuts) in found.items()}
    if stitches not in best:
        return None
    return tuple(cut_at(columns, after) for after in best[stitches][1][:-1])


def _reach(middle: Fraction, even: Fraction, stitches: int) -> range:
    return range(max(1, up(middle - even * REACH)), min(stitches - 1, down(middle + even * REACH)) + 1)


def _cost(columns: _Columns, after: int) -> tuple[int, int]:
    return columns.blocks[after], nearest(Fraction(PARTS * columns.inside[after], columns.turns))
