"""Properties of numbers, spreads and gauges."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from wedgework.exact import down, even_spread, nearest, nearest_with, square_root, up
from wedgework.gauge import measure, needles_for
from wedgework.problems import Problem, Refused
from wedgework.units import decimal_text, from_mm, inches_text, length_mm, lengths_mm, mixed_text, number, plain

fractions = st.fractions(min_value=-10_000, max_value=10_000, max_denominator=1000)
lengths = st.fractions(min_value=1, max_value=5000, max_denominator=100)
units = st.sampled_from(["mm", "cm", "m", "in", "ft", "yd"])


@given(fractions, st.integers(0, 6))
def test_decimal_text_is_nearest_and_reads_back(value: Fraction, digits: int) -> None:
    text = decimal_text(value, digits)
    assert abs(Fraction(text) - value) <= Fraction(1, 2 * 10**digits)
    assert Fraction(str(plain(value, digits))) == Fraction(text)


@given(fractions)
def test_a_mixed_fraction_reads_back(value: Fraction) -> None:
    assert number(mixed_text(value)) == value


@given(lengths, units)
def test_units_round_trip(mm: Fraction, unit: str) -> None:
    assert length_mm(f"{mixed_text(from_mm(mm, unit))} {unit}", "mm") == mm


@given(lengths)
def test_a_tape_is_read_to_a_sixteenth(mm: Fraction) -> None:
    assert abs(length_mm(inches_text(mm), "mm") - mm) <= Fraction(254, 160)


@given(st.text(max_size=30))
def test_any_text_is_read_or_refused(text: str) -> None:
    for read in (number, lambda t: length_mm(t, "cm"), lambda t: lengths_mm(t, "cm")):
        problems: tuple[Problem, ...] = ()
        try:
            read(text)
        except Refused as refused:
            problems = refused.problems
        assert all(p.sentence and p.way_out for p in problems)


@given(st.integers(0, 500), st.integers(1, 60))
def test_no_stretch_of_a_spread_is_more_than_one_off(total: int, parts: int) -> None:
    """Evenly: any run of parts holds what an even share would, within one."""
    spread = even_spread(total, parts)
    for first in range(0, parts, 7):
        for last in range(first + 1, parts + 1, 5):
            assert abs(sum(spread[first:last]) - Fraction(total * (last - first), parts)) < 1


@given(fractions, st.integers(1, 12), st.integers(0, 11))
def test_roundings_are_near(value: Fraction, multiple: int, remainder: int) -> None:
    found = nearest_with(value, multiple, remainder)
    assert (found - remainder) % multiple == 0
    assert abs(found - value) <= Fraction(multiple, 2)
    assert down(value) <= nearest(value) <= up(value)


@given(st.fractions(min_value=0, max_value=10_000, max_denominator=100))
def test_a_root_squared_is_the_number(value: Fraction) -> None:
    root = square_root(value)
    assert root**2 <= value < (root + Fraction(1, 10**9)) ** 2


@given(st.integers(1, 200), lengths, st.integers(1, 200), lengths, st.integers(2, 5))
def test_a_gauge_knows_no_scale(stitches: int, width: Fraction, rows: int, height: Fraction, times: int) -> None:
    one = measure(stitches, [width], rows, [height])
    more = measure(stitches * times, [width * times], rows * times, [height * times])
    assert (one.stitches_per_10cm, one.rows_per_10cm, one.ratio) == (more.stitches_per_10cm, more.rows_per_10cm, more.ratio)
    assert more.across.off_percent <= one.across.off_percent


@given(lengths, lengths, st.fractions(min_value=1, max_value=60, max_denominator=20))
def test_more_width_never_takes_fewer_needles(width: Fraction, more: Fraction, per_10cm: Fraction) -> None:
    narrow, wide = needles_for(width, per_10cm), needles_for(width + more, per_10cm)
    assert narrow.count <= wide.count
    assert abs(narrow.off_mm) <= 50 / per_10cm
