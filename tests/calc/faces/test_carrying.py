"""Carrying on at the machine: the bed as believed, what the person says, the piece of the rest."""

from __future__ import annotations

import json
from typing import Any

import pytest

from wedgework.calculators import panel_plan
from wedgework.declare.calculator import read_all
from wedgework.faces.carrying import CARRY_FIELDS
from wedgework.faces.piece import piece_of
from wedgework.faces.wire import answer
from wedgework.formats import write_state
from wedgework.formats.plan import Knit, Plan
from wedgework.formats.state import State
from wedgework.replay import state_at

SMALL = {"size_in": "counts", "needles": "40", "rows": "60", "layout": "diamond-in-corners"}


@pytest.fixture(scope="module")
def plan() -> Plan:
    return panel_plan.planned(read_all(panel_plan.CALCULATOR, SMALL))[0]


@pytest.fixture(scope="module")
def middle(plan: Plan) -> State:
    knitted = [i for i, step in enumerate(plan.steps) if isinstance(step, Knit)]
    return state_at(plan, knitted[len(knitted) // 2] + 1)


def typed(state: State, **changed: str) -> dict[str, str]:
    """What stands in the window when nothing was changed."""
    held = ", ".join(f"{'L' if n < 0 else 'R'}{abs(n)}" for n in state.held)
    feeder = state.feeder
    said = {
        "changes": "",
        "held_needles": held,
        "carriage_side": "left" if state.carriage == "L" else "right",
        "feeder_yarn": feeder.yarn if feeder else "",
        "feeder_needle": f"{'L' if feeder.needle < 0 else 'R'}{abs(feeder.needle)}" if feeder else "",
        "mast": ", ".join(f"{one.yarn[-1]} at {'L' if one.needle < 0 else 'R'}{abs(one.needle)}" for one in state.mast),
    }
    assert tuple(said) == CARRY_FIELDS
    return said | changed


def told(state: State, inputs: dict[str, str], design: dict[str, Any] | None = None) -> dict[str, Any]:
    design = design or piece_of(SMALL)["design"]  # type: ignore[assignment]
    question = {"ask": "carry-on", "design": json.dumps(design), "state": write_state(state), "inputs": inputs}
    found: dict[str, Any] = json.loads(answer(json.dumps(question)))
    return found


def test_without_a_word_only_the_believed_rows_are_told(middle: State) -> None:
    found = told(middle, {})
    assert found["piece"] is None
    assert found["rows"].startswith(f"L{-middle.first_needle}")
    assert found["problems"] == []


def test_the_rest_is_a_piece_that_begins_on_that_bed(middle: State) -> None:
    found = told(middle, typed(middle, changes="R1: 2 more"))
    piece = found["piece"]
    rows = list(middle.rows)
    rows[20] += 2
    assert piece["state"]["rows"] == rows
    assert piece["cues"][0]["kind"] == "start"
    assert "Cast on" not in " ".join(piece["cues"][0]["before"])
    earlier = [part for part in piece["picture"]["parts"] if part["block"] == "earlier"]
    assert sum(column[2] for part in earlier for column in part["columns"]) == sum(rows)
    assert "What stays visible" in found["html"]
    assert "What differs" in found["html"]


def test_the_same_place_as_planned_differs_in_nothing(middle: State) -> None:
    assert "What differs" not in told(middle, typed(middle))["html"]


def test_every_mistake_is_told_at_once_beside_its_field(middle: State) -> None:
    wrong = typed(
        middle, changes="R99: 1 more", held_needles="left ones", feeder_yarn="yarn-1", feeder_needle="R1-R2", mast="9 at L1"
    )
    found = told(middle, wrong)
    assert {p["where"] for p in found["problems"]} == {"changes", "held_needles", "feeder_needle", "mast"}
    assert all(p["way_out"] for p in found["problems"])
    assert found["piece"] is None


def test_a_bed_of_another_piece_is_refused(middle: State) -> None:
    found = told(middle, typed(middle), piece_of(SMALL | {"needles": "44"})["design"])  # type: ignore[arg-type]
    assert [p["code"] for p in found["problems"]] == ["machine.carry-other"]


def test_where_nothing_is_left_that_is_said(plan: Plan) -> None:
    """A picture that is finished, and no base rows above it: there is no step to make a plan of."""
    design = piece_of(SMALL | {"base_rows_top": "0"})["design"]
    done = State(plan.first_needle, (60,) * 40, (), "R")
    found = told(done, typed(done), design)  # type: ignore[arg-type]
    assert [(p["where"], p["code"]) for p in found["problems"]] == [("changes", "state.finished")]


@pytest.mark.parametrize("key", ["design", "state"])
def test_a_text_that_is_no_file_is_refused(middle: State, key: str) -> None:
    question = {"ask": "carry-on", "design": json.dumps(piece_of(SMALL)["design"]), "state": write_state(middle), "inputs": {}}
    found = json.loads(answer(json.dumps(question | {key: "{"})))
    assert found["problems"]
    assert found["piece"] is None
