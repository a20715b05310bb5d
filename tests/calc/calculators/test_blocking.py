"""The calculator of blocking: verdicts, the gauge really knitted, next time, lists that do not match."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

import pytest

import working
from wedgework.calculators.blocking import CALCULATOR
from wedgework.declare import Figures, work_out

F = Fraction
SQUARE = {"stitches": "30", "rows": "39", "width": "10", "height": "10"}


result = partial(working.result, CALCULATOR)


def test_three_verdicts() -> None:
    found = result(**SQUARE, widths="10.2 cm; 10.5 cm; 10 cm", heights="10 cm; 10 cm; 9.4 cm").values
    assert [panel["verdict"] for panel in found["panels"]] == ["fine", "block", "beyond"]
    assert (found["block_again"], found["beyond"]) == ([2], [3])
    assert [panel["width_off_percent"] for panel in found["panels"]] == [2, 5, 0]
    assert found["panels"][2]["height_off_percent"] == -6


def test_limits_of_ones_own() -> None:
    found = result(**SQUARE, widths="10.3 cm", heights="10 cm", fine_percent="3", reach_percent="3").values
    assert found["panels"][0]["verdict"] == "fine"


def test_the_gauge_that_was_really_knitted() -> None:
    found = result(**SQUARE, widths="10 cm; 10.8 cm", heights="9.8 cm; 9.8 cm").values
    assert found["stitches_per_10cm"] == F(3000) / 104
    assert found["rows_per_10cm"] == F(3900) / 98
    assert (found["planned_stitches_per_10cm"], found["planned_rows_per_10cm"]) == (30, 39)
    assert (found["next_stitches"], found["next_rows"]) == (29, 40)


@pytest.mark.parametrize(("width", "words"), [("9.5 cm", "looser"), ("10.5 cm", "tighter"), ("10 cm", "leave it")])
def test_which_way_the_tension_goes(width: str, words: str) -> None:
    last = result(**SQUARE, widths=width, heights="10 cm").view[-1]
    assert isinstance(last, Figures)
    assert words in last.rows[-1].value


def test_panels_of_different_height_pucker() -> None:
    assert [w.code for w in result(**SQUARE, widths="10; 10", heights="10; 10.5").warnings] == ["blocking.apart"]
    assert result(**SQUARE, widths="10; 10", heights="10; 10.4").warnings == ()


def test_everything_that_is_wrong_is_told() -> None:
    answer = work_out(CALCULATOR, {"widths": "67; 68", "heights": "219", "fine_percent": "6", "rows": "x"})
    assert [(p.where, p.code) for p in answer.problems] == [
        ("rows", "units.not-a-number"),
        ("heights", "blocking.not-alike"),
        ("reach_percent", "blocking.reach"),
    ]
    assert all(p.way_out for p in answer.problems)
    (problem,) = work_out(CALCULATOR, {"widths": "; ".join(["67"] * 13)}).problems
    assert (problem.where, problem.code) == ("widths", "units.too-many")
