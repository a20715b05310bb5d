"""From shapes in fractions of a panel to cells of one needle x one turn, at the true size of the piece.

    sizes = resolve(design)              # needles, rows, millimetres of a stitch and a row
    picture = grid_of(design, sizes)     # which shape each needle knits in each turn
    shaping_of(picture, sizes.rows)      # rows of each needle, where the piece is no rectangle

A turn is two rows: an edge can move at one side only every second row, so a turn is the smallest step of a
picture. The rule for a cell on a border: a cell whose centre lies on a border belongs to the later shape.
Named layouts live in ``library/``, one file each; a layout is nothing but shapes made from parameters.
"""

from __future__ import annotations

from wedgework.layout.checks import drawn_layout, layout_problems
from wedgework.layout.picture import grid_of
from wedgework.layout.shaped import Shaping, is_shaped, shaping_of, shaping_problems
from wedgework.layout.sizes import Sizes, resolve, size_problems

__all__ = [
    "Shaping",
    "Sizes",
    "drawn_layout",
    "grid_of",
    "is_shaped",
    "layout_problems",
    "resolve",
    "shaping_of",
    "shaping_problems",
    "size_problems",
]
