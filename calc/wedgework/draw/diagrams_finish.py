"""Drawings for the reference pages about starts, ends, hems, seams, washing and mishaps. Ours, of no machine in particular."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from fractions import Fraction

from wedgework.draw.svg import Child, Element, Number, document, group, label, line, number, path, rect
from wedgework.say import say

__all__ = ["FINISH_DIAGRAMS"]

TEXT, SMALL = Fraction(7, 2), Fraction(3)
THICK, THIN = Fraction(4, 5), Fraction(3, 10)
YARN, CORD = "#b5532a", "#3f6f8f"


def _sheet(key: str, width: int, height: int, children: Iterable[Child]) -> str:
    title, desc = say(f"draw.diagram-{key}-title"), say(f"draw.diagram-{key}-desc")
    return document(width, height, title, desc, children, prefix=f"diagram-{key}", kind="diagram")


def _words(x: Number, y: Number, key: str, size: Number = TEXT, **attributes: str | Number) -> Element:
    return label(x, y, say(f"draw.{key}"), size, text_anchor="middle", **attributes)


def _fabric(x: Number, y: Number, columns: int, rows: int, colour: str = "currentColor") -> Element:
    """Knit stitches as small V, 5 wide and 4 high."""
    marks = [f"M{number(x + 5 * c + 1)} {number(y + 4 * r + 1)}l1.5 2.5l1.5 -2.5" for r in range(rows) for c in range(columns)]
    return path("".join(marks), fill="none", stroke=colour, stroke_width=Fraction(2, 5))


def cast_on() -> str:
    """Three strips: a closed edge; an edge on waste yarn with ravel cord; the same with the waste yarn gone, loops open."""
    children: list[Child] = []
    for x, key in ((6, "closed"), (62, "waste"), (130, "open")):
        children.append(_fabric(x, 10, 9, 6, YARN))
        if key == "closed":
            bumps = "".join("q2.5 4 5 0" for _ in range(9))
            children.append(path(f"M{x} 36{bumps}", fill="none", stroke=YARN, stroke_width=THICK))
        elif key == "waste":
            children.append(line(x, 36, x + 45, 36, stroke=CORD, stroke_width=Fraction(6, 5)))
            children.append(_fabric(x, 38, 9, 4))
            children.append(label(x + 47, 37, say("draw.cast-on-cord"), SMALL))
            children.append(label(x + 47, 47, say("draw.cast-on-yarn"), SMALL))
        else:
            loops = "".join(f"M{x + 5 * c + 1} 34c-1 5 4 5 3 0" for c in range(9))
            children.append(path(loops, fill="none", stroke=YARN, stroke_width=THICK))
        children.append(_words(x + Fraction(45, 2), 7, f"cast-on-{key}", font_weight="700"))
    return _sheet("cast-on", 180, 58, children)


def _needle(x: Number, front: Number, colour: str = "currentColor") -> Element:
    return path(f"M{number(x)} 10V{number(front)}q0 2 1.6 2q1.4 0 1.4 -1.8", fill="none", stroke=colour, stroke_width=THICK)


def several_to_hold() -> str:
    """Five needles at two moments: two of three go to hold before the pass toward them, the third after it."""
    children: list[Child] = []
    for moment, held in enumerate((2, 3)):
        left = 8 + 84 * moment
        children.append(rect(left, 8, 66, 14, fill="currentColor", fill_opacity="0.2"))
        for i in range(6):
            x = left + 6 + 11 * i
            children.append(_needle(x, 46 if i >= 6 - held else 30))
        # the row of yarn: toward the edge in the first, away from it and round the last held needle in the second
        end = left + 6 + 11 * 3
        turned = f"M{end - 1} 40c6 0 6 7 0 6c-4 -1 -5 -10 -10 -10H{left + 4}"
        wrapped = turned if moment else f"M{left + 4} 36H{end + 2}"
        children.append(path(wrapped, fill="none", stroke=YARN, stroke_width=Fraction(6, 5)))
        tip = (left + 4, 36, 3) if moment else (end + 2, 36, -3)
        children.append(path(f"M{tip[0]} {tip[1]}l{tip[2]} -2v4Z", fill=YARN))
        children.append(_words(left + 33, 5, f"several-{moment + 1}", font_weight="700"))
        children.append(_words(left + 33, 56, f"several-{moment + 1}-does", SMALL))
    return _sheet("several-to-hold", 172, 60, children)


def hem_hung() -> str:
    """A folded hem on its needles from the side: the strip goes down, turns at the fold, comes up again, and is hung."""
    children: list[Child] = [
        rect(8, 8, 30, 10, fill="currentColor", fill_opacity="0.2"),
        line(38, 13, 70, 13, stroke_width=THICK),
    ]
    children.append(path("M70 13q3 0 3 -2.4q0 -2.2 -2.6 -2.2", fill="none", stroke="currentColor", stroke_width=THICK))
    outside = "M58 15V58C58 66 68 66 68 58V15"
    children.append(path(outside, fill="none", stroke=YARN, stroke_width=Fraction(3, 2)))
    children.append(line(54, 63, 72, 63, stroke_width=THIN, stroke_dasharray="2 1.5"))
    children.append(label(75, 64, say("draw.hem-fold"), TEXT, font_weight="700"))
    children.append(label(72, 40, say("draw.hem-word-facing"), TEXT))
    children.append(label(54, 40, say("draw.hem-word-outside"), TEXT, text_anchor="end"))
    children.append(label(78, 14, say("draw.hem-hung-both"), TEXT))
    children.append(label(8, 6, say("draw.back-of-bed"), TEXT))
    children.append(label(110, 6, say("draw.hem-hung-you"), TEXT))
    return _sheet("hem-hung", 130, 72, children)


def corners() -> str:
    """The three corners of hems, from the front: lapped, mitred, butted."""
    children: list[Child] = []
    for i, key in enumerate(("lapped", "mitred", "butted")):
        x = 8 + 54 * i
        children.append(rect(x + 10, 20, 34, 30, fill="currentColor", fill_opacity="0.06"))
        if key == "lapped":
            bottom, side = f"M{x + 10} 10H{x + 44}V20H{x + 10}Z", f"M{x} 10H{x + 10}V50H{x}Z"
        elif key == "butted":
            bottom, side = f"M{x} 10H{x + 44}V20H{x}Z", f"M{x} 20H{x + 10}V50H{x}Z"
        else:
            bottom, side = f"M{x} 10H{x + 44}V20H{x + 10}Z", f"M{x} 10L{x + 10} 20V50H{x}Z"
        for d, shade in ((bottom, "0.3"), (side, "0.16")):
            children.append(path(d, fill="currentColor", fill_opacity=shade, stroke="currentColor", stroke_width=THIN))
        children.append(_words(x + 22, 7, f"corner-{key}", font_weight="700"))
    return _sheet("corners", 166, 54, children)


def edge_hung() -> str:
    """The side edge of a piece, rows upright: a whole edge stitch is taken, 3 of 4 rows."""
    shade: dict[str, str | Number] = {"fill": "currentColor", "stroke": "currentColor", "stroke_width": THIN}
    rows: list[Child] = [rect(10 * row + 8, 18, 10, 24, fill_opacity="0.06", **shade) for row in range(8)]
    rows.append(rect(8, 18, 80, 8, fill="currentColor", fill_opacity="0.14"))
    children: list[Child] = [group(rows)]
    for row in range(8):
        x = 10 * row + 13
        if row % 4 == 3:
            ring: dict[str, str | Number] = {"cx": x, "cy": 27, "r": Fraction(3, 2), "fill": "none"}
            children.append(Element("circle", ring | {"stroke": "currentColor", "stroke-width": THIN}))
            continue
        children.append(line(x, 4, x, 25, stroke_width=THICK))
        children.append(path(f"M{x} 25q0 2.4 1.8 2.4q1.4 0 1.4 -1.8", fill="none", stroke=YARN, stroke_width=THICK))
    children.append(label(91, 24, say("draw.edge-stitch"), TEXT))
    children.append(label(91, 9, say("draw.edge-needles"), TEXT))
    children.append(label(8, 49, say("draw.edge-rows"), TEXT))
    return _sheet("edge-hung", 126, 53, children)


def seam() -> str:
    """Two edges side by side and the thread that goes to and fro, under two rungs each time."""
    children: list[Child] = [_fabric(8, 10, 6, 12), _fabric(52, 10, 6, 12)]
    for y in range(12, 58, 4):
        children.append(line(34, y, 38, y, stroke_width=THIN))
        children.append(line(52, y, 56, y, stroke_width=THIN))
    d = "M54 57"
    for i in range(6):
        y = 57 - 8 * i
        d += f"V{y - 6}L36 {y - 2}V{y - 8}L54 {y - 8}" if i < 5 else f"V{y - 6}"
    children.append(path(d, fill="none", stroke=CORD, stroke_width=Fraction(6, 5), stroke_linejoin="round"))
    children.append(label(88, 22, say("draw.seam-edge"), SMALL))
    children.append(label(88, 30, say("draw.seam-under"), SMALL))
    children.append(label(88, 38, say("draw.seam-takes"), SMALL))
    return _sheet("seam", 172, 62, children)


def pinning() -> str:
    """The order of pins round a piece: corners, middles, then between."""
    children: list[Child] = [
        rect(20, 10, 80, 50, fill="currentColor", fill_opacity="0.08", stroke="currentColor", stroke_width=THIN)
    ]
    ends, middles = [(20, 10), (100, 60), (100, 10), (20, 60)], [(60, 10), (60, 60), (20, 35), (100, 35)]
    places = [*ends, *middles, (40, 10), (80, 60), (80, 10), (40, 60)]
    for i, (x, y) in enumerate(places, 1):
        children.append(Element("circle", {"cx": x, "cy": y, "r": 3, "fill": YARN}))
        children.append(label(x, y + Fraction(11, 10), f"{i}", SMALL, text_anchor="middle", fill="#ffffff", font_weight="700"))
    for i, key in enumerate(("corners", "middles", "between")):
        children.append(label(112, 20 + 9 * i, say(f"draw.pins-{key}"), SMALL))
    return _sheet("pinning", 172, 68, children)


def dropped() -> str:
    """A dropped stitch: the ladder above it, and the latch that picks rung after rung."""
    children: list[Child] = [_fabric(8, 10, 4, 10), _fabric(38, 10, 4, 10)]
    for y in range(14, 40, 5):
        children.append(path(f"M28 {y}q5 -2 10 0", fill="none", stroke=YARN, stroke_width=THICK))
    children.append(path("M31 44c-2 6 6 6 4 0", fill="none", stroke=YARN, stroke_width=THICK))
    children.append(line(33, 62, 33, 42, stroke_width=THICK))
    children.append(path("M33 42q0 -3 2 -3q2 0 2 2.6M33 48l3.4 -3.6", fill="none", stroke="currentColor", stroke_width=THICK))
    children.append(label(64, 22, say("draw.dropped-rungs"), TEXT))
    children.append(label(64, 46, say("draw.dropped-loop"), TEXT))
    children.append(label(38, 61, say("draw.dropped-latch"), TEXT))
    return _sheet("dropped", 126, 66, children)


FINISH_DIAGRAMS: dict[str, Callable[[], str]] = {
    "cast-on": cast_on,
    "several-to-hold": several_to_hold,
    "hem-hung": hem_hung,
    "corners": corners,
    "edge-hung": edge_hung,
    "seam": seam,
    "pinning": pinning,
    "dropped": dropped,
}
