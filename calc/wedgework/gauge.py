"""From a swatch to a gauge that can be trusted, and from a wanted size to needles and rows.

    >>> found = measure(Fraction(40), (Fraction(285),), Fraction(60), (Fraction(315),))
    >>> found.across.per_10cm, found.up.per_10cm
    (Fraction(800, 57), Fraction(400, 21))
    >>> needles_for(Fraction(900), found.across.per_10cm).count
    126

Everything is exact; only a square root is cut, at nine decimals. Lengths in mm.

How far a gauge can be off follows the Guide to the expression of uncertainty in measurement (GUM, JCGM 100:2008;
from memory): the scatter of several measurements counts as the standard deviation of their mean (type A, 4.2.3);
reading the tape and judging where the first and the last stitch end are each taken as evenly spread within a limit,
limit divided by the root of three (type B, 4.3.7); the parts add as squares (5.1.2) and the result is doubled, about
95 in 100 (6.2, 6.3). The two limits are common practice, no source. They are not divided by the number of
measurements: the same tape and the same eyes err the same way each time.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from wedgework.exact import Rounding, rounded, square_root
from wedgework.problems import Problem
from wedgework.say import say
from wedgework.units import MM_PER_INCH, decimal_text

__all__ = [
    "RATIO_EXPECTED",
    "RATIO_LIMITS",
    "Fitted",
    "MeasuredGauge",
    "Reading",
    "fitted",
    "gauge_warnings",
    "measure",
    "needles_for",
    "rows_for",
    "washing_change",
    "washing_warnings",
]

TAPE_LIMIT_MM = Fraction(1)
EDGE_LIMIT = Fraction(1, 2)  # of a stitch or a row, both ends together
COVERAGE = 2

# Rows : stitches in stocking stitch. Eight published pairs lie between 1.23 and 1.43 (check values of the project).
RATIO_EXPECTED = (Fraction(12, 10), Fraction(15, 10))
RATIO_LIMITS = (Fraction(11, 10), Fraction(17, 10))

# Beyond this something felted or a unit was mistaken. Our own choice.
LARGEST_CHANGE = Fraction(30)
# Below this the edges weigh too much. A usual machine swatch has 40 stitches and 60 rows between the marks.
FEWEST_STITCHES = 20
FEWEST_ROWS = 30
# Measurements further apart than this, in per cent of their mean, were not of the same thing. Common practice, no source.
WIDEST_SPREAD = Fraction(5)
# Beyond these no domestic machine knits plain: a unit was mistaken. Common practice, no source.
STITCHES_LIMITS = (Fraction(4), Fraction(60))


@dataclass(frozen=True, slots=True)
class Reading:
    """One direction: so many stitches (or rows) over the mean of some lengths."""

    count: Fraction
    lengths_mm: tuple[Fraction, ...]

    @property
    def mean_mm(self) -> Fraction:
        return sum(self.lengths_mm, Fraction(0)) / len(self.lengths_mm)

    @property
    def per_10cm(self) -> Fraction:
        return self.count * 100 / self.mean_mm

    @property
    def per_inch(self) -> Fraction:
        return self.count * MM_PER_INCH / self.mean_mm

    @property
    def spread_percent(self) -> Fraction:
        """Longest less shortest measurement, in per cent of the mean."""
        return (max(self.lengths_mm) - min(self.lengths_mm)) * 100 / self.mean_mm

    @property
    def off_percent(self) -> Fraction:
        """What the figure can be off by, either way, about 95 times in 100; the model stands at the top."""
        mean, n = self.mean_mm, len(self.lengths_mm)
        scatter = Fraction(0)
        if n > 1:
            squares = sum(((length - mean) ** 2 for length in self.lengths_mm), Fraction(0))
            scatter = squares / (n * (n - 1)) / mean**2
        tape = (TAPE_LIMIT_MM / mean) ** 2 / 3
        edge = (EDGE_LIMIT / self.count) ** 2 / 3
        return 100 * COVERAGE * square_root(scatter + tape + edge)

    @property
    def off_per_10cm(self) -> Fraction:
        return self.per_10cm * self.off_percent / 100


@dataclass(frozen=True, slots=True)
class MeasuredGauge:
    """Both directions of a swatch in one state."""

    across: Reading
    up: Reading

    @property
    def stitches_per_10cm(self) -> Fraction:
        return self.across.per_10cm

    @property
    def rows_per_10cm(self) -> Fraction:
        return self.up.per_10cm

    @property
    def ratio(self) -> Fraction:
        """Rows that are as high as one stitch is wide, times one."""
        return self.up.per_10cm / self.across.per_10cm


def measure(
    stitches: Fraction | int, widths_mm: Sequence[Fraction], rows: Fraction | int, heights_mm: Sequence[Fraction]
) -> MeasuredGauge:
    """Stitches counted over one or more measured widths, rows over heights. All must be above zero (ValueError)."""
    lengths = (*widths_mm, *heights_mm)
    if not widths_mm or not heights_mm or min(stitches, rows, *lengths) <= 0:
        raise ValueError("a swatch has stitches, rows, widths and heights, all above zero")
    return MeasuredGauge(Reading(Fraction(stitches), tuple(widths_mm)), Reading(Fraction(rows), tuple(heights_mm)))


def washing_change(before: MeasuredGauge, after: MeasuredGauge) -> tuple[Fraction, Fraction]:
    """How much the same stitches grew (shrank, where negative) across and up, in per cent of before."""
    return (
        (before.across.per_10cm / after.across.per_10cm - 1) * 100,
        (before.up.per_10cm / after.up.per_10cm - 1) * 100,
    )


def washing_warnings(before: MeasuredGauge, after: MeasuredGauge) -> list[Problem]:
    """A change in washing that is hard to believe."""
    changes = zip(("washed_width", "washed_height"), washing_change(before, after), strict=True)
    return [
        Problem(
            where,
            "gauge.large-change",
            say("gauge.large-change", percent=decimal_text(abs(change), 0)),
            say("gauge.large-change.way-out"),
        )
        for where, change in changes
        if abs(change) > LARGEST_CHANGE
    ]


@dataclass(frozen=True, slots=True)
class Fitted:
    """A wanted length made of whole stitches (or rows)."""

    wanted_mm: Fraction
    exact: Fraction
    """Before rounding."""
    count: int
    mm: Fraction
    """What `count` measures."""

    @property
    def off_mm(self) -> Fraction:
        """What rounding adds (takes away, where negative)."""
        return self.mm - self.wanted_mm

    @property
    def off_percent(self) -> Fraction:
        return self.off_mm * 100 / self.wanted_mm if self.wanted_mm else Fraction(0)


def fitted(wanted_mm: Fraction, per_10cm: Fraction, rounding: Rounding = "nearest") -> Fitted:
    """`wanted_mm` in whole stitches or rows at `per_10cm`, rounded in the way that is named."""
    exact = wanted_mm * per_10cm / 100
    count = rounded(exact, rounding)
    return Fitted(wanted_mm, exact, count, count * 100 / per_10cm)


def needles_for(width_mm: Fraction, stitches_per_10cm: Fraction, rounding: Rounding = "nearest") -> Fitted:
    """Needles for a width. Fabric is stitches divided by gauge; the pitch of the bed has no part in it."""
    return fitted(width_mm, stitches_per_10cm, rounding)


def rows_for(height_mm: Fraction, rows_per_10cm: Fraction, rounding: Rounding = "nearest") -> Fitted:
    """Rows for a height; ``even`` gives whole turns."""
    return fitted(height_mm, rows_per_10cm, rounding)


def _2(value: Fraction) -> str:
    return decimal_text(value, 2)


def gauge_warnings(found: MeasuredGauge) -> list[Problem]:
    """What looks wrong with a swatch that can be computed all the same."""
    warnings: list[Problem] = []
    low, high = RATIO_LIMITS
    if not low <= found.ratio <= high:
        warnings.append(
            Problem(
                "ratio",
                "gauge.ratio-unusual",
                say("gauge.ratio-unusual", ratio=_2(found.ratio), least=_2(low), most=_2(high)),
                say("gauge.ratio-unusual.way-out"),
            )
        )
    least, most = STITCHES_LIMITS
    if not least <= found.across.per_10cm <= most:
        warnings.append(
            Problem(
                "stitches_per_10cm",
                "gauge.stitches-unusual",
                say("gauge.stitches-unusual", found=decimal_text(found.across.per_10cm, 1), least=least, most=most),
                say("gauge.stitches-unusual.way-out"),
            )
        )
    if found.across.count < FEWEST_STITCHES or found.up.count < FEWEST_ROWS:
        warnings.append(
            Problem(
                "stitches" if found.across.count < FEWEST_STITCHES else "rows",
                "gauge.small-swatch",
                say("gauge.small-swatch", stitches=FEWEST_STITCHES, rows=FEWEST_ROWS),
                say("gauge.small-swatch.way-out"),
            )
        )
    for where, reading in (("width", found.across), ("height", found.up)):
        if reading.spread_percent > WIDEST_SPREAD:
            warnings.append(
                Problem(
                    where,
                    "gauge.wide-spread",
                    say("gauge.wide-spread", percent=decimal_text(reading.spread_percent, 1)),
                    say("gauge.wide-spread.way-out"),
                )
            )
    return warnings
