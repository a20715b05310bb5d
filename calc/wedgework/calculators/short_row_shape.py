"""Short-row shape: one flat figure with what lies around it, or one shaped piece, by size and gauge, planned and knitted."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from functools import partial

from wedgework.bed import Side
from wedgework.calculators.planning import planned
from wedgework.calculators.short_row_figures import (
    AROUND,
    DART,
    DIAMOND,
    HEEL,
    RUFFLE,
    SHAPE,
    SHAPED,
    SHOULDER,
    TRAPEZOID,
    TRIANGLE,
    WEDGE,
    Drawn,
    drawn,
    named,
)
from wedgework.calculators.short_row_steps import edges_of, shape_blocks, turns_of, wraps_of
from wedgework.calculators.short_row_view import Shown, rows_off, shape_values, shape_view
from wedgework.declare import Calculator, Group, Inputs, Only, Result, choice, decimal, length, whole
from wedgework.formats import nearest_decimal
from wedgework.formats.design import Bed, Design, Gauge, Options, StepStyle
from wedgework.formats.plan import Plan
from wedgework.layout import Shaping, grid_of, resolve, shaping_of
from wedgework.problems import Problem
from wedgework.replay import Replay
from wedgework.say import say
from wedgework.slopes import degrees
from wedgework.units import decimal_text

__all__ = ["CALCULATOR", "design_from"]

SIDES: dict[str, Side] = {"right": "R", "left": "L"}
BASE_ROWS = Options().base_rows_bottom
STYLES: dict[str, StepStyle] = {"split": "split", "carriage-side": "carriage-side", "by-hand": "by-hand"}


def _say(key: str, **values: object) -> str:
    return say(f"calculators.short-row-shape.{key}", **values)


def check(inputs: Inputs) -> Iterable[Problem]:
    """What lies inside the shape is narrower, or lower, than the shape."""
    for inner, outer, code in (
        ("narrow_width", "width", "not-narrower"),
        ("dart_length", "width", "dart-too-long"),
    ):
        if inputs.has(inner) and inputs.has(outer) and inputs.mm(inner) >= inputs.mm(outer):
            yield Problem(inner, f"short-row-shape.{code}", _say(code), _say(f"{code}.way-out"))


def compute(inputs: Inputs) -> Result:
    kind = inputs.text("shape")
    figure = drawn(inputs)
    plan, judged, shaping = _best(inputs, figure)
    stitch, row = 100 / inputs.number("stitches_per_10cm"), 100 / inputs.number("rows_per_10cm")
    blocks = shape_blocks(plan, SHAPE.id)
    shown = Shown(
        plan=plan,
        judged=judged,
        blocks=blocks,
        edges=edges_of(judged, SHAPE.id, figure.slopes, stitch, row),
        turns=turns_of(plan, blocks),
        wraps=wraps_of(plan, blocks),
        steepest=degrees(2 * row, stitch),
        title=_say(f"shape.{kind}"),
        shaping=shaping,
        turned=figure.turned,
    )
    return Result(shape_values(shown), shape_view(shown), (*_warnings(shown), *judged.warnings))


def _best(inputs: Inputs, figure: Drawn) -> tuple[Plan, Replay, Shaping | None]:
    """The plan with its judgement and its shaping.

    An edge that narrows comes out to the row from one side of the carriage only. So a shaped piece may have a base row more,
    which is less work than a cut and a free pass: whichever way leaves fewer needles off, then fewer ends.
    """
    in_fields = partial(_in_fields, inputs)
    design = _design(inputs, figure)
    if inputs.text("shape") not in SHAPED:
        return *planned(design, in_fields), None
    ways = [
        planned(replace(design, options=replace(design.options, base_rows_bottom=rows)), in_fields)
        for rows in (BASE_ROWS, BASE_ROWS + 1)
    ]
    sizes = resolve(design)
    shaping = shaping_of(grid_of(design, sizes), sizes.rows)
    plan, judged = min(ways, key=lambda way: (sum(map(bool, rows_off(way[1], shaping))), way[1].summary.ends))
    return plan, judged, shaping


def design_from(inputs: Inputs) -> Design:
    """The shape that was typed, with what lies around it, before it is planned."""
    return _design(inputs, drawn(inputs))


def _design(inputs: Inputs, figure: Drawn) -> Design:
    return Design(
        title=_say(f"shape.{inputs.text('shape')}"),
        bed=Bed(nearest_decimal(inputs.mm("bed_pitch")), inputs.whole("bed_needles")),
        gauge=Gauge(nearest_decimal(inputs.number("stitches_per_10cm")), nearest_decimal(inputs.number("rows_per_10cm"))),
        panel=figure.panel,
        yarns=tuple(map(named, (AROUND, SHAPE) if figure.layout.background == AROUND.id else (SHAPE,))),
        layout=figure.layout,
        options=Options(start_side=SIDES[inputs.text("start_side")], step_style=STYLES[inputs.text("step_style")]),
    )


def _in_fields(inputs: Inputs, problems: Iterable[Problem]) -> list[Problem]:
    """The same problems under the names of the fields that they come from."""
    places = {"panel.width": "width", "panel.height": inputs.text("size_by")}
    return [replace(p, where=places.get(p.where, p.where)) for p in problems]


def _warnings(shown: Shown) -> Iterable[Problem]:
    """An edge steeper than one needle a turn leaves a slit where blocks meet."""
    steep = [edge for edge in shown.edges if edge.slope.wanted > shown.steepest]
    if steep and shown.judged.summary.slits:
        wanted, most = (decimal_text(angle, 1) for angle in (steep[0].slope.wanted, shown.steepest))
        sentence = _say("too-steep", wanted=wanted, most=most)
        yield Problem("angle", "short-row-shape.too-steep", sentence, _say("too-steep.way-out"))


TWO_SIDED, NARROW = Only("shape", (TRIANGLE, TRAPEZOID)), Only("shape", (TRAPEZOID, HEEL))
ONE_SIDED = Only("shape", (DART, SHOULDER, WEDGE, RUFFLE))
BY_HEIGHT, BY_ANGLE = Only("size_by", ("height",)), Only("size_by", ("angle",))

CALCULATOR = Calculator(
    "short-row-shape",
    (
        Group(
            "shape",
            (
                choice("shape", TRIANGLE, (TRIANGLE, TRAPEZOID, DIAMOND, *SHAPED)),
                choice("wide_side", "below", ("below", "above"), only=TWO_SIDED),
                choice("lean", "middle", ("middle", "left", "right"), only=TWO_SIDED),
                choice("open_side", "left", ("left", "right"), only=ONE_SIDED),
                length("width", "30", 2, 300, "cm"),
                length("narrow_width", "10", 1, 300, "cm", only=NARROW),
                length("dart_length", "12", 1, 300, "cm", only=Only("shape", (DART,))),
                length("plain_rows", "2", 1, 200, "cm", only=Only("shape", (DART, RUFFLE))),
                whole("times", "1", 1, 24, "", only=Only("shape", (WEDGE, RUFFLE))),
                choice("size_by", "height", ("height", "angle")),
                length("height", "15", 2, 300, "cm", only=BY_HEIGHT),
                decimal("angle", "45", 5, 85, "degrees", only=BY_ANGLE),
            ),
        ),
        Group(
            "gauge",
            (
                decimal("stitches_per_10cm", "14", 2, 80, "stitches-per-10cm"),
                decimal("rows_per_10cm", "19", 2, 120, "rows-per-10cm"),
            ),
        ),
        Group(
            "machine",
            (
                length("bed_pitch", "9 mm", 1, 30, "mm"),
                whole("bed_needles", "110", 4, 400, "needles"),
                choice("start_side", "right", tuple(SIDES)),
                choice("step_style", "split", tuple(STYLES)),
            ),
        ),
    ),
    compute,
    check,
)
