"""A design without everything that a reader fills in by itself: what a link carries.

read_design(canonical(brief_value(design))) == design
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from wedgework.formats.design import Design
from wedgework.formats.schemas.design import DESIGN
from wedgework.formats.values_design import design_value

__all__ = ["brief_value"]


def brief_value(design: Design) -> dict[str, Any]:
    """The value of a file as `design_value` gives it, without keys whose value is their default, and without its maker."""
    value: dict[str, Any] = _without(design_value(design), DESIGN)
    value.pop("made_by", None)
    return value


def _without(value: Any, schema: Mapping[str, Any]) -> Any:
    if isinstance(value, list):
        return [_without(each, schema.get("items", {})) for each in value]
    if not isinstance(value, dict):
        return value
    known = _properties(value, schema)
    kept = {key: _without(each, known.get(key, {})) for key, each in value.items()}
    return {key: each for key, each in kept.items() if "default" not in known.get(key, {}) or value[key] != known[key]["default"]}


def _properties(value: Mapping[str, Any], schema: Mapping[str, Any]) -> Mapping[str, Any]:
    """Of a choice those of the object that has these keys."""
    for branch in schema.get("oneOf", [schema]):
        properties: Mapping[str, Any] = branch.get("properties", {})
        if value.keys() <= properties.keys():
            return properties
    return {}
