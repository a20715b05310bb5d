"""One field: what it takes, what it refuses, what it says."""

from __future__ import annotations

from fractions import Fraction

import pytest

from wedgework.declare import Field, choice, colour, decimal, length, lengths, text, whole, yes_no
from wedgework.problems import Refused

WIDTH = length("width", "10 cm", 1, 300, "cm")
WIDTHS = lengths("width", "10 cm", 1, 300, "cm")
COUNT = whole("needles", "10", 4, 1000, "needles")


def refused(field: Field, typed: str) -> list[str]:
    with pytest.raises(Refused) as caught:
        field.read(typed)
    assert {p.where for p in caught.value.problems} == {field.name}
    assert all(field.range_text in p.way_out for p in caught.value.problems), "what is allowed is said"
    return [p.code for p in caught.value.problems]


def test_each_kind_reads_its_value() -> None:
    assert COUNT.read(" 12 ") == 12
    assert type(COUNT.read("12")) is int
    assert decimal("d", "1", 0, 9).read("7 1/2") == Fraction(15, 2)
    assert WIDTH.read("5 1/4 in") == Fraction(13335, 100)
    assert WIDTHS.read("10; 11; 12 cm") == (100, 110, 120)
    assert choice("c", "a", ("a", "b")).read("b") == "b"
    assert colour("c", "#000000").read("#A0B0C0") == "#a0b0c0"
    assert text("t", "").read("  two   words ") == "two words"
    assert yes_no("y", "no").read("yes") is True


@pytest.mark.parametrize(
    ("field", "typed", "code"),
    [
        (COUNT, "", "declare.missing"),
        (COUNT, "12.5", "declare.not-whole"),
        (COUNT, "3", "declare.out-of-range"),
        (COUNT, "1001", "declare.out-of-range"),
        (COUNT, "many", "units.not-a-number"),
        (WIDTH, "301", "declare.out-of-range"),
        (WIDTH, "9.9 mm", "declare.out-of-range"),
        (WIDTH, "1 lb", "units.not-a-length"),
        (choice("c", "a", ("a", "b")), "A", "declare.not-a-choice"),
        (colour("c", "#000000"), "red", "declare.not-a-colour"),
        (colour("c", "#000000"), "#12345", "declare.not-a-colour"),
        (text("t", "", longest=3), "four", "declare.too-long"),
        (yes_no("y", "no"), "maybe", "declare.not-a-choice"),
        (text("t", ""), "a\x00b", "declare.odd-characters"),
        (text("t", ""), "a\u202eb", "declare.odd-characters"),
        (text("t", ""), "a\ud800b", "declare.odd-characters"),
    ],
)
def test_what_does_not_fit_is_refused_by_its_code(field: Field, typed: str, code: str) -> None:
    assert refused(field, typed) == [code]


def test_limits_are_allowed_themselves() -> None:
    assert [COUNT.read(t) for t in ("4", "1000")] == [4, 1000]
    assert [WIDTH.read(t) for t in ("1", "300 cm", "10 mm", "3 m")] == [10, 3000, 10, 3000]


def test_each_measurement_is_held_against_the_range() -> None:
    assert refused(WIDTHS, "10; 400") == ["declare.out-of-range"]


def test_an_optional_field_may_stay_empty() -> None:
    assert whole("n", "", 1, 2, optional=True).read("  ") is None


def test_the_range_is_said_with_its_unit() -> None:
    assert COUNT.range_text == "4 to 1000 needles"
    assert WIDTH.range_text == "1 to 300 cm"
    assert WIDTHS.range_text == "1 to 300 cm; up to 5 measurements, separated by semicolons"
    assert decimal("d", "1", Fraction(1, 50), 1).range_text == "0.02 to 1"


@pytest.mark.parametrize("name", ["", "Width", "1st", "a-b", "json", "help"])
def test_a_name_that_cannot_be_typed_is_a_programmers_mistake(name: str) -> None:
    with pytest.raises(ValueError, match="name"):
        text(name, "")


def test_a_length_wants_a_unit_that_is_known() -> None:
    with pytest.raises(ValueError, match="ell"):
        length("width", "1", 1, 2, "ell")
