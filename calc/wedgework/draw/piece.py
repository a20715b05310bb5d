"""The finished piece, seen from either side: blocks with their numbers, sizes, needles, slits and holes.

`front` and `purl` differ in one thing only, the side: the columns of the one are those of the other in reverse.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from wedgework.bed import across, place
from wedgework.draw.edges import edge_strips, eyelet_columns, hem_notes
from wedgework.draw.hatch import Hatches
from wedgework.draw.marks import arrow_across, arrow_up, block_number, grid, hole, legend, ruler, slit
from wedgework.draw.outline import Columns, Interval, loops, spot, stack_on
from wedgework.draw.sheet import TEXT, WIDEST, Sheet, sheet_for
from wedgework.draw.svg import Element, document, group, label, line, number, path
from wedgework.formats.plan import Plan, is_edge
from wedgework.layout.sizes import resolve
from wedgework.replay.result import Piece, Replay
from wedgework.say import say, say_n

__all__ = ["Side", "piece_svg"]

Side = Literal["front", "purl"]

BIG, SMALL = Fraction(32, 10), Fraction(17, 10)
"""Radius of a block's number, as large as the block allows."""


@dataclass(frozen=True, slots=True)
class _Shown:
    """A block as it is drawn."""

    number: int
    yarn: str
    columns: Columns


def piece_svg(plan: Plan, judged: Replay, side: Side, *, prefix: str, show_grid: bool = False) -> str:
    """The piece as SVG text, at true proportions, scaled to fit one sheet of paper."""
    sizes, piece = resolve(plan.design), judged.piece
    hatches = Hatches(plan.design.yarns, prefix)
    blocks = _blocks(plan, piece, side)
    heights = _heights(piece, side)
    below, above = piece.rows_below, piece.rows_above
    knitted = {block.yarn for block in blocks} | {yarn for yarn, count in judged.summary.edge_stitches.items() if count}
    used = [yarn for yarn in plan.design.yarns if yarn.id in knitted]
    entries = [(yarn.id, yarn.name) for yarn in used]
    rows, count = legend(entries, hatches, Fraction(WIDEST - 20))
    notes = hem_notes(plan, sizes) + _notes(blocks, judged)
    sheet = sheet_for(sizes, max([sizes.rows, *heights]), below, above, count + len(notes), ruler_above=side == "purl")

    needles = across(piece.first_needle, piece.last_needle)
    names = needles[::-1] if side == "front" else needles
    children: list[Element] = [hatches.definitions(), label(0, 4, say(f"draw.{side}-caption"), TEXT, font_weight="600")]
    children += edge_strips(piece, heights, sheet, hatches, eyelet_columns(plan, sizes, mirrored=side == "front"))
    children.append(group((_outline(block, sheet, hatches) for block in blocks), stroke_width=Fraction(3, 20), class_="blocks"))
    if show_grid:
        children.append(grid(sheet, sizes.rows))
    children += _faults(judged, piece, side, sheet)
    children += _numbers(blocks, sheet, hatches)
    if side == "purl":
        children.append(ruler(names, sheet.left, sheet.stitch, sheet.top, above=True))
    children.append(ruler(names, sheet.left, sheet.stitch, sheet.bottom))
    children.append(arrow_across(sheet, sheet.bottom + 8, sizes.width_mm))
    children.append(arrow_up(sheet, sheet.left - 3, sheet.foot, sheet.y(sizes.rows), sizes.height_mm))
    y = sheet.bottom + 18
    for row in rows:
        children.append(group(row, transform=f"translate(0 {number(y)})"))
        y += 6
    for words in notes:
        children.append(label(1, y, words, TEXT))
        y += 6
    return document(
        sheet.width,
        sheet.height,
        say(f"draw.{side}-title", title=plan.design.title),
        _description(plan, judged, blocks, hatches, side),
        children,
        prefix=prefix,
        kind=side,
    )


def _description(plan: Plan, judged: Replay, blocks: list[_Shown], hatches: Hatches, side: Side) -> str:
    sizes = resolve(plan.design)
    order = ", ".join(say("draw.block-in-order", number=b.number, yarn=hatches.name(b.yarn)) for b in blocks)
    said = [
        say(f"draw.{side}-desc"),
        say("draw.piece-desc", stitches=say_n("common.stitches", sizes.needles), rows=say_n("common.rows", sizes.rows)),
        say("draw.order-desc", order=order),
    ]
    return " ".join([*said, *hem_notes(plan, sizes), *_open_places(judged)])


def _open_places(judged: Replay) -> list[str]:
    slits, holes = len(judged.summary.slits), len(judged.summary.holes)
    return ([say_n("draw.slits", slits)] if slits else []) + ([say_n("draw.holes", holes)] if holes else [])


def _notes(blocks: list[_Shown], judged: Replay) -> list[str]:
    said = [say("draw.numbers-note", last=blocks[-1].number)] if len(blocks) > 1 else []
    return said + _open_places(judged)


# --- from the replayed piece to columns ---------------------------------------------------------------------------


def _columns_of(piece: Piece, side: Side) -> list[tuple[tuple[str, str, int, int], ...]]:
    """Left to right as seen: block, yarn, first row of the picture and the one after the last of each run."""
    seen = piece.columns[::-1] if side == "front" else piece.columns
    return [tuple((run.block, run.yarn, run.low, run.high) for run in column) for column in seen]


def _heights(piece: Piece, side: Side) -> list[int]:
    return [max((high for *_, high in column), default=0) for column in _columns_of(piece, side)]


def _blocks(plan: Plan, piece: Piece, side: Side) -> list[_Shown]:
    """The blocks of the picture in knitting order."""
    found: dict[str, dict[int, tuple[Interval, ...]]] = {}
    yarns: dict[str, str] = {}
    for index, column in enumerate(_columns_of(piece, side)):
        for block, yarn, low, high in column:
            yarns.setdefault(block, yarn)
            stack_on(found.setdefault(block, {}), index, low, high)
    order = [block.id for block in plan.blocks if not is_edge(block.id)]
    return [_Shown(number, yarns[block], found[block]) for number, block in enumerate(order, 1) if block in found]


# --- drawing ------------------------------------------------------------------------------------------------------


def _outline(block: _Shown, sheet: Sheet, hatches: Hatches) -> Element:
    d = "".join(sheet.stair(loop) for loop in loops(block.columns))
    return path(d, fill=hatches.fill(block.yarn), fill_rule="evenodd", stroke=hatches.edge(block.yarn), data_block=block.number)


def _numbers(blocks: list[_Shown], sheet: Sheet, hatches: Hatches) -> list[Element]:
    """Numbers inside the blocks; those of very small ones stand at the right, with a line to their block."""
    inside: list[Element] = []
    outside: list[tuple[Fraction, Fraction, _Shown]] = []
    for block in blocks:
        column, row, free_columns, free_rows = spot(block.columns, sheet.stitch, sheet.row)
        x, y = sheet.x(column), sheet.y(row)
        room = min(free_columns * sheet.stitch, free_rows * sheet.row) / 2
        if room >= SMALL:
            inside.append(block_number(x, y, str(block.number), hatches.colour(block.yarn), min(BIG, room * Fraction(65, 100))))
        else:
            outside.append((y, x, block))
    lowest = sheet.height
    at = sheet.right + 4
    for y, x, block in sorted(outside, key=lambda item: (-item[0], item[1])):
        lowest = min(y, lowest - 2 * SMALL - Fraction(1, 2))
        inside.append(line(x, y, at - SMALL, lowest, stroke_width=Fraction(1, 4)))
        inside.append(block_number(at, lowest, str(block.number), hatches.colour(block.yarn), SMALL))
    return inside


def _faults(judged: Replay, piece: Piece, side: Side, sheet: Sheet) -> list[Element]:
    """Slits and holes where they will be seen."""
    first, count = place(piece.first_needle), sheet.needles
    drawn: list[Element] = []
    for open_ in judged.summary.slits:
        low, high = (
            sheet.x(border if side == "purl" else count - border)
            for border in (place(needle) + 1 - first for needle in (open_.needle, open_.to_needle or open_.needle))
        )
        drawn.append(slit((low, sheet.y(open_.from_row - 1)), (high, sheet.y(open_.from_row - 1 + open_.rows))))
    for turn in judged.summary.holes:
        column = place(turn.needle) - first
        shown = column if side == "purl" else count - 1 - column
        drawn.append(hole(sheet.x(shown) + sheet.stitch / 2, sheet.y(piece.in_picture(turn.needle, turn.row))))
    return drawn
