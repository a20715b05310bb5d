"""The parts that schemas are made of. The first argument is the key of the sentence that describes the value.

    >>> whole("bed.needles", 4, 1000)["maximum"]
    1000

Only keywords that `wedgework.formats.reading` knows may come out of here. Forbidden characters are said with `not` and
a pattern without anchors: dialects of patterns differ in what ``$`` means, and none in what this means.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from wedgework.say import say

__all__ = [
    "above",
    "block_id",
    "closed",
    "colour",
    "digest",
    "document",
    "exactly",
    "link",
    "many",
    "needle",
    "number",
    "numbers_by_name",
    "one_of",
    "side",
    "text",
    "whole",
    "words",
    "yarn_id",
]

Schema = dict[str, Any]

# No file needs control characters, and XML (so every picture) cannot carry them.
_CONTROLS = "[\\u0000-\\u001f\\ufffe\\uffff]"
_CONTROLS_IN_LINES = "[\\u0000-\\u0008\\u000b-\\u001f\\ufffe\\uffff]"

# The widest bed has fewer needles on a side; see `wedgework.bed`.
_FARTHEST_NEEDLE = 1000


def _about(about: str, schema: Schema) -> Schema:
    return {**schema, "description": say(f"formats.about.{about}")}


def text(about: str, most: int, least: int = 0, lines: bool = False) -> Schema:
    """Text of `least` to `most` characters, on one line or on several."""
    schema: Schema = {"type": "string", "minLength": least, "maxLength": most}
    if lines:
        schema |= {"not": {"pattern": _CONTROLS_IN_LINES}, "title": say("formats.wanted.lines", most=most)}
    else:
        schema |= {"not": {"pattern": _CONTROLS}}
    return _about(about, schema)


def whole(about: str, least: int, most: int) -> Schema:
    return _about(about, {"type": "integer", "minimum": least, "maximum": most})


def number(about: str, least: float, most: float) -> Schema:
    return _about(about, {"type": "number", "minimum": least, "maximum": most})


def above(about: str, least: float, most: float) -> Schema:
    """A number greater than `least`."""
    return _about(about, {"type": "number", "exclusiveMinimum": least, "maximum": most})


def words(about: str, *allowed: str) -> Schema:
    return _about(about, {"type": "string", "enum": list(allowed)})


def exactly(about: str, value: str | int) -> Schema:
    return _about(about, {"type": "string" if isinstance(value, str) else "integer", "const": value})


def side(about: str) -> Schema:
    return words(about, "L", "R")


def needle(about: str) -> Schema:
    """A needle: -20 is L20, 20 is R20, and there is no 0."""
    return _about(
        about,
        {
            "type": "integer",
            "minimum": -_FARTHEST_NEEDLE,
            "maximum": _FARTHEST_NEEDLE,
            "not": {"const": 0},
            "title": say("formats.wanted.needle", most=_FARTHEST_NEEDLE),
        },
    )


def yarn_id(about: str, least: int = 1) -> Schema:
    schema = {"type": "string", "minLength": least, "maxLength": 32, "not": {"pattern": "[^A-Za-z0-9_-]"}}
    return _about(about, {**schema, "title": say("formats.wanted.id", least=least, most=32)})


def block_id(about: str) -> Schema:
    return yarn_id(about)


def colour(about: str) -> Schema:
    schema = {"type": "string", "maxLength": 7, "pattern": "^#[0-9A-Fa-f]{6}"}
    return _about(about, {**schema, "title": say("formats.wanted.colour")})


def link(about: str) -> Schema:
    """What follows the ``#`` of a page of ours. It is never an address: nothing in it can lead to another place."""
    schema = {
        "type": "string",
        "maxLength": 4096,
        "pattern": "^w[0-9][0-9]?[0-9]?[0-9]?[.]",
        "not": {"pattern": "[^A-Za-z0-9._-]"},
    }
    return _about(about, {**schema, "title": say("formats.wanted.link", most=4096)})


def digest(about: str) -> Schema:
    """Twelve hexadecimal digits, as `formats.digest` makes them."""
    schema = {"type": "string", "minLength": 12, "maxLength": 12, "not": {"pattern": "[^0-9a-f]"}}
    return _about(about, {**schema, "title": say("formats.wanted.digest")})


def many(about: str, items: Schema, least: int, most: int) -> Schema:
    return _about(about, {"type": "array", "items": items, "minItems": least, "maxItems": most})


def one_of(about: str, *branches: Schema) -> Schema:
    """Exactly one of these; objects among them differ in a key (see `reading.marking_key`) or in their keys."""
    return _about(about, {"oneOf": list(branches)})


def closed(
    about: str,
    properties: Mapping[str, Schema],
    defaults: Mapping[str, Any] | None = None,
    optional: Sequence[str] = (),
    least: int = 0,
) -> Schema:
    """An object with these keys and no other. Those with a default (noted beside them) or in `optional` may be absent."""
    given = defaults or {}
    schema: Schema = {
        "type": "object",
        "properties": {key: {**each, "default": given[key]} if key in given else each for key, each in properties.items()},
        "required": [key for key in properties if key not in given and key not in optional],
        "additionalProperties": False,
    }
    if least:
        schema["minProperties"] = least
    return _about(about, schema)


def numbers_by_name(about: str, names: Schema, values: Schema, most: int) -> Schema:
    """An object whose keys the person chose."""
    return _about(about, {"type": "object", "propertyNames": names, "additionalProperties": values, "maxProperties": most})


def document(
    about: str, kind: str, properties: Mapping[str, Schema], defaults: Mapping[str, Any], optional: Sequence[str] = ()
) -> Schema:
    """A whole file of ours: format, version and `made_by` come first."""
    head = {
        "format": exactly("format", f"wedgework-{kind}"),
        "version": exactly("version", 1),
        "made_by": text("made_by", 100),
    }
    schema = closed(about, {**head, **properties}, defaults, ("made_by", *optional))
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", "title": f"wedgework-{kind}", **schema}
