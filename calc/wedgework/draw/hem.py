"""A hem: the strip flat before it is folded, and beside it the folded hem seen from the side, to scale."""

from __future__ import annotations

from fractions import Fraction

from wedgework.draw.svg import Child, Element, Number, document, group, label, line, number, path, rect
from wedgework.say import say, say_n

__all__ = ["hem_svg"]

LEFT, TOP, HIGH = 5, 10, 84
WIDEST = 62
TEXT = Fraction(4)
THIN, FIRM = Fraction(3, 10), Fraction(1, 2)
# As many stitches as are shown of a wide piece, an odd number; fewer where fewer are there.
SHOWN = 15
PIECE_ROWS = 4
PIECE, OUTSIDE, FACING = "0.05", "0.14", "0.28"


def hem_svg(
    stitches: int, outside: int, facing: int, stitch_mm: Fraction, row_mm: Fraction, *, picot: bool, untouched: int, top: bool
) -> str:
    """`untouched`: stitches at the right end that no eyelet touches (1 or 2); `top`: the piece lies below."""
    shown = min(stitches, SHOWN if stitches % 2 else SHOWN - 1)
    rows = outside + facing + PIECE_ROWS
    scale = min(Fraction(5, 2), WIDEST / (shown * stitch_mm), HIGH / (rows * row_mm))
    stitch, row = stitch_mm * scale, row_mm * scale
    # from above: facing, fold, outside, piece at the top; the other way round at the bottom
    parts = [("piece", PIECE_ROWS, PIECE), ("outside", outside, OUTSIDE), ("facing", facing, FACING)]
    if top:
        parts.reverse()
    children: list[Child] = []
    y, fold = Fraction(TOP), Fraction(TOP)
    right = LEFT + shown * stitch
    for key, count, shade in parts:
        high = count * row
        children.append(rect(LEFT, y, right - LEFT, high, fill="currentColor", fill_opacity=shade))
        children.append(_stitches(LEFT, y, shown, count, stitch, row))
        words = say("draw.hem-piece") if key == "piece" else say_n(f"draw.hem-{key}", count)
        children.append(label(right + 3, y + high / 2 + 1, words, TEXT))
        if key == ("outside" if not top else "facing"):
            fold = y + high
        y += high
    children.append(line(LEFT - 3, fold, right + 2, fold, stroke_width=FIRM, stroke_dasharray="2 1.5"))
    children.append(label(right + 3, fold + 1, say("draw.hem-fold"), TEXT, font_weight="700"))
    if picot:
        children += [_eyelet(LEFT + (i - Fraction(1, 2)) * stitch, fold, stitch, row) for i in _eyelets(shown, untouched)]
    side = max(right + 52, Fraction(112))
    children += _section(side, outside * row, facing * row, PIECE_ROWS * row, top)
    foot = y
    if picot:
        under = TOP + max(outside, facing) * row + 6 + PIECE_ROWS * row if top else fold + 6
        children += _points(side - 8, under + 14, 2 * stitch, row)
        foot = max(foot, under + 14 + 2 * row)
    words = say_n("draw.hem-part", shown, stitches=say_n("common.stitches", stitches))
    children.append(label(LEFT, y + 7, words, TEXT))
    return document(side + 28, foot + 10, say("draw.hem-title"), words, children, prefix="hem", kind="hem")


def _eyelets(shown: int, untouched: int) -> range:
    return range(2, shown - untouched + 1, 2)


def _stitches(x: Number, y: Fraction, columns: int, rows: int, stitch: Fraction, row: Fraction) -> Element:
    """Every stitch as a small V, as on the front."""
    lefts = [number(x + column * stitch + stitch / 8) for column in range(columns)]
    highs = [number(y + down * row + row / 6) for down in range(rows)]
    across, along = number(stitch * 3 / 8), number(row * 3 / 4)
    mark = f"l{across} {along}l{across} -{along}"
    marks = "".join(f"M{left} {high}{mark}" for high in highs for left in lefts)
    return path(marks, fill="none", stroke="currentColor", stroke_width=Fraction(1, 5), stroke_opacity="0.5")


def _eyelet(x: Fraction, y: Fraction, stitch: Fraction, row: Fraction) -> Element:
    """A hole in the fold: its rim in the colour of the text, its middle in that of the page."""
    return Element(
        "ellipse",
        {
            "cx": x, "cy": y, "rx": stitch * 2 / 5, "ry": row * 3 / 5, "fill": "none", "stroke": "currentColor",
            "stroke-width": Fraction(3, 5),
        },
    )  # fmt: skip


def _points(x: Fraction, y: Fraction, pitch: Fraction, row: Fraction) -> list[Child]:
    """A bit of the folded edge: the stitches between two eyelets fold into a point."""
    count = max(1, int(32 / pitch))
    right = x + count * pitch
    scallops = "".join(f"q-{number(pitch / 2)} {number(2 * row)} -{number(pitch)} 0" for _ in range(count))
    shape = path(
        f"M{number(x)} {number(y)}V{number(y - 8)}H{number(right)}V{number(y)}{scallops}Z",
        fill="currentColor",
        fill_opacity=OUTSIDE,
        stroke="currentColor",
        stroke_width=THIN,
    )
    return [shape, label(x, y + 2 * row + 6, say("draw.hem-points"), TEXT)]


def _section(x: Fraction, outside: Fraction, facing: Fraction, piece: Fraction, top: bool) -> list[Child]:
    """Two layers from the side: the outside in front (right), the facing behind it, joined at the fold."""
    gap = Fraction(6)
    start = TOP + max(outside, facing) + 6 if top else Fraction(TOP)  # where the piece ends that the hem hangs on
    joint = start if top else start + piece
    fold = joint - outside if top else joint + outside
    end = fold + facing if top else fold - facing
    bow = -4 if top else 4
    d = (
        f"M{number(x + gap)} {number(joint)}V{number(fold)}"
        f"C{number(x + gap)} {number(fold + bow)} {number(x)} {number(fold + bow)} {number(x)} {number(fold)}V{number(end)}"
    )
    body = line(x + gap, joint, x + gap, joint + piece if top else joint - piece, stroke_width=Fraction(6, 5))
    strip = path(d, fill="none", stroke="currentColor", stroke_width=Fraction(6, 5), stroke_opacity="0.75")
    tie = line(x, end, x + gap, joint, stroke_width=FIRM, stroke_dasharray="1 1")
    words = [
        label(x + gap + 3, (joint + fold) / 2 + 1, say("draw.hem-word-outside"), TEXT),
        label(x - 3, (joint + fold) / 2 + 1, say("draw.hem-word-facing"), TEXT, text_anchor="end"),
        label(x + gap / 2, fold + (-6 if top else 9), say("draw.hem-fold"), TEXT, text_anchor="middle", font_weight="700"),
    ]
    return [group([body, strip, tie, *words])]
