"""Drawings for the reference pages, by name. They are ours and show no machine in particular.

    DIAGRAMS["wrap"]()      # '<svg xmlns=...'

Needles run from the back of the bed (above) toward the knitter (below), as she sees them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from fractions import Fraction

from wedgework.bed import name
from wedgework.draw.diagrams_finish import FINISH_DIAGRAMS
from wedgework.draw.svg import Child, Element, Number, document, group, label, line, number, path, rect
from wedgework.say import say, say_n

__all__ = ["DIAGRAMS"]

TEXT = Fraction(7, 2)
THICK, THIN = Fraction(4, 5), Fraction(3, 10)
YARN = "#b5532a"


def _sheet(key: str, width: int, height: int, children: Iterable[Child]) -> str:
    title, desc = say(f"draw.diagram-{key}-title"), say(f"draw.diagram-{key}-desc")
    return document(width, height, title, desc, children, prefix=f"diagram-{key}", kind="diagram")


def _words(x: Number, y: Number, words: str, size: Number = TEXT, **attributes: str | Number) -> Element:
    return label(x, y, words, size, text_anchor="middle", **attributes)


def _bed(x: Number, y: Number, width: Number, height: Number = 4) -> Element:
    return rect(x, y, width, height, fill="currentColor", fill_opacity="0.2")


def _needle(x: Number, back: Number, front: Number, *, latch: bool = True) -> Element:
    """A needle from `back` to its hook at `front`, the latch a little behind the hook."""
    parts = f"M{number(x)} {number(back)}V{number(front)}q0 2 1.6 2q1.4 0 1.4 -1.8"
    if latch:
        parts += f"M{number(x)} {number(front - 5)}l2.2 2.6"
    return path(parts, fill="none", stroke="currentColor", stroke_width=THICK, stroke_linecap="round")


def _loop(x: Number, y: Number) -> Element:
    """A stitch round a needle."""
    left, right, top, foot = number(x - 3), number(x + 3), number(y - 3), number(y + 6)
    d = f"M{left} {foot}C{left} {top} {right} {top} {right} {foot}"
    return path(d, fill="none", stroke=YARN, stroke_width=Fraction(6, 5))


def _pointer(x: int, y: int, dx: int) -> Element:
    """An arrow that points to (x, y) along the bed."""
    back = x - 5 * dx
    return path(
        f"M{x} {y}L{back} {y - 2}V{number(y - Fraction(1, 2))}H{x - 16 * dx}V{number(y + Fraction(1, 2))}H{back}V{y + 2}Z",
        fill="currentColor",
    )


def needle_positions() -> str:
    """Four needles side by side, one in each position, seen from above."""
    back, edge = 7, 38
    children: list[Child] = [_bed(6, back, 148, edge - back), line(6, edge, 154, edge, stroke_width=THIN)]
    children.append(label(6, 5, say("draw.back-of-bed"), 3))
    # how far the hook comes, and where the stitch lies on the needle
    for i, (key, front, stitch) in enumerate((("nwp", 35, None), ("wp", 44, 43), ("uwp", 54, 45), ("hp", 64, 45))):
        x = 25 + 37 * i
        children.append(_needle(x, front - 28, front))
        if stitch is not None:
            children.append(_loop(x, stitch))
        children.append(_words(x, 78, say(f"draw.position-{key}"), font_weight="700"))
        children.append(_words(x, 83, say(f"draw.position-{key}-word")))
        children.append(_words(x, 88, say(f"draw.position-{key}-does"), 3))
    return _sheet("needle-positions", 160, 91, children)


def short_rows() -> str:
    """A triangle on eight needles at three moments: after 2, 8 and 16 rows, one more needle every two rows."""
    children: list[Child] = []
    for stage, done in enumerate((2, 8, 16)):
        left, working = 6 + 56 * stage, done // 2
        children.append(_bed(left, 8, 48))
        for i in range(8):
            rows = max(0, done - 2 * i)
            children.append(rect(left + 6 * i, 24 + 2 * rows, 6, 4, fill="currentColor", fill_opacity="0.25"))
        # the newest row hangs highest; each row is as wide as the needles that knitted it
        for row in range(done):
            wide = 6 * (1 + (done - 1 - row) // 2)
            children.append(rect(left, 24 + 2 * row, wide, Fraction(7, 4), fill=YARN, fill_opacity="0.8"))
        for i in range(8):
            x = left + 3 + 6 * i
            children.append(line(x, 12, x, 22 if i < working else 32, stroke_width=THICK))
        children.append(_words(left + 24, 5, say_n("draw.after-rows", done), font_weight="700"))
        children.append(_words(left + 24, 68, say_n("draw.needles-knit", working)))
    return _sheet("short-rows", 172, 72, children)


def wrap() -> str:
    """Two knitting needles and a held one; the yarn of the next row passes over the held one on its way back."""
    edge = 26
    children: list[Child] = [_bed(8, 8, 94, edge - 8), line(8, edge, 102, edge, stroke_width=THIN)]
    children += [_loop(x, 31) for x in (25, 45, 70)]
    # from the held needle's last stitch up over its shaft, then into the hooks of the knitting needles
    d = "M73 37C82 35 83 43 76 43C68 43 61 35 53 36C50 36 48 38 46 37.5C38 35 32 38 26 37.5C20 37 14 36 8 37"
    children.append(path(d, fill="none", stroke=YARN, stroke_width=Fraction(7, 5), stroke_linecap="round"))
    children += [_needle(x, 10, 36) for x in (25, 45)]
    children.append(_needle(70, 10, 58))
    # the yarn lies over the held needle: drawn once more on top of it
    crossing = path("M75 43C71 42.6 68 41 65 39.5", fill="none", stroke=YARN, stroke_width=Fraction(7, 5))
    children.append(crossing)
    children.append(_words(35, 66, say("draw.wrap-knit")))
    children.append(_words(70, 66, say("draw.wrap-held"), font_weight="700"))
    children.append(line(80, 42, 90, 50, stroke_width=THIN))
    children.append(label(91, 53, say("draw.wrap-yarn"), TEXT))
    children.append(_pointer(26, 52, -1))
    return _sheet("wrap", 132, 70, children)


def _face(left: int, mirrored: bool) -> list[Element]:
    """One side of a small piece with a slanted block, plain stitches drawn as V (knit) or as waves (purl)."""
    points = [(10, 50), (40, 50), (40, 26)]
    shown = [(left + (50 - x if mirrored else x), y) for x, y in points]
    drawn = [rect(left, 10, 50, 46, fill="currentColor", fill_opacity="0.08", stroke="currentColor", stroke_width=THIN)]
    drawn.append(path("M" + "L".join(f"{x} {y}" for x, y in shown) + "Z", fill=YARN, fill_opacity="0.6"))
    marks = []
    for row in range(9):
        for column in range(10):
            x, y = left + 5 * column, 12 + 5 * row
            marks.append(f"M{x} {y + 2}q1.25 -2 2.5 0t2.5 0" if mirrored else f"M{x + 1} {y}l1.5 2.5l1.5 -2.5")
    drawn.append(path("".join(marks), fill="none", stroke="currentColor", stroke_width=Fraction(1, 4), stroke_opacity="0.6"))
    return drawn


def front_and_purl() -> str:
    """The same piece from both sides: a block that leans right on the front leans left on the purl side."""
    children: list[Child] = [group(_face(8, mirrored=False)), group(_face(82, mirrored=True))]
    children.append(_words(33, 6, say("draw.face-front"), font_weight="700"))
    children.append(_words(107, 6, say("draw.face-purl"), font_weight="700"))
    children.append(line(70, 8, 70, 58, stroke_width=THIN, stroke_dasharray="2 1.5"))
    children.append(_words(70, 63, say("draw.face-mirror"), 3))
    for x, side in ((8, "R"), (58, "L"), (82, "L"), (132, "R")):
        children.append(_words(x + (3 if x in (8, 82) else -3), 63, side))
    return _sheet("front-and-purl", 140, 68, children)


def bed_numbers() -> str:
    """The middle of a bed: L3 L2 L1 R1 R2 R3, and no zero."""
    needles: Sequence[int] = (-3, -2, -1, 1, 2, 3)
    children: list[Child] = [_bed(6, 12, 128, 10)]
    for i, needle in enumerate(needles):
        x = 20 + 20 * i
        children.append(_needle(x, 12, 32, latch=False))
        children.append(_words(x, 45, name(needle), 5, font_weight="700"))
    children.append(line(70, 8, 70, 48, stroke_width=THIN, stroke_dasharray="2 1.5"))
    children.append(_words(70, 6, say("draw.bed-middle")))
    children.append(label(8, 6, say("draw.bed-left"), TEXT))
    children.append(label(132, 6, say("draw.bed-right"), TEXT, text_anchor="end"))
    children.append(_words(70, 55, say("draw.bed-no-zero")))
    return _sheet("bed-numbers", 140, 60, children)


DIAGRAMS: dict[str, Callable[[], str]] = {
    "needle-positions": needle_positions,
    "short-rows": short_rows,
    "wrap": wrap,
    "front-and-purl": front_and_purl,
    "bed-numbers": bed_numbers,
    **FINISH_DIAGRAMS,
}
