"""The calculator of time: the sum, pauses, sittings, the range."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

import pytest

import working
from wedgework.calculators.time import CALCULATOR
from wedgework.declare import Figures, Table, work_out

F = Fraction
NOTHING = {
    "passes": "0", "needle_changes": "0", "block_changes": "0", "ends": "0", "hems": "0", "sewing": "0",
    "setup_minutes": "0", "finishing_minutes": "0", "break_minutes": "0",
}  # fmt: skip


result = partial(working.result, CALCULATOR)


@pytest.mark.parametrize(
    ("typed", "hours"),
    [
        ({"passes": "900", "seconds_per_pass": "4"}, F(1)),
        ({"needle_changes": "600", "seconds_per_change": "6"}, F(1)),
        ({"block_changes": "30", "seconds_per_block_change": "120"}, F(1)),
        ({"ends": "40", "seconds_per_end": "90"}, F(1)),
        ({"hems": "2", "minutes_per_hem": "30"}, F(1)),
        ({"sewing": "6 m", "seconds_per_10cm": "60"}, F(1)),
        ({"setup_minutes": "90"}, F(3, 2)),
        ({"finishing_minutes": "15"}, F(1, 4)),
    ],
)
def test_each_thing_alone(typed: dict[str, str], hours: Fraction) -> None:
    assert result(**{**NOTHING, **typed}).values["hours"] == hours


def test_pauses_and_range() -> None:
    typed = {"setup_minutes": "180", "break_minutes": "5", "range_percent": "20", "session_hours": "1"}
    found = result(**{**NOTHING, **typed}).values
    assert (found["work_hours"], found["break_hours"], found["hours"]) == (3, F(1, 2), F(7, 2))
    assert (found["hours_least"], found["hours_most"]) == (F(14, 5), F(21, 5))
    assert (found["sessions_least"], found["sessions"], found["sessions_most"]) == (3, 4, 5)


def test_the_table_adds_up() -> None:
    found = result()
    minutes = found.values["minutes"]
    assert sum(minutes.values(), F(0)) == found.values["work_hours"] * 60
    (table,) = [part for part in found.view if isinstance(part, Table)]
    assert len(table.rows) == len(minutes)


@pytest.mark.parametrize(("minutes", "words"), [("3", "5 min"), ("62", "1 h 00"), ("63", "1 h 05"), ("600", "10 h 00")])
def test_hours_are_said_to_five_minutes(minutes: str, words: str) -> None:
    figures = result(**{**NOTHING, "setup_minutes": minutes}).view[0]
    assert isinstance(figures, Figures)
    assert figures.rows[0].value == words


def test_nothing_to_do_and_nonsense() -> None:
    (problem,) = work_out(CALCULATOR, NOTHING).problems
    assert (problem.code, bool(problem.way_out)) == ("time.nothing", True)
    answer = work_out(CALCULATOR, {"passes": "-1", "sewing": "5 bananas", "session_hours": "0"})
    assert [(p.where, p.code) for p in answer.problems] == [
        ("passes", "declare.out-of-range"),
        ("sewing", "units.not-a-length"),
        ("session_hours", "declare.out-of-range"),
    ]
