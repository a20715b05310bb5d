"""A picture of coloured cells as a drawing: letters that someone typed, or a picture file whose colours were counted.

The picture becomes shapes with straight borders (see `wedgework.layout.tracing`); single cells and crumbs may go to a
neighbour before.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import groupby

from wedgework.formats.design import Design, Extent, Panel, Yarn
from wedgework.layout.grid import Cells, Grid
from wedgework.layout.merging import merged
from wedgework.layout.sizes import FEWEST_NEEDLES, resolve
from wedgework.layout.tracing import MOST_STRAIGHTENING, traced
from wedgework.problems import Problem, Refused
from wedgework.say import say

__all__ = ["LETTERS", "MOST_COLOURS", "from_cells", "from_letters"]

LETTERS = "abcdefghijklmnopqrstuvwxyz"
MOST_COLOURS = 16
MOST_LINES = 2_000
_COLOUR = re.compile(r"#[0-9a-f]{6}")
_COLOURS = ("#efe8d8", "#3f5566", "#b4533f", "#7a8f5a", "#c9a24b", "#8a6f9e", "#5f8f8b", "#d08b76")
"""For letters beyond the yarns that are there. Of our own invention."""


def from_letters(design: Design, text: str) -> Design:
    """The design with the picture that `text` draws: a letter for each needle, a line for each turn (two rows), the top first.

    The first letter of the alphabet is the first yarn, and so on. The panel becomes as large as the picture. Raises Refused with
    the line that is wrong.
    """
    lines = [line.strip() for line in text.split("\n")]
    while lines and not lines[-1]:
        lines.pop()
    while lines and not lines[0]:
        lines.pop(0)
    if not lines or len(lines) > MOST_LINES:
        raise Refused([_problem("letters-none", most=MOST_LINES)])
    wide = len(lines[0])
    wrong = [
        _problem("letters-length", line=number, found=len(line), wanted=wide)
        for number, line in enumerate(lines, 1)
        if len(line) != wide
    ]
    strange = sorted({letter for line in lines for letter in line.lower() if letter not in LETTERS[:MOST_COLOURS]})
    if strange:
        wrong.append(_problem("letters-strange", found=" ".join(strange)[:40], last=LETTERS[MOST_COLOURS - 1]))
    if wide < FEWEST_NEEDLES:
        wrong.append(_problem("letters-narrow", found=wide))
    if wrong:
        raise Refused(wrong[:10])
    used = sorted({letter for line in lines for letter in line.lower()})
    yarns = _enough(design.yarns, 1 + LETTERS.index(used[-1]))
    ids = [yarn.id for yarn in yarns]
    grid = _grid([[ids[LETTERS.index(letter)] for letter in line.lower()] for line in reversed(lines)])
    panel = Panel(Extent(count=wide), Extent(count=2 * len(lines)))
    sized = replace(design, panel=panel, yarns=yarns)
    resolve(sized)
    options = replace(design.options, order=(), merge_below=0)
    return replace(sized, layout=traced(grid, 2 * len(lines)), options=options)


def from_cells(design: Design, colours: Sequence[str], cells: str, least: int = 0, straighten: int = 0) -> Design:
    """The design with the picture in `cells`: for each needle and turn of its own panel a letter, the top turn first, line by
    line; the letter's place in the alphabet is that of its colour. Regions of fewer than `least` stitches go to a neighbour;
    borders may move by `straighten` cells. The yarns become those of the colours. Raises Refused.
    """
    sizes = resolve(design)
    lines = cells.split("\n")
    high = (sizes.rows + 1) // 2
    known = LETTERS[: len(colours)]
    fits = len(lines) == high and all(len(line) == sizes.across and not set(line) - set(known) for line in lines)
    coloured = 1 <= len(colours) <= MOST_COLOURS and all(map(_COLOUR.fullmatch, colours))
    if not coloured or not fits or not 0 <= straighten <= MOST_STRAIGHTENING:
        raise Refused([_problem("cells", needles=sizes.across, turns=high, most=MOST_COLOURS)])
    there = _enough(design.yarns, len(colours))
    yarns = tuple(replace(yarn, colour=colour, stripe=()) for yarn, colour in zip(there, colours, strict=False))
    ids = [yarn.id for yarn in yarns]
    grid = _grid([[ids[LETTERS.index(letter)] for letter in line] for line in reversed(lines)])
    if least > 1:
        grid = merged(grid, sizes.rows, least)
    options = replace(design.options, order=(), merge_below=0, base_yarn_bottom=None, base_yarn_top=None)
    return replace(design, yarns=yarns, layout=traced(grid, sizes.rows, straighten), options=options)


def _grid(rows: Sequence[Sequence[str]]) -> Grid:
    """Rows of yarn ids, the lowest first."""
    turns = []
    for row in rows:
        cells: list[Cells] = []
        first = 0
        for yarn, run in groupby(row):
            last = first + len(list(run)) - 1
            cells.append(Cells(first, last, -1, yarn))
            first = last + 1
        turns.append(tuple(cells))
    return Grid(len(rows[0]), tuple(turns))


def _enough(yarns: tuple[Yarn, ...], wanted: int) -> tuple[Yarn, ...]:
    found = list(yarns)
    while len(found) < wanted:
        number = len(found)
        taken = {yarn.id for yarn in found}
        colour = _COLOURS[number % len(_COLOURS)]
        found.append(Yarn(_free_id(taken, number), say("board.yarn-number", number=number + 1), colour))
    return tuple(found)


def _free_id(taken: set[str], number: int) -> str:
    return next(name for k in range(number + 1, number + 100) if (name := f"yarn-{k}") not in taken)


def _problem(key: str, **values: object) -> Problem:
    code = f"board.{key}"
    return Problem("", code, say(code, **values), say(f"{code}.way-out", **values))
