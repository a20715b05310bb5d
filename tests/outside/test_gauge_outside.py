"""Gauge against published worked figures and textbook statistics."""

from __future__ import annotations

import math
import statistics
from fractions import Fraction

import pytest

from wedgework.gauge import RATIO_EXPECTED, RATIO_LIMITS, gauge_warnings, measure, needles_for, rows_for

F = Fraction


def test_a_machine_swatch() -> None:
    """A machine knitting manual's example: 30 stitches and 39 rows per 10 cm, ratio 1.3."""
    found = measure(30, [F(100)], 39, [F(100)])
    assert (found.stitches_per_10cm, found.rows_per_10cm, found.ratio) == (30, 39, F("1.3"))


@pytest.mark.parametrize(("mm", "exact"), [(620, "173.6"), (260, "72.8")])
def test_widths_of_a_worked_garment(mm: int, exact: str) -> None:
    """A published garment at 28 stitches and 40 rows per 10 cm."""
    assert needles_for(F(mm), F(28)).exact == F(exact)


@pytest.mark.parametrize(("mm", "rows"), [(380, 152), (490, 196)])
def test_heights_of_a_worked_garment(mm: int, rows: int) -> None:
    """The same garment."""
    found = rows_for(F(mm), F(40))
    assert (found.exact, found.count) == (rows, rows)


def test_published_ratios_are_usual() -> None:
    """Eight published pairs lie between 1.23 and 1.43: inside what is expected, far inside the limits of the warning."""
    for ratio in (F("1.23"), F("1.43")):
        assert RATIO_EXPECTED[0] <= ratio <= RATIO_EXPECTED[1]
        assert gauge_warnings(measure(100, [F(500)], 100 * ratio, [F(500)])) == []
    assert [str(float(limit)) for limit in RATIO_LIMITS] == ["1.1", "1.7"]


def test_four_inches_are_the_ten_centimetres_of_the_yarn_standard_nearly() -> None:
    """Craft Yarn Council, Standard Yarn Weight System, counts over 4 in (10 cm): 16 stitches in 4 in are 4 to the inch."""
    found = measure(16, [F("101.6")], 22, [F("101.6")])
    assert found.across.per_inch == 4
    assert round(float(found.stitches_per_10cm), 1) == 15.7


def test_a_charity_afghan_section() -> None:
    """Published: sections of 7 x 9 in, 35 stitches at 5 per inch."""
    assert needles_for(7 * F("25.4"), 5 * F(1000, 254)).count == 35


def test_scatter_as_the_statistics_module_finds_it() -> None:
    """GUM (JCGM 100:2008, from memory) 4.2.3: the experimental standard deviation of the mean is s / sqrt(n)."""
    widths = [284.0, 286.0, 285.0, 287.5]
    across = measure(40, [F(str(w)) for w in widths], 60, [F(300)]).across
    mean = statistics.fmean(widths)
    scatter = statistics.stdev(widths) / math.sqrt(len(widths)) / mean
    # 4.3.7: evenly spread within +-a has the standard uncertainty a / sqrt(3). 5.1.2: parts add as squares. 6.2.1: k = 2.
    together = 2 * math.sqrt(scatter**2 + (1 / math.sqrt(3) / mean) ** 2 + (0.5 / math.sqrt(3) / 40) ** 2)
    assert float(across.off_percent) == pytest.approx(100 * together, rel=1e-6)
