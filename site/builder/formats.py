"""Tables of the open formats for the reference page, made from the schemas: every key, what it is, its range, its default.

    format_html("design")          # the keys of the whole file; what lies deeper is only named
    format_html("design.bed")      # everything inside one of them
    format_html("plan.steps")      # each kind of step under its own line

The reader, the schema and this page therefore say the same.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from html import escape
from typing import Any

from wedgework.formats.schemas import SCHEMAS
from wedgework.say import say

__all__ = ["allowed", "format_html"]

Schema = Mapping[str, Any]


def format_html(path: str) -> str:
    """The table of one file (``design``) or of one of its keys (``design.bed``)."""
    name, *keys = path.split(".")
    schema: Schema = SCHEMAS[name]
    for key in keys:
        schema = schema["properties"][key]
    rows = "".join(_rows(schema, "", deep=bool(keys)))
    head = "".join(f'<th scope="col">{escape(say(f"site.format-{key}"))}</th>' for key in ("key", "what", "allowed", "default"))
    return f'<table class="format"><thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table>'


def _rows(schema: Schema, prefix: str, deep: bool) -> Iterator[str]:
    """Rows for everything inside `schema`; a row for itself is the caller's."""
    if "oneOf" in schema:
        for number, branch in enumerate(filter(_inside, schema["oneOf"])):
            yield _heading(branch, first=number == 0)
            yield from _rows(branch, prefix, deep)
        return
    if schema.get("type") == "array":
        yield from _rows(schema["items"], f"{prefix}[]" if prefix else "", deep)
        return
    required = schema.get("required", ())
    for key, value in schema.get("properties", {}).items():
        if key == "do":
            continue  # stands in the heading of its step
        path = f"{prefix}.{key}".lstrip(".")
        yield _row(path, value, key in required)
        if deep and not _is_document(value):
            yield from _rows(value, path, deep)


def _inside(schema: Schema) -> bool:
    """Whether there are keys somewhere below."""
    branches = [*schema.get("oneOf", ()), *([schema["items"]] if "items" in schema else [])]
    return "properties" in schema or any(map(_inside, branches))


def _is_document(schema: Schema) -> bool:
    """Whether another of the formats lies here whole; it has its own part of the page."""
    return "format" in schema.get("properties", schema.get("items", {}).get("properties", {}))


def _heading(branch: Schema, first: bool) -> str:
    """The line above one of several forms: a step by its name, another form by what it is."""
    step = branch.get("properties", {}).get("do", {}).get("const")
    about = escape(branch.get("description", ""))
    name = f"<code>{escape(step)}</code>" if step else escape(say("site.format-either" if first else "site.format-or"))
    words = f"{name} {about}"
    return f'<tr class="form"><th scope="rowgroup" colspan="4">{words}</th></tr>'


def _row(path: str, schema: Schema, required: bool) -> str:
    default, head = escape(say("site.format-optional")), ""
    if required:
        default = escape(say("site.format-required"))
    elif isinstance(schema.get("default"), dict) and schema["default"]:
        default = escape(say("site.format-below"))
    elif "default" in schema:
        default, head = f"<code>{escape(_json(schema['default']))}</code>", say("site.format-default")
    return (
        f'<tr><th scope="row"><code>{escape(path)}</code></th><td>{escape(schema.get("description", ""))}</td>'
        f'<td>{escape(allowed(schema))}</td><td data-head="{escape(head)}">{default}</td></tr>'
    )


def allowed(schema: Schema) -> str:
    """The kind and the range of one value, in words."""
    if "const" in schema:
        return _json(schema["const"])
    if "enum" in schema:
        return say("site.format-words", words=", ".join(map(_json, schema["enum"])))
    if "title" in schema:
        return str(schema["title"])
    if "oneOf" in schema:
        kinds = dict.fromkeys(allowed(branch) for branch in schema["oneOf"])
        return say("site.format-one-of").join(kinds)
    kind = schema["type"]
    if kind in ("integer", "number"):
        least, most = schema.get("minimum", schema.get("exclusiveMinimum")), schema.get("maximum")
        how = f"{kind}{'-above' if 'exclusiveMinimum' in schema else ''}"
        return say(f"site.format-{how}", least=_json(least), most=_json(most))
    if kind == "string":
        return say("site.format-text", most=schema["maxLength"])
    if kind == "array":
        least, most = schema["minItems"], schema["maxItems"]
        how = "list" if least < most else "list-exactly"
        return say(f"site.format-{how}", least=least, most=most, each=allowed(schema["items"]))
    return say("site.format-object")


def _json(value: object) -> str:
    return json.dumps(value, ensure_ascii=False)
