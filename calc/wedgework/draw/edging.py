"""A piece with its edging round it or along one edge, to scale, and a bit of that edge with the places that are joined."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from wedgework.draw.svg import Child, Element, Number, document, group, label, line, number, path, rect
from wedgework.say import say, say_n

__all__ = ["edging_svg"]

LEFT, TOP = 8, 8
WIDEST, HIGHEST = 140, 120
TEXT = Fraction(4)
THIN, FIRM = Fraction(3, 10), Fraction(1, 2)
DETAIL = 16
_PITCH = Fraction(6)
PIECE, STRIP = "0.06", "0.22"


def edging_svg(
    lengths_mm: Sequence[Fraction],
    width_mm: Fraction,
    corner: str,
    joined: Sequence[int],
    places: int,
    kind: str,
    rows: int,
    joins: int,
) -> str:
    """`lengths_mm`: of the ends and the sides of the piece, or of one edge alone; `joined`: the places of the last of these."""
    both = len(lengths_mm) == 2
    wide_mm = lengths_mm[0] + (2 * width_mm if both else 0)
    high_mm = lengths_mm[1] + 2 * width_mm if both else 3 * width_mm
    scale = min(Fraction(1), WIDEST / wide_mm, HIGHEST / high_mm)
    w, wide, high = width_mm * scale, wide_mm * scale, high_mm * scale
    children: list[Child] = _round(w, wide, high, corner) if both else _one(w, wide, high)
    foot = TOP + high
    middle = (LEFT + wide / 2, TOP + (high if both else high + w) / 2 + 1)
    children.append(label(*middle, say("draw.edging-piece"), TEXT, text_anchor="middle"))
    children += _detail(foot + 10, joined, places, kind)
    words = say("draw.edging-desc", rows=say_n("common.rows", rows), joins=joins)
    sheet = max(LEFT + wide + 8, LEFT + DETAIL * _PITCH + 8)
    return document(sheet, foot + 28, say("draw.edging-title"), words, children, prefix="edging", kind="edging")


def _round(w: Fraction, wide: Fraction, high: Fraction, corner: str) -> list[Child]:
    """The strip all round; its corners as a quarter of a circle, square, or left open."""
    x, y, right, foot = Fraction(LEFT), Fraction(TOP), LEFT + wide, TOP + high
    inside = (x + w, y + w, right - w, foot - w)
    piece = rect(inside[0], inside[1], wide - 2 * w, high - 2 * w, fill="currentColor", fill_opacity=PIECE)
    hole = f"M{_at(inside[0], inside[1])}V{number(inside[3])}H{number(inside[2])}V{number(inside[1])}Z"
    if corner == "none":
        outer = (
            f"M{_at(inside[0], y)}H{number(inside[2])}V{number(inside[1])}H{number(right)}V{number(inside[3])}"
            f"H{number(inside[2])}V{number(foot)}H{number(inside[0])}V{number(inside[3])}H{number(x)}V{number(inside[1])}H{number(inside[0])}Z"
        )
    elif corner == "square":
        outer = f"M{_at(x, y)}H{number(right)}V{number(foot)}H{number(x)}Z"
    else:
        arc = f"A{number(w)} {number(w)} 0 0 1"
        outer = (
            f"M{_at(inside[0], y)}H{number(inside[2])}{arc} {_at(right, inside[1])}V{number(inside[3])}"
            f"{arc} {_at(inside[2], foot)}H{number(inside[0])}{arc} {_at(x, inside[3])}V{number(inside[1])}"
            f"{arc} {_at(inside[0], y)}Z"
        )
    return [piece, _strip(outer + hole)]


def _one(w: Fraction, wide: Fraction, high: Fraction) -> list[Child]:
    """The strip above a bit of the piece, which is cut through below."""
    y = TOP + w
    piece = rect(LEFT, y, wide, high - w, fill="currentColor", fill_opacity=PIECE)
    cut = line(LEFT, TOP + high, LEFT + wide, TOP + high, stroke_width=THIN, stroke_dasharray="2 1.5")
    return [piece, _strip(f"M{_at(LEFT, TOP)}H{number(LEFT + wide)}V{number(y)}H{number(LEFT)}Z"), cut]


def _at(x: Number, y: Number) -> str:
    return f"{number(x)} {number(y)}"


def _strip(d: str) -> Element:
    return path(d, fill="currentColor", fill_opacity=STRIP, fill_rule="evenodd", stroke="currentColor", stroke_width=THIN)


def _detail(y: Fraction, joined: Sequence[int], places: int, kind: str) -> list[Child]:
    """The first places of the edge, one box each, the strip above them."""
    shown = min(DETAIL, places)
    long = shown * _PITCH
    marks: list[Child] = [rect(LEFT, y - 5, long, 5, fill="currentColor", fill_opacity=STRIP)]
    for place in range(1, shown + 1):
        left = LEFT + (place - 1) * _PITCH
        marks.append(rect(left, y, _PITCH, 6, fill="currentColor", fill_opacity=PIECE, stroke="currentColor", stroke_width=THIN))
        if place == 1 or place % 4 == 0:
            marks.append(label(left + _PITCH / 2, y + Fraction(9, 2), f"{place}", Fraction(5, 2), text_anchor="middle"))
        times = joined.count(place)
        for i in range(times):
            centre = left + _PITCH / 2 + Fraction(2 * i - times + 1) * Fraction(3, 2)
            marks.append(Element("circle", {"cx": centre, "cy": y, "r": Fraction(13, 10), "fill": "currentColor"}))
    words = say_n("draw.edging-detail", shown, kind=kind)
    return [group(marks), line(LEFT, y, LEFT + long, y, stroke_width=FIRM), label(LEFT, y + 13, words, TEXT)]
