"""What movements cost, in minutes of the person's time; the weights come from the design."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from wedgework.formats.design import Costs
from wedgework.plan.edges import row_error

__all__ = ["Prices"]

_UNEVEN = Fraction(1, 20 * row_error(1))
"""Minutes that a needle one row off is worth: three seconds, so that a whole block a row off costs as much as an end inside."""
_NOT_EXACT = Fraction(1, 4)
"""And that not every needle is exact: a little more than a free pass."""


@dataclass(frozen=True, slots=True)
class Prices:
    """Prices on a piece of so many needles; a place at either end of it is at the selvedge."""

    costs: Costs
    needles: int

    def at_selvedge(self, place: int) -> bool:
        return place in (0, self.needles - 1)

    def begin(self, place: int) -> Fraction:
        """Threading a yarn with a new end beside this place."""
        costs = self.costs
        tail = costs.end_at_selvedge if self.at_selvedge(place) else costs.inside_start + costs.end_inside
        return costs.yarn_change + tail

    def again(self) -> Fraction:
        """Threading a yarn where it hangs, instead of another one."""
        return self.costs.yarn_change

    def cut(self, place: int) -> Fraction:
        """Cutting a yarn that hangs beside this place: its end has to be hidden."""
        return self.costs.end_at_selvedge if self.at_selvedge(place) else self.costs.end_inside

    def free(self) -> Fraction:
        """A pass without yarn."""
        return self.costs.free_pass

    def uneven(self, error: int) -> Fraction:
        """Needles that a block leaves off their height, `error` in the costs of `edges`."""
        return error * _UNEVEN + (_NOT_EXACT if error else 0)
