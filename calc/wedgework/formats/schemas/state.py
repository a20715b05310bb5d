"""Schema of the state of a bed."""

from __future__ import annotations

from wedgework.formats.schemas.pieces import Schema, closed, document, many, needle, side, text, whole, yarn_id

__all__ = ["STATE", "STATE_INSIDE"]

# As in a plan; a mast carries two yarns on most machines, and never as many as a design has.
_MOST_NEEDLES = 1000
_MOST_ROWS = 200_000
_MOST_YARNS = 64
# A counter of six digits; most have three.
_MOST_COUNTED = 999_999


def _hanging(about: str) -> Schema:
    return closed(about, {"yarn": yarn_id("hanging.yarn"), "needle": needle("hanging.needle")})


STATE = document(
    "state",
    "state",
    {
        "first_needle": needle("state.first_needle"),
        "rows": many("state.rows", whole("state.rows-of-needle", 0, _MOST_ROWS), 1, _MOST_NEEDLES),
        "held": many("state.held", needle("needle"), 0, _MOST_NEEDLES),
        "carriage": side("state.carriage"),
        "feeder": _hanging("state.feeder"),
        "mast": many("state.mast", _hanging("hanging"), 0, _MOST_YARNS),
        "counter": whole("state.counter", 0, _MOST_COUNTED),
        "notes": text("state.notes", 5000, lines=True),
    },
    defaults={"mast": [], "notes": ""},
    optional=("feeder", "counter"),
)

STATE_INSIDE = {key: value for key, value in STATE.items() if key != "$schema"}
"""The same inside another file."""
