"""Hems at the bottom and at the top, which are knitted with the piece."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from wedgework.exact import nearest
from wedgework.formats.design import Design, Extent, Machine
from wedgework.hems import Picot, facing_rows, picot
from wedgework.layout.sizes import Sizes

__all__ = ["END_HEMS", "FEWEST_STITCHES", "Dial", "End", "EndHem", "dial_of", "end_hem", "hem_rows"]

End = Literal["bottom", "top"]
END_HEMS: tuple[End, ...] = ("bottom", "top")

FEWEST_ROWS = 2
"""A hem of a given depth has at least so many rows outside. Our own choice."""
FEWEST_STITCHES = 3
"""A picot fold moves a stitch that is not at an end."""
# Numbers on the dial: the facing 1 to 2 tighter, the row of a plain fold 2 to 4 looser, the row over both layers of a top hem
# loose. Common practice; two published lessons on hems at a machine knit the facing one number tighter.
TIGHTER = Fraction(1)
FOLD_LOOSER = Fraction(3)
CLOSING_LOOSER = Fraction(2)


@dataclass(frozen=True, slots=True)
class EndHem:
    """In rows and stitches; as many rows of facing as of outside, which is usual where the loops are hung and knitted in."""

    end: End
    outside: int
    facing: int
    stitches: int
    picot: Picot | None
    """None for a plain fold."""

    @property
    def fold(self) -> int:
        """The loose row of a plain fold; a picot fold lies between two rows."""
        return 0 if self.picot else 1

    @property
    def closing(self) -> int:
        """The loose row over both layers at the top; at the bottom the first row of the piece joins them."""
        return 1 if self.end == "top" else 0

    @property
    def behind(self) -> int:
        """Rows that add no height: facing, fold and closing row."""
        return self.facing + self.fold + self.closing

    @property
    def rows(self) -> int:
        return self.outside + self.behind


@dataclass(frozen=True, slots=True)
class Dial:
    """Tension numbers of a hem; the machine's dial ends them."""

    outside: Fraction
    facing: Fraction
    fold: Fraction
    closing: Fraction


def hem_rows(depth: Extent, rows_per_10cm: Fraction) -> int:
    """Rows of the outside: as counted, or those nearest to a depth in mm."""
    if depth.count is not None:
        return depth.count
    if depth.mm is None:
        raise ValueError("a depth without a figure")
    return max(FEWEST_ROWS, nearest(depth.mm * rows_per_10cm / 100))


def end_hem(design: Design, sizes: Sizes, end: End) -> EndHem | None:
    """The hem that `design` wants at one end, over every needle of the piece; None for none."""
    wanted = design.hems.bottom if end == "bottom" else design.hems.top
    if wanted.kind == "none" or wanted.depth is None:
        return None
    outside = hem_rows(wanted.depth, sizes.rows_per_10cm)
    fold = picot(sizes.needles) if wanted.kind == "picot" else None
    return EndHem(end, outside, facing_rows(outside, "equal"), sizes.needles, fold)


def dial_of(tension: Fraction | None, machine: Machine) -> Dial | None:
    """The numbers of a hem in a yarn that is knitted at `tension`; None where no tension is known."""
    if tension is None:
        return None

    def on_the_dial(number: Fraction) -> Fraction:
        return min(max(number, machine.tension_min), machine.tension_max)

    return Dial(
        tension, on_the_dial(tension - TIGHTER), on_the_dial(tension + FOLD_LOOSER), on_the_dial(tension + CLOSING_LOOSER)
    )
