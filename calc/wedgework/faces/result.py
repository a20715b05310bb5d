"""The answer of a calculator as HTML: problems or warnings first, then each part in its own form."""

from __future__ import annotations

import re
from collections.abc import Iterable

from wedgework.declare import Answer, Bullets, Calculator, Figures, Picture, Prose, Shown, Table, Written
from wedgework.faces.markup import Html, element, joined
from wedgework.problems import Problem
from wedgework.say import say

__all__ = ["part_html", "result_html"]


_INCHES = re.compile(r"(\d) (\d{1,2}/\d{1,2}) in\b")


def result_html(answer: Answer) -> Html:
    """The inside of ``<output>``; no line ends inside the fraction of an inch."""
    return Html(_INCHES.sub("\\1\u00a0\\2\u00a0in", _inside(answer)))


def _inside(answer: Answer) -> Html:
    if answer.result is None:
        return _told("problems", say("faces.problems"), answer.problems, answer.calculator)
    parts = [part_html(part) for part in answer.result.view]
    if answer.result.warnings:
        parts.insert(1, _told("warnings", say("faces.warnings"), answer.result.warnings, answer.calculator))
    return joined(*parts)


def _told(kind: str, title: str, problems: Iterable[Problem], calculator: Calculator) -> Html:
    """Problems or warnings; each names its field as the form does."""
    items = []
    for problem in problems:
        field = calculator.field(problem.where)
        name = field.label(calculator.slug) if field else problem.where
        words = [problem.sentence, " ", problem.way_out] if problem.way_out else [problem.sentence]
        if name:
            words = [element("strong", name), ": ", *words]
        items.append(element("li", *words, data_field=problem.where or None, data_code=problem.code))
    return _section(kind, title, element("ul", *items))


def _section(kind: str, title: str, *inside: str) -> Html:
    heading = [element("h2", title)] if title else []
    return element("section", *heading, *inside, class_=f"ww-part ww-{kind}")


def part_html(part: Shown) -> Html:
    """One part of an answer, as it stands on a page."""
    match part:
        case Figures():
            return _figures(part)
        case Table():
            return _table(part)
        case Picture():
            return _section("picture", part.title, element("figure", Html(part.svg), element("figcaption", part.caption)))
        case Bullets():
            tag = "ol" if part.ordered else "ul"
            return _section("bullets", part.title, element(tag, *(element("li", item) for item in part.items)))
        case Prose():
            return _section("prose", part.title, *(element("p", words) for words in part.paragraphs))
        case Written():
            return _section("written", part.title, Html(part.html))


def _figures(part: Figures) -> Html:
    rows = [
        element(
            "tr",
            element("th", row.label, scope="row"),
            element("td", row.value, class_="ww-figure", data_result=row.name or None),
            element("td", row.note, class_="ww-note"),
        )
        for row in part.rows
    ]
    return _section("figures", part.title, _wide(part.title, element("table", element("tbody", *rows))))


def _table(part: Table) -> Html:
    heads = element("tr", *(element("th", head, scope="col") for head in part.heads))
    none = (None,) * len(part.rows)
    keys, sides = part.keys or none, part.sides or none
    rows = [
        element(
            "tr",
            element("th", cells[0], scope="row"),
            *(element("td", cell) for cell in cells[1:]),
            data_key=key,
            data_side=side or None,
        )
        for cells, key, side in zip(part.rows, keys, sides, strict=True)
    ]
    table = element("table", element("thead", heads), element("tbody", *rows))
    return _section("table", part.title, _wide(part.title, table))


def _wide(title: str, table: Html) -> Html:
    """A table wider than the screen scrolls by itself, also from the keyboard."""
    return element("div", table, class_="ww-wide", role="group", tabindex="0", aria_label=title)
