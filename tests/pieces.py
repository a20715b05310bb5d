"""Pieces that many tests knit: short ways to a design, and a few named cases."""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Sequence
from dataclasses import replace
from fractions import Fraction

from wedgework.formats.design import (
    Bed,
    Design,
    DrawnLayout,
    Extent,
    Gauge,
    Hem,
    Hems,
    NamedLayout,
    Options,
    Panel,
    Shape,
    Yarn,
)
from wedgework.layout.grid import Cells, Grid
from wedgework.layout.picture import paint

YARNS = tuple(
    Yarn(id_, name, colour)
    for id_, name, colour in (("a", "Chalk", "#f2efe6"), ("b", "Slate", "#3f5566"), ("c", "Rust", "#a0522d"))
)


def points(*pairs: tuple[str | int, str | int]) -> tuple[tuple[Fraction, Fraction], ...]:
    """Corners as they stand in a file: ``points(("0.1", "0.5"), ...)``."""
    return tuple((Fraction(x), Fraction(y)) for x, y in pairs)


def drawn(background: str, *shapes: tuple[str, Sequence[tuple[str | int, str | int]]]) -> DrawnLayout:
    return DrawnLayout(background, tuple(Shape(yarn, points(*corners)) for yarn, corners in shapes))


def piece(
    layout: DrawnLayout | NamedLayout,
    needles: int,
    rows: int,
    *,
    pitch: Fraction = Fraction(9),
    bed: int = 200,
    gauge: tuple[int, int] = (14, 19),
    **options: object,
) -> Design:
    """A design of so many needles and rows in the yarns of `YARNS`."""
    return Design(
        title="Test piece",
        bed=Bed(pitch, bed),
        gauge=Gauge(Fraction(gauge[0]), Fraction(gauge[1])),
        panel=Panel(Extent(count=needles), Extent(count=rows)),
        yarns=YARNS,
        layout=layout,
        options=Options(**options),  # type: ignore[arg-type]
    )


def diamond(needles: int = 48, rows: int = 96, **more: object) -> Design:
    """The worked case: a diamond between four corner triangles, one needle a step."""
    return piece(NamedLayout("diamond-in-corners"), needles, rows, **more)  # type: ignore[arg-type]


def lopsided(**more: object) -> Design:
    """A harbour: a sail far to one side, a hull under it, a flag; nothing in it is its own mirror image."""
    layout = drawn(
        "a",
        ("b", [("0.05", "0.05"), ("0.75", "0.05"), ("0.95", "0.35"), ("0.12", "0.24")]),
        ("c", [("0.18", "0.3"), ("0.62", "0.42"), ("0.2", "0.9")]),
        ("b", [("0.66", "0.6"), ("0.9", "0.72"), ("0.7", "0.86")]),
    )
    return piece(layout, 61, 118, pitch=Fraction(45, 10), gauge=(28, 40), **more)  # type: ignore[arg-type]


def hemmed(design: Design, tension: int | None = 7, rows: int = 4, **kinds: str) -> Design:
    """The design with hems of so many rows, such as ``bottom="picot"``; its yarns knitted at `tension`."""
    depth = Extent(count=rows)
    hems = Hems(**{end: Hem(kind, depth) for end, kind in kinds.items()})  # type: ignore[arg-type]
    dial = None if tension is None else Fraction(tension)
    return replace(design, hems=hems, yarns=tuple(replace(yarn, tension=dial) for yarn in design.yarns))


def mirrored(layout: DrawnLayout) -> DrawnLayout:
    """The same picture, left and right exchanged."""
    return DrawnLayout(
        layout.background,
        tuple(
            Shape(
                shape.yarn,
                tuple((1 - x, y) for x, y in shape.points),
                tuple(tuple((1 - x, y) for x, y in hole) for hole in shape.holes),
            )
            for shape in layout.shapes
        ),
    )


def letters(layout: DrawnLayout, needles: int, rows: int) -> list[str]:
    """The grid as letters of yarns, one for each needle and turn, the top turn first."""
    return letters_of(paint(layout, needles, rows))


def letters_of(grid: Grid) -> list[str]:
    """A grid as letters of yarns, the top turn first."""
    return ["".join(c.yarn * (c.last - c.first + 1) for c in turn) for turn in reversed(grid.turns)]


def grid_from(*lines: str) -> Grid:
    """A picture drawn with letters, the top turn first: one letter is a cell of one needle and two rows, and names its yarn.

    Capitals and small letters are different shapes of one yarn.
    """
    turns = []
    for line in reversed(lines):
        cells = []
        first = 0
        for shape, run in itertools.groupby(line):
            last = first + len(list(run)) - 1
            cells.append(Cells(first, last, ord(shape), shape.lower()))
            first = last + 1
        turns.append(tuple(cells))
    return Grid(len(lines[0]), tuple(turns))


def design_from(*lines: str, **options: object) -> Design:
    """The same picture as a design: each run of letters is a rectangle of its own, so that the grid comes back as drawn."""
    needles, rows = len(lines[0]), 2 * len(lines)
    shapes = tuple(
        Shape(
            cells.yarn,
            tuple(
                (Fraction(x, needles), Fraction(y, len(lines)))
                for x, y in ((cells.first, t), (cells.last + 1, t), (cells.last + 1, t + 1), (cells.first, t + 1))
            ),
        )
        for t, turn in enumerate(grid_from(*lines).turns)
        for cells in turn
    )
    return piece(DrawnLayout("a", shapes), needles, rows, **options)  # type: ignore[arg-type]


def picture(columns: Iterable[Iterable[object]]) -> list[str]:
    """Columns of replayed runs as lines of yarn letters, the top row first: what a person would see."""
    grown = ["".join(run.yarn * run.rows for run in column) for column in columns]  # type: ignore[attr-defined]
    height = max(map(len, grown))
    return ["".join(column[row] if row < len(column) else "." for column in grown) for row in reversed(range(height))]
