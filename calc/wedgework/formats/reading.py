"""The strict reader: a JSON Schema and a value go in, everything that is wrong with the value comes out.

    >>> check = compiled({"type": "integer", "minimum": 4, "maximum": 1000})
    >>> found = []
    >>> check(3, (None, "needles"), found)
    >>> found[0].kind
    'out-of-range'

It knows exactly the part of JSON Schema (draft 2020-12) that our schemas use, and refuses to compile any other keyword:
so each bound is written once, in the schema, and no keyword is silently passed over. Unlike a general validator it knows
which branch of a choice was meant, so that it can say what is wrong in one sentence (`complaints` does that).
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import Any, NamedTuple

from wedgework.formats.paths import Path
from wedgework.formats.text import KeysTwice, UnreadableNumber

__all__ = ["Check", "Finding", "Schema", "compiled", "marking_key"]

Schema = Mapping[str, Any]


class Finding(NamedTuple):
    """One thing that is wrong, not yet a sentence."""

    path: Path
    kind: str
    schema: Schema
    """What was wanted there."""
    value: Any
    """What was found there; for a missing or unknown key, the object."""


Check = Callable[[Any, Path, list[Finding]], None]

_NOTES = frozenset({"title", "description", "default", "examples", "$schema", "$id"})


def compiled(schema: Schema) -> Check:
    """A function that appends a `Finding` for everything that breaks `schema`."""
    if "oneOf" in schema:
        return _choice(schema)
    return _COMPILERS[schema["type"]](schema)


def _only(schema: Schema, *keywords: str) -> None:
    strange = schema.keys() - _NOTES - set(keywords)
    if strange:
        raise ValueError(f"the reader does not know {sorted(strange)} in a schema of type {schema.get('type')}")


def _string(schema: Schema) -> Check:
    _only(schema, "type", "minLength", "maxLength", "pattern", "not", "enum", "const")
    least, most = schema.get("minLength", 0), schema.get("maxLength")
    allowed = frozenset([schema["const"]] if "const" in schema else schema.get("enum", ()))
    form = re.compile(schema["pattern"]).search if "pattern" in schema else None
    never = re.compile(schema["not"]["pattern"]).search if "not" in schema else None

    def check(value: Any, path: Path, found: list[Finding]) -> None:
        if not isinstance(value, str):
            found.append(Finding(path, "wrong-type", schema, value))
        elif allowed:
            if value not in allowed:
                found.append(Finding(path, "not-offered", schema, value))
        elif len(value) < least or (most is not None and len(value) > most):
            found.append(Finding(path, "text-length", schema, value))
        elif (never is not None and never(value)) or (form is not None and not form(value)):
            found.append(Finding(path, "text-form", schema, value))

    return check


def _bound(schema: Schema, keyword: str) -> Fraction | int | None:
    """A bound as it is written, exactly: 0.1 in a schema means a tenth."""
    if keyword not in schema:
        return None
    return schema[keyword] if isinstance(schema[keyword], int) else Fraction(repr(schema[keyword]))


def _number(schema: Schema) -> Check:
    _only(schema, "type", "minimum", "maximum", "exclusiveMinimum", "const", "not")
    whole = schema["type"] == "integer"
    least, above, most = (_bound(schema, k) for k in ("minimum", "exclusiveMinimum", "maximum"))
    const = schema.get("const")
    never = schema["not"]["const"] if "not" in schema else None

    def check(value: Any, path: Path, found: list[Finding]) -> None:
        kind = type(value)
        if kind is not int and (whole or kind is not Fraction):  # a bool is no number here
            wrong = "number-too-long" if isinstance(value, UnreadableNumber) else "wrong-type"
            found.append(Finding(path, "not-whole" if kind is Fraction else wrong, schema, value))
        elif const is not None:
            if value != const:
                found.append(Finding(path, "not-offered", schema, value))
        elif (
            (least is not None and value < least)
            or (most is not None and value > most)
            or (above is not None and value <= above)
            or value == never
        ):
            found.append(Finding(path, "out-of-range", schema, value))

    return check


def _array(schema: Schema) -> Check:
    _only(schema, "type", "items", "minItems", "maxItems")
    item = compiled(schema["items"])
    least, most = schema.get("minItems", 0), schema["maxItems"]

    def check(value: Any, path: Path, found: list[Finding]) -> None:
        if not isinstance(value, list):
            found.append(Finding(path, "wrong-type", schema, value))
            return
        if not least <= len(value) <= most:
            found.append(Finding(path, "list-length", schema, value))
            if len(value) > most:  # one sentence about the list, not a million about its entries
                return
        for i, each in enumerate(value):
            item(each, (path, i), found)

    return check


def _object(schema: Schema) -> Check:
    _only(schema, "type", "properties", "required", "additionalProperties", "propertyNames", "minProperties", "maxProperties")
    known = {key: compiled(each) for key, each in schema.get("properties", {}).items()}
    required = tuple(schema.get("required", ()))
    more = schema["additionalProperties"]
    others = compiled(more) if more is not False else None
    names = compiled(schema["propertyNames"]) if "propertyNames" in schema else None
    least, most = schema.get("minProperties", 0), schema.get("maxProperties")

    def check(value: Any, path: Path, found: list[Finding]) -> None:
        if not isinstance(value, dict):
            found.append(Finding(path, "wrong-type", schema, value))
            return
        if isinstance(value, KeysTwice):
            found += [Finding((path, key), "key-twice", schema, value) for key in value.twice]
        if len(value) < least or (most is not None and len(value) > most):
            found.append(Finding(path, "key-count", schema, value))
            if len(value) >= least:
                return
        for key, each in value.items():
            if key in known:
                known[key](each, (path, key), found)
            elif others is None:
                found.append(Finding((path, key), "unknown-key", schema, value))
            else:
                if names is not None:
                    names(key, (path, key), found)
                others(each, (path, key), found)
        for key in required:
            if key not in value:
                found.append(Finding((path, key), "missing-key", schema["properties"][key], value))

    return check


def marking_key(branches: list[Schema]) -> str | None:
    """The required key whose fixed words tell these objects apart, such as ``do`` in steps; None if there is none."""
    for key in branches[0].get("required", ()):
        words = [_words(branch["properties"][key]) for branch in branches if key in branch.get("required", ())]
        if len(words) == len(branches) and all(words) and sum(map(len, words)) == len(frozenset().union(*words)):
            return str(key)
    return None


def _words(schema: Schema) -> frozenset[str]:
    return frozenset([schema["const"]] if "const" in schema else schema.get("enum", ()))


def _choice(schema: Schema) -> Check:
    """`oneOf`: by the kind of value, then among objects by their marking key, else by the keys that are there."""
    _only(schema, "oneOf")
    branches: list[Schema] = schema["oneOf"]
    objects = [branch for branch in branches if branch["type"] == "object"]
    plain = {branch["type"]: compiled(branch) for branch in branches if branch["type"] != "object"}
    if len(plain) + len(objects) != len(branches) or plain.keys() - {"string", "array", "number"}:
        raise ValueError("of the choices that are no objects each is a text, a list or a number, and only once")
    of_object = _object_choice(schema, objects) if objects else None

    def check(value: Any, path: Path, found: list[Finding]) -> None:
        if isinstance(value, dict):
            chosen = of_object
        elif isinstance(value, str):
            chosen = plain.get("string")
        elif isinstance(value, list):
            chosen = plain.get("array")
        elif isinstance(value, (int, Fraction, UnreadableNumber)) and not isinstance(value, bool):
            chosen = plain.get("number")
        else:
            chosen = None
        if chosen is None:
            found.append(Finding(path, "wrong-type", schema, value))
        else:
            chosen(value, path, found)

    return check


def _object_choice(schema: Schema, branches: list[Schema]) -> Check:
    if len(branches) == 1:
        return compiled(branches[0])
    key = marking_key(branches)
    return _marked_choice(branches, key) if key is not None else _choice_by_keys(schema, branches)


def _marked_choice(branches: list[Schema], key: str) -> Check:
    checks = {word: compiled(branch) for branch in branches for word in _words(branch["properties"][key])}
    offered = {"type": "string", "enum": list(checks)}

    def check(value: Any, path: Path, found: list[Finding]) -> None:
        word = value.get(key)
        chosen = checks.get(word) if isinstance(word, str) else None
        if chosen is not None:
            chosen(value, path, found)
        elif key not in value:
            found.append(Finding((path, key), "missing-key", offered, value))
        else:
            found.append(Finding((path, key), "not-offered" if isinstance(word, str) else "wrong-type", offered, word))

    return check


def _choice_by_keys(schema: Schema, branches: list[Schema]) -> Check:
    options = [(frozenset(b["properties"]), frozenset(b["required"]), compiled(b)) for b in branches]
    # A choice may be another one with keys more, of which it requires some: those tell the two apart.
    marks: list[frozenset[str]] = [frozenset()] * len(options)
    for one, (_, required, _) in enumerate(options):
        for other, (properties, needed, _) in enumerate(options):
            if other != one and required <= properties:
                marks[other] = needed - options[one][0]
                if not marks[other]:
                    raise ValueError("two choices cannot be told apart by their keys")

    def check(value: Any, path: Path, found: list[Finding]) -> None:
        keys = value.keys()
        marked = [option for option, mark in zip(options, marks, strict=True) if mark & keys]
        meant = marked or [option for option, mark in zip(options, marks, strict=True) if not mark]
        # Each choice needs a key that the others do not know: a value that fits one has strange keys in all others.
        properties, required, chosen = min(meant, key=lambda option: len(keys - option[0]))
        fits = required <= keys <= properties
        if fits or sum(not keys.isdisjoint(each) for each, _, _ in meant) == 1:
            chosen(value, path, found)
        else:  # keys of none, or of several
            found.append(Finding(path, "choose-one", schema, value))

    return check


_COMPILERS: dict[str, Callable[[Schema], Check]] = {
    "string": _string,
    "integer": _number,
    "number": _number,
    "array": _array,
    "object": _object,
}
