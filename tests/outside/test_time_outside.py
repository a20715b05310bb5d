"""Time against what a machine knitter wrote, a counted case, guidance on breaks, and the standard library's arithmetic."""

from __future__ import annotations

from datetime import timedelta
from fractions import Fraction

import pytest

from wedgework.calculators.time import CALCULATOR
from wedgework.declare import work_out

NOTHING = {
    "passes": "0", "needle_changes": "0", "block_changes": "0", "ends": "0", "hems": "0", "sewing": "0",
    "setup_minutes": "0", "finishing_minutes": "0", "break_minutes": "0",
}  # fmt: skip


def hours(**typed: str) -> tuple[float, float, float]:
    answer = work_out(CALCULATOR, {**NOTHING, **typed})
    assert answer.result is not None
    values = answer.result.values
    least, middle, most = (values[key] for key in ("hours_least", "hours", "hours_most"))
    assert isinstance(least, Fraction)
    assert isinstance(middle, Fraction)
    assert isinstance(most, Fraction)
    return float(least), float(middle), float(most)


def test_a_plain_strip() -> None:
    """A machine knitter's notes (2011): 45 stitches, two colours of 330 rows each, an hour and a half with some trouble."""
    least, middle, most = hours(passes="660", seconds_per_pass="8", block_changes="2")
    assert least < 1.5 < most
    assert middle == pytest.approx(1.5, abs=0.05)


def test_a_diamond_counted_needle_by_needle() -> None:
    """A diamond between four corner triangles, 2n needles, n = 20 (common practice, counted by hand): passes 2 x (2n - 1) below,
    2 x (2n - 1) of the diamond, 2 x 2n above; at 4 seconds each 15.7 minutes."""
    n = 20
    passes = 2 * (2 * n - 1) + 2 * (2 * n - 1) + 2 * 2 * n
    assert hours(passes=str(passes), seconds_per_pass="4")[1] * 60 == pytest.approx(15.7, abs=0.1)


@pytest.mark.parametrize(("pause", "least", "most"), [("2.5", 5, 10), ("5", 5, 10)])
def test_pauses_as_guidance_has_them(pause: str, least: float, most: float) -> None:
    """UK Health and Safety Executive, display screen work (read in a quotation): 5 to 10 minutes after 50 to 60 minutes."""
    work = hours(setup_minutes="60")[1]
    with_pauses = hours(setup_minutes="60", break_minutes=pause)[1]
    assert least <= round((with_pauses - work) * 60, 6) <= most


def test_sums_as_timedelta_finds_them() -> None:
    """Against datetime.timedelta of the standard library."""
    judged = 961 * timedelta(seconds=4) + 700 * timedelta(seconds=6.5) + 28 * timedelta(seconds=90) + 2 * timedelta(minutes=25)
    found = hours(passes="961", seconds_per_pass="4", needle_changes="700", seconds_per_change="6.5", ends="28", hems="2")[1]
    assert found == pytest.approx(judged / timedelta(hours=1), rel=1e-12)


def test_seams_of_a_blanket() -> None:
    """The charity afghan of 49 sections, 7 x 9 in: 6 seams of 63 in and 6 of 49 in are 672 in, 17.07 m."""
    inches = 6 * 63 + 6 * 49
    assert inches == 672
    assert hours(sewing=f"{inches} in", seconds_per_10cm="60")[1] == pytest.approx(17.0688 * 10 / 60, rel=1e-6)
