"""Values that fit a JSON Schema, and copies of them with something changed: raw material for laws about files.

It reads the schemas on its own, so that it shares no mistake with the reader that it tests.
"""

from __future__ import annotations

import copy
from typing import Any

from hypothesis import strategies as st

Schema = dict[str, Any]

_ID = "abcXYZ019_-"
_READABLE = st.characters(exclude_categories=["Cs", "Cc"], exclude_characters="\ufffe\uffff")


def fitting(schema: Schema) -> st.SearchStrategy[Any]:
    """Values that `schema` allows, lists and texts kept short."""
    if "oneOf" in schema:
        return st.one_of([fitting(branch) for branch in schema["oneOf"]])
    if "const" in schema:
        return st.just(schema["const"])
    if "enum" in schema:
        return st.sampled_from(schema["enum"])
    return _BY_TYPE[schema["type"]](schema)


def _text(schema: Schema) -> st.SearchStrategy[str]:
    if schema.get("pattern", "").startswith("^w"):
        return st.text(st.sampled_from(_ID), max_size=12).map(lambda inside: f"w1.{inside}")
    if "pattern" in schema:
        return st.integers(0, 0xFFFFFF).map(lambda n: f"#{n:06x}")
    least, most = schema["minLength"], min(schema["maxLength"], schema["minLength"] + 12)
    never = schema["not"]["pattern"]
    letters = st.sampled_from(_ID) if "A-Z" in never else st.sampled_from("0123456789abcdef") if "a-f" in never else _READABLE
    return st.text(letters, min_size=least, max_size=most)


def _whole(schema: Schema) -> st.SearchStrategy[int]:
    numbers = st.integers(schema["minimum"], schema["maximum"])
    return numbers.filter(bool) if "not" in schema else numbers


def _number(schema: Schema) -> st.SearchStrategy[int | float]:
    above = schema.get("exclusiveMinimum")
    least = schema["minimum"] if above is None else above
    whole = st.integers(int(least), int(schema["maximum"]))
    decimal = st.decimals(least, schema["maximum"], places=3).map(float)
    return st.one_of(whole, decimal).filter(lambda n: above is None or n > above)


def _list(schema: Schema) -> st.SearchStrategy[list[Any]]:
    least = schema["minItems"]
    return st.lists(fitting(schema["items"]), min_size=least, max_size=min(schema["maxItems"], least + 2))


def _object(schema: Schema) -> st.SearchStrategy[dict[str, Any]]:
    if "properties" not in schema:
        return st.dictionaries(fitting(schema["propertyNames"]), fitting(schema["additionalProperties"]), max_size=2)
    keys = {key: fitting(each) for key, each in schema["properties"].items()}
    needed = {key: each for key, each in keys.items() if key in schema["required"]}
    rest = {key: each for key, each in keys.items() if key not in needed}
    return st.fixed_dictionaries(needed, optional=rest).filter(lambda value: len(value) >= schema.get("minProperties", 0))


_BY_TYPE = {"string": _text, "integer": _whole, "number": _number, "array": _list, "object": _object}

# Each of these is wrong in some places and right in others. No text here ends in a line feed: JSON Schema takes its
# patterns from ECMA 262, where $ is the very end of a text; in Python's `re` one line feed may follow.
_JUNK: list[Any] = [
    *(None, True, False, 0, 1, 2, -1, 3, 5, 1.5, 0.001, 2.0, 1e9, -1e9, 10**9, 1000, 1001, 30.01, 2.000001),
    *("", "a", "none", "plain", "L", "hold", "knit", "#12345", "#a0522d", "a b", "ä", "a\tb", "\u0000", "x" * 33, "x" * 201),
    *([], [1], [0, 0], [[0.5, 0.5]] * 3, {}, {"mm": 100}, {"rows": 5}, {"needles": 5}, {"do": "cut"}, {"kind": "none"}),
]


@st.composite
def changed(draw: st.DrawFn, values: st.SearchStrategy[Any]) -> Any:
    """A fitting value after one to three changes: a key or entry gone, one too many, or something else in its place."""
    value = copy.deepcopy(draw(values))
    for _ in range(draw(st.integers(1, 3))):
        there = holders(value)
        holder = there[draw(st.integers(0, len(there) - 1))]
        places = list(holder) if isinstance(holder, dict) else list(range(len(holder)))
        what = draw(st.sampled_from(["remove", "add", "replace", "replace"]))
        junk = copy.deepcopy(draw(st.sampled_from(_JUNK)))
        if what == "add" and isinstance(holder, dict):
            holder[draw(st.sampled_from(["strange", "mm", "tex", "tension", "swatch", "name", ""]))] = junk
        elif what == "add":
            holder.append(junk)
        elif places:
            place = draw(st.sampled_from(places))
            if what == "remove":
                del holder[place]
            else:
                holder[place] = junk
    return value


def holders(value: Any) -> list[Any]:
    """Every object and list in `value`, itself first."""
    found = [value]
    for each in value.values() if isinstance(value, dict) else value:
        if isinstance(each, (dict, list)):
            found += holders(each)
    return found
