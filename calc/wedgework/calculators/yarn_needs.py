"""Yarn needs: metres, grams and whole balls of each yarn of a plan, block by block, from what was weighed or measured."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from wedgework.calculators import panel_plan
from wedgework.calculators.balls_view import balls_view
from wedgework.calculators.layout_fields import NUMBERS, yarn_id, yarn_problems
from wedgework.calculators.plan_groups import PLAN_GROUPS
from wedgework.calculators.yarn_needs_view import YarnShown, needs_values, needs_view
from wedgework.declare import Calculator, Field, Group, Inputs, Only, Result, choice, decimal, length, lengths, mass, whole
from wedgework.exact import nearest
from wedgework.finish import outer_sides, side_hem, strip_of
from wedgework.formats.plan import Plan
from wedgework.gauge import measure
from wedgework.layout.sizes import Sizes, resolve
from wedgework.problems import Problem
from wedgework.replay.result import Replay
from wedgework.say import say
from wedgework.units import decimal_text
from wedgework.words.finishing import base_rows, panel_mm
from wedgework.yarn.balls import joined_plan
from wedgework.yarn.beside import neighbours
from wedgework.yarn.laid import lay
from wedgework.yarn.loops import Loop, from_gauge, from_row, from_swatch
from wedgework.yarn.needs import measures_of, needs_of
from wedgework.yarn.path import path_of

__all__ = ["CALCULATOR"]

SWATCH, ROW, GEOMETRY = "swatch", "row", "geometry"
# A yarn that knits wider or longer than its neighbours by more than this puckers its block. Common practice, no source.
UNLIKE = Fraction(3)
# Yarn of a sewn seam for each length of it. Common practice, no source.
SEWING = 3


@dataclass(frozen=True, slots=True)
class _Gauge:
    stitches: Fraction
    rows: Fraction


def _say(key: str, **values: object) -> str:
    return say(f"calculators.yarn-needs.{key}", **values)


def compute(inputs: Inputs) -> Result:
    """The plan is replayed, the yarn laid along its path, and what is knitted or sewn beside it added."""
    plan, judged = panel_plan.planned(inputs)
    sizes = resolve(plan.design)
    numbers = [number for number in NUMBERS if inputs.given(f"yarn_{number}_name")]
    gauges = {yarn_id(n): _gauge(inputs, n, sizes) for n in numbers}
    loops = {yarn_id(n): _loop(inputs, n, gauges[yarn_id(n)]) for n in numbers}
    # A drawing may have more yarns than the form has fields for.
    others = [yarn for yarn in plan.design.yarns if yarn.id not in loops]
    gauges |= {yarn.id: _Gauge(sizes.stitches_per_10cm, sizes.rows_per_10cm) for yarn in others}
    loops |= {yarn.id: from_gauge(gauges[yarn.id].stitches, gauges[yarn.id].rows, _gauge_off(inputs)) for yarn in others}
    tail = inputs.mm("tail")
    measures = {yarn: measures_of(loop.mm, plan.design, tail) for yarn, loop in loops.items()}
    # The joins of the new balls: what is judged stays as it is, and the planner has knitted the piece already.
    path = path_of(plan, judged)
    joined = joined_plan(_with_balls(plan, inputs), path, measures)
    if joined.steps is not plan.steps:
        plan, path = joined, path_of(joined, judged)
    needs = needs_of(lay(path, measures))
    used = {block.yarn for block in needs.blocks} | {yarn for yarn, _ in needs.others}
    base = plan.edges.base_yarn_bottom or plan.blocks[0].yarn
    yarns: list[YarnShown] = []
    for number in numbers:
        yarn = yarn_id(number)
        if yarn not in used:
            continue
        more = {"swatch": inputs.whole("own_swatch_stitches") * inputs.whole("own_swatch_rows") * loops[yarn].mm}
        if yarn == base:
            more |= _hems(inputs, plan, judged, loops[yarn].mm) | _seams(inputs, plan, judged, tail)
        yarns.append(
            YarnShown(
                id=yarn,
                name=inputs.text(f"yarn_{number}_name"),
                loop=loops[yarn],
                metres_per_gram=_metres_per_gram(inputs, number),
                ball_g=inputs.g(f"need_{number}_ball_g"),
                on_hand_g=inputs.g(f"need_{number}_on_hand_g") if inputs.has(f"need_{number}_on_hand_g") else None,
                more={kind: mm for kind, mm in more.items() if mm},
            )
        )
    yarns += [
        YarnShown(
            id=yarn.id,
            name=yarn.name,
            loop=loops[yarn.id],
            metres_per_gram=_metres_per_gram(inputs, "1"),
            ball_g=inputs.g("need_1_ball_g"),
            on_hand_g=yarn.on_hand_g,
            more={"swatch": inputs.whole("own_swatch_stitches") * inputs.whole("own_swatch_rows") * loops[yarn.id].mm},
        )
        for yarn in others
        if yarn.id in used
    ]
    waste = inputs.whole("waste_rows") * sizes.needles * loops[base].mm
    margin = inputs.number("margin_percent")
    values = needs_values(needs, yarns, margin, waste)
    warnings = [*judged.warnings, *_unlike(plan, judged, gauges)]
    if others:
        names = ", ".join(yarn.name for yarn in others)
        warnings.append(Problem("", "yarn-needs.more-yarns", _say("more-yarns", names=names), _say("more-yarns.way-out")))
    return Result(values, (*needs_view(needs, yarns, margin, waste), *balls_view(plan, path)), tuple(warnings))


def _with_balls(plan: Plan, inputs: Inputs) -> Plan:
    """The same steps, for yarns with the put-up of this page: from it follows where a new ball is joined. A plan that has its
    joins already, from the balls of the planner, is left alone."""
    design = plan.design
    if any(yarn.ball_g for yarn in design.yarns):
        return replace(plan, design=replace(design, yarns=tuple(replace(yarn, ball_g=None) for yarn in design.yarns)))
    yarns = tuple(
        replace(
            yarn,
            ball_g=inputs.g(f"need_{number}_ball_g"),
            metres_per_gram=_metres_per_gram(inputs, number),
        )
        for yarn in design.yarns
        for number in [yarn.id.removeprefix("yarn-") if yarn.id in map(yarn_id, NUMBERS) else "1"]
    )
    options = replace(design.options, margin_percent=inputs.number("margin_percent"))
    return replace(plan, design=replace(design, yarns=yarns, options=options))


def _gauge(inputs: Inputs, number: str, sizes: Sizes) -> _Gauge:
    """The yarn's own gauge where it was given, else the piece's."""
    stitches, rows = f"need_{number}_stitches_per_10cm", f"need_{number}_rows_per_10cm"
    return _Gauge(
        inputs.number(stitches) if inputs.has(stitches) else sizes.stitches_per_10cm,
        inputs.number(rows) if inputs.has(rows) else sizes.rows_per_10cm,
    )


def _metres_per_gram(inputs: Inputs, number: str) -> Fraction:
    return inputs.mm(f"need_{number}_ball_m") / 1000 / inputs.g(f"need_{number}_ball_g")


def _loop(inputs: Inputs, number: str, gauge: _Gauge) -> Loop:
    source = inputs.text(f"need_{number}_from")
    if source == SWATCH:
        return from_swatch(
            inputs.number(f"need_{number}_swatch_stitches"),
            inputs.number(f"need_{number}_swatch_rows"),
            inputs.g(f"need_{number}_swatch_g"),
            inputs.g("scale_step"),
            _metres_per_gram(inputs, number),
        )
    if source == ROW:
        return from_row(inputs.whole(f"need_{number}_row_stitches"), inputs.several_mm(f"need_{number}_row_length"))
    return from_gauge(gauge.stitches, gauge.rows, _gauge_off(inputs))


def _gauge_off(inputs: Inputs) -> tuple[Fraction, Fraction]:
    """What a measured swatch can be off by; typed figures are taken as they are."""
    if inputs.text("gauge_from") != SWATCH:
        return Fraction(0), Fraction(0)
    found = measure(
        inputs.number("swatch_stitches"),
        inputs.several_mm("swatch_width"),
        inputs.number("swatch_rows"),
        inputs.several_mm("swatch_height"),
    )
    return found.across.off_percent, found.up.off_percent


def _hems(inputs: Inputs, plan: Plan, judged: Replay, loop: Fraction) -> dict[str, Fraction]:
    """Outside and facing of hems at the ends, over all needles, and at the sides, over the stitches that are picked up.

    Side hems and the edging that the piece asks for are knitted when it is off the machine: the plan does not have them, so they
    count here. Of a piece in panels, each outer panel gets its side hem, the last one the edging that goes round the whole.
    """
    sizes = resolve(plan.design)
    ends = {"none": 0, "bottom": 1, "top": 1, "both": 2}[inputs.text("hems")]
    across = 2 * ends * inputs.whole("hem_rows") * sizes.needles if ends else 0
    picked = nearest(sizes.rows * sizes.stitches_per_10cm / sizes.rows_per_10cm)
    up = 2 * 2 * inputs.whole("side_hem_rows") * picked
    part, high = plan.design.panel.part, sizes.rows + base_rows(judged)
    hung, strip = side_hem(plan.design, sizes, high), strip_of(plan.design, sizes, high)
    if hung is not None:
        up += outer_sides(part) * hung.knitted
    edged = strip.knitted if strip is not None and (part is None or part.number == part.panels) else 0
    return {"hems": across * loop, "side-hems": up * loop, "edging": edged * loop}


def _seams(inputs: Inputs, plan: Plan, judged: Replay, tail: Fraction) -> dict[str, Fraction]:
    """Those that were typed, and of a piece in panels the seam to the next one on the right of the front."""
    part, seams = plan.design.panel.part, inputs.mm("seams")
    if part is not None and part.number < part.panels:
        seams += panel_mm(plan, judged)[1]
    return {"seams": SEWING * seams + 2 * tail if seams else Fraction(0)}


def _unlike(plan: Plan, judged: Replay, gauges: dict[str, _Gauge]) -> list[Problem]:
    """Neighbouring yarns of which one knits more than 3 per cent wider or longer."""
    if len(set(gauges.values())) == 1:
        return []
    yarn_of = {block.id: block.yarn for block in plan.blocks}
    names = {yarn.id: yarn.name for yarn in plan.design.yarns}
    numbers = {yarn_id(number): number for number in NUMBERS}
    pairs = sorted({tuple(sorted((yarn_of[a], yarn_of[b]))) for a, b in neighbours(judged.piece) if yarn_of[a] != yarn_of[b]})
    found: list[Problem] = []
    for one, other in pairs:
        for kind, field in (("wider", "stitches"), ("longer", "rows")):
            # Fewer stitches to 10 cm are wider ones.
            a, b = getattr(gauges[one], field), getattr(gauges[other], field)
            big, small, more = (one, other, (b / a - 1) * 100) if a < b else (other, one, (a / b - 1) * 100)
            if more > UNLIKE:
                words = _say(f"unlike-{kind}", big=names[big], small=names[small], percent=decimal_text(more, 1))
                where = f"need_{numbers[big]}_{field}_per_10cm" if big in numbers else ""
                found.append(Problem(where, "yarn-needs.unlike", words, _say("unlike.way-out")))
    return found


def _words(field: Field, number: int) -> Field:
    """The four groups say the same of each yarn."""
    key = field.name.split("_", 2)[2]

    def choice_words(chosen: str) -> str:
        return _say(f"need_{key}.{chosen}")

    return Field(
        **{name: getattr(field, name) for name in Field.__dataclass_fields__ if not name.endswith("_words")},
        label_words=lambda: _say(f"need_{key}.label", number=number),
        help_words=lambda: _say(f"need_{key}.help", number=number),
        choice_words=choice_words if field.choices else None,
        allowed_words=field.allowed_words,
    )


# Of our own invention; yarn 1 was weighed, yarn 2 unravelled, the others neither.
_FROM = (SWATCH, ROW, GEOMETRY, GEOMETRY)


def _yarn_group(number: int) -> Group:
    def name(key: str) -> str:
        return f"need_{number}_{key}"

    weighed, unravelled = Only(name("from"), (SWATCH,)), Only(name("from"), (ROW,))
    fields = (
        choice(name("from"), _FROM[number - 1], (SWATCH, ROW, GEOMETRY)),
        decimal(name("swatch_stitches"), "44", 1, 1000, "stitches", only=weighed),
        decimal(name("swatch_rows"), "64", 1, 2000, "rows", only=weighed),
        mass(name("swatch_g"), "66 g", Fraction(1, 10), 5000, "g", only=weighed),
        whole(name("row_stitches"), "100", 1, 10_000, "stitches", only=unravelled),
        lengths(name("row_length"), "278 cm; 281 cm", 1, 20_000, "cm", only=unravelled),
        mass(name("ball_g"), "50 g", 1, 10_000, "g"),
        length(name("ball_m"), "60 m", 1, 100_000, "m"),
        mass(name("on_hand_g"), "300 g" if number == 1 else "", 0, 100_000, "g", optional=True),
        decimal(name("stitches_per_10cm"), "", 1, 200, "stitches-per-10cm", optional=True),
        decimal(name("rows_per_10cm"), "", 1, 200, "rows-per-10cm", optional=True),
    )
    return Group(f"need-{number}", tuple(_words(field, number) for field in fields), folded="" if number == 1 else "alone")


CALCULATOR = Calculator(
    "yarn-needs",
    (
        *(_yarn_group(number) for number in range(1, len(NUMBERS) + 1)),
        Group(
            "beside",
            (
                length("tail", "18 cm", 5, 60, "cm"),
                choice("hems", "none", ("none", "bottom", "top", "both")),
                whole("hem_rows", "8", 0, 200, "rows", only=Only("hems", ("bottom", "top", "both"))),
                whole("side_hem_rows", "0", 0, 200, "rows"),
                length("seams", "0", 0, 20_000, "cm"),
                whole("waste_rows", "0", 0, 200, "rows"),
                whole("own_swatch_stitches", "40", 0, 1000, "stitches"),
                whole("own_swatch_rows", "60", 0, 2000, "rows"),
            ),
        ),
        Group(
            "margin", (decimal("margin_percent", "10", 0, 100, "percent"), mass("scale_step", "1 g", Fraction(1, 100), 100, "g"))
        ),
        *PLAN_GROUPS,
    ),
    compute,
    yarn_problems,
)
