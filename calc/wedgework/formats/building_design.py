"""A checked value of a design to its frozen classes. What is not written takes the default of the class."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import Any

from wedgework.formats.design import (
    Bed,
    Costs,
    Design,
    DrawnLayout,
    Edging,
    Extent,
    Gauge,
    Hem,
    Hems,
    Machine,
    NamedLayout,
    Options,
    OrderWish,
    Panel,
    Part,
    Point,
    Shape,
    Stripe,
    Swatch,
    SwatchState,
    Yarn,
)

__all__ = ["bed_from", "design_from", "given", "swatch_from", "yarn_from"]

Value = Mapping[str, Any]


def given(value: Value, **makers: Callable[[Any], Any]) -> dict[str, Any]:
    """The keys that are written, each value as it is or through its maker; to be handed to a class by name."""
    return {key: makers[key](each) if key in makers else each for key, each in value.items()}


def design_from(value: Value) -> Design:
    """The design that `value` describes; it has passed the schema."""
    keys = given(
        value,
        bed=bed_from,
        gauge=_gauge,
        panel=_panel,
        yarns=lambda yarns: tuple(yarn_from(yarn) for yarn in yarns),
        layout=_layout,
        hems=lambda hems: Hems(**{key: _hem(hem) for key, hem in hems.items()}),
        edging=lambda edging: Edging(**edging),
        options=_options,
    )
    del keys["format"], keys["version"]
    return Design(**keys)


def bed_from(value: Value) -> Bed:
    return Bed(**given(value, pitch_mm=Fraction, machine=_machine))


def _machine(value: Value) -> Machine:
    return Machine(**given(value, tension_min=Fraction, tension_max=Fraction, position_names=dict))


def swatch_from(value: Value) -> Swatch:
    return Swatch(**given(value, stitches=Fraction, rows=Fraction, washed=_state, unwashed=_state))


def _state(value: Value) -> SwatchState:
    return SwatchState(_fractions(value["widths_mm"]), _fractions(value["heights_mm"]))


def _gauge(value: Value) -> Gauge:
    return Gauge(**given(value, stitches_per_10cm=Fraction, rows_per_10cm=Fraction, swatch=swatch_from))


def _panel(value: Value) -> Panel:
    part = Part(**value["part"]) if "part" in value else None
    return Panel(_extent(value["width"]), _extent(value["height"]), part)


def _extent(value: Value) -> Extent:
    if "mm" in value:
        return Extent(mm=Fraction(value["mm"]))
    (count,) = value.values()
    return Extent(count=count)


def yarn_from(value: Value) -> Yarn:
    return Yarn(
        **given(
            value,
            gauge=_gauge,
            tension=Fraction,
            tex=Fraction,
            metres_per_gram=Fraction,
            on_hand_g=Fraction,
            ball_g=Fraction,
            stripe=lambda parts: tuple(Stripe(**given(part, metres=Fraction)) for part in parts),
        )
    )


def _layout(value: Value) -> NamedLayout | DrawnLayout:
    if "name" in value:
        parameters = {key: each if isinstance(each, str) else Fraction(each) for key, each in value.get("parameters", {}).items()}
        return NamedLayout(value["name"], parameters)
    counted = (value["counted"]["needles"], value["counted"]["rows"]) if "counted" in value else None
    unit = counted or (1, 1)
    return DrawnLayout(
        **given(
            value,
            shapes=lambda shapes: tuple(_shape(shape, unit) for shape in shapes),
            profile=tuple,
            gaps=lambda gaps: tuple(_points(gap, unit) for gap in gaps),
            counted=lambda _: counted,
        )
    )


def _shape(value: Value, unit: tuple[int, int]) -> Shape:
    return Shape(value["yarn"], _points(value["points"], unit), tuple(_points(hole, unit) for hole in value.get("holes", ())))


def _points(points: list[list[int | Fraction]], unit: tuple[int, int]) -> tuple[Point, ...]:
    """Fractions of the panel; `unit` is what stands in the file for the whole width and height."""
    across, up = unit
    return tuple((Fraction(x) / across, Fraction(y) / up) for x, y in points)


def _hem(value: str | Value) -> Hem:
    """A hem is an object, or the plain word ``none``."""
    return Hem() if isinstance(value, str) else Hem(**given(value, depth=_extent))


def _options(value: Value) -> Options:
    return Options(**given(value, order=_order, costs=_costs, margin_percent=Fraction))


def _order(entries: list[str | Value]) -> tuple[OrderWish, ...]:
    """Wishes; a plain list of blocks, as earlier versions wrote it, wishes each before the next."""
    found = []
    for entry, following in itertools.zip_longest(entries, entries[1:]):
        if not isinstance(entry, str):
            found.append(OrderWish(**entry))
        elif isinstance(following, str):
            found.append(OrderWish(entry, before=following))
    return tuple(found)


def _costs(value: Value) -> Costs:
    return Costs(**{key: Fraction(minutes) for key, minutes in value.items()})


def _fractions(numbers: list[int | Fraction]) -> tuple[Fraction, ...]:
    return tuple(Fraction(number) for number in numbers)
