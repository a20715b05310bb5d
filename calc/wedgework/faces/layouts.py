"""The layouts as JSON."""

from __future__ import annotations

from wedgework.faces.answers import Json
from wedgework.layout.library import LAYOUTS, Parameter
from wedgework.units import plain

__all__ = ["layouts_object"]


def layouts_object() -> list[Json]:
    """Every layout with its parameters; those that are yarns have neither limits nor a default figure."""
    return [
        {
            "name": layout.name,
            "title": layout.title,
            "how_it_knits": layout.how_it_knits,
            "parameters": [_parameter(layout.label(parameter), parameter) for parameter in layout.parameters],
        }
        for layout in LAYOUTS
    ]


def _parameter(label: str, parameter: Parameter) -> dict[str, Json]:
    described: dict[str, Json] = {"name": parameter.name, "kind": parameter.kind, "label": label}
    if parameter.default is not None:
        described |= {"least": plain(parameter.least), "most": plain(parameter.most), "default": plain(parameter.default)}
    return described
