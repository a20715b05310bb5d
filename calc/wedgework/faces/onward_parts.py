"""What a way from one calculator to another is made of: texts as they would be typed, from what was typed or what was found."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import Any

from wedgework.declare import Plain
from wedgework.units import short_point

__all__ = ["GAUGE", "Carry", "Typed", "as_text", "fixed", "found_there", "in_cm", "nothing", "together", "typed_there"]

Typed = dict[str, str]
Carry = Callable[[Mapping[str, str], Mapping[str, Any]], Typed]
"""From the texts and the answer of one calculator to texts for the fields of another."""

GAUGE = ("stitches_per_10cm", "rows_per_10cm")


def as_text(value: Plain, digits: int = 3) -> str:
    """As it would be typed; nothing for nothing."""
    if value is None:
        return ""
    return short_point(value, digits) if isinstance(value, (int, Fraction)) else str(value)


def in_cm(value: Any) -> str:
    return f"{as_text(Fraction(value) / 10, 2)} cm"


def typed_there(*names: str, **renamed: str) -> Carry:
    """Fields that stand there too, under the same name or, `there=here`, under another."""
    pairs = {**{name: name for name in names}, **renamed}
    return lambda inputs, _: {there: inputs[here] for there, here in pairs.items()}


def found_there(*names: str, **renamed: str) -> Carry:
    """Figures of the answer, in the same way."""
    pairs = {**{name: name for name in names}, **renamed}
    return lambda _, values: {there: as_text(values[here]) for there, here in pairs.items()}


def fixed(**texts: str) -> Carry:
    return lambda _inputs, _values: texts


def together(*carries: Carry) -> Carry:
    def carry_all(inputs: Mapping[str, str], values: Mapping[str, Any]) -> Typed:
        return {name: text for carry in carries for name, text in carry(inputs, values).items()}

    return carry_all


def nothing(_inputs: Mapping[str, str], _values: Mapping[str, Any]) -> Typed:
    return {}
