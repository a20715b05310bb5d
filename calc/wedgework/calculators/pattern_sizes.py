"""Sizes of one pattern: the piece as it stands, and the same at other sizes, with as many repeats as each of them wants.

One size a line:

    M 90 x 120 cm
    L 120 x 150 cm, across 4, up 5
    XL 150 x 180 cm, nebeneinander 5, übereinander 6
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise

from wedgework.calculators.planning import planned
from wedgework.formats import nearest_decimal
from wedgework.formats.design import Design, Extent, NamedLayout, OrderWish, Panel
from wedgework.formats.plan import Plan, is_edge
from wedgework.problems import Problem, Refused
from wedgework.replay import Replay
from wedgework.say import say
from wedgework.units import length_mm, number

__all__ = ["MOST_SIZES", "Size", "Typed", "size_problems", "sized", "typed_sizes"]

MOST_SIZES = 6
_LINE = re.compile(
    r"(?P<name>\S.{0,19}?)\s+(?P<width>\d[^x\u00d7]*?)\s*[x\u00d7]\s*(?P<height>\d[^,]*)(?P<more>(?:,[^,]+)*)", re.IGNORECASE
)
# Parameters as a German form calls them; a line is read the same in every language, because links keep it as it was typed.
_GERMAN = {
    "nebeneinander": "across",
    "übereinander": "up",
    "bänder": "bands",
    "spitzen": "points",
    "anstieg": "rise",
    "knicke": "bends",
    "zähne": "teeth",
    "stufen": "steps",
    "streifen": "strips",
    "bergketten": "ridges",
    "gipfel": "peaks",
    "keile": "rays",
    "breite der raute": "diamond_width",
    "höhe der raute": "diamond_height",
    "breite der sonne": "sun_width",
}
_UNIT = re.compile(r"(mm|cm|m|in|inch|inches|\")\s*$")


@dataclass(frozen=True, slots=True)
class Typed:
    """A line: what the size is called, how large it is, what its layout has otherwise."""

    name: str
    width_mm: Fraction
    height_mm: Fraction
    parameters: tuple[tuple[str, Fraction], ...]


@dataclass(frozen=True, slots=True)
class Size:
    """One size of the pattern, planned and knitted on the model bed."""

    name: str
    plan: Plan
    judged: Replay


def _say(key: str, **values: object) -> str:
    return say(f"calculators.written-pattern.{key}", **values)


def typed_sizes(lines: str) -> list[Typed]:
    """The sizes in what was typed; lines that are none are left out (`size_problems` tells of them)."""
    return [found for line in lines.split("\n") if (found := _read(line)) is not None]


def _read(line: str) -> Typed | None:
    match = _LINE.fullmatch(line.strip())
    if match is None:
        return None
    unit = _UNIT.search(match["height"].strip())
    width = match["width"] if _UNIT.search(match["width"].strip()) or unit is None else f"{match['width']} {unit[1]}"
    parameters = []
    try:
        for part in filter(None, (each.strip() for each in match["more"].split(","))):
            key, _, value = part.rpartition(" ")
            name = key.strip()
            parameters.append((_GERMAN.get(name.lower()) or name.replace(" ", "_"), number(value)))
        sides = length_mm(width, "cm"), length_mm(match["height"], "cm")
    except Refused:
        return None
    return Typed(match["name"], *sides, tuple(parameters)) if all(side > 0 for side in sides) else None


def size_problems(field: str, lines: str, own: str) -> list[Problem]:
    """Lines that are no size, names that stand twice, more sizes than one can read."""
    typed = [line for line in lines.split("\n") if line.strip()]
    found = [
        Problem(field, "written-pattern.no-size", _say("no-size", found=line[:60]), _say("no-size.way-out"))
        for line in typed
        if _read(line) is None
    ]
    names = [own, *(size.name for size in typed_sizes(lines))]
    for name in sorted({name for name in names if names.count(name) > 1}):
        found.append(Problem(field, "written-pattern.name-twice", _say("name-twice", name=name), _say("name-twice.way-out")))
    if len(typed) >= MOST_SIZES:
        sentence = _say("too-many", found=len(typed) + 1, most=MOST_SIZES)
        found.append(Problem(field, "written-pattern.too-many", sentence, _say("too-many.way-out")))
    return found


def sized(first: Size, others: Sequence[Typed], field: str) -> list[Size]:
    """Every size, planned, in the order of the first one where it has the same blocks. Raises Refused under `field`."""
    found, problems = [first], list[Problem]()
    for typed in others:
        design = _design(first.plan.design, typed)
        try:
            found.append(Size(typed.name, *_planned(design, first.plan)))
        except Refused as refused:
            problems += [
                Problem(field, problem.code, _say("size-refused", name=typed.name, sentence=problem.sentence), problem.way_out)
                for problem in refused.problems
            ]
    if problems:
        raise Refused(problems)
    return found


def _design(design: Design, typed: Typed) -> Design:
    panel = Panel(Extent(mm=nearest_decimal(typed.width_mm)), Extent(mm=nearest_decimal(typed.height_mm)))
    layout = design.layout
    if typed.parameters and isinstance(layout, NamedLayout):
        layout = replace(layout, parameters={**layout.parameters, **dict(typed.parameters)})
    return replace(design, panel=panel, layout=layout, options=replace(design.options, order=()))


def _planned(design: Design, first: Plan) -> tuple[Plan, Replay]:
    """In the order of the first size if that can be: then the sentences of all sizes are one text."""
    ids = [block.id for block in first.blocks if not is_edge(block.id)]
    plan, judged = planned(design)
    if {block.id for block in plan.blocks if not is_edge(block.id)} == set(ids):
        wishes = tuple(OrderWish(one, before=other) for one, other in pairwise(ids))
        with suppress(Refused):  # where it lies otherwise, the order that is best for it stays
            return planned(replace(design, options=replace(design.options, order=wishes)))
    return plan, judged
