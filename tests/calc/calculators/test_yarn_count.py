"""The calculator of yarn counts: promised names, plies, categories, what is no yarn."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

import pytest

import working
from wedgework.calculators.yarn_count import CALCULATOR
from wedgework.declare import Table, work_out

PROMISED = {"tex", "dtex", "denier", "nm", "cotton_ne", "worsted", "run", "lea", "metres_per_gram", "yards_per_pound"}


result = partial(working.result, CALCULATOR)


def test_the_promised_fields_and_results_are_there() -> None:
    assert {"value", "system"} <= set(CALCULATOR.defaults)
    assert PROMISED | {"metres_per_50g", "metres_per_100g"} <= set(result().values)
    system = CALCULATOR.field("system")
    assert system is not None
    assert {"tex", "dtex", "denier", "nm", "cotton", "worsted", "run", "lea"} <= set(system.choices)


def test_a_number_may_have_a_comma_or_a_fraction() -> None:
    assert result(value="12,5", system="tex").values["tex"] == Fraction(25, 2)
    assert result(value="1 1/2", system="run").values["run"] == Fraction(3, 2)


def test_plies_are_one_yarn_together() -> None:
    found = result(value="30", system="nm", plies="2").values
    assert (found["nm"], found["metres_per_100g"], found["ply_tex"]) == (15, 1500, Fraction(100, 3))


def test_categories_need_a_gauge() -> None:
    found = result(value="20", system="tex", stitches_per_10cm="")
    assert found.values["categories"] == []
    assert not any(isinstance(part, Table) for part in found.view)


def test_two_categories_where_two_fit() -> None:
    found = result(stitches_per_10cm="23")
    assert found.values["categories"] == [2, 3]
    assert found.values["category_names"] == ["Fine", "Light"]
    (table,) = [part for part in found.view if isinstance(part, Table)]
    assert table.rows == (("2 Fine", "23 to 26", "3.25 to 3.75 mm"), ("3 Light", "21 to 24", "3.75 to 4.5 mm"))


def test_finer_than_lace_and_the_thickest() -> None:
    (table,) = [part for part in result(stitches_per_10cm="60").view if isinstance(part, Table)]
    assert table.rows[0][0] == "none: finer than lace"
    (table,) = [part for part in result(stitches_per_10cm="5").view if isinstance(part, Table)]
    assert table.rows == (("7 Jumbo", "6 stitches and fewer", "12.75 mm and larger"),)


def test_what_is_no_yarn_is_refused_with_the_range_of_its_system() -> None:
    answer = work_out(CALCULATOR, {"value": "90000", "system": "tex", "plies": "3"})
    assert [(p.where, p.code) for p in answer.problems] == [("value", "yarn.out-of-range")]
    assert "type 0.1667 to 6667" in answer.problems[0].way_out
    answer = work_out(CALCULATOR, {"value": "20000", "system": "nm"})
    assert "type 0.05 to 2000" in answer.problems[0].way_out


@pytest.mark.parametrize("typed", ["0", "-3", "x", ""])
def test_a_count_is_above_zero(typed: str) -> None:
    (problem,) = work_out(CALCULATOR, {"value": typed}).problems
    assert problem.where == "value"
    assert "a number above zero" in problem.way_out


def test_a_stroke_read_as_a_fraction_is_asked_about() -> None:
    (warning,) = result(value="2/15", system="nm").warnings
    assert (warning.where, warning.code) == ("value", "yarn.very-thick")
    assert result(value="40/2", system="cotton").warnings == ()
