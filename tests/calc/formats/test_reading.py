"""The strict reader, keyword by keyword."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from wedgework.formats.complaints import MOST_PROBLEMS, problems_of, wanted_phrase
from wedgework.formats.reading import Finding, compiled
from wedgework.formats.schemas.pieces import (
    above,
    closed,
    exactly,
    many,
    needle,
    number,
    numbers_by_name,
    one_of,
    text,
    whole,
    words,
    yarn_id,
)
from wedgework.formats.text import parse

ROWS = whole("extent.rows", 2, 100)
LENGTH = one_of(
    "panel.width",
    closed("extent.in-mm", {"mm": number("extent.mm", 10, 1000)}),
    closed("extent.counted", {"rows": ROWS}),
)
STEP = one_of(
    "step",
    closed("step.wrap", {"do": exactly("step.do", "wrap"), "needle": needle("needle")}),
    closed("step.cut", {"do": exactly("step.do", "cut")}),
)


def wrong(schema: dict[str, Any], json_text: str) -> list[tuple[str, str]]:
    """Path and kind of everything that is wrong."""
    value = parse(json_text, 10**6)
    found: list[Finding] = []
    compiled(schema)(value, None, found)
    return [(p.where, p.code.removeprefix("formats.")) for p in problems_of(found, value, "it")]


@pytest.mark.parametrize(
    ("schema", "good", "bad", "kind"),
    [
        (ROWS, "2", "1", "out-of-range"),
        (ROWS, "100", "101", "out-of-range"),
        (ROWS, "50.0", "50.5", "not-whole"),
        (ROWS, "5e1", '"50"', "wrong-type"),
        (ROWS, "3", "true", "wrong-type"),
        (ROWS, "3", "null", "wrong-type"),
        (ROWS, "3", "Infinity", "number-too-long"),
        (ROWS, "3", "1" * 300, "number-too-long"),
        (number("extent.mm", 0.1, 1), "0.1", "0.0999999999999999999", "out-of-range"),
        (number("extent.mm", 0.1, 1), "1", "1.0000000000000000001", "out-of-range"),
        (above("extent.mm", 0, 1), "0.0001", "0", "out-of-range"),
        (needle("needle"), "-1", "0", "out-of-range"),
        (needle("needle"), "1000", "1001", "out-of-range"),
        (words("step.to", "L", "R"), '"L"', '"l"', "not-offered"),
        (exactly("version", 1), "1", "2", "not-offered"),
        (exactly("version", 1), "1.0", "true", "wrong-type"),
        (text("title", 3, least=1), '"abc"', '"abcd"', "text-length"),
        (text("title", 3, least=1), '"a"', '""', "text-length"),
        (text("title", 3), '"a b"', '"a\\n"', "text-form"),
        (text("notes", 3, lines=True), '"a\\n"', '"a\\u0000"', "text-form"),
        (many("point", ROWS, 2, 3), "[2, 2]", "[2]", "list-length"),
        (many("point", ROWS, 2, 3), "[2, 2, 2]", "[2, 2, 2, 2]", "list-length"),
        (many("point", ROWS, 2, 3), "[2, 2, 2]", "{}", "wrong-type"),
        (LENGTH, '{"mm": 10}', "{}", "choose-one"),
        (LENGTH, '{"rows": 10}', '{"rows": 10, "mm": 10}', "choose-one"),
        (LENGTH, '{"rows": 10}', "10", "wrong-type"),
    ],
)
def test_a_value_fits_or_it_does_not(schema: dict[str, Any], good: str, bad: str, kind: str) -> None:
    assert wrong(schema, good) == []
    assert wrong(schema, bad) == [("it", kind)]


def test_everything_wrong_is_found_at_once_and_in_the_order_of_the_file() -> None:
    schema = closed("block", {"rows": ROWS, "name": text("title", 3), "steps": many("steps", STEP, 0, 9)}, optional=("name",))
    assert wrong(
        schema, '{"name": 7, "steps": [{"do": "wrap", "needle": 0}, {"do": "cut", "x": 1}, {"do": "sew"}, {}], "a b": 1}'
    ) == [
        ("it.name", "wrong-type"),
        ("it.steps[0].needle", "out-of-range"),
        ("it.steps[1].x", "unknown-key"),
        ("it.steps[2].do", "not-offered"),
        ("it.steps[3].do", "missing-key"),
        ('it["a b"]', "unknown-key"),
        ("it.rows", "missing-key"),
    ]


def test_a_key_written_twice_is_found_at_its_path() -> None:
    assert wrong(STEP, '{"do": "wrap", "needle": 1, "needle": 2}') == [("it.needle", "key-twice")]


def test_keys_that_the_person_chose_have_a_form_and_a_number() -> None:
    schema = numbers_by_name("layout.parameters", yarn_id("yarn.id"), ROWS, 2)
    assert wrong(schema, '{"a": 2, "b": 100}') == []
    assert wrong(schema, '{"a b": 2, "b": 1}') == [('it["a b"]', "text-form"), ("it.b", "out-of-range")]
    assert wrong(schema, '{"a": 2, "b": 2, "c": 2}') == [("it", "key-count")]


def test_a_list_that_is_much_too_long_is_one_mistake() -> None:
    assert wrong(many("point", ROWS, 0, 3), "[0, 0, 0, 0, 0]") == [("it", "list-length")]


def test_beyond_a_thousand_mistakes_are_counted() -> None:
    found = wrong(many("point", ROWS, 0, 5000), str([0] * (MOST_PROBLEMS + 7)))
    assert len(found) == MOST_PROBLEMS + 1
    assert found[-1] == ("it", "more")


def test_a_long_strange_key_is_shortened() -> None:
    ((where, kind),) = wrong(closed("hem.none", {}), '{"' + "k" * 500 + '": 1}')
    assert kind == "unknown-key"
    assert len(where) < 60


@pytest.mark.parametrize(
    ("schema", "phrase"),
    [
        (ROWS, "a whole number from 2 to 100"),
        (number("extent.mm", 0.1, 1), "a number from 0.1 to 1"),
        (above("extent.mm", 0, 1), "a number above 0 and at most 1"),
        (words("step.to", "L", "R"), '"L" or "R"'),
        (exactly("version", 1), "1"),
        (text("title", 9), "text of at most 9 characters, on one line"),
        (many("point", ROWS, 2, 2), "a list of 2"),
        (many("point", ROWS, 1, 5), "a list of 1 to 5"),
        (LENGTH, "an object with mm or an object with rows"),
    ],
)
def test_what_is_allowed_is_said_from_the_schema(schema: dict[str, Any], phrase: str) -> None:
    assert wanted_phrase(schema) == phrase


@pytest.mark.parametrize(
    "schema",
    [
        {"type": "integer", "multipleOf": 2},
        {"type": "string", "format": "date"},
        {"oneOf": [], "anyOf": []},
        {"oneOf": [{"type": "string"}, {"type": "string"}]},
        {"oneOf": [closed("hem.none", {"a": ROWS}), closed("hem.none", {"a": ROWS, "b": ROWS}, optional=("b",))]},
    ],
)
def test_a_schema_that_the_reader_would_not_follow_is_a_mistake_of_ours(schema: dict[str, Any]) -> None:
    with pytest.raises(ValueError, match=r"does not know|only once|told apart"):
        compiled(schema)


def test_a_bound_is_the_decimal_that_is_written() -> None:
    found: list[Finding] = []
    compiled(number("extent.mm", 0.1, 1))(Fraction(1, 10), None, found)
    assert found == []
