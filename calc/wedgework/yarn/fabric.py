"""The finished front stitch by stitch, as a compact array: one palette index, or one place on the yarn, for each stitch.

    picture = colours_of(laid, {"a": 1, "b": 2}, striped, (3, 4, 5))
    picture.cells[y * picture.width + x]       # row 0 is the top row, column 0 the left one, as the front is seen

Passes are laid out one below the other and then read needle by needle, in slices: one short row is at many heights of
the finished piece at once, since every needle has its own rows below it.
"""

from __future__ import annotations

from array import array
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from wedgework.yarn.laid import Laid
from wedgework.yarn.path import Stretch, YarnPath
from wedgework.yarn.stripes import Striped

__all__ = ["FIXED", "NOTHING", "PINNED", "SECOND", "UNIT", "Fabric", "Places", "colours_of", "places_of", "size_of"]

FIXED = 1 << 31
"""Of a place: the rest is a palette index, whatever lies where on a striped yarn."""
SECOND = 1 << 30
"""Of a place: on the second ball."""
PINNED = 1 << 29
"""Of a place: the offset is in it already, since a block before it, or its own, begins with a wanted colour; another offset
changes how much is wound off and not what is seen."""
UNIT = 10
"""Micrometres of a place, so that a repeat of 5 km fits beside the flags."""
NOTHING = 0
"""Palette index where there is no stitch: above a needle that ends a row earlier than others."""

_FACING = "facing"


@dataclass(frozen=True, slots=True)
class Fabric:
    width: int
    height: int
    cells: bytes
    """Row by row from the top, each from the left."""


@dataclass(frozen=True, slots=True)
class Places:
    width: int
    height: int
    cells: array[int]
    """In the same order: how far into the repeat, before the offset of the ball, in `UNIT`; with flags."""


def size_of(path: YarnPath) -> tuple[int, int]:
    """Stitches across and rows up, base rows and the outsides of hems with them."""
    levels, rows = _levels(path)
    return path.needles, max(levels) + rows


def colours_of(
    laid: Laid | YarnPath, inks: Mapping[str, int], striped: Striped | None = None, stripe_inks: Sequence[int] = ()
) -> Fabric:
    """The front in palette indices from 1 on: `inks` by yarn, `stripe_inks` for the colours of the striped one.

    Without a striped yarn the path alone is enough.
    """
    path = laid.path if isinstance(laid, Laid) else laid
    width, height = size_of(path)
    plain = {yarn: bytes((ink,)) * max(width, height) for yarn, ink in inks.items()}
    rows: list[bytes] = []
    if striped is not None:
        if not isinstance(laid, Laid):
            raise TypeError("a striped yarn has to be laid")
        rows = _striped_rows(laid, striped, [bytes((ink,)) * width for ink in stripe_inks])
    columns = [bytearray(height) for _ in range(width)]
    _fill(path, columns, plain, striped.yarn if striped else "", rows, bytearray)
    cells = bytearray(width * height)
    for place, column in enumerate(columns):
        cells[width - 1 - place :: width] = column[::-1]
    return Fabric(width, height, bytes(cells))


def places_of(laid: Laid, inks: Mapping[str, int], striped: Striped) -> Places:
    """Where on its yarn each stitch lies, so that a page can paint other offsets by itself."""
    path = laid.path
    width, height = size_of(path)
    most = max(width, height)
    plain = {yarn: array("I", (FIXED | ink,)) * most for yarn, ink in inks.items()}
    loop, length = laid.measures[striped.yarn].loop, striped.repeat.length
    rows: list[array[int]] = []
    pinned = False
    for number, stretch in enumerate(path.stretches):
        if stretch.yarn != striped.yarn:
            rows += [array("I")] * (stretch.end - stretch.begin)
            continue
        pinned = pinned or number in striped.begins
        for t in range(stretch.begin, stretch.end):
            at, count = laid.start[t] + loop // 2, path.stitches[t]
            flag = SECOND if striped.ball(t - stretch.begin) else 0
            if pinned and not flag:
                flag, at = PINNED, at + striped.offsets[0]
            row = array("I", [flag | (at + i * loop) % length // UNIT for i in range(count)])
            rows.append(row if path.first[t] <= path.last[t] else row[::-1])
    columns = [array("I", (FIXED | NOTHING,)) * height for _ in range(width)]
    _fill(path, columns, plain, striped.yarn, rows, lambda size: array("I", bytes(4 * size)))
    cells = array("I", bytes(4 * width * height))
    for place, column in enumerate(columns):
        cells[width - 1 - place :: width] = column[::-1]
    return Places(width, height, cells)


def _striped_rows(laid: Laid, striped: Striped, inks: list[bytes]) -> list[bytes]:
    """The colours of every pass of the striped yarn, from left to right; nothing for other yarns."""
    path, start = laid.path, laid.start
    loop, stitches_of, length = laid.measures[striped.yarn].loop, striped.repeat.stitches, striped.repeat.length
    first, last, stitches, offsets = path.first, path.last, path.stitches, striped.offsets
    half, bounds = loop // 2, (0, *striped.repeat.ends)
    several = len(offsets) > 1
    rows: list[bytes] = []
    low = high = number = 0
    for stretch in path.stretches:
        if stretch.yarn != striped.yarn:
            rows += [b""] * (stretch.end - stretch.begin)
            continue
        for t in range(stretch.begin, stretch.end):
            begins = start[t] + offsets[striped.ball(t - stretch.begin) if several else 0]
            count = stitches[t]
            middle = (begins + half) % length
            # Most passes lie whole in the colour of the pass before.
            if low <= middle and middle + (count - 1) * loop < high:
                rows.append(inks[number][:count])
                continue
            parts = stitches_of(begins, count, loop)
            number = parts[-1][0]
            low, high = bounds[number], bounds[number + 1]
            if first[t] > last[t]:
                parts.reverse()
            rows.append(b"".join([inks[k][:n] for k, n in parts]))
    return rows


def _levels(path: YarnPath) -> tuple[list[int], int]:
    """Rows on each needle without what lies above the picture; and the rows above it."""
    below, above = _outside(path)
    levels = [len(below)] * path.needles
    for runs in path.runs.values():
        for place, run in runs:
            levels[place] = max(levels[place], len(below) + run.high)
    return levels, len(above)


def _outside(path: YarnPath) -> tuple[list[int], list[int]]:
    """The passes that add height below and above the picture; a facing lies behind and adds none."""
    below: list[int] = []
    above: list[int] = []
    picture = False
    for stretch in path.stretches:
        if not stretch.outside:
            picture = True
        elif _FACING not in stretch.block:
            (above if picture else below).extend(range(stretch.begin, stretch.end))
    return below, above


# Bytes for colours, arrays of numbers for places: both are cut and put together in the same way, hence Any.
Row = Any
Plain = Mapping[str, Row]


def _fill(
    path: YarnPath, columns: list[Row], plain: Plain, striped: str, rows: Sequence[Row], blank: Callable[[int], Row]
) -> None:
    """Every stitch into its column, from below."""
    below, above = _outside(path)
    yarns = {t: stretch.yarn for stretch in path.stretches if stretch.outside for t in range(stretch.begin, stretch.end)}
    for level, t in enumerate(below):
        _across(path, t, [level] * path.needles, columns, rows[t] if yarns[t] == striped else plain[yarns[t]])
    floor, _ = _levels(path)
    for more, t in enumerate(above):
        _across(path, t, [level + more for level in floor], columns, rows[t] if yarns[t] == striped else plain[yarns[t]])
    for stretch in path.stretches:
        runs = path.runs.get(stretch.block, ())
        if stretch.yarn != striped:
            ink = plain[stretch.yarn]
            for place, run in runs:
                low = len(below) + run.low
                columns[place][low : low + run.rows] = ink[: run.rows]
        elif runs:
            _block(path, stretch, columns, rows, blank, len(below))


def _across(path: YarnPath, t: int, levels: Sequence[int], columns: list[Row], row: Row) -> None:
    """One pass over every needle, each at its own level."""
    places = sorted(path.places(t))
    for i, place in enumerate(places):
        columns[place][levels[place]] = row[i]


def _block(
    path: YarnPath, stretch: Stretch, columns: list[Row], rows: Sequence[Row], blank: Callable[[int], Row], below: int
) -> None:
    """The passes of one block one below the other; then each needle's stitches as one slice of them."""
    runs, begin, end = path.runs[stretch.block], stretch.begin, stretch.end
    left = min(place for place, _ in runs)
    width = max(place for place, _ in runs) - left + 1
    buffer = blank(width * (end - begin))
    first, last, gaps = path.first, path.last, path.gaps
    at = -left
    for t in range(begin, end):
        if t in gaps:
            for place, one in zip(gaps[t], rows[t], strict=True):
                buffer[at + place] = one
        else:
            a, b = first[t], last[t]
            if a > b:
                a, b = b, a
            buffer[at + a : at + b + 1] = rows[t]
        at += width
    for place, run in runs:
        low = below + run.low
        since = (run.first_pass - 1 - begin) * width + place - left
        columns[place][low : low + run.rows] = buffer[since : since + (run.rows - 1) * width + 1 : width]
