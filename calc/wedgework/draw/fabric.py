"""The piece as a fabric: every stitch a small V on the front, a small bump on the back, in its own colour.

    fabric_svg(fabric, palette, (stitch_mm, row_mm), title="...", desc="...", side="front", prefix="fabric")

Neighbouring stitches of one colour are one shape filled with a pattern of one stitch, so a piece of 20,000 stitches stays small.
A larger piece is drawn in plain colour, for print: on the screen the page paints its stitches on a canvas from the same cells.
"""

from __future__ import annotations

import operator
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from wedgework.draw.colours import ink_on, mixed
from wedgework.draw.marks import block_number, words_width
from wedgework.draw.svg import Element, document, group, label, number, path, rect
from wedgework.yarn.fabric import NOTHING, Fabric

__all__ = ["Ink", "Mark", "can_be_drawn", "fabric_svg"]

MOST_STITCHES = 60_000
"""Above this single stitches cannot be seen on a sheet of paper, and a pattern of them is slow to show."""
MOST_RUNS = 40_000
"""Of neighbours in one colour; above this a drawing of shapes is too large a file; a bitmap is not."""
MOST_EASED = 2
"""Rows by which needles may differ and still end at one straight edge."""
WIDEST, HIGHEST = 180, 200
TEXT = Fraction(3)

# One stitch in a square of 1 x 1, and what of it reaches into the next row: two legs of a V; a bump with half of its neighbours.
_LEG = "M0.5 1.12C0.3 0.95 0.02 0.45 0.05 0C0.08 -0.3 0.36 -0.24 0.43 0.08C0.47 0.4 0.5 0.75 0.5 1.12Z"
_OTHER_LEG = "M0.5 1.12C0.7 0.95 0.98 0.45 0.95 0C0.92 -0.3 0.64 -0.24 0.57 0.08C0.53 0.4 0.5 0.75 0.5 1.12Z"
_BUMP = "M0.04 0.42C0.1 0.02 0.9 0.02 0.96 0.42C0.8 0.3 0.2 0.3 0.04 0.42Z"
_HALVES = (
    "M-0.46 0.92C-0.4 0.52 0.4 0.52 0.46 0.92C0.3 0.8 -0.3 0.8 -0.46 0.92Z"
    "M0.54 0.92C0.6 0.52 1.4 0.52 1.46 0.92C1.3 0.8 0.7 0.8 0.54 0.92Z"
)
SHADE = 24
"""Percent of dark between the legs."""


@dataclass(frozen=True, slots=True)
class Ink:
    """One palette entry, from 1 on; several may have one colour."""

    colour: str
    name: str


@dataclass(frozen=True, slots=True)
class Mark:
    """A block's number, at its place: stitches from the left and rows from the top of the front."""

    words: str
    x: Fraction
    y: Fraction


def can_be_drawn(fabric: Fabric) -> bool:
    """Whether the drawing stays small enough to be a part of a page."""
    cells = fabric.cells
    if len(cells) <= MOST_STITCHES:
        return True
    runs: int = fabric.height + sum(map(operator.ne, cells, cells[1:]))
    return runs <= MOST_RUNS


def fabric_svg(
    fabric: Fabric,
    inks: Sequence[Ink],
    cell_mm: tuple[Fraction, Fraction],
    *,
    title: str,
    desc: str,
    prefix: str,
    side: Literal["front", "back"] = "front",
    marks: Sequence[Mark] = (),
) -> str:
    """SVG text at true proportions; the back is the front's mirror image. `inks[i]` is palette entry i + 1."""
    wide, high = fabric.width * cell_mm[0], fabric.height * cell_mm[1]
    used = [i for i in range(1, len(inks) + 1) if i in fabric.cells]
    rows = _legend([inks[i - 1] for i in used])
    scale = min(Fraction(1), (WIDEST - 4) / wide, (HIGHEST - 6 * len(rows)) / high)
    stitch, row = cell_mm[0] * scale, cell_mm[1] * scale
    single = len(fabric.cells) <= MOST_STITCHES
    cells = [_pattern(i, inks[i - 1].colour, side, prefix) for i in used if single]
    shapes = [
        path(_runs(fabric, i, side) + _eased(fabric, i, side), fill=f"url(#{prefix}-ink-{i})" if single else inks[i - 1].colour)
        for i in used
    ]
    children: list[Element] = [
        *([Element("defs", {}, tuple(cells))] if cells else []),
        group(shapes, transform=f"translate(2 2) scale({_fine(stitch)} {_fine(row)})", class_="stitches"),
    ]
    for mark in marks:
        x = mark.x if side == "front" else fabric.width - mark.x
        ink = _under(fabric, inks, mark)
        children.append(block_number(2 + x * stitch, 2 + mark.y * row, mark.words, ink, Fraction(22, 10)))
    y = 2 + high * scale + 6
    for line in rows:
        children.append(group(line, transform=f"translate(2 {number(y)})"))
        y += 6
    width = max(wide * scale + 4, Fraction(100))
    return document(width, y, title, desc, children, prefix=prefix, kind="fabric")


def _fine(value: Fraction) -> str:
    """A scale in ten-thousandths: two places would move the far edge by millimetres."""
    whole = int(value * 10_000 + Fraction(1, 2))
    return f"{whole // 10_000}.{whole % 10_000:04}".rstrip("0").rstrip(".")


def _under(fabric: Fabric, inks: Sequence[Ink], mark: Mark) -> str:
    column, row = min(int(mark.x), fabric.width - 1), min(int(mark.y), fabric.height - 1)
    index = fabric.cells[row * fabric.width + column]
    return inks[index - 1].colour if index != NOTHING else "#ffffff"


def _pattern(index: int, colour: str, side: str, prefix: str) -> Element:
    ground = mixed(colour, ink_on(colour) if ink_on(colour) != "#ffffff" else "#000000", SHADE)
    parts = (_LEG, _OTHER_LEG) if side == "front" else (_BUMP, _HALVES)
    # What reaches out of one square comes in again on the other side.
    shapes = [path(d, fill=colour, transform=f"translate(0 {dy})") for dy in (-1, 0, 1) for d in parts]
    attributes: dict[str, str | int | Fraction] = {
        "id": f"{prefix}-ink-{index}", "width": 1, "height": 1, "patternUnits": "userSpaceOnUse",
    }  # fmt: skip
    return Element("pattern", attributes, (rect(0, 0, 1, 1, fill=ground), *shapes))


def _runs(fabric: Fabric, index: int, side: str) -> str:
    """Every run of one palette entry as a rectangle one row high, in stitches and rows."""
    width = fabric.width
    parts: list[str] = []
    for y in range(fabric.height):
        line = fabric.cells[y * width : (y + 1) * width]
        if side != "front":
            line = line[::-1]
        at = line.find(index)
        while at >= 0:
            end = at + 1
            while end < width and line[end] == index:
                end += 1
            parts.append(f"M{at} {y}h{end - at}v1h-{end - at}z")
            at = line.find(index, end)
    return "".join(parts)


def _eased(fabric: Fabric, index: int, side: str) -> str:
    """Above a needle that ends a row or two early its last stitch is drawn on: knitted fabric evens that out by itself."""
    width, cells = fabric.width, fabric.cells
    gaps = [next((y for y in range(fabric.height) if cells[y * width + x]), fabric.height) for x in range(width)]
    if not 0 < max(gaps) <= MOST_EASED:
        return ""
    places = (x for x, gap in enumerate(gaps) if gap and cells[gap * width + x] == index)
    return "".join(f"M{x if side == 'front' else width - 1 - x} 0V{gaps[x]}h1V0z" for x in places)


def _legend(entries: Sequence[Ink]) -> list[list[Element]]:
    rows: list[list[Element]] = [[]]
    x = Fraction(0)
    for entry in entries:
        wide = 8 + words_width(entry.name) + 4
        if rows[-1] and x + wide > WIDEST - 4:
            rows.append([])
            x = Fraction(0)
        rows[-1].append(rect(x, -3, 6, 4, fill=entry.colour, stroke="currentColor", stroke_width=Fraction(1, 5)))
        rows[-1].append(label(x + 8, 0, entry.name, TEXT))
        x += wide
    return rows
