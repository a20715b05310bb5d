"""Yarn: how thick it is, how much of it a piece takes, which leftover will do, and where its colours fall.

Inside, a yarn's thickness is its tex: grams in 1000 m, exactly. Counts are read into tex and written from it:

    >>> from wedgework.yarn import count_in, tex_of
    >>> tex_of(Fraction(50), "nm")
    Fraction(20, 1)
    >>> count_in(Fraction(20), "denier")
    Fraction(180, 1)

A category follows from the gauge that a yarn is knitted at, not from its count; two can fit.

    >>> [category.number for category in categories_for(Fraction(24))]
    [2, 3]

The yarn of a piece is laid along the passes that the model bed knitted (`path`, `laid`), so that every metre has its place:
`needs` adds up blocks and what stands beside them, `loops` says how much lies in one stitch and how sure that is, `putup`
counts balls, `stripes` and `fabric` colour each stitch, `beside` tells neighbours, `alike` how different two colours look,
`scraps` gives leftovers to blocks, `balls` says where a new ball is joined.

    laid = lay(path_of(plan, judged), {"a": Measures(loop=7_900, tail=180_000, pitch=4_500, row=2_500)})
    needs_of(laid).total_mm("a")
"""

from __future__ import annotations

from wedgework.yarn.counts import SYSTEMS, System, count_in, plied, tex_of
from wedgework.yarn.weights import CATEGORIES, Category, categories_for

__all__ = ["CATEGORIES", "SYSTEMS", "Category", "System", "categories_for", "count_in", "plied", "tex_of"]
