"""What lies below and above the picture: base rows as stripes, hems as strips of their true height, picot folds with points."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from wedgework.draw.hatch import Hatches
from wedgework.draw.outline import Columns, loops
from wedgework.draw.sheet import Sheet
from wedgework.draw.svg import Element, line, number, path
from wedgework.finish import END_HEMS, End, end_hem
from wedgework.formats.plan import Plan
from wedgework.layout.sizes import Sizes
from wedgework.replay.result import Piece
from wedgework.say import say
from wedgework.units import both_text

__all__ = ["edge_strips", "eyelet_columns", "hem_notes"]

FLAT = 4
"""Needles that differ by no more than so many rows lie under a straight edge; more is shaping."""
THIN = Fraction(3, 20)


def edge_strips(
    piece: Piece, heights: Sequence[int], sheet: Sheet, hatches: Hatches, eyelets: dict[End, tuple[int, ...]]
) -> list[Element]:
    """Straight below the picture; above they close what is left of a row or two under a straight edge.

    `eyelets`: columns, as the side is seen, that a picot fold leaves empty.
    """
    strips: list[Element] = []
    joins: list[Element] = []

    def stripes(floor: list[int], rows_of: Sequence[tuple[str, int]], kind: str, outward: int, *, straight: bool) -> list[int]:
        notches = eyelets["top" if outward > 0 else "bottom"] if kind == "hem" else ()
        for yarn, rows in rows_of:
            top = [max(floor) + rows] * len(floor) if straight else [at + rows for at in floor]
            strips.append(_strip(floor, top, yarn, sheet, hatches, kind, notches, outward))
            floor = top
        return floor

    floor = stripes([-sheet.below] * sheet.needles, piece.hem_below, "hem", -1, straight=True)
    if piece.hem_below:
        joins.append(_join(floor, sheet))
    stripes(floor, piece.base_below, "base", -1, straight=True)
    flat = max(heights) - min(heights) <= FLAT
    floor = stripes(list(heights), piece.base_above, "base", 1, straight=flat)
    if piece.hem_above:
        joins.append(_join(floor, sheet))
    stripes(floor, piece.hem_above, "hem", 1, straight=flat)
    return strips + joins


def _strip(
    low: Sequence[int],
    high: Sequence[int],
    yarn: str,
    sheet: Sheet,
    hatches: Hatches,
    kind: str,
    eyelets: Sequence[int],
    outward: int,
) -> Element:
    level = len({*low}) == len({*high}) == 1
    if eyelets and level:
        d = _pointed(low[0], high[0], sheet, eyelets, outward)
    else:
        columns: Columns = {c: ((low[c], high[c]),) for c in range(sheet.needles)}
        d = "".join(sheet.stair(loop) for loop in loops(columns))
    return path(d, fill=hatches.fill(yarn), stroke=hatches.edge(yarn), stroke_width=THIN, class_=kind)


def _pointed(low: int, high: int, sheet: Sheet, eyelets: Sequence[int], outward: int) -> str:
    """A rectangle whose outer edge has a notch at each eyelet, so that points stand between them."""
    inner, outer = (high, low) if outward < 0 else (low, high)
    deep = outer - outward
    parts = [f"M{number(sheet.x(0))} {number(sheet.y(inner))}V{number(sheet.y(outer))}"]
    for column in sorted(eyelets):
        middle = column + Fraction(1, 2)
        for at, row in ((column, outer), (middle, deep), (column + 1, outer)):
            parts.append(f"L{number(sheet.x(at))} {number(sheet.y(row))}")
    return "".join(parts) + f"L{number(sheet.x(sheet.needles))} {number(sheet.y(outer))}V{number(sheet.y(inner))}Z"


def _join(floor: Sequence[int], sheet: Sheet) -> Element:
    """Where the layers of a hem are knitted together: a dashed line."""
    y = sheet.y(max(floor))
    return line(sheet.x(0), y, sheet.right, y, stroke_width=Fraction(1, 4), stroke_dasharray="1.5 1", class_="hem-join")


def eyelet_columns(plan: Plan, sizes: Sizes, *, mirrored: bool) -> dict[End, tuple[int, ...]]:
    """From the left as the side is seen, from 0."""
    found: dict[End, tuple[int, ...]] = {}
    for end in END_HEMS:
        hem = end_hem(plan.design, sizes, end)
        places = hem.picot.emptied if hem and hem.picot else ()
        found[end] = tuple(sizes.needles - place if mirrored else place - 1 for place in places)
    return found


def hem_notes(plan: Plan, sizes: Sizes) -> list[str]:
    """One sentence for each hem that is knitted with the piece; side hems come later and are not drawn."""
    said = []
    for end in END_HEMS:
        hem = end_hem(plan.design, sizes, end)
        if hem is not None:
            kind = "picot" if hem.picot else "plain"
            said.append(say(f"draw.hem-{end}-{kind}", depth=both_text(hem.outside * sizes.row_mm)))
    return said
