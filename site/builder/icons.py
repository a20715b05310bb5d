"""The icons of the installed app, painted from our own mark when the site is built.

The mark is made of upright rectangles, so that an icon needs no drawing program: each pixel gets as much of a
rectangle's colour as the rectangle covers of it.
"""

from __future__ import annotations

import re
import struct
import zlib
from collections.abc import Iterator
from pathlib import Path

__all__ = ["ICONS", "icon_png", "rectangles", "ship_icons"]

MARK = Path(__file__).resolve().parents[1] / "theme" / "assets" / "mark.svg"
# Name, pixels, and how much of the width the mark's own sheet of 24 takes: masks may cut off a tenth at each side.
ICONS = (
    ("icon-192.png", 192, 0.78),
    ("icon-512.png", 512, 0.78),
    ("icon-mask-512.png", 512, 0.62),
    ("icon-touch-180.png", 180, 0.72),
)
SHEET = 24
_PATH = re.compile(r'<path fill="#([0-9a-f]{6})" d="([^"]+)"')
_PAPER = re.compile(r'<rect [^>]*fill="#([0-9a-f]{6})"')
_COMMAND = re.compile(r"([MHVhvz])([-\d.\s]*)")

Colour = tuple[int, int, int]


def rectangles(svg: str) -> Iterator[tuple[Colour, float, float, float, float]]:
    """Colour, left, top, right, bottom of every rectangle in the mark, in its own units of 24."""
    for colour, path in _PATH.findall(svg):
        for piece in re.findall(r"M[^z]*z", path):
            x, y = 0.0, 0.0
            xs, ys = [], []
            for command, numbers in _COMMAND.findall(piece):
                given = [float(one) for one in re.findall(r"-?\d*\.?\d+", numbers)]
                if command == "M":
                    x, y = given
                elif command in "Hh":
                    x = given[0] + (x if command == "h" else 0)
                elif command in "Vv":
                    y = given[0] + (y if command == "v" else 0)
                xs.append(x)
                ys.append(y)
            yield _rgb(colour), min(xs), min(ys), max(xs), max(ys)


def icon_png(svg: str, pixels: int, share: float) -> bytes:
    """The mark on its paper, `pixels` wide and high, as PNG."""
    found = _PAPER.search(svg)
    if found is None:
        raise ValueError("the mark has no paper")
    rows = [[_rgb(found[1])] * pixels for _ in range(pixels)]
    scale = pixels * share / SHEET
    edge = pixels * (1 - share) / 2
    for colour, *sides in rectangles(svg):
        left, top, right, bottom = (edge + side * scale for side in sides)
        for row in range(int(top), min(int(bottom) + 1, pixels)):
            high = min(bottom, row + 1) - max(top, row)
            for column in range(int(left), min(int(right) + 1, pixels)):
                cover = high * (min(right, column + 1) - max(left, column))
                below = rows[row][column]
                rows[row][column] = tuple(round(b + (c - b) * cover) for b, c in zip(below, colour, strict=True))  # type: ignore[assignment]
    data = b"".join(b"\0" + bytes(part for pixel in row for part in pixel) for row in rows)
    header = struct.pack(">IIBBBBB", pixels, pixels, 8, 2, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + _chunk(b"IHDR", header) + _chunk(b"IDAT", zlib.compress(data, 9)) + _chunk(b"IEND", b"")


def ship_icons(folder: Path) -> None:
    """Every icon into app/ of the built folder."""
    svg = MARK.read_text(encoding="utf-8")
    for name, pixels, share in ICONS:
        (folder / "app" / name).write_bytes(icon_png(svg, pixels, share))


def _chunk(kind: bytes, data: bytes) -> bytes:
    return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))


def _rgb(written: str) -> Colour:
    return int(written[0:2], 16), int(written[2:4], 16), int(written[4:6], 16)
