"""A swatch on the machine, rested and washed, each direction for itself: what changes from one state to the next."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from wedgework.declare import Figure, Figures, Plain, Shown, Table
from wedgework.gauge import MeasuredGauge, Reading
from wedgework.problems import Problem
from wedgework.say import say
from wedgework.units import both_text, decimal_text

__all__ = ["States", "state_values", "state_view", "state_warnings"]

# Weights stretch a swatch, but beyond this a unit was mistaken. Our own choice, in per cent.
LARGEST_REST = 50
METRE = Fraction(1000)


def _say(key: str, **values: object) -> str:
    return say(f"calculators.gauge.{key}", **values)


@dataclass(frozen=True, slots=True)
class States:
    stitches: Fraction
    rows: Fraction
    machine_widths_mm: tuple[Fraction, ...]
    """Empty where that direction was not measured on the machine."""
    machine_heights_mm: tuple[Fraction, ...]
    rested: MeasuredGauge
    washed: MeasuredGauge | None

    @property
    def machine(self) -> tuple[Reading | None, Reading | None]:
        """Across and up, hanging on the machine."""
        pairs = ((self.stitches, self.machine_widths_mm), (self.rows, self.machine_heights_mm))
        across, up = (Reading(count, mms) if mms else None for count, mms in pairs)
        return across, up

    @property
    def main(self) -> MeasuredGauge:
        """As the finished piece will be."""
        return self.washed or self.rested

    @property
    def rest_percent(self) -> tuple[Fraction | None, Fraction | None]:
        """How much each direction grows (shrinks, where negative) from the machine to the rested state."""
        across, up = (
            None if reading is None else (reading.per_10cm / rested.per_10cm - 1) * 100
            for reading, rested in zip(self.machine, (self.rested.across, self.rested.up), strict=True)
        )
        return across, up


NAMES = ("width", "height")


def state_values(states: States) -> dict[str, Plain]:
    """Only of the directions that were measured on the machine."""
    values: dict[str, Plain] = {}
    for unit, name, reading, change in zip(("stitches", "rows"), NAMES, states.machine, states.rest_percent, strict=True):
        if reading is not None:
            values[f"machine_{unit}_per_10cm"] = reading.per_10cm
            values[f"rest_{name}_percent"] = change
    return values


def state_view(states: States) -> tuple[Shown, ...]:
    """What resting changes, and all states beside each other; nothing where it was not measured on the machine."""
    if states.machine == (None, None):
        return ()
    rows = []
    for key, change in zip(("across", "up"), states.rest_percent, strict=True):
        if change is not None:
            way = "grows" if change > 0 else "shrinks" if change < 0 else "stays"
            name = NAMES[0] if key == "across" else NAMES[1]
            rows.append(Figure(_say(key), _say(way, percent=decimal_text(abs(change), 1)), "", f"rest_{name}_percent"))
    return Figures(_say("resting"), tuple(rows)), _table(states)


def _table(states: States) -> Table:
    """A metre of the finished piece, as it measures in each state."""
    main = (states.main.across, states.main.up)
    measured: list[tuple[str, tuple[Reading | None, Reading | None]]] = [
        ("machine", states.machine),
        ("rested", (states.rested.across, states.rested.up)),
    ]
    if states.washed:
        measured.append(("washed", (states.washed.across, states.washed.up)))
    rows = []
    for key, readings in measured:
        gauges = [_say("state-unknown") if one is None else decimal_text(one.per_10cm, 2) for one in readings]
        metres = [
            _say("state-unknown") if one is None else both_text(METRE * final.per_10cm / one.per_10cm)
            for one, final in zip(readings, main, strict=True)
        ]
        rows.append((_say(f"state-{key}"), *gauges, *metres))
    return Table(
        _say("states"), tuple(_say(f"states-{key}") for key in ("state", "stitches", "rows", "wide", "high")), tuple(rows)
    )


def state_warnings(states: States) -> Iterable[Problem]:
    for name, change in zip(NAMES, states.rest_percent, strict=True):
        if change is not None and abs(change) > LARGEST_REST:
            sentence = _say("machine-change", percent=decimal_text(abs(change), 0))
            yield Problem(f"machine_{name}", "gauge.machine-change", sentence, _say("machine-change.way-out"))
