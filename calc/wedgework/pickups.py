"""Stitches hung along an edge: which rows get one, in what rhythm, and in how many sections on a narrower bed.

    >>> found = pick_up(120, 90)
    >>> found.rhythm(), [(one.hung, one.left_out, one.times) for one in found.stretches()]
    (Fraction(3, 4), [(2, 1, 1), (3, 1, 29), (1, 0, 1)])
    >>> [section.needles for section in sections(250, 110, 1)]
    [85, 85, 84]

The rows that are left out are spread evenly, each in the middle of its share: so the edge begins and ends with a stitch.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from wedgework.exact import even_spread, small_ratio

__all__ = ["PickUp", "Section", "Stretch", "pick_up", "sections"]

# "3 for every 4": beyond this a rhythm cannot be kept in mind. Common practice, no source.
LARGEST_RHYTHM = 7


@dataclass(frozen=True, slots=True)
class Stretch:
    """Hang `hung` rows one after another, then leave out `left_out`; `times` in all."""

    hung: int
    left_out: int
    times: int


@dataclass(frozen=True, slots=True)
class PickUp:
    rows: int
    """Rows (or stitches) along the edge."""
    stitches: int
    positions: tuple[int, ...]
    """The row of each stitch that is hung, from 1; a row stands twice where there are more stitches than rows."""

    @property
    def left_out(self) -> tuple[int, ...]:
        hung = set(self.positions)
        return tuple(row for row in range(1, self.rows + 1) if row not in hung)

    @property
    def doubled(self) -> tuple[int, ...]:
        """Rows that get more than one stitch."""
        return tuple(row for row, times in Counter(self.positions).items() if times > 1)

    def rhythm(self, most: int = LARGEST_RHYTHM) -> Fraction:
        """Stitches for a row as a ratio that can be kept in mind: 3/4 is 3 for every 4 rows."""
        return small_ratio(Fraction(self.stitches, self.rows), most)

    def stretches(self) -> tuple[Stretch, ...]:
        """Row after row from the start of the edge, equal neighbours together. Only where no row gets two (ValueError)."""
        if self.stitches > self.rows:
            raise ValueError("more stitches than rows")
        borders = (0, *self.left_out, self.rows + 1)
        hung = [after - before - 1 for before, after in pairwise(borders)]
        found: list[Stretch] = []
        for i, one in enumerate(hung):
            left_out = 1 if i < len(hung) - 1 else 0
            if not one and not left_out:
                continue
            if found and (found[-1].hung, found[-1].left_out) == (one, left_out):
                found[-1] = Stretch(one, left_out, found[-1].times + 1)
            else:
                found.append(Stretch(one, left_out, 1))
        return tuple(found)


def pick_up(rows: int, stitches: int) -> PickUp:
    """`stitches` hung over `rows`, both at least 1."""
    if rows < 1 or stitches < 1:
        raise ValueError("an edge has rows, and stitches are hung on it")
    each, more = divmod(stitches, rows)
    chosen = _middles(rows, more) if each else set(range(rows)) - _middles(rows, rows - more)
    positions = [row + 1 for row in range(rows) for _ in range(each + (row in chosen))]
    return PickUp(rows, stitches, tuple(positions))


def _middles(rows: int, parts: int) -> set[int]:
    """The middle row of each of so many equal parts, from 0."""
    return {(2 * i + 1) * rows // (2 * parts) for i in range(parts)}


@dataclass(frozen=True, slots=True)
class Section:
    first: int
    """First and last of the stitches hung, both counted, from 1."""
    last: int
    needles: int
    """Those stitches and what the seams to its neighbours take."""


def sections(stitches: int, bed: int, seam: int) -> tuple[Section, ...]:
    """As few sections as the bed takes, as equal as can be; `seam` stitches more at each end that is sewn to a neighbour.

    ValueError where the bed has no room for a stitch between two seams.
    """
    if bed <= 2 * seam:
        raise ValueError("no room between the seams")
    parts = max(1, -((2 * seam - stitches) // (bed - 2 * seam)))  # no fewer have room for all
    while True:
        sizes = even_spread(stitches, parts)[::-1]
        found: list[Section] = []
        for i, size in enumerate(sizes):
            first = found[-1].last + 1 if found else 1
            found.append(Section(first, first + size - 1, size + seam * ((i > 0) + (i < parts - 1))))
        if max(one.needles for one in found) <= bed:
            return tuple(found)
        parts += 1
