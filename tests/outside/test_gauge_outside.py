"""Gauge against published worked figures and textbook statistics."""

from __future__ import annotations

import math
import statistics
from fractions import Fraction
from functools import partial

import pytest

import working
from wedgework.calculators.gauge import CALCULATOR
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


asked = partial(working.values, CALCULATOR)


@pytest.mark.parametrize(("mark", "stitches"), [(21, 40), (16, 30), (11, 20)])
def test_marked_needles_of_three_beds(mark: int, stitches: int) -> None:
    """Two published guides to machine swatches: needles 21 (standard), 16 (between) or 11 (bulky) on both sides are marked
    with another yarn; between the marks are 40, 30 and 20 stitches."""
    found = asked(counted="needles", first_mark=f"L{mark}", last_mark=f"R{mark}")
    assert found["stitches_between_marks"] == stitches


def test_a_published_machine_swatch() -> None:
    """A machine knitting teacher's page (2008): 40 stitches by 60 rows, needle 21 out of work on both sides, 30 stitches and
    39 rows to 10 cm."""
    width, height = 40 * 100 / 30, 60 * 100 / 39
    found = asked(counted="needles", width=f"{width:.6f} mm", rows="60", height=f"{height:.6f} mm")
    assert float(found["stitches_per_10cm"]) == pytest.approx(30, abs=1e-4)
    assert float(found["rows_per_10cm"]) == pytest.approx(39, abs=1e-4)


def test_each_direction_changes_in_its_own_way() -> None:
    """Munden 1959 (from memory): from dry to wet-relaxed k of courses goes from 5.0 to 5.3, of wales from 3.8 to 4.1. A
    swatch that does so loses 5.7 % of its height and 7.3 % of its width."""
    found = asked(
        width="38 cm",
        height="50 cm",
        washed_width=f"{380 * 3.8 / 4.1:.6f} mm",
        washed_height=f"{500 * 5.0 / 5.3:.6f} mm",
        rows="66",
    )
    assert float(found["washing_width_percent"]) == pytest.approx((3.8 / 4.1 - 1) * 100, abs=1e-4)
    assert float(found["washing_height_percent"]) == pytest.approx((5.0 / 5.3 - 1) * 100, abs=1e-4)
