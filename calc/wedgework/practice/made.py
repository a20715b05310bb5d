"""Small figures that show one kind and little else: for what comes up in a piece, and in no part of it that is small enough.

    made("edge-left-widening-shallow", 24, ("a", "b"))

Two yarns on a level ground, as seen from the finished front like every grid; the sides of a kind are those of the bed.
"""

from __future__ import annotations

from wedgework.layout.grid import Cells, Grid

__all__ = ["made"]

_STEPS = {"steep": (1,), "mixed": (1, 2), "shallow": (4,)}
"""Needles by which the edge moves, turn after turn."""
_TURNS, _MARGIN = 8, 3
_PLAIN = 3
"""Turns below a figure, on which what lies under it evens out."""
_POINT = 7
"""Turns of a point, one needle a turn at either side."""


def made(kind: str, needles: int, yarns: tuple[str, str]) -> Grid | None:
    """A figure of this kind on so many needles; None for kinds that no figure makes."""
    words = kind.split("-")
    if kind == "edge-level":
        return _rows(needles, yarns, [(0, needles - 1)] * 3)
    if words[0] == "edge":
        _, side, way, slope = words
        runs = _edge(needles, _STEPS[slope])
        grid = _rows(needles, yarns, runs if way == "widening" else runs[::-1])
        # The runs end at the right of the bed, so it is their left edge that moves; the front is the mirror image.
        return grid.mirrored() if side == "left" else grid
    if kind in ("join-point-below", "join-point-above"):
        left = needles // 2 - 1
        runs = [(left - k, left + 1 + k) for k in range(min(_POINT, left))]
        return _rows(needles, yarns, runs if kind == "join-point-below" else runs[::-1])
    return None


def _edge(needles: int, steps: tuple[int, ...]) -> list[tuple[int, int]]:
    """Runs to the last place, each beginning further left than the one below it."""
    first, runs = needles - _MARGIN, list[tuple[int, int]]()
    while first >= _MARGIN and len(runs) < _TURNS:
        runs.append((first, needles - 1))
        first -= steps[len(runs) % len(steps)]
    return runs


def _rows(needles: int, yarns: tuple[str, str], runs: list[tuple[int, int]]) -> Grid:
    """The runs in the second yarn, a plain turn of the first one below and above."""
    ground = (Cells(0, needles - 1, 0, yarns[0]),)
    turns: list[tuple[Cells, ...]] = [ground] * _PLAIN
    for first, last in runs:
        parts = [Cells(first, last, 1, yarns[1])]
        parts = [Cells(0, first - 1, 0, yarns[0]), *parts] if first else parts
        parts = [*parts, Cells(last + 1, needles - 1, 0, yarns[0])] if last < needles - 1 else parts
        turns.append(tuple(parts))
    return Grid(needles, (*turns, ground))
