"""Pieces that are no rectangle: where the picture has gaps, and how many rows each needle is to have.

A gap is a place of the picture in which nothing is knitted: the fabric closes over it, as a dart does when it is sewn. So a
needle with a gap ends with fewer rows than its neighbours, and on purpose. What is knitted is counted in rows of the needle;
where it lies in the picture in rows of the picture, gaps counted in.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from wedgework.formats.design import Design, DrawnLayout
from wedgework.layout.grid import Cells, Grid
from wedgework.layout.raster import outline, spans
from wedgework.layout.sizes import MOST_ALIKE, profile_too_high
from wedgework.problems import Problem
from wedgework.say import say

__all__ = ["Shaping", "cut_out", "is_shaped", "shaping_of", "shaping_problems"]

Span = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Shaping:
    """For each place, left to right: the row of the picture where it ends, and its gaps below that, rows from and to."""

    tops: tuple[int, ...]
    gaps: tuple[tuple[Span, ...], ...]

    @property
    def wanted(self) -> tuple[int, ...]:
        """The rows that each needle is to have in the end."""
        return tuple(top - sum(high - low for low, high in gaps) for top, gaps in zip(self.tops, self.gaps, strict=True))

    def passed(self, place: int, row: int) -> int:
        """Rows of the gaps on this place that end at or below this row of the picture."""
        return sum(high - low for low, high in self.gaps[place] if high <= row)

    def in_picture(self, place: int, rows: int, early: int = 0) -> int:
        """The row of the picture that a needle with so many rows of its own has reached; one that is up to `early` rows short
        of a gap counts as being over it already."""
        for low, high in self.gaps[place]:
            if rows < low - (early if low else 0):
                break
            rows += high - low
        return rows

    def split(self, place: int, low: int, high: int) -> Iterable[Span]:
        """The rows of the picture from `low` to `high` without the gaps among them."""
        for gap_low, gap_high in self.gaps[place]:
            if gap_high <= low or gap_low >= high:
                continue
            if low < gap_low:
                yield low, gap_low
            low = gap_high
        if low < high:
            yield low, high


def is_shaped(design: Design) -> bool:
    """Whether the piece is meant to be no rectangle."""
    return isinstance(design.layout, DrawnLayout) and (bool(design.layout.gaps) or design.layout.profile is not None)


def shaping_of(grid: Grid, rows: int) -> Shaping:
    """The shaping of a picture of so many rows, place by place."""
    if all(_covered(turn, grid.needles) for turn in grid.turns) and not grid.tops:
        return Shaping((rows,) * grid.needles, ((),) * grid.needles)
    spans_of: list[list[Span]] = [[] for _ in range(grid.needles)]
    for turn, cells in enumerate(grid.turns):
        low, high = 2 * turn, min(2 * turn + 2, rows)
        for run in cells:
            for place in range(run.first, run.last + 1):
                own = spans_of[place]
                if own and own[-1][1] == low:
                    own[-1] = own[-1][0], high
                else:
                    own.append((low, high))
    tops = [own[-1][1] if own else 0 for own in spans_of]
    if grid.tops:
        tops = [min(pair) for pair in zip(tops, grid.tops, strict=True)]
    return Shaping(tuple(tops), tuple(map(_between, spans_of)))


def _between(spans_of: Sequence[Span]) -> tuple[Span, ...]:
    """What lies below and between spans that rise."""
    lows, highs = [low for low, _ in spans_of], [0, *(high for _, high in spans_of)]
    return tuple((low, high) for low, high in zip(highs, lows, strict=False) if low < high)


def shaping_problems(design: Design, grid: Grid, rows: int) -> list[Problem]:
    """What the gaps and the profile leave: nothing at all, or less than the profile asks for.

    `grid` is the picture as it is seen from the front.
    """
    layout = design.layout
    if not any(grid.turns):
        return [Problem("layout", "layout.nothing-left", say("layout.nothing-left"), say("layout.nothing-left.way-out"))]
    if not isinstance(layout, DrawnLayout) or layout.profile is None or design.panel.part is not None:
        return []
    pairs = zip(layout.profile, shaping_of(grid, rows).wanted, strict=True)
    return [profile_too_high(i, wanted, room) for i, (wanted, room) in enumerate(pairs) if wanted > room][:MOST_ALIKE]


def _covered(turn: Sequence[Cells], needles: int) -> bool:
    """Whether a turn has no gap."""
    after = 0
    for cells in turn:
        if cells.first != after:
            return False
        after = cells.last + 1
    return after == needles


def cut_out(grid: Grid, layout: DrawnLayout, rows: int) -> Grid:
    """`grid` (as seen from the front) without the gaps of its layout, and without what lies above its profile."""
    open_ = [[True] * grid.needles for _ in grid.turns]
    for ring in layout.gaps:
        shape = outline((ring,))
        for turn, places in enumerate(open_):
            for first, last in spans(shape, grid.needles, 2 * turn + 1, rows):
                places[first : last + 1] = [False] * (last - first + 1)
    tops: list[int] = []
    for place, wanted in zip(range(grid.needles), layout.profile or (), strict=False):
        top, left = 0, wanted
        for turn, places in enumerate(open_):
            if left <= 0:
                places[place] = False
            elif places[place]:
                height = min(2, rows - 2 * turn, left)
                top, left = 2 * turn + height, left - height
        tops.append(top)
    turns = tuple(tuple(_kept(turn, places)) for turn, places in zip(grid.turns, open_, strict=True))
    return Grid(grid.needles, turns, tuple(tops))


def _kept(turn: Iterable[Cells], places: Sequence[bool]) -> Iterable[Cells]:
    """The runs of a turn, cut where nothing is knitted."""
    for cells in turn:
        first = None
        for place in range(cells.first, cells.last + 2):
            inside = place <= cells.last and places[place]
            if inside and first is None:
                first = place
            elif not inside and first is not None:
                yield Cells(first, place - 1, cells.shape, cells.yarn)
                first = None
