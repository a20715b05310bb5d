"""Panels sewn to one piece: which seam comes when."""

from __future__ import annotations

from collections.abc import Sequence

from wedgework.formats.design import Part

__all__ = ["Join", "joins", "outer_sides", "seam_turns"]

Join = tuple[tuple[int, int], tuple[int, int]]
"""What is sewn to what: first and last panel on the left of the seam, first and last on its right."""


def joins(panels: int) -> list[Join]:
    """In order: neighbours first, then pairs of them, so that the whole weight lies on the lap for as few seams as can be."""
    groups = [(i, i) for i in range(1, panels + 1)]
    found: list[Join] = []
    while len(groups) > 1:
        pairs: list[Sequence[tuple[int, int]]] = [groups[i : i + 2] for i in range(0, len(groups), 2)]
        found += [(pair[0], pair[1]) for pair in pairs if len(pair) == 2]
        groups = [(pair[0][0], pair[-1][1]) for pair in pairs]
    return found


def seam_turns(panels: int) -> list[int]:
    """For each seam, from left to right, when it is sewn: 1 for the first."""
    turns = {left[1]: turn for turn, (left, _) in enumerate(joins(panels), 1)}
    return [turns[i] for i in range(1, panels)]


def outer_sides(part: Part | None) -> int:
    """How many sides of the finished piece are edges of this panel."""
    return 2 if part is None else (part.number == 1) + (part.number == part.panels)
