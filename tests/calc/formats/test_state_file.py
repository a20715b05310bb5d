"""The state of a bed as a file, and inside a plan."""

from __future__ import annotations

import json
from dataclasses import replace
from typing import Any

import pytest

from pieces import diamond
from wedgework.formats import Hanging, State, read_plan, read_state, read_state_value, state_value, write_plan, write_state
from wedgework.plan import plan_piece
from wedgework.problems import Refused

BARE: dict[str, Any] = {
    "format": "wedgework-state",
    "version": 1,
    "first_needle": -2,
    "rows": [3, 4, 4, 3],
    "held": [2],
    "carriage": "L",
}
STATE = State(-2, (3, 4, 4, 3), (2,), "L")


def test_what_is_not_written_is_not_there() -> None:
    assert read_state(json.dumps(BARE)) == STATE
    assert {"feeder", "counter"}.isdisjoint(json.loads(write_state(STATE)))


def test_yarns_hang_beside_needles() -> None:
    value = {**BARE, "feeder": {"yarn": "a", "needle": -1}, "mast": [{"yarn": "b", "needle": 2}, {"yarn": "c", "needle": -2}]}
    state = read_state(json.dumps(value))
    assert state.feeder == Hanging("a", -1)
    assert [hanging.needle for hanging in state.mast] == [2, -2]
    assert read_state(write_state(state)) == state


@pytest.mark.parametrize(
    ("changes", "where"),
    [
        ({"first_needle": 0}, "first_needle"),
        ({"rows": []}, "rows"),
        ({"rows": [3, -1]}, "rows[1]"),
        ({"rows": [3, 1.5]}, "rows[1]"),
        ({"held": [0]}, "held[0]"),
        ({"carriage": "left"}, "carriage"),
        ({"feeder": {"yarn": "a"}}, "feeder.needle"),
        ({"mast": [{"yarn": "a b", "needle": 1}]}, "mast[0].yarn"),
        ({"counter": -1}, "counter"),
        ({"yarn": "a"}, "yarn"),
    ],
)
def test_a_wrong_value_is_named_by_its_path(changes: dict[str, Any], where: str) -> None:
    with pytest.raises(Refused) as caught:
        read_state(json.dumps({**BARE, **changes}))
    assert [problem.where for problem in caught.value.problems] == [where]


def test_a_state_inside_something_else_is_named_from_there() -> None:
    assert read_state_value(state_value(STATE)) == STATE
    with pytest.raises(Refused) as caught:
        read_state_value({**BARE, "carriage": 1}, "kept[2]")
    assert caught.value.problems[0].where == "kept[2].carriage"


def test_a_plan_keeps_the_state_from_which_it_begins() -> None:
    plan = plan_piece(diamond(20, 40))
    assert "state" not in json.loads(write_plan(plan))
    rest = replace(plan, state=STATE)
    assert read_plan(write_plan(rest)) == rest != plan
