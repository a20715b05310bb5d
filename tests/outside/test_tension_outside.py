"""Tension against the standard library's regression, Student's table, an old data set, and the geometry of loops."""

from __future__ import annotations

import math
import statistics
from fractions import Fraction

import pytest

from wedgework.calculators.tension import CALCULATOR
from wedgework.declare import work_out
from wedgework.lines import line_through, student_95

F = Fraction
SWATCHES = [(5.0, 31.2), (6.0, 29.6), (7.0, 28.3), (8.0, 26.8)]


def values(swatches: list[tuple[float, float]], wanted: float, **typed: str) -> dict[str, float]:
    tensions, stitches = ("; ".join(f"{value:.6g}" for value in column) for column in zip(*swatches, strict=True))
    lists = {"tensions": tensions, "stitches": stitches, "rows": ""}
    answer = work_out(CALCULATOR, {**lists, "wanted_stitches_per_10cm": str(wanted), **typed})
    assert answer.problems == ()
    assert answer.result is not None
    return {key: float(value) for key, value in answer.result.values.items() if isinstance(value, (int, Fraction))}


def test_the_line_of_the_statistics_module() -> None:
    """Against statistics.linear_regression of the standard library."""
    slope, intercept = statistics.linear_regression(*zip(*SWATCHES, strict=True))
    found = values(SWATCHES, 29)
    assert found["stitches_per_number"] == pytest.approx(slope, rel=1e-12)
    assert found["tension"] == pytest.approx((29 - intercept) / slope, rel=1e-12)


def test_the_uncertainty_of_a_calibration_line() -> None:
    """Analytical chemistry textbooks (from memory): t s / |b| sqrt(1 + 1/n + (y - mean y)^2 / (b^2 Sxx)), t = 4.303 for two
    degrees of freedom."""
    slope, intercept = statistics.linear_regression(*zip(*SWATCHES, strict=True))
    rest = math.sqrt(math.fsum((y - intercept - slope * x) ** 2 for x, y in SWATCHES) / 2)
    mean_y, sxx = statistics.fmean(y for _, y in SWATCHES), 5.0
    judged = 4.303 * rest / abs(slope) * math.sqrt(1 + 1 / 4 + (29 - mean_y) ** 2 / (slope**2 * sxx))
    assert values(SWATCHES, 29, stitches_off_percent="0")["tension_off"] == pytest.approx(judged, rel=1e-6)


@pytest.mark.parametrize(("freedom", "alpha"), [(1, 12.706), (2, 4.303), (5, 2.571), (8, 2.306)])
def test_students_table(freedom: int, alpha: float) -> None:
    """Student 1908 and every table since (from memory); for one and two degrees of freedom there are closed formulas."""
    assert float(student_95(freedom)) == alpha
    if freedom == 1:
        assert math.tan(0.475 * math.pi) == pytest.approx(alpha, abs=0.001)
    if freedom == 2:
        assert math.sqrt(2 * 0.95**2 / (1 - 0.95**2)) == pytest.approx(alpha, abs=0.001)


def test_a_data_set_of_1973() -> None:
    """Anscombe, American Statistician 27 (1973), first of the four sets (from memory): y = 3.00 + 0.500 x."""
    x = [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5]
    y = ["8.04", "6.95", "7.58", "8.81", "8.33", "9.96", "7.24", "4.26", "10.84", "4.82", "5.68"]
    found = line_through([(F(a), F(b)) for a, b in zip(x, y, strict=True)])
    assert round(float(found.slope), 3) == 0.5
    assert round(float(found.at(F(0))), 2) == 3.0


def test_loops_that_grow_evenly_are_read_within_a_tenth() -> None:
    """Munden 1959 (from memory, as in Spencer, Knitting Technology): wales per cm = 4.1 / loop length in cm, wet-relaxed. With
    loops that grow by 0.5 mm for each number from 13 mm at 5, gauge is no straight line; between swatches it is near enough."""

    def gauge(tension: float) -> float:
        return 41 / (1.3 + 0.05 * (tension - 5))

    found = values([(t, gauge(t)) for t in (5.0, 6.0, 7.0, 8.0)], round(gauge(6.5), 4))
    assert found["tension"] == pytest.approx(6.5, abs=0.1)


def test_the_published_swatch_is_on_a_line_with_itself() -> None:
    """A machine knitting manual's 30 stitches and 39 rows per 10 cm, taken as the middle of three: read back exactly."""
    assert values([(6.0, 31.5), (7.0, 30.0), (8.0, 28.5)], 30)["tension"] == 7
