"""Yarn: what counts say about its thickness, and the categories of the Standard Yarn Weight System.

Inside, a yarn's thickness is its tex: grams in 1000 m, exactly. Counts are read into tex and written from it:

    >>> from wedgework.yarn import count_in, tex_of
    >>> tex_of(Fraction(50), "nm")
    Fraction(20, 1)
    >>> count_in(Fraction(20), "denier")
    Fraction(180, 1)

A category follows from the gauge that a yarn is knitted at, not from its count; two can fit.

    >>> [category.number for category in categories_for(Fraction(24))]
    [2, 3]
"""

from __future__ import annotations

from wedgework.yarn.counts import SYSTEMS, System, count_in, plied, tex_of
from wedgework.yarn.weights import CATEGORIES, Category, categories_for

__all__ = ["CATEGORIES", "SYSTEMS", "Category", "System", "categories_for", "count_in", "plied", "tex_of"]
