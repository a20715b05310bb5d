"""A class as plain values for JSON, and back from a checked value."""

from __future__ import annotations

from wedgework.formats.building_design import given
from wedgework.formats.classes import Class, ClassEntry
from wedgework.formats.values_design import Value
from wedgework.version import VERSION

__all__ = ["class_from", "class_value"]


def class_value(found: Class) -> Value:
    """The class as it stands in a file; `made_by` is this copy's version."""
    return {
        "format": "wedgework-class",
        "version": 1,
        "made_by": VERSION,
        "title": found.title,
        "text": found.text,
        "entries": [{"title": entry.title, "text": entry.text, "link": entry.link} for entry in found.entries],
    }


def class_from(value: Value) -> Class:
    """The class that `value` describes; it has passed the schema."""
    keys = given(value, entries=lambda entries: tuple(ClassEntry(**entry) for entry in entries))
    del keys["format"], keys["version"]
    return Class(**keys)
