"""The named layouts, one file each, listed here and nowhere else.

A layout is declared as a value: its name (part of files and links, never changed), its parameters with their
ranges and defaults, and a function that draws it as shapes. Its title, its sentence on how it knits and the
labels of its parameters are sentences of the say room, ``layout.<name>.title`` and so on.
"""

from __future__ import annotations

from wedgework.layout.library import chevron_bands, diamond_in_corners, nested_diamonds
from wedgework.layout.library.declared import LayoutDeclaration, Parameter

__all__ = ["LAYOUTS", "LayoutDeclaration", "Parameter", "named"]

LAYOUTS: tuple[LayoutDeclaration, ...] = (
    diamond_in_corners.LAYOUT,
    nested_diamonds.LAYOUT,
    chevron_bands.LAYOUT,
)


def named(name: str) -> LayoutDeclaration | None:
    """The layout of that name, if there is one."""
    return next((layout for layout in LAYOUTS if layout.name == name), None)
