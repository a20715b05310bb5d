"""The circle calculator: shapes, wedges that add up, from the rim inward, everything that is wrong."""

from __future__ import annotations

from functools import partial

import pytest

import working
from wedgework.calculators.circle import CALCULATOR
from wedgework.declare import work_out

SHAPES = ("disc", "cone", "dome", "ruffle")


result = partial(working.result, CALCULATOR)


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("wedges", ["", "2", "5", "8", "11"])
def test_wedges_add_up_to_the_rows_of_the_rim(shape: str, wedges: str) -> None:
    found = result(shape=shape, wedges=wedges).values
    assert 2 * sum(found["turns"]) + found["plain_rows"] == found["outer_rows"]
    assert max(found["turns"]) - min(found["turns"]) <= 1
    assert len(found["turns"]) == found["wedges"]
    assert abs(found["outer_mm"] - found["outer_wanted_mm"]) <= 200 / 19
    for one in found["wedge_steps"]:
        assert sum(one["hold"]) == found["stitches"]
    assert sum(one["wedges"] for one in found["wedge_steps"]) == found["wedges"]


def test_left_over_and_wedges_are_the_whole_angle() -> None:
    found = result(wedges="7").values
    assert found["angle"] == 360
    assert 7 * found["natural_wedge_angle"] + found["leftover_angle"] == 360


def test_more_wedges_stand_out_less() -> None:
    out = [result(wedges=str(n)).values["corner_out_mm"] for n in (3, 5, 8, 16, 60)]
    assert out == sorted(out, reverse=True)
    assert "corner_out_mm" not in result(wedges="2").values


@pytest.mark.parametrize("shape", SHAPES)
def test_from_the_rim_inward(shape: str) -> None:
    found = result(shape=shape, made="inward", sections="9").values
    assert found["stitches"] - 9 * len(found["decrease_rows"]) == found["stitches_left"]
    assert found["decrease_rows"][-1] <= found["rows"]
    assert abs(found["outer_mm"] - found["outer_wanted_mm"]) <= 100 / 14 * (9 / 2 + 1)
    assert found["stitches_left"] == (70 if shape == "ruffle" else 9)


def test_wider_than_the_bed() -> None:
    assert [w.code for w in result(diameter="200", bed_needles="110").warnings] == ["circle.too-wide"]
    assert [w.code for w in result(made="inward", bed_needles="110").warnings] == ["circle.too-wide"]
    assert result(bed_needles="110").warnings == ()


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ({"diameter": "5", "wedges": "40"}, [("wedges", "circle.too-few-rows")]),
        (
            {"shape": "ruffle", "fullness": "1.05", "edge": "5", "depth": "60", "per_step": "20"},
            [("per_step", "circle.too-few-rows")],
        ),
        ({"made": "inward", "sections": "3"}, [("sections", "circle.too-few-sections")]),
        ({"diameter": "1 mile", "wedges": "0"}, [("diameter", "units.not-a-length"), ("wedges", "declare.out-of-range")]),
    ],
)
def test_what_cannot_be(typed: dict[str, str], expected: list[tuple[str, str]]) -> None:
    problems = work_out(CALCULATOR, typed).problems
    assert [(p.where, p.code) for p in problems] == expected
    assert all(p.way_out for p in problems)
