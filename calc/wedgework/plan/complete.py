"""The design as the plan keeps it: every default written out; and wishes that this version cannot carry out."""

from __future__ import annotations

from dataclasses import replace

from wedgework.finish.end_hems import FEWEST_STITCHES
from wedgework.formats.design import Design, NamedLayout
from wedgework.layout.library import named
from wedgework.layout.yarns import unknown_yarn
from wedgework.problems import Problem
from wedgework.say import say
from wedgework.units import short_decimal
from wedgework.version import VERSION

__all__ = ["complete", "wish_problems"]


def complete(design: Design) -> Design:
    """`design` with the parameters of its named layout filled in and the version that made it."""
    layout = design.layout
    if isinstance(layout, NamedLayout):
        declared = named(layout.name)
        if declared is not None:
            layout = NamedLayout(layout.name, declared.written(layout.parameters, [y.id for y in design.yarns]))
    return replace(design, layout=layout, made_by=VERSION)


def _hem_problems(design: Design) -> list[Problem]:
    """A hem is joined to rows over every needle; a picot fold needs a stitch between two others."""
    hems, options = design.hems, design.options
    found = [
        Problem(
            f"options.base_rows_{end}",
            "plan.hem-without-rows",
            say(f"plan.hem-without-rows-{end}"),
            say("plan.hem-without-rows.way-out"),
        )
        for end, hem, rows in (
            ("bottom", hems.bottom, options.base_rows_bottom),
            ("top", hems.top, options.base_rows_top),
        )
        if hem.kind != "none" and not rows
    ]
    part = design.panel.part
    across = design.panel.width.count if part is None else part.needles
    if across is not None and across < FEWEST_STITCHES:
        found += [
            Problem(
                f"hems.{end}", "plan.hem-narrow", say("plan.hem-narrow", least=FEWEST_STITCHES), say("plan.hem-narrow.way-out")
            )
            for end, hem in (("bottom", hems.bottom), ("top", hems.top))
            if hem.kind == "picot"
        ]
    return found


def _edging_problems(design: Design) -> list[Problem]:
    """A strip is joined to an open edge, not to the fold of a hem."""
    hems, edging = design.hems, design.edging
    if edging is None:
        return []
    hemmed = {"sides": hems.sides.kind != "none", "ends": hems.bottom.kind != "none" or hems.top.kind != "none"}
    return [
        Problem("edging", "plan.edging-on-hem", say(f"plan.edging-on-hem-{edge}"), say("plan.edging-on-hem.way-out"))
        for edge, hem in hemmed.items()
        if hem and edging.along in ("all", edge)
    ]


def wish_problems(design: Design) -> list[Problem]:
    """Base rows in a yarn that is not there, hems that nothing joins, an edging on a fold, tensions that no dial has."""
    ids = [yarn.id for yarn in design.yarns]
    found = [
        unknown_yarn(f"options.{key}", yarn, ids)
        for key, yarn in (
            ("base_yarn_bottom", design.options.base_yarn_bottom),
            ("base_yarn_top", design.options.base_yarn_top),
        )
        if yarn is not None and yarn not in ids
    ]
    found += _hem_problems(design) + _edging_problems(design)
    machine = design.bed.machine
    if machine.tension_min > machine.tension_max:
        low, high = (short_decimal(value, 2) for value in (machine.tension_min, machine.tension_max))
        found.append(
            Problem(
                "bed.machine.tension_min",
                "plan.tension-range",
                say("plan.tension-range", least=low, most=high),
                say("plan.tension-range.way-out"),
            )
        )
    else:
        found += [
            Problem(
                f"yarns[{i}].tension",
                "plan.tension-outside",
                say("plan.tension-outside", tension=short_decimal(yarn.tension, 2), yarn=yarn.name),
                say("plan.tension-outside.way-out"),
            )
            for i, yarn in enumerate(design.yarns)
            if yarn.tension is not None and not machine.tension_min <= yarn.tension <= machine.tension_max
        ]
    return found
