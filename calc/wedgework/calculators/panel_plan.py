"""Panel plan: bed, gauge, size and a layout of blocks in; a plan that a model bed has carried out."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from fractions import Fraction

from wedgework.bed import USUAL_BEDS, Side
from wedgework.calculators.drawing_field import DRAWING_FIELD, drawing_problems, over_drawing
from wedgework.calculators.hem_fields import HEM_FIELDS, HEM_PLACES, hems_from
from wedgework.calculators.layout_fields import (
    DRAWN,
    LAYOUT_FIELDS,
    MOST_YARNS,
    NUMBERS,
    layout_from,
    yarn_id,
    yarn_problems,
)
from wedgework.calculators.order_field import order_problems, wishes_from
from wedgework.calculators.panel_cutting import Cutting
from wedgework.calculators.panel_parts import (
    EDGING_FIELDS,
    PART_FIELDS,
    edging_from,
    part_problems,
    parted,
    whole_values,
    whole_view,
)
from wedgework.calculators.panel_view import panel_values, panel_view
from wedgework.calculators.planning import bed_words
from wedgework.calculators.planning import planned as plan_and_replay
from wedgework.declare import (
    Calculator,
    Field,
    Group,
    Inputs,
    Only,
    Result,
    Shown,
    choice,
    colour,
    decimal,
    length,
    lengths,
    lines,
    mass,
    text,
    whole,
)
from wedgework.formats import nearest_decimal
from wedgework.formats.design import Bed, Design, DrawnLayout, Extent, Gauge, Machine, Options, Panel, Swatch, SwatchState, Yarn
from wedgework.formats.plan import Plan
from wedgework.layout import resolve
from wedgework.layout.library import LAYOUTS, named
from wedgework.problems import Problem, Refused
from wedgework.replay.result import Replay
from wedgework.say import say

__all__ = ["CALCULATOR", "design_from", "planned"]

OWN = "own"
FIGURES, SWATCH = "figures", "swatch"
LENGTHS, COUNTS = "lengths", "counts"

# Of our own invention: three yarns for the first piece, a fourth for more.
NAMES = ("Chalk", "Slate", "Rust", "")
MACHINE = Machine()
COLOURS = ("#efe8d8", "#3f5566", "#b4533f", "#7a8f5a")


def compute(inputs: Inputs) -> Result:
    """Plan the design, let the model bed carry it out, and show what it found."""
    design, cuts = _designed(inputs)
    plan, judged = _planned(inputs, design)
    values = panel_values(plan, judged)
    whole_piece: tuple[Shown, ...] = ()
    if cuts is not None:
        values |= whole_values(cuts, inputs.whole("panel_number"))
        whole_piece = whole_view(cuts, design, resolve(design))
    return Result(values, panel_view(plan, judged, whole_piece), judged.warnings)


def planned(inputs: Inputs) -> tuple[Plan, Replay]:
    """The plan of what was typed, and what the model bed found. Raises Refused with the names of fields."""
    return _planned(inputs, design_from(inputs))


def _planned(inputs: Inputs, design: Design) -> tuple[Plan, Replay]:
    return plan_and_replay(design, lambda problems: _in_fields(problems, inputs))


def design_from(inputs: Inputs) -> Design:
    """The design that was typed; of a picture in panels the panel that was chosen. Raises Refused where it cannot be cut."""
    return _designed(inputs)[0]


def _designed(inputs: Inputs) -> tuple[Design, Cutting | None]:
    try:
        return parted(inputs, over_drawing(inputs, _whole_design(inputs)))
    except Refused as refused:
        raise Refused(_in_fields(refused.problems, inputs)) from None


def _whole_design(inputs: Inputs) -> Design:
    side: Side = "L" if inputs.text("start_side") == "left" else "R"
    return Design(
        title=inputs.text("title"),
        bed=_bed(inputs),
        gauge=_gauge(inputs),
        panel=_panel(inputs),
        yarns=tuple(
            Yarn(
                yarn_id(number),
                inputs.text(f"yarn_{number}_name"),
                inputs.text(f"yarn_{number}_colour"),
                tension=_tension(inputs, number),
                ball_g=ball_g,
                metres_per_gram=metres_per_gram,
            )
            for number in NUMBERS
            if inputs.given(f"yarn_{number}_name")
            for ball_g, metres_per_gram in [_ball(inputs, number)]
        ),
        layout=DrawnLayout("") if inputs.text("layout") == DRAWN else layout_from(inputs),
        hems=hems_from(inputs),
        edging=edging_from(inputs),
        options=Options(
            start_side=side,
            base_rows_bottom=inputs.whole("base_rows_bottom"),
            base_rows_top=inputs.whole("base_rows_top"),
            order=wishes_from(inputs.text("own_order")) if inputs.given("own_order") else (),
            merge_below=inputs.whole("merge_below"),
        ),
    )


def _tension(inputs: Inputs, number: str) -> Fraction | None:
    name = f"yarn_{number}_tension"
    return nearest_decimal(inputs.number(name)) if inputs.given(name) else None


def _ball(inputs: Inputs, number: str) -> tuple[Fraction | None, Fraction | None]:
    """The weight of a ball and the metres in a gram of it, where both are given."""
    grams, metres = f"yarn_{number}_ball_g", f"yarn_{number}_ball_m"
    if not (inputs.given(grams) and inputs.given(metres)):
        return None, None
    ball = nearest_decimal(inputs.g(grams))
    return ball, nearest_decimal(inputs.mm(metres) / 1000 / ball)


def _bed(inputs: Inputs) -> Bed:
    chosen = inputs.text("bed")
    if chosen == OWN:
        return Bed(nearest_decimal(inputs.mm("bed_pitch")), inputs.whole("bed_needles"))
    bed = next(usual for usual in USUAL_BEDS if usual.key == chosen)
    return Bed(bed.pitch_mm, bed.needles)


def _gauge(inputs: Inputs) -> Gauge:
    """Typed figures, or a swatch. Files hold decimals: a third of an inch is rounded to a millionth of a millimetre."""
    if inputs.text("gauge_from") == FIGURES:
        return Gauge(nearest_decimal(inputs.number("stitches_per_10cm")), nearest_decimal(inputs.number("rows_per_10cm")))
    widths, heights = (tuple(nearest_decimal(mm) for mm in inputs.several_mm(name)) for name in ("swatch_width", "swatch_height"))
    stitches, rows = (nearest_decimal(inputs.number(name)) for name in ("swatch_stitches", "swatch_rows"))
    return Gauge(swatch=Swatch(stitches, rows, washed=SwatchState(widths, heights)))


def _panel(inputs: Inputs) -> Panel:
    if inputs.text("size_in") == COUNTS:
        return Panel(Extent(count=inputs.whole("needles")), Extent(count=inputs.whole("rows")))
    return Panel(Extent(mm=nearest_decimal(inputs.mm("width"))), Extent(mm=nearest_decimal(inputs.mm("height"))))


def _in_fields(problems: Iterable[Problem], inputs: Inputs) -> list[Problem]:
    """The same problems under the names of the fields that they come from."""
    counted = inputs.text("size_in") == COUNTS
    places = {
        "panel.width": "needles" if counted else "width",
        "panel.height": "rows" if counted else "height",
        "options.shift_needles": "needles" if counted else "width",
        "layout.name": "layout",
        "options.base_rows_bottom": "base_rows_bottom",
        "options.base_rows_top": "base_rows_top",
        "panel.part": "panel_number",
    } | HEM_PLACES

    def field(where: str) -> str:
        if where.startswith("options.order"):
            return "own_order"
        return places.get(where, where.removeprefix("layout.parameters."))

    return [_offering_panels(replace(p, where=field(p.where))) for p in problems]


def _offering_panels(problem: Problem) -> Problem:
    """A piece wider than the bed can be split on the same page."""
    if problem.code != "layout.too-wide":
        return problem
    return replace(problem, way_out=say("calculators.panel-plan.too-wide.way-out"))


def _bed_words(key: str) -> str:
    bed = next((usual for usual in USUAL_BEDS if usual.key == key), None)
    if bed is None:
        return say("calculators.panel-plan.bed-own")
    return bed_words(bed.pitch_mm, bed.needles)


def _layout_words(name: str) -> str:
    if name == DRAWN:
        return say("calculators.panel-plan.layout-drawn")
    layout = named(name)
    if layout is None:
        raise AssertionError(name)
    return layout.title


def _yarn_group(number: int) -> Group:
    """Name, colour and tension; a yarn without a name is not there."""
    name = text(f"yarn_{number}_name", NAMES[number - 1], longest=100, optional=number > 1)
    tension = decimal(f"yarn_{number}_tension", "", MACHINE.tension_min, MACHINE.tension_max, optional=True)
    return Group(f"yarn-{number}", (name, colour(f"yarn_{number}_colour", COLOURS[number - 1]), tension))


def _ball_fields(number: int) -> tuple[Field, Field]:
    """Weight and length of a ball of a yarn."""

    def words(key: str) -> Callable[[], str]:
        return lambda: say(f"calculators.panel-plan.{key}", number=number)

    grams = mass(f"yarn_{number}_ball_g", "", 1, 10_000, "g", optional=True)
    metres = length(f"yarn_{number}_ball_m", "", 1, 100_000, "m", optional=True)
    return (
        replace(grams, label_words=words("ball_g.label"), help_words=words("ball_g.help")),
        replace(metres, label_words=words("ball_m.label"), help_words=words("ball_m.help")),
    )


def _ball_problems(inputs: Inputs) -> list[Problem]:
    """Both, or neither."""
    found: list[Problem] = []
    for number in NUMBERS:
        grams, metres = f"yarn_{number}_ball_g", f"yarn_{number}_ball_m"
        if inputs.given(grams) != inputs.given(metres):
            code = "panel-plan.half-a-ball"
            missing = metres if inputs.given(grams) else grams
            found.append(Problem(missing, code, say(f"calculators.{code}"), say(f"calculators.{code}.way-out")))
    return found


def _problems(inputs: Inputs) -> list[Problem]:
    typed = inputs.text("own_order") if inputs.has("own_order") and inputs.given("own_order") else ""
    return (
        yarn_problems(inputs)
        + _ball_problems(inputs)
        + drawing_problems(inputs)
        + part_problems(inputs)
        + order_problems("own_order", typed)
    )


_TYPED, _MEASURED = Only("gauge_from", (FIGURES,)), Only("gauge_from", (SWATCH,))
_LONG, _COUNTED = Only("size_in", (LENGTHS,)), Only("size_in", (COUNTS,))
_OWN_BED = Only("bed", (OWN,))

CALCULATOR = Calculator(
    "panel-plan",
    (
        Group("piece", (text("title", "Lap blanket", longest=200),)),
        Group(
            "bed",
            (
                choice("bed", "bulky-9", (*(bed.key for bed in USUAL_BEDS), OWN), words=_bed_words),
                length("bed_pitch", "9 mm", 1, 30, "mm", only=_OWN_BED),
                whole("bed_needles", "110", 4, 1000, "needles", only=_OWN_BED),
            ),
        ),
        Group(
            "gauge",
            (
                choice("gauge_from", FIGURES, (FIGURES, SWATCH)),
                decimal("stitches_per_10cm", "14", 1, 200, "stitches-per-10cm", only=_TYPED),
                decimal("rows_per_10cm", "19", 1, 200, "rows-per-10cm", only=_TYPED),
                decimal("swatch_stitches", "40", 1, 1000, "stitches", only=_MEASURED),
                lengths("swatch_width", "28.5 cm", 1, 300, "cm", only=_MEASURED),
                decimal("swatch_rows", "60", 1, 1000, "rows", only=_MEASURED),
                lengths("swatch_height", "31.6 cm", 1, 300, "cm", only=_MEASURED),
            ),
        ),
        Group(
            "size",
            (
                choice("size_in", LENGTHS, (LENGTHS, COUNTS)),
                length("width", "76 cm", 1, 1000, "cm", only=_LONG),
                length("height", "102 cm", 1, 1000, "cm", only=_LONG),
                whole("needles", "106", 2, 1000, "needles", only=_COUNTED),
                whole("rows", "194", 2, 4000, "rows", only=_COUNTED),
            ),
        ),
        Group(
            "layout",
            (
                choice("layout", "nested-diamonds", (*(layout.name for layout in LAYOUTS), DRAWN), words=_layout_words),
                DRAWING_FIELD,
                *LAYOUT_FIELDS,
            ),
        ),
        *(_yarn_group(number) for number in range(1, MOST_YARNS + 1)),
        Group("balls", tuple(field for n in range(1, MOST_YARNS + 1) for field in _ball_fields(n)), folded="alone"),
        Group(
            "making",
            (
                choice("start_side", "right", ("right", "left")),
                whole("base_rows_bottom", "2", 0, 200, "rows"),
                whole("base_rows_top", "2", 0, 200, "rows"),
            ),
        ),
        Group("panels", PART_FIELDS, folded="alone"),
        Group("hems", HEM_FIELDS, folded="alone"),
        Group("edging", EDGING_FIELDS, folded="alone"),
        Group("order", (lines("own_order", "", optional=True), whole("merge_below", "0", 0, 1000, "stitches")), folded="alone"),
    ),
    compute,
    _problems,
)
