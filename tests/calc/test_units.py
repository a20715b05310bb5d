"""Numbers and lengths as people type them."""

from __future__ import annotations

from fractions import Fraction

import pytest

from wedgework.problems import Refused
from wedgework.units import (
    both_text,
    decimal_text,
    inches_text,
    length_mm,
    lengths_mm,
    mass_g,
    mixed_text,
    number,
    per_10cm,
    per_inch_too,
    plain,
    short_decimal,
    signed_text,
    significant,
    yards_too,
)


@pytest.mark.parametrize(
    ("typed", "value"),
    [
        ("12", Fraction(12)),
        ("12.4", Fraction(124, 10)),
        ("12,4", Fraction(124, 10)),
        (" 12.40 ", Fraction(124, 10)),
        (".5", Fraction(1, 2)),
        (",5", Fraction(1, 2)),
        ("0,125", Fraction(1, 8)),
        ("7 1/2", Fraction(15, 2)),
        ("7-1/2", Fraction(15, 2)),
        ("1/4", Fraction(1, 4)),
        ("7½", Fraction(15, 2)),
        ("½", Fraction(1, 2)),
        ("7 3\u20448", Fraction(59, 8)),
        ("-3", Fraction(-3)),
        ("\u22123 1/2", Fraction(-7, 2)),
        ("+3", Fraction(3)),
        ("0.1", Fraction(1, 10)),
    ],
)
def test_a_number_is_read_exactly(typed: str, value: Fraction) -> None:
    assert number(typed) == value


@pytest.mark.parametrize(
    "typed",
    ["", "x", "12.4.1", "1e3", "NaN", "inf", "--3", "1/2/3", "12 4", "\u0663", "9" * 200, "5 cm", "1 000"],
)
def test_what_is_no_number_is_refused(typed: str) -> None:
    with pytest.raises(Refused) as caught:
        number(typed)
    assert [p.code for p in caught.value.problems] == ["units.not-a-number"]


@pytest.mark.parametrize("typed", ["1,250", "12,400", "1,250,000"])
def test_a_comma_that_can_be_read_in_two_ways_is_asked_about(typed: str) -> None:
    with pytest.raises(Refused) as caught:
        number(typed)
    assert caught.value.problems[0].code == "units.comma"
    assert typed in caught.value.problems[0].sentence


def test_a_zero_below_the_line_is_named() -> None:
    with pytest.raises(Refused) as caught:
        number("1/0")
    assert caught.value.problems[0].code == "units.zero-below"


@pytest.mark.parametrize(
    ("typed", "mm"),
    [
        ("12.4 cm", Fraction(124)),
        ("12,4cm", Fraction(124)),
        ("124 mm", Fraction(124)),
        ("0.9 m", Fraction(900)),
        ("5 1/4 in", Fraction(13335, 100)),
        ('7 1/2"', Fraction(1905, 10)),
        ("7½″", Fraction(1905, 10)),
        ("7.5 inches", Fraction(1905, 10)),
        ("3 ft", Fraction(9144, 10)),
        ("5 ft 3 in", Fraction(16002, 10)),
        ("5' 3 1/2\"", Fraction(16129, 10)),
        ("1 yd", Fraction(9144, 10)),
        ("12.4 CM", Fraction(124)),
        ("12.4 cm.", Fraction(124)),
        ("12.4", Fraction(124)),
        ("12.4\u00a0cm", Fraction(124)),
    ],
)
def test_a_length_may_be_typed_with_its_unit(typed: str, mm: Fraction) -> None:
    assert length_mm(typed, "cm") == mm


@pytest.mark.parametrize(
    ("typed", "to_10_cm"),
    [
        ("14", Fraction(14)),
        ("14,5", Fraction(29, 2)),
        ("3 1/2", Fraction(7, 2)),
        ("7 per in", Fraction(7 * 1000, 254)),
        ("7/in", Fraction(7 * 1000, 254)),
        ('3 1/2 stitches per 1"', Fraction(35 * 100, 254)),
        ("28 sts over 4 in", Fraction(7 * 1000, 254)),
        ("28 rows / 10 cm", Fraction(28)),
        ("28/10cm", Fraction(28)),
        ("7 to an inch", Fraction(7 * 1000, 254)),
        ("3.5 in 1 in", Fraction(35 * 100, 254)),
        ("12 per 5 cm", Fraction(24)),
        ("7 1/2 in", None),
        ("28 per 0 cm", None),
        ("per in", None),
        ("seven", None),
        ("1,234", None),
    ],
)
def test_a_gauge_may_be_typed_to_any_length(typed: str, to_10_cm: Fraction | None) -> None:
    """1 in = 2.54 cm: 7 stitches to the inch are 27.56 to 10 cm."""
    if to_10_cm is not None:
        assert per_10cm(typed) == to_10_cm
        return
    with pytest.raises(Refused) as refused:
        per_10cm(typed)
    (problem,) = refused.value.problems
    assert problem.way_out


def test_both_units_of_a_gauge_and_of_a_length_of_yarn() -> None:
    """Published: 28 stitches to 4 in are 7 to the inch; 100 m are 109 yd (1 yd = 0.9144 m exactly)."""
    assert per_inch_too(per_10cm("28 over 4 in")) == "27.56 (7.00 per inch)"
    assert yards_too(Fraction(100_000)) == "100\u00a0m (109\u00a0yd)"


def test_a_bare_number_is_in_the_fields_own_unit() -> None:
    assert (length_mm("9", "mm"), length_mm("9", "cm"), length_mm("9", "in")) == (9, 90, Fraction(2286, 10))


@pytest.mark.parametrize(
    "typed",
    ["", "cm", "12 km", "12 g", "3 in 5 ft", "5 ft -3 in", "3 in 3 in", "12 cm wide", "12;13", "5 ft 3"],
)
def test_what_is_no_length_is_refused_with_the_units_that_are_known(typed: str) -> None:
    with pytest.raises(Refused) as caught:
        length_mm(typed, "cm")
    problem = caught.value.problems[0]
    assert problem.code == "units.not-a-length"
    assert "mm, cm, m, in, ft, yd" in problem.way_out


def test_several_measurements_are_separated_by_semicolons() -> None:
    assert lengths_mm("12.4; 12.6; 12.5", "cm") == (124, 126, 125)
    assert lengths_mm("12.4 cm; 5 in; 125 mm;", "cm") == (124, 127, 125)


def test_a_unit_after_the_last_measurement_alone_is_meant_for_all() -> None:
    assert lengths_mm("5; 5 1/8; 5 1/4 in", "cm") == (127, Fraction(130175, 1000), Fraction(13335, 100))


def test_a_unit_within_the_list_is_not_carried_over() -> None:
    assert lengths_mm("5 in; 12", "cm") == (127, 120)


def test_six_measurements_are_too_many() -> None:
    with pytest.raises(Refused) as caught:
        lengths_mm("1;2;3;4;5;6", "cm")
    assert caught.value.problems[0].code == "units.too-many"


def test_every_measurement_that_cannot_be_read_is_told() -> None:
    with pytest.raises(Refused) as caught:
        lengths_mm("12 cm; x; 1,250; y", "cm")
    assert [p.code for p in caught.value.problems] == ["units.not-a-length", "units.comma", "units.not-a-length"]


def test_masses() -> None:
    assert mass_g("100", "g") == 100
    assert mass_g("1 lb", "g") == Fraction(45359237, 100000)
    assert mass_g("1 lb 8 oz", "g") == Fraction(45359237, 100000) * Fraction(3, 2)
    with pytest.raises(Refused):
        mass_g("3 cm", "g")


@pytest.mark.parametrize(
    ("value", "digits", "text"),
    [
        (Fraction(133, 1), 0, "133"),
        (Fraction(5, 2), 0, "3"),
        (Fraction(-5, 2), 0, "-3"),
        (Fraction(1, 20), 1, "0.1"),
        (Fraction(-1, 100), 1, "0.0"),
        (Fraction(2, 3), 2, "0.67"),
        (Fraction(2675, 1000), 2, "2.68"),  # as a float 2.675 lies below the half and would give 2.67
        (Fraction(9), 1, "9.0"),
        (Fraction(999, 1000), 2, "1.00"),
        (7, 2, "7.00"),
    ],
)
def test_decimal_text_is_rounded_once_from_the_exact_value(value: Fraction, digits: int, text: str) -> None:
    assert decimal_text(value, digits) == text


def test_short_decimals_drop_zeros_behind_the_point_only() -> None:
    assert [short_decimal(Fraction(v), 2) for v in ("9", "4.50", "100", "12.25", "0.001")] == ["9", "4.5", "100", "12.25", "0"]


def test_plain_numbers_are_whole_where_they_are() -> None:
    assert repr(plain(Fraction(30))) == "30"
    assert repr(plain(Fraction(1, 3))) == "0.333333"
    assert repr(plain(Fraction(-2, 3))) == "-0.666667"
    assert repr(plain(Fraction(1, 10_000_000))) == "0"


def test_inches_stand_as_on_a_tape() -> None:
    assert [mixed_text(Fraction(v)) for v in ("7", "1/2", "15/2", "-15/2", "0")] == ["7", "1/2", "7 1/2", "-7 1/2", "0"]
    assert inches_text(Fraction(285)) == "11 1/4 in"
    assert inches_text(Fraction(254)) == "10 in"
    assert (inches_text(Fraction(1)), inches_text(Fraction("1.6")), inches_text(Fraction("0.7"))) == ("1/16 in", "1/8 in", "0 in")
    assert both_text(Fraction(285)) == "28.5 cm (11 1/4 in)"


@pytest.mark.parametrize(
    ("value", "text"),
    [
        ("0", "0"),
        ("0.016534", "0.01653"),
        ("29.527", "29.53"),
        ("1653.52", "1654"),
        ("180000", "180000"),
        ("9.99999", "10"),
        ("-2.5", "-2.5"),
    ],
)
def test_significant_figures(value: str, text: str) -> None:
    assert significant(Fraction(value)) == text


@pytest.mark.parametrize(
    ("value", "text"), [("12.45", "+12.5"), ("-3", "\u22123.0"), ("0", "0.0"), ("-0.04", "0.0"), ("0.05", "+0.1")]
)
def test_differences_have_a_sign(value: str, text: str) -> None:
    assert signed_text(Fraction(value), 1) == text
