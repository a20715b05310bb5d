"""A state as plain values for JSON, and back from a checked value."""

from __future__ import annotations

from wedgework.formats.building_design import given
from wedgework.formats.state import Hanging, State
from wedgework.formats.values_design import Value, present
from wedgework.version import VERSION

__all__ = ["state_from", "state_value"]


def state_value(state: State) -> Value:
    """The state as it stands in a file; `made_by` is this copy's version. What is None has no key."""
    return present(
        {
            "format": "wedgework-state",
            "version": 1,
            "made_by": VERSION,
            "first_needle": state.first_needle,
            "rows": list(state.rows),
            "held": list(state.held),
            "carriage": state.carriage,
            "feeder": None if state.feeder is None else _hanging(state.feeder),
            "mast": [_hanging(each) for each in state.mast],
            "counter": state.counter,
            "notes": state.notes,
        }
    )


def _hanging(hanging: Hanging) -> Value:
    return {"yarn": hanging.yarn, "needle": hanging.needle}


def state_from(value: Value) -> State:
    """The state that `value` describes; it has passed the schema."""
    keys = given(
        value,
        rows=tuple,
        held=tuple,
        feeder=lambda hanging: Hanging(**hanging),
        mast=lambda yarns: tuple(Hanging(**hanging) for hanging in yarns),
    )
    for key in ("format", "version", "made_by"):
        keys.pop(key, None)
    return State(**keys)
