"""The calculator of tension: the line read back, marks of the machine, refusal to go far, everything that is wrong."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

import pytest

import working
from wedgework.calculators.tension import CALCULATOR

F = Fraction


def swatches(text: str) -> dict[str, str]:
    """``5 30 42; 6 29 41`` as the three lists of the form."""
    lists = [part.split() for part in text.split(";")]
    typed = {name: "; ".join(one[i] for one in lists if len(one) > i) for i, name in enumerate(("tensions", "stitches", "rows"))}
    return typed


result = partial(working.result, CALCULATOR)


codes = partial(working.wrong, CALCULATOR)


def test_a_straight_line_read_back() -> None:
    found = result(**swatches("5 30; 6 29; 7 28"), wanted_stitches_per_10cm="28.5").values
    assert (found["tension"], found["nearest_mark"], found["stitches_per_number"]) == (F(13, 2), F(20, 3), -1)
    assert found["stitches_per_10cm_at_mark"] == F(85, 3)
    assert found["rows_per_10cm_at_mark"] is None


@pytest.mark.parametrize(("parts", "mark"), [("1", 7), ("2", F(13, 2)), ("3", F(20, 3)), ("4", F(13, 2)), ("10", F(13, 2))])
def test_marks_of_the_machine(parts: str, mark: Fraction) -> None:
    assert (
        result(**swatches("5 30; 6 29; 7 28"), wanted_stitches_per_10cm="28.5", marks_per_number=parts).values["nearest_mark"]
        == mark
    )


def test_rows_have_a_line_of_their_own() -> None:
    found = result(**swatches("5 30 42; 6 29 41; 7 28 40"), wanted_stitches_per_10cm="28", marks_per_number="1").values
    assert found["rows_per_10cm_at_mark"] == 40


def test_fractions_commas_and_orders_are_understood() -> None:
    plain = result(tensions="5; 6; 7.5", stitches="30; 29.5; 28", rows="", wanted_stitches_per_10cm="29").values
    assert plain == result(tensions=" 7 1/2 ; 5;6; ", stitches="28;30;29,5", rows="", wanted_stitches_per_10cm="29").values


def test_the_larger_uncertainty_counts() -> None:
    quiet = result(**swatches("5 30; 6 29; 7 28; 8 27"), stitches_off_percent="0").values["tension_off"]
    swatch = result(**swatches("5 30; 6 29; 7 28; 8 27"), stitches_off_percent="2").values["tension_off"]
    scatter = result(**swatches("5 30; 6 28.6; 7 28.4; 8 27"), stitches_off_percent="0").values["tension_off"]
    assert quiet == 0
    assert swatch > 0
    assert scatter > 0


def test_two_swatches_say_that_they_know_no_scatter() -> None:
    found = result(**swatches("6 29; 8 26"))
    assert found.values["scatter_known"] is False
    assert found.values["tension_off"] > 0


def test_a_little_outside_is_warned_of_and_far_is_refused() -> None:
    assert [w.code for w in result(wanted_stitches_per_10cm="26").warnings] == ["tension.outside"]
    assert codes(wanted_stitches_per_10cm="25") == [("wanted_stitches_per_10cm", "tension.far")]
    assert codes(wanted_stitches_per_10cm="35") == [("wanted_stitches_per_10cm", "tension.far")]


def test_swatches_that_leave_it_open() -> None:
    assert [w.code for w in result(**swatches("5 30; 6 28; 7 29")).warnings] == ["tension.loose"]


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        (
            {"tensions": "6; x; 40", "stitches": "29; 90", "rows": "1,000; 3"},
            ["tensions units.not-a-number", "tensions tension.out-of-range", "stitches tension.out-of-range", "rows units.comma"],
        ),
        ({"tensions": "6; 7", "stitches": "29; 28; 27", "rows": "40"}, ["stitches tension.not-alike", "rows tension.not-alike"]),
        (swatches("6 29"), ["tensions tension.how-many"]),
        (swatches("6 29; 6 28"), ["tensions tension.how-many"]),
        (swatches("; ".join(f"{i} 20" for i in range(11))), ["tensions tension.how-many"]),
        (swatches("6 28; 7 29"), ["stitches tension.rising"]),
        (swatches("6 28; 7 28"), ["stitches tension.rising"]),
        ({"tensions": "", "stitches": ""}, ["tensions declare.missing", "stitches declare.missing"]),
        ({"tensions": " ; ", "rows": ""}, ["tensions tension.how-many", "stitches tension.not-alike"]),
    ],
)
def test_what_is_no_line(typed: dict[str, str], expected: list[str]) -> None:
    assert [f"{where} {code}" for where, code in codes(**typed)] == expected
