"""From a swatch to a gauge, and from a size to needles and rows."""

from __future__ import annotations

from fractions import Fraction

import pytest

from wedgework.gauge import gauge_warnings, measure, needles_for, rows_for, washing_change, washing_warnings

F = Fraction


def test_stitches_over_the_mean_width() -> None:
    found = measure(40, [F(284), F(286), F(285)], 60, [F(315)])
    assert found.stitches_per_10cm == F(4000, 285)
    assert found.rows_per_10cm == F(6000, 315)
    assert found.ratio == F(6000, 315) / F(4000, 285)
    assert found.across.per_inch == found.stitches_per_10cm * F(254, 1000)


def test_one_measurement_leaves_tape_and_edges() -> None:
    """40 stitches over 285 mm: (1/285)^2/3 + (0.5/40)^2/3, root, doubled: worked by hand, 1.499 %."""
    across = measure(40, [F(285)], 60, [F(315)]).across
    assert abs(across.off_percent - F("1.4990")) < F("0.001")


def test_scatter_is_the_deviation_of_the_mean() -> None:
    """200 and 204 mm: s = 2.828 mm, over the root of two 2 mm: 0.990 %; tape 0.286 %; 0.5 of 40 0.722 %; doubled 2.517 %."""
    across = measure(40, [F(200), F(204)], 60, [F(315)]).across
    assert abs(across.off_percent - F("2.5168")) < F("0.001")
    assert across.off_per_10cm == across.per_10cm * across.off_percent / 100


def test_a_larger_swatch_is_more_certain() -> None:
    small, large = measure(20, [F(140)], 30, [F(150)]), measure(60, [F(420)], 90, [F(450)])
    assert small.stitches_per_10cm == large.stitches_per_10cm
    assert large.across.off_percent < small.across.off_percent


@pytest.mark.parametrize(("stitches", "widths", "rows", "heights"), [(0, [1], 1, [1]), (1, [], 1, [1]), (1, [1], 1, [0])])
def test_nothing_may_be_zero(stitches: int, widths: list[int], rows: int, heights: list[int]) -> None:
    with pytest.raises(ValueError, match="above zero"):
        measure(stitches, [F(w) for w in widths], rows, [F(h) for h in heights])


def codes(stitches: int, width: int, rows: int, height: int) -> list[str]:
    return [w.code for w in gauge_warnings(measure(stitches, [F(width)], rows, [F(height)]))]


def test_a_usual_swatch_needs_no_warning() -> None:
    assert codes(40, 285, 60, 315) == []


@pytest.mark.parametrize(
    ("stitches", "rows", "warned"),
    [(100, 110, False), (100, 109, True), (100, 170, False), (100, 171, True)],
)
def test_the_ratio_is_usual_from_1_1_to_1_7_both_counted(stitches: int, rows: int, warned: bool) -> None:
    assert ("gauge.ratio-unusual" in codes(stitches, 500, rows, 500)) is warned


def test_a_mistaken_unit_is_noticed() -> None:
    assert "gauge.stitches-unusual" in codes(40, 2850, 60, 3150)
    assert "gauge.stitches-unusual" in codes(400, 100, 600, 105)


def test_a_small_swatch_and_scattered_measurements_are_noticed() -> None:
    assert codes(19, 100, 30, 110) == ["gauge.small-swatch"]
    found = measure(40, [F(270), F(300)], 60, [F(315)])
    assert [(w.where, w.code) for w in gauge_warnings(found)] == [("width", "gauge.wide-spread")]


def test_washing_changes_each_direction_in_its_own_way() -> None:
    before = measure(40, [F(300)], 60, [F(300)])
    after = measure(40, [F(285)], 60, [F(306)])
    assert washing_change(before, after) == (-5, 2)
    assert washing_warnings(before, after) == []
    felted = measure(40, [F(200)], 60, [F(306)])
    assert [w.where for w in washing_warnings(before, felted)] == ["washed_width"]


def test_needles_and_rows_and_what_rounding_does() -> None:
    found = needles_for(F(900), F(14))
    assert (found.exact, found.count, found.mm) == (126, 126, 900)
    found = needles_for(F(760), F(14))
    assert (found.exact, found.count) == (F("106.4"), 106)
    assert found.off_mm == F(-20, 7)
    assert found.off_percent == F(-20, 7) * 100 / 760
    assert rows_for(F(1020), F(19), "even").count == 194
    assert needles_for(F(760), F(14), "odd").count == 107
