"""The bed on which planning begins: bare after its base rows, or as it really is when the rest of a piece is planned anew."""

from __future__ import annotations

from dataclasses import dataclass

from wedgework.bed import Side
from wedgework.layout import Shaping
from wedgework.plan.arranged import Wishes
from wedgework.plan.strand import Strand

__all__ = ["Around", "Ground", "bare"]

SHORT = 1
"""Rows that a needle may be short of a gap in the picture and still count as done with what lies below it."""


@dataclass(frozen=True, slots=True)
class Around:
    """Base rows below and above: their yarn (None: that of the block beside them) and whether there are any."""

    below: bool
    yarn_below: str | None
    above: bool
    yarn_above: str | None


@dataclass(frozen=True, slots=True)
class Ground:
    """Real heights, and where carriage and yarn are."""

    heights: tuple[int, ...]
    """Rows on each place, base rows not counted."""
    carriage: Side
    yarn: str | None
    """In the feeder; None where none is threaded, or where the base rows take that of the first block."""
    strand: Strand | None
    """Where it hangs; None where none is threaded."""
    held: frozenset[int] = frozenset()
    """Places in holding position."""

    def reached(self, place: int, shaping: Shaping) -> int:
        """The row of the picture that a place has reached. A gap that it is a row short of is passed: see `remaining`."""
        return shaping.in_picture(place, self.heights[place], early=SHORT)

    @property
    def together(self) -> tuple[int, int] | None:
        """First and last of the places that knit a block now; None between two blocks, and where held ones lie among them."""
        working = [p for p in range(len(self.heights)) if p not in self.held]
        if not working or len(working) == len(self.heights) or self.yarn is None:
            return None
        return (working[0], working[-1]) if working[-1] - working[0] + 1 == len(working) else None


def bare(wishes: Wishes, around: Around) -> Ground:
    """After the base rows: nothing of the picture is knitted, the carriage is at home with the yarn at the selvedge."""
    home = wishes.start
    strand = Strand(0 if home == "L" else wishes.needles - 1, 0, home) if around.below else None
    return Ground((0,) * wishes.needles, home, around.yarn_below if around.below else None, strand)
