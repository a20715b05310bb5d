"""The fields that follow from the layouts: one for each parameter name, whatever layouts share it.

A layout's parameter keeps its range and its default in its own declaration; here they are only put into words.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from wedgework.declare import Field, Inputs, Only, choice, decimal, text, whole
from wedgework.formats import nearest_decimal
from wedgework.formats.design import NamedLayout
from wedgework.layout.library import LAYOUTS, LayoutDeclaration, Parameter, named
from wedgework.problems import Problem
from wedgework.say import say
from wedgework.units import short_decimal

__all__ = [
    "DRAWN",
    "LAYOUT_FIELDS",
    "MOST_YARNS",
    "NUMBERS",
    "layout_from",
    "parameter_default",
    "parameter_range",
    "yarn_id",
    "yarn_problems",
]

DRAWN = "drawn"
"""The choice of a drawing of one's own, beside the layouts that ship; see `drawing_field`."""
MOST_YARNS = 4
NUMBERS = tuple(str(number) for number in range(1, MOST_YARNS + 1))


def parameter_range(parameter: Parameter) -> str:
    """What a layout's parameter may be, in words."""
    if parameter.kind in ("yarn", "yarns"):
        return say(f"calculators.parameter-{parameter.kind}")
    return say(f"calculators.parameter-{parameter.kind}", least=_short(parameter.least), most=_short(parameter.most))


def parameter_default(parameter: Parameter) -> str:
    """What it is if it is not given, in words."""
    if parameter.default is None:
        return say(f"calculators.parameter-default-{parameter.kind}", number=parameter.default_yarn + 1)
    return _short(parameter.default)


def yarn_id(number: str) -> str:
    """The id that yarn `number` of the form has in the design."""
    return f"yarn-{number}"


def layout_from(inputs: Inputs) -> NamedLayout:
    """The layout that was chosen, with the parameters that were given."""
    layout = _chosen(inputs)
    given = [parameter for parameter in layout.parameters if inputs.has(parameter.name)]
    return NamedLayout(layout.name, {parameter.name: _value(parameter, inputs) for parameter in given})


def yarn_problems(inputs: Inputs) -> list[Problem]:
    """Yarns that the layout's parameters ask for and that have no name."""
    if not inputs.has("layout") or inputs.text("layout") == DRAWN:
        return []
    there = [number for number in NUMBERS if inputs.given(f"yarn_{number}_name")]
    problems: list[Problem] = []
    for parameter in _chosen(inputs).parameters:
        if parameter.kind not in ("yarn", "yarns") or not inputs.has(parameter.name):
            continue
        strange = [number for number in _numbers(inputs.text(parameter.name)) if number not in there]
        if strange:
            sentence = say("calculators.panel-plan.no-such-yarn", found=", ".join(strange))
            way_out = say("calculators.panel-plan.no-such-yarn.way-out", numbers=", ".join(there))
            problems.append(Problem(parameter.name, "panel-plan.no-such-yarn", sentence, way_out))
    return problems


def _chosen(inputs: Inputs) -> LayoutDeclaration:
    layout = named(inputs.text("layout"))
    if layout is None:
        raise AssertionError("the choice offers the layouts that there are")
    return layout


def _numbers(typed: str) -> list[str]:
    return typed.replace(",", " ").split()


def _value(parameter: Parameter, inputs: Inputs) -> str | Fraction:
    if parameter.kind in ("yarn", "yarns"):
        return " ".join(yarn_id(number) for number in _numbers(inputs.text(parameter.name)))
    # Files hold decimals.
    return nearest_decimal(inputs.number(parameter.name))


def _fields() -> tuple[Field, ...]:
    users: dict[str, list[tuple[LayoutDeclaration, Parameter]]] = {}
    for layout in LAYOUTS:
        for parameter in layout.parameters:
            users.setdefault(parameter.name, []).append((layout, parameter))
    return tuple(_field(name, tuple(using)) for name, using in users.items())


def _field(name: str, using: tuple[tuple[LayoutDeclaration, Parameter], ...]) -> Field:
    kinds = {parameter.kind for _, parameter in using}
    if len(kinds) != 1:
        raise ValueError(f"layouts use {name} for different kinds of things")
    only = Only("layout", tuple(layout.name for layout, _ in using))
    kind = kinds.pop()
    least, most = min(p.least for _, p in using), max(p.most for _, p in using)
    if kind == "yarn":
        field = choice(name, "", NUMBERS, words=_yarn_words, optional=True, only=only)
    elif kind == "yarns":
        field = replace(text(name, "", longest=40, optional=True, only=only), allowed_words=_yarns_words)
    elif kind == "whole":
        field = whole(name, "", int(least), int(most), optional=True, only=only)
    else:
        field = decimal(name, "", least, most, optional=True, only=only)
    return replace(field, label_words=lambda: _label(using), help_words=lambda: _help(using))


def _label(using: tuple[tuple[LayoutDeclaration, Parameter], ...]) -> str:
    return " / ".join(dict.fromkeys(layout.label(parameter) for layout, parameter in using))


def _help(using: tuple[tuple[LayoutDeclaration, Parameter], ...]) -> str:
    """Range and default, once for all layouts that share them."""
    said: dict[tuple[str, str], list[str]] = {}
    for layout, parameter in using:
        allowed = "" if parameter.kind in ("yarn", "yarns") else parameter_range(parameter)
        said.setdefault((allowed, parameter_default(parameter)), []).append(layout.title)
    if len(said) == 1:
        ((allowed, default),) = said
        return _allowed(allowed, default, "")
    return " ".join(_allowed(allowed, default, ", ".join(titles)) for (allowed, default), titles in said.items())


def _allowed(allowed: str, default: str, layouts: str) -> str:
    key = "parameter" if allowed else "parameter-yarns"
    if layouts:
        return say(f"calculators.panel-plan.{key}", layout=layouts, allowed=allowed, default=default)
    return say(f"calculators.panel-plan.{key}-always", allowed=allowed, default=default)


def _yarn_words(number: str) -> str:
    return say("calculators.panel-plan.yarn-number", number=number)


def _yarns_words() -> str:
    return say("calculators.panel-plan.yarn-numbers")


def _short(value: Fraction) -> str:
    return short_decimal(value, 4)


LAYOUT_FIELDS = _fields()
