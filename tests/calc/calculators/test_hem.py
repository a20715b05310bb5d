"""The hem calculator: rows, sides of the carriage, needles to empty, the order of steps, everything that is wrong."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

import pytest

import working
from wedgework.calculators.hem import CALCULATOR
from wedgework.declare import Bullets, Result, work_out

F = Fraction


result = partial(working.result, CALCULATOR)


def steps(found: Result) -> tuple[str, ...]:
    (listed,) = (part for part in found.view if isinstance(part, Bullets))
    return listed.items


@pytest.mark.parametrize("kind", ["plain", "picot"])
@pytest.mark.parametrize("where", ["bottom", "top"])
@pytest.mark.parametrize(("facing", "more"), [("equal", 0), ("shorter", -1), ("longer", 1)])
@pytest.mark.parametrize("side", ["left", "right"])
def test_the_carriage_ends_where_its_rows_take_it(kind: str, where: str, facing: str, more: int, side: str) -> None:
    found = result(kind=kind, where=where, facing=facing, carriage=side).values
    assert found["facing_rows"] == found["outside_rows"] + more
    assert found["rows"] == found["facing_rows"] + found["outside_rows"] + (kind == "plain") + (where == "top")
    other = {"left": "right", "right": "left"}[side]
    assert found["carriage_after"] == (side if found["rows"] % 2 == 0 else other)
    assert found["adds_mm"] == F(found["outside_rows"] * 100, 19), "the facing adds no length"
    assert found["stitches_knitted"] == found["rows"] * 105


def test_needles_to_empty_by_name() -> None:
    found = result(stitches="21").values
    assert found["emptied"] == ["L9", "L7", "L5", "L3", "L1", "R2", "R4", "R6", "R8", "R10"]
    assert (found["eyelets"], found["points"], found["untouched_stitches"]) == (10, 9, 1)
    even = result(stitches="20").values
    assert (even["eyelets"], even["untouched_stitches"]) == (9, 2)
    assert even["emptied"][-1] == "R8"
    assert "emptied" not in result(kind="plain").values


def test_tensions_go_up_and_come_back() -> None:
    found = result(kind="plain", tension="6.5", facing_tighter="1.5", fold_looser="2")
    assert [found.values[f"tension_{part}"] for part in ("facing", "outside", "fold")] == [5, 6.5, 8.5]
    said = steps(found)
    fold = next(i for i, words in enumerate(said) if "8.5" in words)
    assert "Turn the tension back, to 6.5" in said[fold]
    assert said[fold - 1].startswith("Tension 5:")
    assert said[fold + 1].startswith("Tension 6.5:")


def test_the_top_is_knitted_the_other_way_round() -> None:
    bottom, top = (steps(result(where=where, tension="7", facing_tighter="2")) for where in ("bottom", "top"))
    order = [[words.split(":")[0] for words in said if words.startswith("Tension")] for said in (bottom, top)]
    assert order == [["Tension 5", "Tension 7"], ["Tension 7", "Tension 5"]]
    assert "waste yarn" in bottom[0]
    assert top[-1] == "Bind off loosely."


def test_a_dial_that_does_not_reach_and_a_hem_that_is_too_low() -> None:
    assert [w.code for w in result(kind="plain", tension="10", fold_looser="4").warnings] == ["hem.too-loose"]
    assert [w.code for w in result(depth="0.5", rows_per_10cm="4").warnings] == ["hem.shallow"]


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ({"tension": "1", "facing_tighter": "2"}, [("facing_tighter", "hem.too-tight")]),
        ({"stitches": "5", "depth": "9 m"}, [("depth", "declare.out-of-range"), ("stitches", "declare.out-of-range")]),
    ],
)
def test_what_cannot_be(typed: dict[str, str], expected: list[tuple[str, str]]) -> None:
    problems = work_out(CALCULATOR, typed).problems
    assert [(p.where, p.code) for p in problems] == expected
    assert all(p.way_out for p in problems)
