"""The inputs of a calculator as HTML: a label, what is allowed and a help line for each field, grouped in fieldsets."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import groupby

from wedgework.declare import Calculator, Field, Group
from wedgework.faces.markup import Html, element, joined, void
from wedgework.say import say

__all__ = ["fields_html"]


def fields_html(calculator: Calculator, typed: Mapping[str, str]) -> Html:
    """All fieldsets, with `typed` in the fields. A field that hangs on a choice says so in `data-only`.

    What is not seen at first, folded or hanging on a choice that is not made, stands in a ``noscript``: a script puts it in its
    place when the page has been painted (forms.js), and where none runs every field is seen.
    """
    typed = {**calculator.defaults, **typed}
    parts: list[Html] = []
    for folded, groups in groupby(calculator.groups, lambda group: group.folded):
        if folded == "piece":
            parts.append(_folded(say("faces.folded-piece"), *(_group(calculator, group, typed) for group in groups)))
        elif folded == "alone":
            parts += [_folded(calculator.group_title(group), _group(calculator, group, typed)) for group in groups]
        else:
            parts += [_group(calculator, group, typed, later=True) for group in groups]
    return joined(*parts)


def _folded(title: str, *groups: Html) -> Html:
    one = " ww-folded-one" if len(groups) == 1 else ""
    return element("details", element("summary", title), element("noscript", *groups), class_=f"ww-folded{one}")


def _group(calculator: Calculator, group: Group, typed: Mapping[str, str], later: bool = False) -> Html:
    """`later`: what hangs on another choice stands in a ``noscript``, which must not stand in another one."""
    parts: list[Html] = []
    for off, fields in groupby(group.fields, lambda field: later and _is_off(field, typed)):
        html = [_field(calculator, field, typed) for field in fields]
        parts += [element("noscript", *html)] if off else html
    return element(
        "fieldset",
        element("legend", calculator.group_title(group)),
        *parts,
        class_="ww-group",
        data_group=group.key,
    )


def _field(calculator: Calculator, field: Field, typed: Mapping[str, str]) -> Html:
    slug = calculator.slug
    key = f"{slug}-{field.name}"
    described = [f"{key}-range", f"{key}-help"]
    label = [field.label(slug)]
    if field.optional:
        label.append(element("span", f" ({say('faces.optional')})", class_="ww-optional"))
    allowed = [element("p", field.range_text, class_="ww-range", id=described[0])]
    if field.kind in ("choice", "yes-no", "colour"):  # the control shows what is allowed by itself
        allowed, described = [], described[1:]
    return element(
        "div",
        element("label", *label, for_=key),
        _control(calculator, field, typed[field.name], key, " ".join(described)),
        *allowed,
        element("p", *_only(calculator, field), field.help(slug), class_="ww-help", id=f"{key}-help"),
        class_=f"ww-field ww-field-{field.kind}",
        data_field=field.name,
        data_only=f"{field.only.field}={' '.join(field.only.values)}" if field.only else None,
        data_off=_is_off(field, typed) or None,
    )


def _is_off(field: Field, typed: Mapping[str, str]) -> bool:
    """Whether it hangs on another choice than is made: with a script it is not seen from the first picture on."""
    return field.only is not None and not field.only.met(typed)


def _only(calculator: Calculator, field: Field) -> list[str]:
    """In words, since without a script every field is seen."""
    if field.only is None:
        return []
    decider = calculator.field(field.only.field)
    if decider is None:
        raise AssertionError(field.only.field)
    named = ", ".join(decider.choice_label(calculator.slug, value) for value in field.only.values)
    return [element("span", say("faces.only", label=decider.label(calculator.slug), choice=named), class_="ww-only"), " "]


def _control(calculator: Calculator, field: Field, typed: str, key: str, described: str) -> Html:
    if field.kind in ("choice", "yes-no"):
        options = [
            element("option", field.choice_label(calculator.slug, one), value=one, selected=one == typed) for one in field.choices
        ]
        if field.optional:
            options.insert(0, element("option", say("faces.no-choice"), value="", selected=not typed))
        return element("select", *options, id=key, name=field.name, aria_describedby=described)
    if field.kind == "colour":
        return void("input", type="color", id=key, name=field.name, value=typed, aria_describedby=described)
    if field.kind == "lines":
        return element(
            "textarea",
            typed,
            id=key,
            name=field.name,
            rows=str(max(3, typed.count("\n") + 2)),
            maxlength=str(field.longest),
            autocomplete="off",
            spellcheck="false",
            aria_describedby=described,
        )
    # Numbers are typed with units, commas and fractions: a text field, with the keyboard that has them.
    mode = "text" if field.per_length else {"whole": "numeric", "decimal": "decimal"}.get(field.kind, "text")
    return void(
        "input",
        type="text",
        id=key,
        name=field.name,
        value=typed,
        inputmode=mode,
        autocomplete="off",
        spellcheck="false" if field.kind != "text" else None,
        required=not field.optional and field.only is None,
        maxlength=str(field.longest) if field.kind == "text" else None,
        aria_describedby=described,
    )
