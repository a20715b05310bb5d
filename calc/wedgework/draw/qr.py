"""The address of a page as a QR code (ISO/IEC 18004), black on white whatever is round it, for the wall of a class room."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import groupby

import segno

from wedgework.draw.svg import document, path, rect
from wedgework.say import say

__all__ = ["MOST_BYTES", "QUIET", "WIDE_MM", "qr_svg"]

MOST_BYTES = 600
"""A code of more has over 85 modules a side: printed on a sheet, a telephone no longer reads it from some metres away
(common practice, no source)."""
QUIET = 4
"""Modules of white on each side (ISO/IEC 18004, quiet zone)."""
WIDE_MM = 170
"""With its quiet zone, as wide as a sheet of A4 or Letter between its margins."""


def qr_svg(address: str, title: str, *, prefix: str) -> str:
    """The code of `address` (ASCII, at most `MOST_BYTES`) as SVG text, `WIDE_MM` x `WIDE_MM`; `title` says what it opens.

    The smallest version at error correction level L, then the highest level that fits into the same version: so few modules
    as can be, and every spare one corrects. Raises ValueError for an address that is longer or no ASCII.
    """
    if len(address) > MOST_BYTES or not address.isascii():
        raise ValueError("an address of that kind has no code that can be scanned from a wall")
    code = segno.make_qr(address, error="l", mode="byte", boost_error=True)
    modules = len(code.matrix)
    across = modules + 2 * QUIET
    return document(
        WIDE_MM,
        WIDE_MM,
        say("draw.qr-title", title=title),
        say("draw.qr-desc", modules=modules, characters=len(address)),
        (
            rect(0, 0, across, across, fill="#fff"),
            path("".join(_bars(code.matrix)), fill="#000", shape_rendering="crispEdges"),
        ),
        prefix=prefix,
        kind="qr",
        units=(across, across),
    )


def _bars(matrix: Iterable[Iterable[int]]) -> Iterator[str]:
    """Each run of dark modules in a row as one rectangle."""
    for y, row in enumerate(matrix, QUIET):
        x = QUIET
        for dark, run in groupby(row):
            length = sum(1 for _ in run)
            if dark:
                yield f"M{x} {y}h{length}v1h-{length}z"
            x += length
