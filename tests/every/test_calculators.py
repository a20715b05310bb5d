"""What holds for every calculator, whichever joins the catalogue."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from html.parser import HTMLParser

import pytest

from wedgework.catalogue import CALCULATORS, calculator
from wedgework.declare import Calculator, Figures, Table, work_out
from wedgework.faces.answers import answer_object, json_text
from wedgework.faces.cli import main
from wedgework.faces.page import calculator_html
from wedgework.faces.terminal import answer_text, help_text
from wedgework.faces.wire import answer, default_answer
from wedgework.say import has

EVERY = pytest.mark.parametrize("one", CALCULATORS, ids=lambda one: one.slug)
VOID = {"input", "br", "img", "hr"}


class Page(HTMLParser):
    """Every element with its attributes; fails where one is closed that was not opened."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.open: list[str] = []
        self.feed(html)
        assert self.open == [], "everything is closed"

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        assert len(dict(attrs)) == len(attrs), f"an attribute stands twice in <{tag}>"
        self.elements.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def all(self, *tags: str) -> list[dict[str, str | None]]:
        return [attributes for tag, attributes in self.elements if tag in tags]


def leaves(value: object) -> Iterator[object]:
    if isinstance(value, dict):
        for part in value.values():
            yield from leaves(part)
    elif isinstance(value, list):
        for part in value:
            yield from leaves(part)
    else:
        yield value


def test_slugs_are_addresses_and_stand_once() -> None:
    slugs = [one.slug for one in CALCULATORS]
    assert len(set(slugs)) == len(slugs)
    for slug in slugs:
        assert re.fullmatch(r"[a-z]+(-[a-z]+)*", slug)
        found = calculator(slug)
        assert found is not None
        assert found.slug == slug


@EVERY
def test_the_defaults_compute_without_a_warning(one: Calculator) -> None:
    answered = work_out(one, {})
    assert answered.problems == ()
    assert answered.result is not None
    assert answered.result.warnings == ()
    assert answered.result.values
    assert answered.result.view


@EVERY
def test_the_json_is_plain_and_finite(one: Calculator) -> None:
    def no_constant(name: str) -> None:
        raise AssertionError(f"{name} is no number")

    told = json.loads(json_text(answer_object(work_out(one, {}))), parse_constant=no_constant)
    assert list(told) == ["calculator", "inputs", "result", "problems", "warnings"]
    assert told["calculator"] == one.slug
    assert told["inputs"] == one.defaults
    for leaf in leaves(told["result"]):
        assert leaf is None or isinstance(leaf, (str, int, float))
        if isinstance(leaf, float):
            assert round(leaf, 6) == leaf, "six decimals at most"


@EVERY
def test_typing_the_inputs_again_gives_the_same_answer(one: Calculator) -> None:
    told = default_answer(one.slug)
    inputs = json.loads(told)["answer"]["inputs"]
    assert answer(json.dumps({"calculator": one.slug, "inputs": inputs})) == told


@EVERY
def test_figures_that_name_a_value_are_values(one: Calculator) -> None:
    result = work_out(one, {}).result
    assert result is not None
    for part in result.view:
        if isinstance(part, Figures):
            assert {row.name for row in part.rows if row.name} <= set(result.values)
        if isinstance(part, Table):
            assert {len(row) for row in part.rows} == {len(part.heads)}


@EVERY
def test_title_and_purpose_and_groups_are_said(one: Calculator) -> None:
    assert one.title
    assert one.what.endswith(".")
    for group in one.groups:
        assert has(f"calculators.{one.slug}.group-{group.key}")
        assert group.fields


@EVERY
def test_every_field_has_a_label_a_help_and_a_range(one: Calculator) -> None:
    for field in one.fields:
        assert field.label(one.slug), field.name
        assert field.help(one.slug).endswith("."), field.name
        assert field.range_text, field.name
        for choice in field.choices:
            assert field.choice_label(one.slug, choice), (field.name, choice)


@EVERY
def test_every_default_is_one_that_may_be_typed(one: Calculator) -> None:
    for field in one.fields:
        field.read(field.default)


@EVERY
def test_a_comma_and_a_fraction_are_understood_in_every_field_of_a_number(one: Calculator) -> None:
    """Between least and most, at a half: 40,5 and 40 1/2 and 40\u00bd are 40.5."""
    for field in one.fields:
        if field.kind not in ("decimal", "length", "lengths", "mass") or field.least is None or field.most is None:
            continue
        whole = max(int((field.least + field.most) / 2), 0)
        if whole + 1 > field.most:
            continue  # a part of one, such as 0.1 to 1
        wanted = field.read(f"{whole}.5")
        for typed in (f"{whole},5", f"{whole} 1/2", f"{whole}\u00bd"):
            assert field.read(typed) == wanted, field.name


@EVERY
def test_nonsense_in_any_field_is_refused_under_its_name(one: Calculator) -> None:
    for field in one.fields:
        typed = {field.name: "\x00"}
        if field.only:
            typed[field.only.field] = field.only.values[0]
        answered = work_out(one, typed)
        assert answered.result is None, field.name
        assert [p.where for p in answered.problems if p.code == "declare.odd-characters"] == [field.name]
        assert all(p.way_out for p in answered.problems)


@EVERY
def test_nonsense_everywhere_is_told_for_each_field_in_use(one: Calculator) -> None:
    typed = {field.name: "\x00" for field in one.fields if field.kind != "choice" or field.only}
    answered = work_out(one, typed)
    in_use = [f.name for f in one.fields if f.only is None or one.defaults[f.only.field] in f.only.values]
    assert [p.where for p in answered.problems] == [name for name in in_use if name in typed]


@EVERY
def test_the_form_has_each_field_labelled_and_described(one: Calculator) -> None:
    page = Page(calculator_html(one.slug))
    (form,) = page.all("form")
    assert form["data-calculator"] == one.slug
    controls = {c["name"]: c for c in page.all("input", "select", "textarea")}
    assert list(controls) == [field.name for field in one.fields]
    labels = {label["for"] for label in page.all("label")}
    ids = [attributes["id"] for _, attributes in page.elements if "id" in attributes]
    assert len(set(ids)) == len(ids)
    for control in controls.values():
        assert control["id"] in labels
        assert set((control["aria-describedby"] or "").split()) <= set(ids)
    assert len(page.all("fieldset")) == len(page.all("legend")) == len(one.groups)


@EVERY
def test_the_page_holds_the_answer_that_a_live_engine_gives(one: Calculator) -> None:
    html = calculator_html(one.slug)
    page = Page(html)
    (wrapper,) = [a for a in page.all("div") if "data-answer" in a]
    told = json.loads(default_answer(one.slug))
    assert wrapper["data-answer"] == json_text({"answer": told["answer"]})
    assert f"<output>{told['html']}</output>" in html


@EVERY
def test_the_page_needs_no_script_and_no_style(one: Calculator) -> None:
    page = Page(calculator_html(one.slug))
    assert not {"script", "style", "link", "iframe", "object"} & {tag for tag, _ in page.elements}
    for tag, attributes in page.elements:
        assert not [key for key in attributes if key == "style" or key.startswith("on")], tag
        for key in ("href", "src", "xlink:href"):
            assert (attributes.get(key) or "#").startswith("#")
    for head in page.all("th"):
        assert head["scope"] in ("row", "col")


@EVERY
def test_the_command_gives_the_same_record(one: Calculator, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["calc", one.slug, "--json"]) == 0
    assert json.loads(capsys.readouterr().out) == json.loads(default_answer(one.slug))["answer"]
    assert main(["calc", one.slug]) == 0
    assert capsys.readouterr().out == answer_text(work_out(one, {}))
    assert main(["calc", one.slug, "--help"]) == 0
    assert capsys.readouterr().out == help_text(one)


@EVERY
def test_the_help_text_names_every_field(one: Calculator) -> None:
    told = help_text(one)
    assert [field.name for field in one.fields if f"  --{field.name}\n" not in told] == []
