"""The schemas and the reader against the `jsonschema` library, a general validator of JSON Schema draft 2020-12.

Both have to accept and to refuse the same values: then whoever checks a file with a validator of her own and our
schema gets our answer.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from schema_values import changed, fitting
from wedgework.formats.doors import value_problems
from wedgework.formats.schemas import SCHEMAS
from wedgework.formats.text import parse

settings.register_profile("files", deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
few = settings(settings.get_profile("files"), max_examples=80)
JUDGES = {kind: Draft202012Validator(schema) for kind, schema in SCHEMAS.items()}
FITTING = {kind: fitting(schema) for kind, schema in SCHEMAS.items()}
GOLDEN = Path(__file__).parent.parent / "golden" / "formats"


def reader_accepts(text: str, kind: str) -> bool:
    return not value_problems(parse(text, 10**8), kind)


@pytest.mark.parametrize("kind", SCHEMAS)
def test_each_schema_is_a_schema_of_that_draft(kind: str) -> None:
    Draft202012Validator.check_schema(SCHEMAS[kind])
    assert SCHEMAS[kind]["$schema"] == Draft202012Validator.META_SCHEMA["$id"]


@pytest.mark.parametrize("kind", SCHEMAS)
def test_each_schema_is_plain_json(kind: str) -> None:
    assert json.loads(json.dumps(SCHEMAS[kind])) == SCHEMAS[kind]


@pytest.mark.parametrize("kind", SCHEMAS)
@few
@given(data=st.data())
def test_both_accept_what_fits(kind: str, data: st.DataObject) -> None:
    text = json.dumps(data.draw(FITTING[kind]))
    assert JUDGES[kind].is_valid(json.loads(text))
    assert reader_accepts(text, kind)


@pytest.mark.parametrize("kind", SCHEMAS)
@few
@given(data=st.data())
def test_both_give_one_answer_to_a_changed_file(kind: str, data: st.DataObject) -> None:
    text = json.dumps(data.draw(changed(FITTING[kind])))
    assert reader_accepts(text, kind) == JUDGES[kind].is_valid(json.loads(text))


@pytest.mark.parametrize("path", sorted(GOLDEN.glob("*.json")), ids=lambda path: path.stem)
def test_both_accept_the_example_files(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    kind = json.loads(text)["format"].removeprefix("wedgework-")
    assert JUDGES[kind].is_valid(json.loads(text))
    assert reader_accepts(text, kind)


def _parts(value: Any, path: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    """The place of every key and entry in `value`."""
    inner = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    return [place for key, each in inner for place in [(*path, key), *_parts(each, (*path, key))]]


OTHERS: list[Any] = [None, "?", -7, 0.5, [], {}]


@pytest.mark.parametrize("name", ["every-key", "every-step", "everything-kept", "on-the-bed"])
@pytest.mark.parametrize("turn", range(len(OTHERS)))
def test_both_give_one_answer_whatever_stands_at_a_place(name: str, turn: int) -> None:
    """The places of a file take turns with the six wrong values; a short file has all its places tried with all six."""
    text = (GOLDEN / f"{name}.json").read_text(encoding="utf-8")
    kind = json.loads(text)["format"].removeprefix("wedgework-")
    answers = set()
    for number, path in enumerate(_parts(json.loads(text))):
        if kind not in ("design", "state") and number % len(OTHERS) != turn:
            continue
        value, other = json.loads(text), OTHERS[turn]
        holder = value
        for key in path[:-1]:
            holder = holder[key]
        holder[path[-1]] = other
        accepted = JUDGES[kind].is_valid(value)
        answers.add(accepted)
        assert reader_accepts(json.dumps(value), kind) == accepted, path
    assert False in answers
