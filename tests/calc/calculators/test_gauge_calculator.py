"""The gauge calculator: promised names, washed before unwashed."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

import pytest

import working
from wedgework.calculators.gauge import CALCULATOR
from wedgework.calculators.tension import CALCULATOR as TENSION
from wedgework.declare import Figures, Table, work_out

result = partial(working.result, CALCULATOR)


def test_the_promised_fields_and_results_are_there() -> None:
    assert {"stitches", "width", "rows", "height"} <= set(CALCULATOR.defaults)
    assert {"stitches_per_10cm", "rows_per_10cm", "ratio"} <= set(result().values)


def test_stitches_over_width() -> None:
    found = result(stitches="30", width="10 cm", rows="39", height="100 mm").values
    assert (found["stitches_per_10cm"], found["rows_per_10cm"], found["ratio"]) == (30, 39, Fraction(13, 10))


def test_inches_and_fractions() -> None:
    found = result(stitches="20", width="5 1/4 in; 5,25 in", rows="30", height='5 1/4"').values
    assert found["width_mm"] == Fraction(13335, 100)
    assert found["stitches_per_inch"] == Fraction(20) / Fraction(21, 4)


def test_the_washed_swatch_gives_the_main_figures() -> None:
    found = result(stitches="40", width="30 cm", rows="60", height="30 cm", washed_width="28.5 cm", washed_height="30.6 cm")
    assert found.values["stitches_per_10cm"] == Fraction(4000, 285)
    assert found.values["unwashed_stitches_per_10cm"] == Fraction(4000, 300)
    assert (found.values["washing_width_percent"], found.values["washing_height_percent"]) == (-5, 2)
    first, second = found.view[:2]
    assert isinstance(first, Figures)
    assert "after washing" in first.title
    assert isinstance(second, Figures)
    assert [row.value for row in second.rows[:2]] == ["shrinks by 5.0 %", "grows by 2.0 %"]


def test_warnings_name_the_field_that_was_typed() -> None:
    found = result(width="28 cm; 31 cm", washed_width="28 cm; 31 cm", washed_height="30 cm")
    assert [w.where for w in found.warnings] == ["washed_width"]


@pytest.mark.parametrize(("typed", "missing"), [("washed_width", "washed_height"), ("washed_height", "washed_width")])
def test_half_a_washing_is_refused(typed: str, missing: str) -> None:
    answer = work_out(CALCULATOR, {typed: "28 cm", "stitches": "x"})
    assert [(p.where, p.code) for p in answer.problems] == [
        ("stitches", "units.not-a-number"),
        (missing, "gauge.half-washed"),
    ]


def test_a_washed_width_that_cannot_be_read_is_told_once() -> None:
    answer = work_out(CALCULATOR, {"washed_width": "x", "washed_height": "28 cm"})
    assert [(p.where, p.code) for p in answer.problems] == [("washed_width", "units.not-a-length")]


def test_stitches_between_marked_needles() -> None:
    marked = result(counted="needles")
    assert marked.values["stitches_between_marks"] == 40
    assert marked.values["stitches_per_10cm"] == result().values["stitches_per_10cm"]
    assert result(counted="needles", first_mark="l 5", last_mark="r3").values["stitches_between_marks"] == 6


def test_three_states_each_direction_for_itself() -> None:
    found = result(machine_height="36 cm", washed_width="28 cm", washed_height="31 cm").values
    assert found["machine_rows_per_10cm"] == Fraction(60 * 100, 360)
    assert "machine_stitches_per_10cm" not in found
    mean = Fraction(3140 + 3170 + 3160, 30)
    assert found["rest_height_percent"] == (mean / 360 - 1) * 100
    assert found["rows_per_10cm"] == Fraction(60 * 100, 310), "the washed state is the one to plan with"


def test_the_states_are_shown_where_they_were_measured() -> None:
    titles = [getattr(part, "title", "") for part in result().view]
    assert "The three states" not in titles
    table = next(part for part in result(machine_width="27 cm").view if getattr(part, "title", "") == "The three states")
    assert isinstance(table, Table)
    assert [row[0] for row in table.rows] == ["On the machine", "Rested"]
    assert table.rows[0][2] == "not measured"


def test_a_state_that_cannot_be() -> None:
    assert [w.code for w in result(machine_height="65 cm").warnings] == ["gauge.machine-change"]


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ({"first_mark": "21"}, [("first_mark", "gauge.not-a-needle")]),
        ({"first_mark": "L0", "last_mark": "X3"}, [("first_mark", "gauge.not-a-needle"), ("last_mark", "gauge.not-a-needle")]),
        ({"first_mark": "R1", "last_mark": "R2"}, [("last_mark", "gauge.nothing-between")]),
        ({"first_mark": "R9", "last_mark": "L9"}, [("last_mark", "gauge.nothing-between")]),
    ],
)
def test_marks_that_cannot_be(typed: dict[str, str], expected: list[tuple[str, str]]) -> None:
    problems = work_out(CALCULATOR, {"counted": "needles", **typed}).problems
    assert [(p.where, p.code) for p in problems] == expected


LINE = {"own_tension": "7", "other_tensions": "6; 8", "other_stitches": "14.9; 13.3", "wanted_stitches_per_10cm": "14.5"}


def test_more_swatches_at_other_tensions_are_the_line_of_the_tension_page() -> None:
    """The swatch of the form is one of them, with its own uncertainty."""
    found = result(**LINE, width="100 mm", stitches="14", height="100 mm", rows="19").values
    typed = {"tensions": "7; 6; 8", "stitches": "14; 14.9; 13.3", "rows": "", "wanted_stitches_per_10cm": "14.5"}
    there = working.values(TENSION, **typed, stitches_off_percent=str(float(found["stitches_off_percent"])))
    for key in ("tension", "nearest_mark", "stitches_per_number", "stitches_per_10cm_at_mark"):
        assert found[key] == there[key]
    assert float(found["tension_off"]) == pytest.approx(float(there["tension_off"]))
    assert "tension" not in result().values


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ({"own_tension": "7"}, ["other_tensions", "other_stitches", "wanted_stitches_per_10cm"]),
        ({**LINE, "other_stitches": "14.9"}, ["other_stitches"]),
        ({**LINE, "other_stitches": "14.9; many"}, ["other_stitches"]),
        ({**LINE, "other_tensions": "7; 7"}, ["other_tensions"]),
        ({**LINE, "wanted_stitches_per_10cm": "20"}, ["wanted_stitches_per_10cm"]),
        ({**LINE, "other_stitches": "13.3; 14.9"}, ["other_stitches"]),
    ],
)
def test_what_is_wrong_with_them_is_told_at_their_fields(typed: dict[str, str], expected: list[str]) -> None:
    """Missing, unequal, no number, one tension only, far from every swatch, a line that rises."""
    assert [where for where, _ in working.wrong(CALCULATOR, **typed)] == expected
