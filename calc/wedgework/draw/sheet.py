"""The sheet that the finished piece is drawn on: margins, scale, where columns and rows lie. Printed millimetres."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from wedgework.draw.svg import number
from wedgework.layout.sizes import Sizes

__all__ = ["Sheet", "sheet_for"]

# A drawing fits on one sheet of paper beside its caption.
WIDEST, HIGHEST = 180, 220
LEFT, RIGHT, TOP, RULER = 14, 8, 8, 7
TEXT = Fraction(3)
"""Size of all text."""


@dataclass(frozen=True, slots=True)
class Sheet:
    width: Fraction
    height: Fraction
    scale: Fraction
    """Printed millimetres for a millimetre of the piece, at most 1."""
    stitch: Fraction
    """Printed width of a stitch."""
    row: Fraction
    left: Fraction
    """Left edge of the piece."""
    foot: Fraction
    """Lower edge of the picture, where row 0 begins; base rows lie below it."""
    bottom: Fraction
    """Lower edge of the piece."""
    top: Fraction
    """Upper edge of the piece."""
    needles: int
    below: int
    """Base rows below the picture."""

    def x(self, column: Fraction | int) -> Fraction:
        """The left edge of a column."""
        return self.left + column * self.stitch

    def y(self, row: Fraction | int) -> Fraction:
        """The lower edge of a row of the picture."""
        return self.foot - row * self.row

    def stair(self, corners: Sequence[tuple[int, int]]) -> str:
        """A closed line for a path: only the column or the row changes from each corner to the next."""
        (column, row), *others = corners
        parts = [f"M{number(self.x(column))} {number(self.y(row))}"]
        for c, r in others:
            parts.append(f"H{number(self.x(c))}" if r == row else f"V{number(self.y(r))}")
            column, row = c, r
        return "".join(parts) + "Z"

    @property
    def right(self) -> Fraction:
        return self.x(self.needles)


def sheet_for(sizes: Sizes, highest: int, below: int, above: int, legend_lines: int, *, ruler_above: bool) -> Sheet:
    """The largest scale, at most true size, at which the piece with everything round it fits."""
    wide, high = sizes.needles * sizes.stitch_mm, (highest + below + above) * sizes.row_mm
    head = TOP + (RULER if ruler_above else 0)
    tail = RULER + 9 + 6 * legend_lines
    scale = min(Fraction(1), (WIDEST - LEFT - RIGHT) / wide, (HIGHEST - head - tail) / high)
    bottom = head + high * scale
    return Sheet(
        # never narrower than the legend needs
        width=max(LEFT + wide * scale + RIGHT, Fraction(100)),
        height=bottom + tail,
        scale=scale,
        stitch=sizes.stitch_mm * scale,
        row=sizes.row_mm * scale,
        left=Fraction(LEFT),
        foot=bottom - below * sizes.row_mm * scale,
        bottom=bottom,
        top=Fraction(head),
        needles=sizes.needles,
        below=below,
    )
