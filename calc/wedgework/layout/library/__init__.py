"""The named layouts, one file each, listed here and nowhere else.

A layout is declared as a value: its name (part of files and links, never changed), its parameters with their
ranges and defaults, and a function that draws it as shapes. Its title, its sentence on how it knits and the
labels of its parameters are sentences of the say room, ``layout.<name>.title`` and so on.

Shapes are in fractions of the panel, so a layout fits any size. Where something has to be so many needles or turns
(a border that leans by one needle a turn, a point of one needle), the function asks its `Values` for the measure.

    values.lean(height)        # how far across a border of this height leans
    values.columns(3)          # left and right of three columns, between needles
"""

from __future__ import annotations

from wedgework.layout.library import (
    chevron_bands,
    diamond_in_corners,
    diamond_lattice,
    flying_triangles,
    half_diamonds,
    half_square_triangles,
    hexagons,
    hourglass,
    kites,
    nested_diamonds,
    parallelogram_braid,
    pinwheel,
    ridge_line,
    sawtooth,
    single_diamond,
    steps,
    sunrise,
    trapezoid_bands,
    zigzag_bands,
)
from wedgework.layout.library.declared import LayoutDeclaration, Parameter

__all__ = ["LAYOUTS", "LayoutDeclaration", "Parameter", "named"]

LAYOUTS: tuple[LayoutDeclaration, ...] = (
    single_diamond.LAYOUT,
    diamond_in_corners.LAYOUT,
    nested_diamonds.LAYOUT,
    diamond_lattice.LAYOUT,
    half_diamonds.LAYOUT,
    kites.LAYOUT,
    hourglass.LAYOUT,
    flying_triangles.LAYOUT,
    half_square_triangles.LAYOUT,
    pinwheel.LAYOUT,
    hexagons.LAYOUT,
    chevron_bands.LAYOUT,
    zigzag_bands.LAYOUT,
    sawtooth.LAYOUT,
    steps.LAYOUT,
    trapezoid_bands.LAYOUT,
    parallelogram_braid.LAYOUT,
    ridge_line.LAYOUT,
    sunrise.LAYOUT,
)


def named(name: str) -> LayoutDeclaration | None:
    """The layout of that name, if there is one."""
    return next((layout for layout in LAYOUTS if layout.name == name), None)
