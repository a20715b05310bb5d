"""Hems round a piece from the front, to scale, with their corners; and a bit of the edge with the rows that get a stitch."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from wedgework.draw.svg import Child, Element, Number, document, group, label, line, number, path, rect
from wedgework.say import say, say_n

__all__ = ["side_hem_svg"]

LEFT, TOP = 16, 10
WIDEST, HIGHEST = 130, 120
TEXT = Fraction(4)
THIN, FIRM = Fraction(3, 10), Fraction(1, 2)
# Of one side only a strip of the piece is drawn, so wide in parts of its height.
STRIP = Fraction(1, 4)
DETAIL = 16
_PITCH = Fraction(6)
PIECE, HEM, OVER = "0.06", "0.18", "0.3"


def side_hem_svg(
    width_mm: Fraction | None,
    height_mm: Fraction,
    depth_mm: Fraction,
    corners: str,
    counts: Sequence[tuple[int, int]],
    positions: Sequence[int],
    corners_word: str,
) -> str:
    """`counts`: stitches at the start and at the fold, along a side, and along an end where all four are drawn."""
    wide_mm = height_mm * STRIP if width_mm is None else width_mm + 2 * depth_mm
    high_mm = height_mm + 2 * depth_mm
    scale = min(Fraction(1), WIDEST / wide_mm, HIGHEST / high_mm)
    d, high, wide = depth_mm * scale, high_mm * scale, wide_mm * scale
    box = (Fraction(LEFT), Fraction(TOP), wide, high)
    children = _one(box, d, corners) if width_mm is None else _four(box, d, corners)
    x, y = Fraction(LEFT), Fraction(TOP)
    children.append(
        label(x - 3, y + high / 2, _count(counts[0]), TEXT, text_anchor="middle", transform=_turned(x - 3, y + high / 2))
    )
    if width_mm is not None:
        children.append(label(x + wide / 2, y - 3, _count(counts[1]), TEXT, text_anchor="middle"))
    foot = y + high
    children += _detail(Fraction(LEFT), foot + 18, positions)
    words = say("draw.side-hem", corners=corners_word)
    children.append(label(LEFT, foot + 7, words, TEXT))
    key = "draw.side-hem-title" if width_mm is not None else "draw.side-hem-one-title"
    sheet = max(x + wide + 8, LEFT + DETAIL * _PITCH + 8)
    return document(sheet, foot + 42, say(key), words, children, prefix="side-hem", kind="side-hem")


def _count(count: tuple[int, int]) -> str:
    start, fold = count
    return say_n("draw.side-hem-stitches", start) if start == fold else say_n("draw.side-hem-fold", start, fold=fold)


def _turned(x: Fraction, y: Fraction) -> str:
    return f"rotate(-90 {number(x)} {number(y)})"


def _area(points: Sequence[tuple[Number, Number]], shade: str) -> Element:
    d = "M" + "L".join(f"{number(x)} {number(y)}" for x, y in points) + "Z"
    return path(d, fill="currentColor", fill_opacity=shade, stroke="currentColor", stroke_width=THIN)


def _one(box: tuple[Fraction, Fraction, Fraction, Fraction], d: Fraction, corners: str) -> list[Child]:
    """A strip of the piece, cut through at the right, with the hem along its left side."""
    x, y, wide, high = box
    over = Fraction(0) if corners == "butted" else d
    hem = [(x, y + d - over), (x + d, y + d), (x + d, y + high - d), (x, y + high - d + over)]
    if corners == "lapped":
        hem = [(x, y), (x + d, y), (x + d, y + high), (x, y + high)]
    piece = rect(x + d, y + d, wide - d, high - 2 * d, fill="currentColor", fill_opacity=PIECE)
    cut = line(x + wide, y + d, x + wide, y + high - d, stroke_width=THIN, stroke_dasharray="2 1.5")
    return [piece, _area(hem, HEM), cut]


def _four(box: tuple[Fraction, Fraction, Fraction, Fraction], d: Fraction, corners: str) -> list[Child]:
    x, y, wide, high = box
    right, foot = x + wide, y + high
    parts: list[Child] = [rect(x + d, y + d, wide - 2 * d, high - 2 * d, fill="currentColor", fill_opacity=PIECE)]
    if corners == "mitred":
        inner = [(x + d, y + d), (right - d, y + d), (right - d, foot - d), (x + d, foot - d)]
        outer = [(x, y), (right, y), (right, foot), (x, foot)]
        for i in range(4):
            after = (i + 1) % 4
            parts.append(_area([outer[i], outer[after], inner[after], inner[i]], HEM if i % 2 else OVER))
        return parts
    long_sides = corners == "lapped"
    gap = Fraction(0) if long_sides else d
    ends = (x + d, right - d) if long_sides else (x, right)
    for top in (y, foot - d):
        parts.append(_area([(ends[0], top), (ends[1], top), (ends[1], top + d), (ends[0], top + d)], OVER))
    for side in (x, right - d):
        parts.append(_area([(side, y + gap), (side + d, y + gap), (side + d, foot - gap), (side, foot - gap)], HEM))
    return parts


def _detail(x: Fraction, y: Fraction, positions: Sequence[int]) -> list[Child]:
    """The first rows of the edge laid on their side, one box a row."""
    rows = min(DETAIL, max(positions))
    hung = [row for row in positions if row <= rows]
    marks: list[Child] = []
    for row in range(1, rows + 1):
        left = x + (row - 1) * _PITCH
        marks.append(rect(left, y, _PITCH, 7, fill="currentColor", fill_opacity=PIECE, stroke="currentColor", stroke_width=THIN))
        times = hung.count(row)
        centre = left + _PITCH / 2
        if not times:
            marks.append(_dot(centre, y + 7, filled=False))
        marks += [_dot(centre + Fraction(2 * i - times + 1) * Fraction(3, 2), y + 7, filled=True) for i in range(times)]
        if row == 1 or row % 4 == 0:
            marks.append(label(centre, y + 4, f"{row}", Fraction(5, 2), text_anchor="middle"))
    words = say("draw.side-hem-detail", rows=say_n("common.rows", rows))
    return [
        group(marks),
        line(x, y + 7, x + rows * _PITCH, y + 7, stroke_width=FIRM),
        label(x, y + 15, words, TEXT),
        label(x, y + 21, say("draw.side-hem-key"), TEXT),
    ]


def _dot(x: Fraction, y: Fraction, *, filled: bool) -> Element:
    shape: dict[str, str | Number] = {"cx": x, "cy": y, "r": Fraction(13, 10), "stroke": "currentColor", "stroke-width": FIRM}
    return Element("circle", shape | {"fill": "currentColor" if filled else "none"})
