"""A hatch for each yarn, so that no block is known by its colour alone."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from wedgework.draw.colours import ink_on, mixed
from wedgework.draw.svg import Element, path, rect
from wedgework.formats.design import Yarn

__all__ = ["KINDS", "Hatches"]

# Each on a square of 4 units; the first yarn stays plain.
KINDS: tuple[str, ...] = (
    "",
    "M-1 1L1 -1M0 4L4 0M3 5L5 3",
    "M2 0V4",
    "M-1 3L1 5M0 0L4 4M3 -1L5 1",
    "M0 2H4",
    "M0.6 2H1.4M2.6 0H3.4M2.6 4H3.4",
    "M0 2H4M2 0V4",
    "M0 4L4 0M0 0L4 4",
)


NO_YARN = "#b8b8b8"
"""Stitches of a yarn that the design does not have, or of none: only a plan with faults has them."""


class Hatches:
    """Fills for the yarns of one drawing; `prefix` keeps its ids apart from those of other drawings."""

    def __init__(self, yarns: Sequence[Yarn], prefix: str) -> None:
        self._index = {yarn.id: i for i, yarn in enumerate(yarns)}
        self._yarns = {yarn.id: yarn for yarn in yarns}
        self._prefix = prefix

    def colour(self, yarn_id: str) -> str:
        """The yarn's ``#rrggbb``."""
        return self._yarns[yarn_id].colour if yarn_id in self._yarns else NO_YARN

    def name(self, yarn_id: str) -> str:
        return self._yarns[yarn_id].name if yarn_id in self._yarns else yarn_id

    def fill(self, yarn_id: str) -> str:
        """Colour, or colour and hatch."""
        index = self._index.get(yarn_id, 0)
        return self.colour(yarn_id) if index % len(KINDS) == 0 and index < len(KINDS) else f"url(#{self._id(yarn_id)})"

    def edge(self, yarn_id: str) -> str:
        """A line that can be seen on the yarn's colour."""
        colour = self.colour(yarn_id)
        return mixed(colour, ink_on(colour), 45)

    def _id(self, yarn_id: str) -> str:
        return f"{self._prefix}-yarn-{self._index[yarn_id]}"

    def definitions(self) -> Element:
        """The patterns, for the head of the drawing. After eight yarns the hatches come again, closer."""
        patterns = []
        for yarn_id, index in self._index.items():
            if not self.fill(yarn_id).startswith("url"):
                continue
            around, kind = divmod(index, len(KINDS))
            colour = self.colour(yarn_id)
            strokes = KINDS[kind] or "M0 0H4"
            lines = path(strokes, stroke=mixed(colour, ink_on(colour), 22), stroke_width=Fraction(2, 5), fill="none")
            attributes: dict[str, str | int | Fraction] = {
                "id": self._id(yarn_id),
                "width": 4,
                "height": 4,
                "patternUnits": "userSpaceOnUse",
            }
            if around:
                attributes["patternTransform"] = f"scale(0.{max(1, 8 - 2 * around)})"
            patterns.append(Element("pattern", attributes, (rect(0, 0, 4, 4, fill=colour), lines)))
        return Element("defs", {}, tuple(patterns))
