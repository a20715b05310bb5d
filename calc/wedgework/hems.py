"""Folded hems in rows and stitches: facing and outside, picot folds, the stitches that a hem gains at a corner.

    >>> picot(21).emptied[:3], picot(21).eyelets, picot(20).eyelets
    ((2, 4, 6), 10, 9)
    >>> corner_stitches(8, Fraction(14), Fraction(19))      # 8 rows are 42 mm, which is 5.9 stitches
    6
    >>> mitre(8, 6)
    ((2, 1), (3, 1), (4, 1), (6, 1), (7, 1), (8, 1))

A hem is knitted as one strip and folded: the facing lies inside, the outside is seen. Places along the bed are counted from 1
at the left. Common practice of the trade; the published rows that it agrees with stand in the tests.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from wedgework.bed import Side, opposite
from wedgework.exact import nearest

__all__ = [
    "FACINGS",
    "Facing",
    "Hem",
    "Picot",
    "corner_stitches",
    "facing_rows",
    "mitre",
    "mitre_back",
    "picot",
]

Facing = Literal["equal", "shorter", "longer"]
FACINGS: tuple[Facing, ...] = ("equal", "shorter", "longer")
_MORE: dict[Facing, int] = {"equal": 0, "shorter": -1, "longer": 1}


@dataclass(frozen=True, slots=True)
class Picot:
    """The fold of a picot hem over `stitches` needles."""

    stitches: int
    emptied: tuple[int, ...]
    """Places whose stitch goes to the neighbour on the left; they stay in work and become eyelets."""

    @property
    def eyelets(self) -> int:
        return len(self.emptied)

    @property
    def points(self) -> int:
        """Whole points, one between each two eyelets; beside the first and the last eyelet there is half of one."""
        return max(0, len(self.emptied) - 1)

    @property
    def untouched(self) -> int:
        """Stitches at the right end that are neither moved nor doubled: one of an odd number, two of an even one."""
        return self.stitches - (self.emptied[-1] if self.emptied else 0)


@dataclass(frozen=True, slots=True)
class Hem:
    """A hem on the machine, in rows, needles and dial numbers."""

    top: bool
    """At the top of the piece, where the outside is knitted first; at the bottom the facing is."""
    needles: tuple[int, ...]
    """Of the piece, left to right."""
    outside: int
    facing: int
    way: Facing
    start: Side
    """Where the carriage stands before the first row of the hem's own yarn."""
    stitch_mm: Fraction
    row_mm: Fraction
    tension: Fraction
    """Of the piece and the outside."""
    tighter: Fraction
    """Numbers by which the facing is tighter."""
    looser: Fraction
    """Numbers by which the row of a plain fold is looser."""
    picot: Picot | None
    """None for a plain fold."""

    @property
    def stitches(self) -> int:
        return len(self.needles)

    @property
    def fold(self) -> int:
        """Rows of the fold itself."""
        return 0 if self.picot else 1

    @property
    def closing(self) -> int:
        """The loose row over both layers at a top hem; at a bottom hem the first row of the piece joins them."""
        return 1 if self.top else 0

    @property
    def rows(self) -> int:
        """All passes with the hem's own yarn."""
        return self.facing + self.fold + self.outside + self.closing

    def side_after(self, rows: int) -> Side:
        """Where the carriage stands after so many rows of the hem."""
        return self.start if rows % 2 == 0 else opposite(self.start)

    @property
    def emptied(self) -> tuple[int, ...]:
        """Needles whose stitch is moved to the left neighbour."""
        return tuple(self.needles[place - 1] for place in self.picot.emptied) if self.picot else ()

    @property
    def adds_mm(self) -> Fraction:
        return self.outside * self.row_mm

    @property
    def width_mm(self) -> Fraction:
        return self.stitches * self.stitch_mm


def picot(stitches: int) -> Picot:
    """Every second stitch from the second on, and none at the ends: an even number leaves the last two as they are."""
    return Picot(stitches, tuple(range(2, stitches, 2)) if stitches % 2 else tuple(range(2, stitches - 1, 2)))


def facing_rows(outside: int, way: Facing) -> int:
    """Rows of the facing behind so many rows of the outside; at least one."""
    return max(1, outside + _MORE[way])


def corner_stitches(rows: int, stitches_per_10cm: Fraction, rows_per_10cm: Fraction) -> int:
    """So many stitches are as wide as `rows` are high: what a hem gains at each end of a corner at 45 degrees of real length."""
    return nearest(rows * stitches_per_10cm / rows_per_10cm)


def mitre(rows: int, stitches: int) -> tuple[tuple[int, int], ...]:
    """(row, stitches): after which rows of the outside it grows at one end, so that after the last one it has them all."""
    ends = [row * stitches // rows for row in range(rows + 1)]
    return tuple((row, ends[row] - ends[row - 1]) for row in range(1, rows + 1) if ends[row] > ends[row - 1])


def mitre_back(rows: int, stitches: int) -> tuple[tuple[int, int], ...]:
    """The mirror of it: after which rows of the facing it loses them again; after row 0 is at the fold itself."""
    return tuple((rows - row, lost) for row, lost in reversed(mitre(rows, stitches)))
