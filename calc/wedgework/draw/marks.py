"""What is drawn round and over a piece: arrows with sizes, the ruler of needles, numbers of blocks, slits, holes."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

from wedgework.bed import name
from wedgework.draw.colours import ink_on
from wedgework.draw.hatch import Hatches
from wedgework.draw.sheet import TEXT, Sheet
from wedgework.draw.svg import Element, Number, group, label, line, number, path, rect
from wedgework.units import both_text

__all__ = ["arrow_across", "arrow_up", "block_number", "grid", "hole", "legend", "ruler", "slit", "words_width"]

HEAD = Fraction(12, 10)


def words_width(words: str, size: Number = TEXT) -> Fraction:
    """About how wide a line of text is: nobody measures a font here, so a generous six tenths of its size a letter."""
    return Fraction(6, 10) * size * len(words)


def _heads(*points: tuple[Number, Number, int, int]) -> Element:
    """Arrow heads at points, each looking along (dx, dy)."""
    parts = []
    for x, y, dx, dy in points:
        back_x, back_y = x - dx * 2 * HEAD, y - dy * 2 * HEAD
        parts.append(
            f"M{number(x)} {number(y)}L{number(back_x - dy * HEAD / 2)} {number(back_y + dx * HEAD / 2)}"
            f"L{number(back_x + dy * HEAD / 2)} {number(back_y - dx * HEAD / 2)}Z"
        )
    return path("".join(parts), fill="currentColor")


def arrow_across(sheet: Sheet, y: Fraction, mm: Fraction) -> Element:
    """The width, under the piece."""
    middle = (sheet.left + sheet.right) / 2
    return group(
        [
            line(sheet.left, y, sheet.right, y, stroke_width=Fraction(1, 5)),
            _heads((sheet.left, y, -1, 0), (sheet.right, y, 1, 0)),
            label(middle, y + TEXT + Fraction(1, 2), both_text(mm), TEXT, text_anchor="middle"),
        ]
    )


def arrow_up(sheet: Sheet, x: Fraction, low: Fraction, high: Fraction, mm: Fraction) -> Element:
    """The height, left of the piece, read from below."""
    middle = (low + high) / 2
    turn = f"rotate(-90 {number(x - Fraction(3, 2))} {number(middle)})"
    return group(
        [
            line(x, low, x, high, stroke_width=Fraction(1, 5)),
            _heads((x, high, 0, -1), (x, low, 0, 1)),
            label(x - Fraction(3, 2), middle, both_text(mm), TEXT, text_anchor="middle", transform=turn),
        ]
    )


def ruler(needles: Sequence[int], left: Fraction, stitch: Fraction, y: Fraction, *, above: bool = False) -> Element:
    """Needle names along an edge: the first and the last one, those beside the middle, and every tenth that has room.

    `needles` are those of the columns from left to right, each `stitch` wide; ticks stand at the middle of their stitch, and
    between L1 and R1.
    """
    middle = stitch / 2
    wanted = [(left + i * stitch + middle, name(needles[i])) for i in (0, len(needles) - 1)]
    for i, (one, other) in enumerate(pairwise(needles)):
        if abs(one) == abs(other) == 1:
            wanted.append((left + (i + 1) * stitch, f"{name(one)} {name(other)}"))
    step = 10 if len(needles) <= 120 else 20
    wanted += [(left + i * stitch + middle, name(n)) for i, n in enumerate(needles) if n % step == 0]
    drawn: list[Element] = []
    taken: list[tuple[Fraction, Fraction]] = []
    tick = y - Fraction(3, 2) if above else y + Fraction(3, 2)
    baseline = tick - Fraction(1, 2) if above else tick + TEXT
    for x, words in wanted:
        half = words_width(words) / 2 + Fraction(1, 2)
        if all(x + half <= a or x - half >= b for a, b in taken):
            taken.append((x - half, x + half))
            drawn.append(line(x, y, x, tick, stroke_width=Fraction(1, 4)))
            drawn.append(label(x, baseline, words, TEXT, text_anchor="middle"))
    return group(drawn)


def block_number(x: Number, y: Number, words: str, colour: str, radius: Fraction) -> Element:
    """A number on a disc of the block's own colour, so that no hatch runs through it."""
    ink = ink_on(colour)
    size = radius * Fraction(13, 10) if len(words) < 3 else radius
    return group(
        [
            Element("circle", {"cx": x, "cy": y, "r": radius, "fill": colour, "stroke": ink, "stroke-width": Fraction(1, 4)}),
            label(x, y + size * Fraction(36, 100), words, size, text_anchor="middle", fill=ink, font_weight="600"),
        ]
    )


def slit(low: tuple[Fraction, Fraction], high: tuple[Fraction, Fraction]) -> Element:
    """An open border from its lower to its upper end: a light band with a dark zigzag, seen on every colour."""
    (x, bottom), (to_x, top) = low, high
    turns = max(2, int((bottom - top) / Fraction(12, 10)))
    points = " ".join(
        f"{number(x + (to_x - x) * i / turns + (Fraction(7, 10) if i % 2 else -Fraction(7, 10)))},"
        f"{number(bottom + (top - bottom) * i / turns)}"
        for i in range(turns + 1)
    )
    return group(
        [
            line(x, bottom, to_x, top, stroke="#ffffff", stroke_width=Fraction(2)),
            Element("polyline", {"points": points, "fill": "none", "stroke": "#1a1a1a", "stroke-width": Fraction(2, 5)}),
        ],
        class_="slit",
    )


def hole(x: Fraction, y: Fraction) -> Element:
    """A hole at a turn: a dark ring in a light one."""
    return group(
        [
            Element("circle", {"cx": x, "cy": y, "r": Fraction(13, 10), "fill": "#ffffff"}),
            Element(
                "circle",
                {"cx": x, "cy": y, "r": Fraction(8, 10), "fill": "none", "stroke": "#1a1a1a", "stroke-width": Fraction(2, 5)},
            ),
        ],
        class_="hole",
    )


def grid(sheet: Sheet, rows: int) -> Element:
    """Every tenth needle and tenth row, lightly, so that a place can be counted."""
    lines = [line(sheet.x(c), sheet.y(0), sheet.x(c), sheet.y(rows)) for c in range(0, sheet.needles + 1, 10)]
    lines += [line(sheet.left, sheet.y(r), sheet.right, sheet.y(r)) for r in range(0, rows + 1, 10)]
    return group(lines, stroke="#808080", stroke_width=Fraction(1, 10), stroke_opacity="0.6")


def legend(entries: Sequence[tuple[str, str]], hatches: Hatches, width: Fraction) -> tuple[list[list[Element]], int]:
    """Rows of yarns (id and words), each row a list of elements about its own baseline 0, and how many rows."""
    rows: list[list[Element]] = [[]]
    x = Fraction(1)
    for yarn, words in entries:
        wide = 8 + words_width(words) + 3
        if rows[-1] and x + wide > width:
            rows.append([])
            x = Fraction(1)
        rows[-1].append(rect(x, -3, 6, 4, fill=hatches.fill(yarn), stroke="currentColor", stroke_width=Fraction(1, 5)))
        rows[-1].append(label(x + 8, 0, words, TEXT))
        x += wide
    return rows, len(rows)
