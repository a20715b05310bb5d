"""Pictures that become drawings: what was drawn comes back cell by cell, and a photograph as near as its colours allow."""

from __future__ import annotations

import base64
import json
import struct
import zlib
from collections.abc import Sequence
from typing import Any

import pytest

from boarding import Sheet, opened
from wedgework.formats import read_design
from wedgework.formats.design import Design
from wedgework.layout import grid_of, resolve

DESIGN = {
    "format": "wedgework-design",
    "version": 1,
    "title": "A picture",
    "bed": {"pitch_mm": 9, "needles": 110},
    "gauge": {"stitches_per_10cm": 14, "rows_per_10cm": 19},
    "panel": {"width": {"needles": 50}, "height": {"rows": 84}},
    "yarns": [
        {"id": "a", "name": "Chalk", "colour": "#efe8d8"},
        {"id": "b", "name": "Slate", "colour": "#3f5566"},
        {"id": "c", "name": "Rust", "colour": "#b4533f"},
    ],
    "layout": {
        "background": "a",
        "shapes": [
            {"yarn": "b", "points": [[0.1, 0.1], [0.9, 0.25], [0.75, 0.7], [0.2, 0.6]]},
            {"yarn": "c", "points": [[0.3, 0.3], [0.6, 0.4], [0.35, 0.95]]},
            {"yarn": "a", "points": [[0.36, 0.45], [0.44, 0.5], [0.38, 0.6]]},
            {"yarn": "c", "points": [[0.8, 0.8], [1, 0.8], [1, 1]]},
        ],
    },
}


def colours(design: Design) -> list[list[str]]:
    """The colour of each cell, the top turn first."""
    of = {yarn.id: yarn.colour for yarn in design.yarns}
    turns = grid_of(design, resolve(design)).turns
    return [[of[run.yarn] for run in turn for _ in range(run.first, run.last + 1)] for turn in reversed(turns)]


def png(cells: Sequence[Sequence[str]], wide: int, high: int) -> bytes:
    """A PNG file of so many pixels a cell, by the format's own specification: one byte a colour, no filter."""
    lines = b""
    for row in cells:
        line = b"".join(bytes.fromhex(colour[1:]) * wide for colour in row)
        lines += (b"\0" + line) * high

    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    head = struct.pack(">IIBBBBB", wide * len(cells[0]), high * len(cells), 8, 2, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(lines)) + chunk(b"IEND", b"")


def bring(sheet: Sheet, name: str, kind: str, data: bytes, **numbers: int) -> Design:
    page = sheet.page
    sheet.open(json.dumps({**DESIGN, "layout": {"background": "a"}}))
    sheet.button("Begin from ...")
    page.locator(".lb-picture input[type=file]").set_input_files({"name": name, "mimeType": kind, "buffer": data})
    for key, value in numbers.items():
        page.fill(f".lb-picture [name={key}]", str(value))
    page.get_by_role("button", name="Draw it from the picture").click()
    page.wait_for_function("() => !document.querySelector('.lb-dialog').open", timeout=60_000)
    return read_design(json.dumps(sheet.saved()))


@pytest.mark.parametrize(
    ("wide", "high"), [pytest.param(1, 1, marks=pytest.mark.long), (6, 5), pytest.param(13, 9, marks=pytest.mark.long)]
)
def test_a_drawn_picture_gives_the_grid_that_it_was_made_from(visitor: Any, served: str, wide: int, high: int) -> None:
    wanted = colours(read_design(json.dumps(DESIGN)))
    with visitor() as one:
        sheet = opened(one.open(f"{served}board/"))
        made = bring(sheet, "p.png", "image/png", png(wanted, wide, high), colours=3, least=0, straighten=0)
    assert colours(made) == wanted
    assert len(made.yarns) == 3


def test_a_photograph_is_cleaned_and_its_borders_are_straight(visitor: Any, served: str) -> None:
    """The same picture through a JPEG of low quality, with a few stray dots."""
    wanted = colours(read_design(json.dumps(DESIGN)))
    strewn = [list(row) for row in wanted]
    for x, t in ((3, 4), (20, 39), (44, 20), (46, 3), (7, 25)):
        strewn[t][x] = "#000000"
    with visitor() as one:
        page = one.open(f"{served}board/")
        sheet = opened(page)
        url = "data:image/png;base64," + base64.b64encode(png(strewn, 8, 7)).decode()
        jpeg = page.evaluate(
            """async (url) => {
                const picture = new Image();
                picture.src = url;
                await picture.decode();
                const canvas = document.createElement('canvas');
                [canvas.width, canvas.height] = [picture.width, picture.height];
                canvas.getContext('2d').drawImage(picture, 0, 0);
                return canvas.toDataURL('image/jpeg', 0.6);
            }""",
            url,
        )
        data = base64.b64decode(jpeg.partition(",")[2])
        made = bring(sheet, "p.jpg", "image/jpeg", data, colours=4, least=24, straighten=1)
    got = colours(made)
    near = {colour: nearest(colour) for row in got for colour in row}
    differ = sum(near[a] != b for one_row, other in zip(got, wanted, strict=True) for a, b in zip(one_row, other, strict=True))
    assert differ <= 0.03 * 50 * 42, differ
    corners = sum(len(shape.points) for shape in made.layout.shapes)  # type: ignore[union-attr]
    assert corners <= 40, "straight borders have few corners"


def nearest(colour: str) -> str:
    def away(other: str) -> int:
        pairs = zip(bytes.fromhex(colour[1:]), bytes.fromhex(other[1:]), strict=True)
        return sum((a - b) ** 2 for a, b in pairs)

    return min((yarn["colour"] for yarn in DESIGN["yarns"]), key=away)  # type: ignore[attr-defined, no-any-return]


def test_what_is_no_picture_is_said(visitor: Any, served: str) -> None:
    with visitor() as one:
        page = one.open(f"{served}board/")
        opened(page).button("Begin from ...")
        page.locator(".lb-picture input[type=file]").set_input_files(
            {"name": "p.png", "mimeType": "image/png", "buffer": b"no picture"}
        )
        page.get_by_role("button", name="Draw it from the picture").click()
        page.wait_for_selector("text=could not be read as a picture")
