"""Where changes fall, to scale: up the edge of a piece, or along a row of stitches."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from wedgework.draw.svg import Child, Element, Number, document, label, line, number, path, rect
from wedgework.say import say, say_n

__all__ = ["edge_svg", "row_svg"]

WIDEST, HIGHEST = 170, 200
LEFT, RIGHT, TOP, BOTTOM = 6, 18, 8, 12
TEXT = Fraction(3)
# Rows are named at the edge as long as there is room for the numbers.
LABEL_EVERY = Fraction(7, 2)


@dataclass(frozen=True, slots=True)
class _Scale:
    stitch: Fraction
    row: Fraction
    foot: Fraction

    def y(self, row: int) -> Fraction:
        return self.foot - row * self.row


def edge_svg(
    places: Sequence[tuple[int, int]],
    rows: int,
    body: int,
    stitch_mm: Fraction,
    row_mm: Fraction,
    *,
    both: bool,
    cut: bool = False,
    earlier: int = 0,
) -> str:
    """A piece of `body` stitches and `rows` rows whose right edge (or both) changes at `places` (row, stitches).

    `cut`: what lies beyond the left edge is not part of the question, so that edge is drawn as a cut through the fabric.
    `earlier`: so many rows before the right edge the left one changes.
    """
    steps = _steps(places, body, both)
    most = max(width for _, width in steps)
    room = WIDEST - LEFT - RIGHT
    scale = min(Fraction(1), room / (most * stitch_mm), (HIGHEST - TOP - BOTTOM) / (rows * row_mm))
    at = _Scale(stitch_mm * scale, row_mm * scale, TOP + rows * row_mm * scale)
    wide = most * at.stitch
    indent = [(most - width) * at.stitch / (2 if both else 1) for _, width in steps]
    right = [(row, LEFT + wide - inward) for (row, _), inward in zip(steps, indent, strict=True)]
    left = [(max(row - earlier, 0), LEFT + inward) for (row, _), inward in zip(steps, indent, strict=True)]
    if not both:
        left = [(0, Fraction(LEFT))]
    words = say("draw.shaping-rows", rows=say_n("common.rows", rows), changes=say_n("draw.shaping-changes", len(places)))
    children = [_outline(left, right, rows, at, cut), *_marks(right, at), label(LEFT, at.foot + 8, words, TEXT)]
    sheet = max(LEFT + wide + RIGHT, Fraction(90))
    return document(sheet, at.foot + BOTTOM, say("draw.shaping-title"), words, children, prefix="shaping", kind="shaping")


def _steps(places: Sequence[tuple[int, int]], body: int, both: bool) -> list[tuple[int, int]]:
    """The width from each row on."""
    steps, width = [(0, body)], body
    for row, stitches in places:
        width += stitches * (2 if both else 1)
        steps.append((row, width))
    return steps


def _outline(
    left: Sequence[tuple[int, Fraction]], right: Sequence[tuple[int, Fraction]], rows: int, at: _Scale, cut: bool
) -> Element:
    """Up the right edge, back along the top, down the left edge."""
    up = _edge(right, rows, at)
    down = _edge(left, rows, at)[::-1]
    points = [f"{number(x)} {number(y)}" for x, y in (*up, *down)]
    shape = path("M" + "L".join(points) + "Z", fill="currentColor", fill_opacity="0.15")
    firm = up if cut else [*up, *down, up[0]]
    d = "M" + "L".join(f"{number(x)} {number(y)}" for x, y in firm)
    parts: list[Child] = [shape, path(d, fill="none", stroke="currentColor", stroke_width=Fraction(2, 5))]
    if cut:
        x = left[0][1]
        parts.append(line(x, at.foot, x, at.y(rows), stroke_width=Fraction(3, 10), stroke_dasharray="2 1.5"))
    return Element("g", {}, tuple(parts))


def _edge(steps: Sequence[tuple[int, Fraction]], rows: int, at: _Scale) -> list[tuple[Fraction, Fraction]]:
    points = [(steps[0][1], at.foot)]
    for row, x in steps[1:]:
        points += [(points[-1][0], at.y(row)), (x, at.y(row))]
    return [*points, (points[-1][0], at.y(rows))]


def _marks(right: Sequence[tuple[int, Fraction]], at: _Scale) -> list[Child]:
    """A dot at each change, and the number of its row where there is room for it."""
    marks: list[Child] = []
    free: Fraction | None = None
    for (_, before), (row, x) in pairwise(right):
        y = at.y(row)
        marks.append(Element("circle", {"cx": x, "cy": y, "r": Fraction(4, 5), "fill": "currentColor"}))
        if free is None or y <= free - LABEL_EVERY:
            marks.append(label(max(before, x) + 2, y + 1, str(row), TEXT))
            free = y
    return marks


def row_svg(positions: Sequence[int], over: int, stitch_mm: Fraction, more: bool) -> str:
    """A row of `over` stitches; an arrow up after each stitch that is followed by a new one, down where two become one."""
    room = WIDEST - 2 * LEFT
    unit = min(stitch_mm, Fraction(room, over))
    wide, y = over * unit, 14
    thin = Fraction(1, 4)
    bar = rect(LEFT, y, wide, 6, fill="currentColor", fill_opacity="0.15", stroke="currentColor", stroke_width=thin)
    children: list[Child] = [bar]
    every = next(n for n in (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000) if n * unit >= 5)
    for stitch in range(0, over + 1, every):
        x = LEFT + stitch * unit
        children.append(line(x, y + 6, x, y + 8, stroke_width=Fraction(1, 5)))
        children.append(label(x, y + 12, str(stitch), TEXT, text_anchor="middle"))
    for position in positions:
        children.append(_arrow(LEFT + (position if more else position - 1) * unit, y, more))
    changes = say_n("draw.shaping-changes", len(positions))
    words = say("draw.shaping-stitches", stitches=say_n("common.stitches", over), changes=changes)
    children.append(label(LEFT, 5, words, TEXT))
    sheet = max(wide + 2 * LEFT, Fraction(100))
    return document(sheet, 30, say("draw.shaping-title"), words, children, prefix="shaping", kind="shaping")


def _arrow(x: Number, y: int, more: bool) -> Element:
    """Pointing into the row from above, or out of it."""
    tip, back = (y - 5, y) if more else (y, y - 5)
    flare = 2 if more else -2
    d = f"M{number(x)} {back}V{tip}M{number(x - 1)} {tip + flare}L{number(x)} {tip}L{number(x + 1)} {tip + flare}"
    return path(d, fill="none", stroke="currentColor", stroke_width=Fraction(2, 5))
