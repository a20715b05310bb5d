"""Hems against published lessons in machine knitting, a university examination's loop geometry, and the standard library."""

from __future__ import annotations

import math
from fractions import Fraction
from functools import partial

import pytest

import working
from pieces import hemmed, piece
from wedgework.bed import place
from wedgework.calculators.hem import CALCULATOR
from wedgework.declare import Bullets
from wedgework.formats.design import DrawnLayout
from wedgework.formats.plan import BindOff, Cut, Hang, Knit, Set, Transfer
from wedgework.hems import picot
from wedgework.plan import plan_piece

F = Fraction


result = partial(working.result, CALCULATOR)


def test_a_picot_hem_of_a_lesson() -> None:
    """A published lesson on hems at a machine: 21 stitches, tension 5, the hem at 4; 8 rows, every second stitch from the second
    one on to its neighbour on the left, the emptied needles stay in work, 8 rows, hang."""
    found = result(kind="picot", stitches="21", depth="8 cm", rows_per_10cm="10", tension="5", facing_tighter="1")
    assert (found.values["facing_rows"], found.values["outside_rows"], found.values["fold_rows"]) == (8, 8, 0)
    assert found.values["tension_facing"] == 4
    assert found.values["eyelets"] == 10
    assert [place for place in range(1, 22) if place in picot(21).emptied] == list(range(2, 21, 2))


def test_a_folded_hem_of_a_lesson() -> None:
    """The same lesson: a plain hem of 16 rows in all at one number tighter, hung and joined by a row two numbers looser."""
    found = result(kind="plain", stitches="20", depth="8 cm", rows_per_10cm="10", tension="5", facing_tighter="1")
    assert found.values["facing_rows"] + found.values["outside_rows"] == 16
    top = result(kind="plain", where="top", stitches="20", tension="5")
    (steps,) = (part for part in top.view if isinstance(part, Bullets))
    assert any("Turn the tension up, to 7" in words for words in steps.items)


def test_the_planned_hem_is_that_of_the_lesson() -> None:
    """The same lesson, knitted by the planner: 21 stitches at tension 5, the hem at 4; 8 rows, every second stitch to its
    neighbour on the left, 8 rows, hang."""
    plan = plan_piece(hemmed(piece(DrawnLayout("a"), 21, 20), 5, rows=8, bottom="picot"))
    blocks = [block for block in plan.blocks if block.id.startswith("hem")]
    steps = plan.steps[blocks[0].first_step : blocks[-1].last_step + 1]
    moves = [step for step in steps if isinstance(step, Transfer)]
    assert [place(step.from_needle) - place(plan.first_needle) + 1 for step in moves] == list(range(2, 21, 2))
    assert all(place(step.from_needle) - place(step.to_needle) == 1 for step in moves)
    assert [sum(isinstance(s, Knit) and s.block == block.id for s in steps) for block in blocks] == [8, 8]
    assert [step.tension for step in steps if isinstance(step, Set)] == [4, 5]
    assert isinstance(steps[-1], Hang)


def test_the_planned_hem_at_the_top_closes_with_the_row_of_the_lesson() -> None:
    """The same lesson: hung and joined by a row two numbers looser."""
    plan = plan_piece(hemmed(piece(DrawnLayout("a"), 20, 20), 5, rows=8, top="plain"))
    hung = next(at for at, step in enumerate(plan.steps) if isinstance(step, Hang))
    assert plan.steps[hung + 1] == Set(tension=F(7))
    assert [type(step) for step in plan.steps[hung + 2 :]] == [Knit, BindOff, Cut]


def test_a_hem_with_a_loose_row() -> None:
    """A second published article on hems without a second bed: 20 rows, one row at a higher tension for the fold, 20 rows."""
    found = result(kind="plain", depth="20 cm", rows_per_10cm="10").values
    assert (found["facing_rows"], found["fold_rows"], found["outside_rows"]) == (20, 1, 20)
    assert found["tension_fold"] > found["tension_outside"]


def test_a_picot_hem_of_hand_knitters() -> None:
    """A yarn shop's tutorial: 104 stitches, 5 rows, a row of eyelets over all but the ends, 5 rows, joined: equal halves.
    By hand the eyelets are yarn overs, k1 (yo, k2tog) to the last stitch: 51 of them; at the machine two stitches of an
    even number stay, which gives the same 51."""
    found = result(kind="picot", stitches="104", depth="5 cm", rows_per_10cm="10").values
    assert (found["facing_rows"], found["outside_rows"]) == (5, 5)
    assert found["eyelets"] == (104 - 2) // 2


@pytest.mark.parametrize(("facing", "more"), [("equal", 0), ("shorter", -1), ("longer", 1)])
def test_three_facings_that_sources_give(facing: str, more: int) -> None:
    """Equal in machine lessons, one row fewer where it is grafted, one more where it is sewn (handbooks; they differ)."""
    found = result(facing=facing).values
    assert found["facing_rows"] - found["outside_rows"] == more


def test_yarn_of_a_hem_by_the_loops_of_an_examination() -> None:
    """GATE Textile 2015: fully relaxed, a loop of 0.5 cm gives 92 loops to a square centimetre. A hem at that density, say 8
    wales by 11.5 courses, takes 0.5 cm for a stitch; the calculator has it within its range."""
    found = result(kind="plain", stitches="100", stitches_per_10cm="80", rows_per_10cm="115", depth="2 cm").values
    yarn = found["stitches_knitted"] * 0.005
    assert found["yarn_least_m"] <= yarn <= found["yarn_most_m"]


def test_points_are_a_divmod() -> None:
    """Against divmod of the standard library: whole points of two stitches between the first and the last stitch."""
    for stitches in range(7, 200):
        pairs, odd = divmod(stitches, 2)
        assert picot(stitches).eyelets == pairs - (0 if odd else 1)
        assert math.isclose(float(2 * F(100, 14)), 14.2857, abs_tol=1e-4)
