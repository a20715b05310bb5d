"""The straight line through measured points, and how far what is read from it can be off. Exact but for one square root.

    >>> found = line_through([(Fraction(5), Fraction(30)), (Fraction(6), Fraction(29)), (Fraction(7), Fraction(28))])
    >>> found.slope, found.at(Fraction(8)), found.where(Fraction(59, 2))
    (Fraction(-1, 1), Fraction(27, 1), Fraction(11, 2))

Least squares (Legendre 1805, Gauss 1809). Reading backwards, from a height to a place, is what chemists call calibration; its
uncertainty is s / |slope| x sqrt(1 + 1/n + (y - mean y)^2 / (slope^2 Sxx)) times Student's t for n - 2 degrees of freedom
(textbooks of analytical chemistry, from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from wedgework.exact import square_root

__all__ = ["STUDENT_95", "Line", "line_through", "student_95"]

# Two-sided 95 % of Student's distribution for 1, 2, 3 ... degrees of freedom, as every table has it (from memory).
STUDENT_95 = tuple(
    Fraction(text) for text in ("12.706", "4.303", "3.182", "2.776", "2.571", "2.447", "2.365", "2.306", "2.262", "2.228")
)


def student_95(freedom: int) -> Fraction:
    """t for so many degrees of freedom, at least 1; beyond the table its last entry, which is on the safe side."""
    return STUDENT_95[min(freedom, len(STUDENT_95)) - 1]


@dataclass(frozen=True, slots=True)
class Line:
    count: int
    mean_x: Fraction
    mean_y: Fraction
    slope: Fraction
    spread_x: Fraction
    """Sum of squares of x about its mean."""
    rest: Fraction
    """Sum of squares of what the line leaves unexplained."""

    def at(self, x: Fraction) -> Fraction:
        return self.mean_y + self.slope * (x - self.mean_x)

    def where(self, y: Fraction) -> Fraction:
        """The x at which the line has this height; ZeroDivisionError for a level line."""
        return self.mean_x + (y - self.mean_y) / self.slope

    def leverage(self, y: Fraction) -> Fraction:
        """1/n + (y - mean)^2 / (slope^2 Sxx): least in the middle of the points, more toward the ends."""
        return Fraction(1, self.count) + (y - self.mean_y) ** 2 / (self.slope**2 * self.spread_x)

    def off_by_scatter(self, y: Fraction) -> Fraction | None:
        """How far `where(y)` can be off, about 95 times in 100, judging by how far the points lie from the line; None for two."""
        freedom = self.count - 2
        if freedom < 1:
            return None
        return student_95(freedom) * square_root(self.rest / freedom / self.slope**2 * (1 + self.leverage(y)))

    def off_by_reading(self, y: Fraction, reading: Fraction) -> Fraction:
        """The same if every point's own y can be off by `reading`, each by itself."""
        return reading / abs(self.slope) * square_root(self.leverage(y))


def line_through(points: Sequence[tuple[Fraction, Fraction]]) -> Line:
    """Least squares; ValueError for fewer than two different x."""
    n = len(points)
    if n < 2 or len({x for x, _ in points}) < 2:
        raise ValueError("a line needs two points")
    mean_x = sum((x for x, _ in points), Fraction(0)) / n
    mean_y = sum((y for _, y in points), Fraction(0)) / n
    spread_x = sum(((x - mean_x) ** 2 for x, _ in points), Fraction(0))
    slope = sum(((x - mean_x) * (y - mean_y) for x, y in points), Fraction(0)) / spread_x
    rest = sum(((y - mean_y - slope * (x - mean_x)) ** 2 for x, y in points), Fraction(0))
    return Line(n, mean_x, mean_y, slope, spread_x, rest)
