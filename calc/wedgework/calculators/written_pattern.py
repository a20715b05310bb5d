"""Written pattern: the whole piece as a document that a stranger can follow, in one size or in several."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, fields
from fractions import Fraction

from wedgework.bed import USUAL_BEDS
from wedgework.calculators import panel_plan
from wedgework.calculators.layout_fields import yarn_problems
from wedgework.calculators.panel_view import panel_values
from wedgework.calculators.pattern_sizes import Size, size_problems, sized, typed_sizes
from wedgework.calculators.plan_groups import PLAN_GROUPS
from wedgework.calculators.planning import bed_words
from wedgework.declare import (
    Bullets,
    Calculator,
    Figure,
    Figures,
    Group,
    Inputs,
    Picture,
    Plain,
    Prose,
    Result,
    Shown,
    Table,
    Written,
    choice,
    lines,
    text,
)
from wedgework.draw import front_svg
from wedgework.exact import up
from wedgework.formats.design import Yarn
from wedgework.formats.plan import is_edge
from wedgework.layout.sizes import resolve
from wedgework.problems import Problem
from wedgework.say import say, say_n
from wedgework.units import both_text
from wedgework.words.dialects import Dialect, spoken_in
from wedgework.words.finishing import finished_mm
from wedgework.words.pattern import pattern
from wedgework.yarn.needs import planned_needs

__all__ = ["CALCULATOR"]

OWN_TEXTS = {"text_first": "start", "text_blocks": "finish", "text_last": "last"}
"""Fields of the person's own text, and the section each stands before."""
DIALECTS: dict[str, Dialect] = {"uk": "uk", "us": "us"}
SPARE = Fraction(11, 10)
"""A tenth more yarn than by the geometry of the loop, which is sure to a tenth."""


def _say(key: str, **values: object) -> str:
    return say(f"calculators.written-pattern.{key}", **values)


def check(inputs: Inputs) -> Sequence[Problem]:
    """The sizes; and what is wrong with the piece."""
    found = list(yarn_problems(inputs))
    if inputs.has("sizes") and inputs.has("size_name"):
        typed = inputs.text("sizes") if inputs.given("sizes") else ""
        found += size_problems("sizes", typed, inputs.text("size_name"))
    return found


def compute(inputs: Inputs) -> Result:
    with spoken_in(DIALECTS[inputs.text("words")]):
        return _written(inputs)


def _written(inputs: Inputs) -> Result:
    first = Size(inputs.text("size_name"), *panel_plan.planned(inputs))
    typed = typed_sizes(inputs.text("sizes")) if inputs.given("sizes") else []
    sizes = sized(first, typed, "sizes")
    own = {
        place: (_say(f"own-{place}"), inputs.text(field).split("\n")) for field, place in OWN_TEXTS.items() if inputs.given(field)
    }
    document = pattern([(size.name, size.plan, size.judged) for size in sizes], own)
    written = Written(_say("pattern"), document.as_html(), document.as_text())
    warnings = tuple(warning for size in sizes for warning in size.judged.warnings)
    found = [_Told.of(size) for size in sizes]
    # Of the first size as in the panel plan; of each size what stands in the table.
    values: dict[str, Plain] = {**panel_values(first.plan, first.judged), "sizes": [each.value() for each in found]}
    return Result(values, (*_opening(inputs, sizes, found), written, *_closing(inputs)), warnings)


@dataclass(frozen=True, slots=True)
class _Told:
    """What is told of a size: `metres` of each yarn that is used, by its id, whole and a tenth to spare."""

    name: str
    needles: int
    rows: int
    width_mm: Fraction
    height_mm: Fraction
    blocks: int
    ends: int
    passes: int
    metres: dict[str, int]

    @classmethod
    def of(cls, size: Size) -> _Told:
        plan, judged = size.plan, size.judged
        needs = planned_needs(plan, judged)
        used = {yarn.id: needs.total_mm(yarn.id) for yarn in plan.design.yarns}
        sizes = resolve(plan.design)
        return cls(
            size.name,
            sizes.needles,
            sizes.rows,
            *finished_mm(plan, judged),
            sum(not is_edge(block.id) for block in plan.blocks),
            judged.summary.ends,
            sum(judged.block_rows.values()),
            {yarn: up(mm * SPARE / 1000) for yarn, mm in used.items() if mm},
        )

    def value(self) -> dict[str, Plain]:
        return {each.name: getattr(self, each.name) for each in fields(self)}


def _opening(inputs: Inputs, sizes: Sequence[Size], found: Sequence[_Told]) -> tuple[Shown, ...]:
    """Who wrote it, the picture, the sizes."""
    first = sizes[0]
    about = [
        Figure(_say(f"{field}.label"), inputs.text(field))
        for field in ("author", "revision", "date", "permission")
        if inputs.given(field)
    ]
    finished = _say("by", width=both_text(found[0].width_mm), height=both_text(found[0].height_mm))
    about.append(Figure(_say("finished"), finished, first.name, "finished_width_mm"))
    about.append(Figure(_say("blocks"), f"{found[0].blocks}", say_n("words.ends", found[0].ends), "blocks"))
    caption = _say("picture-caption" if len(sizes) == 1 else "picture-caption-first", name=first.name)
    return (
        Figures(first.plan.design.title, tuple(about)),
        Picture(_say("picture"), front_svg(first.plan, first.judged, prefix="pattern"), caption),
        _table(found, first.plan.design.yarns),
        _beds(found),
        Bullets(_say("tools"), tuple(_say(f"tool-{key}") for key in _tools(first))),
        Bullets(_say("skills"), tuple(_say(f"skill-{key}") for key in _skills(sizes))),
        Prose(_say("practice"), (_say("practice-note"),)),
    )


def _table(found: Sequence[_Told], yarns: Sequence[Yarn]) -> Table:
    """A column for each size."""
    rows = [
        (_say("row-width"), *(both_text(each.width_mm) for each in found)),
        (_say("row-height"), *(both_text(each.height_mm) for each in found)),
        (_say("row-needles"), *(f"{each.needles}" for each in found)),
        (_say("row-rows"), *(f"{each.rows}" for each in found)),
        (_say("row-blocks"), *(f"{each.blocks}" for each in found)),
        (_say("row-ends"), *(f"{each.ends}" for each in found)),
        (_say("row-passes"), *(f"{each.passes}" for each in found)),
    ]
    for yarn in yarns:
        amounts = [each.metres.get(yarn.id, 0) for each in found]
        if any(amounts):
            rows.append((_say("row-yarn", yarn=yarn.name), *(f"{amount} m" for amount in amounts)))
    return Table(_say("sizes-table"), (_say("row-head"), *(each.name for each in found)), tuple(rows))


def _beds(found: Sequence[_Told]) -> Table:
    """Which size fits on which usual bed, by its needles."""
    rows = [
        (
            bed_words(bed.pitch_mm, bed.needles),
            *(_say("fits") if each.needles <= bed.needles else _say("fits-not") for each in found),
        )
        for bed in USUAL_BEDS
    ]
    return Table(_say("beds"), (_say("beds-head"), *(each.name for each in found)), tuple(rows))


def _tools(size: Size) -> list[str]:
    design, found = size.plan.design, size.judged.summary
    keys = ["machine", "weights", "needle"]
    keys += ["waste"] if design.hems.bottom.kind != "none" else []
    keys += ["transfer"] if "picot" in (design.hems.bottom.kind, design.hems.top.kind) or design.hems.top.kind != "none" else []
    keys += ["mast"] if len(found.stitches) > 1 else []
    return keys


def _skills(sizes: Sequence[Size]) -> list[str]:
    """What the plans ask of the hands."""
    found = [size.judged.summary for size in sizes]
    keys = ["cast-on", "short-rows"]
    keys += ["inside-start"] if any(each.inside_starts for each in found) else []
    keys += ["free-pass"] if any(each.free_passes for each in found) else []
    keys += ["linking"] if any(each.slits for each in found) else []
    hems = sizes[0].plan.design.hems
    keys += ["hems"] if (hems.bottom.kind, hems.top.kind, hems.sides.kind) != ("none",) * 3 else []
    return keys


def _closing(inputs: Inputs) -> tuple[Shown, ...]:
    """Variations and errata, in the person's own words."""
    return tuple(
        Prose(_say(f"{field}.label"), tuple(inputs.text(field).split("\n")))
        for field in ("variations", "errata")
        if inputs.given(field)
    )


CALCULATOR = Calculator(
    "written-pattern",
    (
        Group(
            "pattern",
            (
                text("author", "", longest=100, optional=True),
                text("revision", "", longest=40, optional=True),
                text("date", "", longest=40, optional=True),
                text("permission", "", longest=300, optional=True),
                choice("words", "uk", tuple(DIALECTS)),
            ),
        ),
        Group("sizes", (text("size_name", "One size", longest=20), lines("sizes", "", optional=True))),
        Group(
            "own-text",
            (
                lines("text_first", "", optional=True),
                lines("text_blocks", "", optional=True),
                lines("text_last", "", optional=True),
                lines("variations", "", optional=True),
                lines("errata", "", optional=True),
            ),
            folded="alone",
        ),
        *PLAN_GROUPS,
    ),
    compute,
    check,
)
