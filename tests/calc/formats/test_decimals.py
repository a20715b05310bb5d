"""Numbers in files are exact."""

from __future__ import annotations

from fractions import Fraction

import pytest

from wedgework.formats.decimals import carried, decimal_text, exact_number, nearest_decimal


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("7.10", Fraction(71, 10)),
        ("0.1", Fraction(1, 10)),
        ("-0.25", Fraction(-1, 4)),
        ("60.0", 60),
        ("1.2e2", 120),
        ("5E-1", Fraction(1, 2)),
        ("-0.0", 0),
        ("0.30000000000000004", Fraction(30000000000000004, 10**17)),
    ],
)
def test_a_number_is_what_its_digits_say(text: str, number: int | Fraction) -> None:
    read = exact_number(text)
    assert read == number
    assert type(read) is type(number)


@pytest.mark.parametrize("text", ["1e20", "1e999999999", "1e-41", "0." + "1" * 41, "1" + "0" * 200, "1e-999999999"])
def test_numbers_beyond_reason_are_none(text: str) -> None:
    assert exact_number(text) is None


@pytest.mark.parametrize(
    ("number", "text"),
    [(3, "3"), (Fraction(71, 10), "7.1"), (Fraction(-1, 8), "-0.125"), (Fraction(1, 10**7), "0.0000001"), (Fraction(6, 2), "3")],
)
def test_the_text_is_the_shortest_decimal(number: int | Fraction, text: str) -> None:
    assert decimal_text(number) == text


def test_a_third_has_no_decimal() -> None:
    with pytest.raises(ValueError, match="nearest_decimal"):
        decimal_text(Fraction(1, 3))
    assert decimal_text(nearest_decimal(Fraction(1, 3), 4)) == "0.3333"


def test_rounding_goes_to_even_in_the_middle() -> None:
    assert [nearest_decimal(Fraction(n, 100), 1) for n in (5, 15, 25)] == [0, Fraction(1, 5), Fraction(1, 5)]


def test_a_float_carries_only_what_it_says_itself() -> None:
    assert carried(Fraction(71, 10)) == 7.1
    assert carried(Fraction(6, 2)) == 3
    assert isinstance(carried(Fraction(6, 2)), int)
    long = Fraction(70000000000000001, 10**17)
    assert carried(long) == long
