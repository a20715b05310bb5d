"""The categories of the Standard Yarn Weight System, by gauge.

Craft Yarn Council, Standard Yarn Weight System: knit stitches to 4 in or 10 cm in stocking stitch, which the council takes
for the same, and needle sizes in mm. The council calls them guidelines.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

__all__ = ["CATEGORIES", "Category", "categories_for"]

HALF = Fraction(1, 2)


@dataclass(frozen=True, slots=True)
class Category:
    """`None` where the council sets no limit on that side."""

    number: int
    key: str
    least_stitches: int | None
    most_stitches: int | None
    least_needle_mm: Fraction | None
    most_needle_mm: Fraction | None

    def fits(self, stitches_per_10cm: Fraction) -> bool:
        """Whether that gauge, made a whole number, lies in the range; exactly half counts for both whole numbers."""
        above = self.least_stitches is None or stitches_per_10cm >= self.least_stitches - HALF
        return above and (self.most_stitches is None or stitches_per_10cm <= self.most_stitches + HALF)


def _mm(text: str) -> Fraction:
    return Fraction(text)


CATEGORIES: tuple[Category, ...] = (
    Category(0, "lace", 33, 40, _mm("1.5"), _mm("2.25")),
    Category(1, "super-fine", 27, 32, _mm("2.25"), _mm("3.25")),
    Category(2, "fine", 23, 26, _mm("3.25"), _mm("3.75")),
    Category(3, "light", 21, 24, _mm("3.75"), _mm("4.5")),
    Category(4, "medium", 16, 20, _mm("4.5"), _mm("5.5")),
    Category(5, "bulky", 12, 15, _mm("5.5"), _mm("8")),
    Category(6, "super-bulky", 7, 11, _mm("8"), _mm("12.75")),
    Category(7, "jumbo", None, 6, _mm("12.75"), None),
)


def categories_for(stitches_per_10cm: Fraction) -> tuple[Category, ...]:
    """Every category that the gauge fits, thin yarn first: none (finer than lace), one or two."""
    return tuple(category for category in CATEGORIES if category.fits(stitches_per_10cm))
