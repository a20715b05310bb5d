"""A block in its place in the order, and what an arrangement has to respect."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from wedgework.bed import Side
from wedgework.formats.design import Costs
from wedgework.layout import Shaping
from wedgework.plan.edges import Style
from wedgework.plan.fit import Fitted
from wedgework.plan.strand import Strand

__all__ = ["Arranged", "Wishes", "steepest"]


@dataclass(frozen=True, slots=True)
class Wishes:
    """What the arrangement has to respect."""

    needles: int
    shaping: Shaping
    """As it hangs on the bed."""
    start: Side
    """Where the carriage stands before the first block: the home side."""
    strand_limit: int
    costs: Costs
    style: Style


@dataclass(frozen=True, slots=True)
class Arranged:
    """A block in its place in the order; `below` are the real heights of its needles when it begins."""

    chain: int
    part: int
    """0, or which part of its chain this is, from 1, when there are several."""
    yarn: str
    fitted: Fitted
    below: list[int]
    under: Sequence[int]
    """Rows of the gaps of the picture under each of them."""
    id: str = ""

    def height(self, place: int) -> int:
        """Real rows on a needle of this block when the block is done."""
        i = place - self.fitted.low
        return self.below[i] + self.fitted.leaves[i] - self.fitted.joins[i]

    @property
    def begins(self) -> Strand:
        """Where its yarn has to come from."""
        place = self.fitted.first_needle
        return Strand(place, self.below[place - self.fitted.low], self.fitted.start)

    @property
    def ends(self) -> Strand:
        """Where its yarn hangs afterwards."""
        place = self.fitted.last_needle
        return Strand(place, self.height(place), self.fitted.end)


def steepest(heights: Sequence[int]) -> int:
    """The greatest difference between neighbouring needles."""
    return max(map(abs, map(int.__sub__, heights, heights[1:])), default=0)
