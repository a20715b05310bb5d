"""A design as plain values for JSON, every default written out, keys in the order of the reference page.

What is absent (a yarn without its own gauge, a rectangle's profile, a panel that is no part of a wider picture) has no key.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from wedgework.formats.decimals import carried
from wedgework.formats.design import (
    Bed,
    Costs,
    Design,
    DrawnLayout,
    Edging,
    Extent,
    Gauge,
    Hem,
    Machine,
    NamedLayout,
    Options,
    OrderWish,
    Part,
    Point,
    Shape,
    Stripe,
    Swatch,
    SwatchState,
    Yarn,
)
from wedgework.version import VERSION

__all__ = ["bed_value", "design_value", "edging_value", "machine_value", "options_value", "present", "swatch_value", "yarn_value"]

Value = dict[str, Any]


def design_value(design: Design) -> Value:
    """The design as it stands in a file: text, lists, objects, ints and floats (see `decimals.carried`).

    `made_by` is this copy's version, whoever made the design before: it tells which keys can be in the file.
    """
    panel = design.panel
    value = {
        "format": "wedgework-design",
        "version": 1,
        "made_by": VERSION,
        "title": design.title,
        "notes": design.notes,
        "author": design.author,
        "revision": design.revision,
        "date": design.date,
        "permission": design.permission,
        "bed": bed_value(design.bed),
        "gauge": gauge_value(design.gauge),
        "panel": present(
            {
                "width": _extent(panel.width, "needles"),
                "height": _extent(panel.height, "rows"),
                "side_of_origin": "front-lower-left",
                "part": None if panel.part is None else part_value(panel.part),
            }
        ),
        "yarns": [yarn_value(yarn) for yarn in design.yarns],
        "layout": _layout(design.layout),
        "hems": {
            "bottom": hem_value(design.hems.bottom),
            "top": hem_value(design.hems.top),
            "sides": hem_value(design.hems.sides),
        },
        "edging": None if design.edging is None else edging_value(design.edging),
        "options": options_value(design.options),
    }
    return present(value)


def present(value: Value) -> Value:
    """`value` without the keys that hold None."""
    return {key: each for key, each in value.items() if each is not None}


def bed_value(bed: Bed) -> Value:
    return {"pitch_mm": carried(bed.pitch_mm), "needles": bed.needles, "machine": machine_value(bed.machine)}


def machine_value(machine: Machine) -> Value:
    return {
        "name": machine.name,
        "hold_levers": machine.hold_levers,
        "tension_min": carried(machine.tension_min),
        "tension_max": carried(machine.tension_max),
        "counter_place": machine.counter_place,
        "counter_digits": machine.counter_digits,
        "yarns_on_mast": machine.yarns_on_mast,
        "position_names": dict(machine.position_names),
    }


def swatch_value(swatch: Swatch) -> Value:
    return present(
        {
            "stitches": carried(swatch.stitches),
            "rows": carried(swatch.rows),
            "washed": _state(swatch.washed),
            "unwashed": _state(swatch.unwashed),
        }
    )


def _state(state: SwatchState | None) -> Value | None:
    if state is None:
        return None
    return {"widths_mm": [carried(w) for w in state.widths_mm], "heights_mm": [carried(h) for h in state.heights_mm]}


def gauge_value(gauge: Gauge) -> Value:
    if gauge.swatch is not None:
        return {"swatch": swatch_value(gauge.swatch)}
    return {"stitches_per_10cm": _number(gauge.stitches_per_10cm), "rows_per_10cm": _number(gauge.rows_per_10cm)}


def _number(number: Fraction | None) -> int | float | Fraction | None:
    return None if number is None else carried(number)


def _extent(extent: Extent, counted: str) -> Value:
    return {counted: extent.count} if extent.mm is None else {"mm": carried(extent.mm)}


def yarn_value(yarn: Yarn) -> Value:
    return present(
        {
            "id": yarn.id,
            "name": yarn.name,
            "colour": yarn.colour,
            "gauge": None if yarn.gauge is None else gauge_value(yarn.gauge),
            "tension": _number(yarn.tension),
            "tex": _number(yarn.tex),
            "metres_per_gram": _number(yarn.metres_per_gram),
            "on_hand_g": _number(yarn.on_hand_g),
            "stripe": [_stripe(stripe) for stripe in yarn.stripe],
            "ball_g": _number(yarn.ball_g),
            "kind": yarn.kind,
        }
    )


def _stripe(stripe: Stripe) -> Value:
    return present({"colour": stripe.colour, "metres": carried(stripe.metres), "name": stripe.name or None})


def _layout(layout: NamedLayout | DrawnLayout) -> Value:
    if isinstance(layout, NamedLayout):
        parameters = {key: each if isinstance(each, str) else carried(each) for key, each in layout.parameters.items()}
        return {"name": layout.name, "parameters": parameters}
    unit = layout.counted or (1, 1)
    return present(
        {
            "background": layout.background,
            "counted": None if layout.counted is None else {"needles": unit[0], "rows": unit[1]},
            "shapes": [_shape(shape, unit) for shape in layout.shapes],
            "profile": None if layout.profile is None else list(layout.profile),
            "gaps": [_points(gap, unit) for gap in layout.gaps] or None,
        }
    )


def _shape(shape: Shape, unit: tuple[int, int]) -> Value:
    return {"yarn": shape.yarn, "points": _points(shape.points, unit), "holes": [_points(hole, unit) for hole in shape.holes]}


def _points(points: tuple[Point, ...], unit: tuple[int, int]) -> list[list[int | float | Fraction]]:
    return [[carried(x * unit[0]), carried(y * unit[1])] for x, y in points]


def hem_value(hem: Hem) -> Value:
    return present({"kind": hem.kind, "depth": None if hem.depth is None else _extent(hem.depth, "rows")})


def part_value(part: Part) -> Value:
    return {
        "number": part.number,
        "panels": part.panels,
        "first": part.first,
        "last": part.last,
        "seam_left": part.seam_left,
        "seam_right": part.seam_right,
    }


def edging_value(edging: Edging) -> Value:
    return {
        "along": edging.along,
        "stitches": edging.stitches,
        "repeat": edging.repeat,
        "join_every": edging.join_every,
        "corner": edging.corner,
    }


def options_value(options: Options) -> Value:
    return present(
        {
            "start_side": options.start_side,
            "shift_needles": options.shift_needles,
            "odd_needle": options.odd_needle,
            "base_rows_bottom": options.base_rows_bottom,
            "base_rows_top": options.base_rows_top,
            "base_yarn_bottom": options.base_yarn_bottom,
            "base_yarn_top": options.base_yarn_top,
            "order": [_wish(wish) for wish in options.order],
            "costs": _costs(options.costs),
            "step_style": options.step_style,
            "margin_percent": carried(options.margin_percent),
            "merge_below": options.merge_below,
        }
    )


def _wish(wish: OrderWish) -> Value:
    return present({"block": wish.block, "before": wish.before, "after": wish.after, "start": wish.start})


def _costs(costs: Costs) -> Value:
    return {
        "end_inside": carried(costs.end_inside),
        "end_at_selvedge": carried(costs.end_at_selvedge),
        "inside_start": carried(costs.inside_start),
        "yarn_change": carried(costs.yarn_change),
        "free_pass": carried(costs.free_pass),
    }
