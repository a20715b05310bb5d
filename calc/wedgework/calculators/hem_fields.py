"""The fields for hems in the panel plan: bottom, top and sides, each with its depth."""

from __future__ import annotations

from fractions import Fraction

from wedgework.declare import Field, Inputs, Only, choice, length
from wedgework.formats import nearest_decimal
from wedgework.formats.design import Extent, Hem, Hems

__all__ = ["HEM_FIELDS", "HEM_PLACES", "hems_from"]

NONE, PLAIN, PICOT = "none", "plain", "picot"
EDGES = ("bottom", "top", "sides")

HEM_PLACES = {f"hems.{edge}": f"hem_{edge}" for edge in EDGES}
"""Where a problem of the design belongs in the form."""


def _fields(edge: str) -> tuple[Field, Field]:
    kind = f"hem_{edge}"
    only = Only(kind, (PLAIN, PICOT))
    return choice(kind, NONE, (NONE, PLAIN, PICOT)), length(f"{kind}_depth", "4", Fraction(1, 2), 30, "cm", only=only)


HEM_FIELDS = tuple(field for edge in EDGES for field in _fields(edge))


def hems_from(inputs: Inputs) -> Hems:
    """The hems that were chosen."""
    return Hems(*(_hem(inputs, edge) for edge in EDGES))


def _hem(inputs: Inputs, edge: str) -> Hem:
    kind = inputs.text(f"hem_{edge}")
    if kind == NONE:
        return Hem()
    depth = Extent(mm=nearest_decimal(inputs.mm(f"hem_{edge}_depth")))
    return Hem("plain" if kind == PLAIN else "picot", depth)
