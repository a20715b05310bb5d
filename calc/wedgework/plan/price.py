"""What movements cost, in minutes of the person's time; the weights come from the design.

Prices are whole numbers of a small unit, because a search adds and compares many thousands of them;
`Prices.minutes` turns them back.
"""

from __future__ import annotations

from fractions import Fraction
from math import lcm

from wedgework.formats.design import Costs
from wedgework.plan.edges import row_error

__all__ = ["Prices"]

_UNEVEN = Fraction(1, 20 * row_error(1))
"""Minutes that a needle one row off is worth: three seconds, so that a whole block a row off costs as much as an end inside."""
_NOT_EXACT = Fraction(1, 4)
"""And that not every needle is exact: a little more than a free pass."""


class Prices:
    """Prices on a piece of so many needles; a place at either end of it is at the selvedge."""

    def __init__(self, costs: Costs, needles: int) -> None:
        begin_at_selvedge = costs.yarn_change + costs.end_at_selvedge
        begin_inside = costs.yarn_change + costs.inside_start + costs.end_inside
        every = (
            costs.yarn_change,
            costs.end_at_selvedge,
            costs.end_inside,
            begin_at_selvedge,
            begin_inside,
            costs.free_pass,
            _UNEVEN,
            _NOT_EXACT,
        )
        self._units = lcm(*(Fraction(minutes).denominator for minutes in every))
        self._last = needles - 1
        self._begin_at_selvedge, self._begin_inside = self._whole(begin_at_selvedge), self._whole(begin_inside)
        self._cut_at_selvedge, self._cut_inside = self._whole(costs.end_at_selvedge), self._whole(costs.end_inside)
        self._uneven, self._not_exact = self._whole(_UNEVEN), self._whole(_NOT_EXACT)
        self.again = self._whole(costs.yarn_change)
        """Threading a yarn where it hangs, instead of another one."""
        self.free = self._whole(costs.free_pass)
        """A pass without yarn."""

    def _whole(self, minutes: Fraction) -> int:
        return int(minutes * self._units)

    def minutes(self, price: int) -> Fraction:
        """A price in minutes."""
        return Fraction(price, self._units)

    def begin(self, place: int) -> int:
        """Threading a yarn with a new end beside this place."""
        return self._begin_at_selvedge if place in (0, self._last) else self._begin_inside

    def cut(self, place: int) -> int:
        """Cutting a yarn that hangs beside this place: its end has to be hidden."""
        return self._cut_at_selvedge if place in (0, self._last) else self._cut_inside

    def uneven(self, error: int) -> int:
        """Needles that a block leaves off their height, `error` in the costs of `edges`."""
        return error * self._uneven + (self._not_exact if error else 0)
