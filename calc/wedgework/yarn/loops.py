"""The yarn in one stitch, and how far that can be off: from a weighed swatch, an unravelled row, or the gauge alone.

    >>> found = from_row(100, (Fraction(1620),))          # 100 stitches unravelled measure 162 cm
    >>> found.mm, found.source
    (Fraction(81, 5), 'row')

Lengths in mm, masses in g, exact fractions. What can be off is put together as in `wedgework.gauge`: each limit is taken
as evenly spread (divided by the root of three), the parts add as squares, the result is doubled (GUM, JCGM 100:2008,
4.3.7, 5.1.2, 6.2; from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from wedgework.exact import square_root

__all__ = ["GEOMETRY_OFF_PERCENT", "KS", "Loop", "Source", "from_gauge", "from_row", "from_swatch", "mass_off_percent"]

Source = Literal["swatch", "row", "geometry"]

COVERAGE = 2
# Stitches to a square centimetre times the square of the loop in cm: dry-relaxed 19.0, wet-relaxed 21.6 (Munden 1959, Journal
# of the Textile Institute 50, T448, as in Spencer, Knitting Technology; from memory), fully relaxed 5.5 x 4.2 = 23.1 (GATE
# Textile 2015). Finished mill jersey of three published rows lies between 20 and 21; the middle of the range is taken.
KS = Fraction(21)
KS_LIMITS = (Fraction(19), Fraction(231, 10))
# The root of those limits is 5 per cent either way; hand-operated machines knit looser than mills: twice that is said.
# Common practice, no source.
GEOMETRY_OFF_PERCENT = Fraction(10)
# An unravelled row stays crimped or is stretched: half a hundredth of it, either way. Common practice, no source.
CRIMP_LIMIT = Fraction(5, 1000)
TAPE_LIMIT_MM = Fraction(2)
# Metres on a label, either way: what spinners allow themselves. Common practice, no source.
LABEL_LIMIT = Fraction(3, 100)


@dataclass(frozen=True, slots=True)
class Loop:
    """`off_percent`: what the yarn of a piece can be off by, either way, about 95 times in 100; of its length and its mass."""

    mm: Fraction
    off_percent: Fraction
    source: Source
    g: Fraction | None = None
    """Mass of one stitch, where it was weighed; then it does not hang on what a label says of metres."""


def from_swatch(stitches: Fraction, rows: Fraction, mass_g: Fraction, step_g: Fraction, metres_per_gram: Fraction) -> Loop:
    """A whole swatch on scales that read in steps of `step_g`. Every stitch counts: also those outside its marks.

    Half a step up or down (type B); half a row's worth of stitches for its edges, cast-on and end.
    """
    count = stitches * rows
    scale = (step_g / 2 / mass_g) ** 2 / 3
    edge = (Fraction(1, 2) / rows) ** 2 / 3
    off = 100 * COVERAGE * square_root(scale + edge)
    return Loop(mass_g * metres_per_gram * 1000 / count, off, "swatch", mass_g / count)


def from_row(stitches: int | Fraction, lengths_mm: Sequence[Fraction]) -> Loop:
    """Rows of `stitches` unravelled and measured, one or more of them."""
    n = len(lengths_mm)
    mean = sum(lengths_mm, Fraction(0)) / n
    scatter = Fraction(0)
    if n > 1:
        scatter = sum(((length - mean) ** 2 for length in lengths_mm), Fraction(0)) / (n * (n - 1)) / mean**2
    off = 100 * COVERAGE * square_root(scatter + (TAPE_LIMIT_MM / mean) ** 2 / 3 + CRIMP_LIMIT**2 / 3)
    return Loop(mean / stitches, off, "row")


def from_gauge(stitches_per_10cm: Fraction, rows_per_10cm: Fraction, off: tuple[Fraction, Fraction] = (Fraction(0),) * 2) -> Loop:
    """When nothing was measured: loop = root of (ks / stitches to a square centimetre), Munden's law of plain knitting.

    `off`: what the gauge itself can be off by across and up, in per cent; under the root each counts half.
    """
    density = stitches_per_10cm * rows_per_10cm / 100
    across, up = off
    spread = square_root(GEOMETRY_OFF_PERCENT**2 + (across / 2) ** 2 + (up / 2) ** 2)
    return Loop(10 * square_root(KS / density), spread, "geometry")


def mass_off_percent(loop: Loop) -> Fraction:
    """What grams can be off by: where nothing was weighed, the metres on the label come on top."""
    if loop.g is not None:
        return loop.off_percent
    return square_root(loop.off_percent**2 + (100 * COVERAGE * LABEL_LIMIT) ** 2 / 3)
