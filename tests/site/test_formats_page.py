"""The page of the formats is whole: every key of the five schemas stands on it, and its examples can be read."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from builder.formats import allowed, format_html
from wedgework.formats import read_class, read_design
from wedgework.formats.schemas import SCHEMAS

PAGES = Path(__file__).resolve().parents[2] / "site" / "pages"
TEXT = (PAGES / "reference" / "formats.md").read_text(encoding="utf-8")


# What a project keeps like a design does; the page says so and points there.
SAME = {"machines": SCHEMAS["design"]["properties"]["bed"], "yarns": SCHEMAS["design"]["properties"]["yarns"]["items"]}


def keys_of(schema: dict[str, Any]) -> Iterator[tuple[str, dict[str, Any]]]:
    """Every key below, with its schema; other formats that lie inside are left out."""
    for branch in schema.get("oneOf", ()):
        yield from keys_of(branch)
    if "items" in schema:
        yield from keys_of(schema["items"])
    for key, value in schema.get("properties", {}).items():
        yield key, value
        inside = value.get("properties", value.get("items", {}).get("properties", {}))
        if "format" not in inside:
            yield from keys_of(value)


@pytest.mark.parametrize("name", SCHEMAS)
def test_every_key_stands_on_the_page(name: str) -> None:
    shown = "".join(format_html(path) for path in re.findall(rf"^::: format ({name}\S*)$", TEXT, flags=re.MULTILINE))
    codes = {part for code in re.findall(r"<code>([^<]+)</code>", shown) for part in re.split(r"[.\[\]]+", code)}
    same = {key for schema in SAME.values() for key, _ in keys_of(schema)} if name == "project" else set()
    wanted = {key for key, _ in keys_of(SCHEMAS[name])} - {"do"} - same
    assert wanted - codes == set()
    steps = {value["const"] for key, value in keys_of(SCHEMAS[name]) if key == "do"}
    assert steps - codes == set()


@pytest.mark.parametrize("name", SCHEMAS)
def test_every_part_of_a_file_has_a_table(name: str) -> None:
    """What has keys of its own and is no format by itself is written out."""
    for key, schema in SCHEMAS[name]["properties"].items():
        inner = dict(keys_of(schema))
        if name == "project" and key in SAME:
            assert set(schema["items"]["properties"]) == set(SAME[key]["properties"])
        elif inner and "format" not in inner:
            assert f"::: format {name}.{key}\n" in TEXT + "\n", key


@pytest.mark.parametrize(
    ("schema", "words"),
    [
        ({"type": "integer", "minimum": 1, "maximum": 6}, "whole number, 1 to 6"),
        ({"type": "number", "exclusiveMinimum": 0, "maximum": 2.5}, "number above 0, up to 2.5"),
        ({"enum": ["L", "R"]}, 'one of "L", "R"'),
        ({"const": 1}, "1"),
        ({"type": "array", "minItems": 1, "maxItems": 5, "items": {"type": "object"}}, "list of 1 to 5: object"),
        ({"oneOf": [{"const": "none"}, {"type": "object"}, {"type": "object"}]}, '"none", or object'),
    ],
)
def test_ranges_in_words(schema: dict[str, Any], words: str) -> None:
    assert allowed(schema) == words


def test_the_examples_of_whole_files_can_be_read() -> None:
    design, found = re.findall(r"```json\n(\{.*?\n\})\n```", TEXT, flags=re.DOTALL)
    assert read_design(design).title == json.loads(design)["title"]
    assert read_class(found).title == json.loads(found)["title"]


@pytest.mark.parametrize("file", sorted((PAGES / "pieces").glob("*.json")), ids=lambda file: file.stem)
def test_the_pieces_on_the_pages_can_be_read(file: Path) -> None:
    assert read_design(file.read_text(encoding="utf-8")).title
