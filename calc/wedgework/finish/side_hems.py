"""Hems at the sides: hung along the finished edges when the piece is off the machine, with lapped corners."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from wedgework.exact import nearest
from wedgework.finish.edging import edging_mm
from wedgework.finish.end_hems import end_hem, hem_rows
from wedgework.formats.design import Design
from wedgework.hems import corner_stitches, facing_rows
from wedgework.layout.sizes import Sizes
from wedgework.pickups import PickUp, Section, pick_up, sections

__all__ = ["EDGE_STITCHES", "SideHem", "finished_width_mm", "side_hem"]

EDGE_STITCHES = 1
"""A whole edge stitch goes on the needles with the hem, at each side. Common practice."""
SEAM_STITCHES = 1
"""Where a section is sewn to the next one, so many stitches of each go into the seam. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class SideHem:
    """One of two equal hems. The stitches over an end hem go through both of its layers (a lapped corner)."""

    hung: PickUp
    """Along the rows of the piece between its end hems."""
    over_bottom: int
    """Stitches hung over the depth of the hem at the bottom; 0 where there is none."""
    over_top: int
    outside: int
    facing: int
    picot: bool
    sections: tuple[Section, ...]
    """As the bed takes them; one where it takes all."""

    @property
    def stitches(self) -> int:
        return self.over_bottom + self.hung.stitches + self.over_top

    @property
    def fold(self) -> int:
        return 0 if self.picot else 1

    @property
    def knitted(self) -> int:
        """Stitches knitted, in all sections; the plan of the piece does not have them."""
        across = sum(section.needles for section in self.sections)
        return across * (self.outside + self.fold + self.facing)


def side_hem(design: Design, sizes: Sizes, rows: int) -> SideHem | None:
    """The hem that `design` wants at each side, hung over `rows` rows and the end hems; None for none."""
    wanted = design.hems.sides
    if wanted.kind == "none" or wanted.depth is None:
        return None
    stitches_per, rows_per = sizes.stitches_per_10cm, sizes.rows_per_10cm
    outside = hem_rows(wanted.depth, rows_per)
    hung = pick_up(rows, max(1, nearest(rows * stitches_per / rows_per)))
    bottom, top = (end_hem(design, sizes, end) for end in ("bottom", "top"))
    over_bottom, over_top = (corner_stitches(hem.outside, stitches_per, rows_per) if hem else 0 for hem in (bottom, top))
    parts = sections(over_bottom + hung.stitches + over_top, design.bed.needles, SEAM_STITCHES)
    return SideHem(hung, over_bottom, over_top, outside, facing_rows(outside, "equal"), wanted.kind == "picot", parts)


def finished_width_mm(design: Design, sizes: Sizes) -> Fraction:
    """Of the whole piece, panels joined, with the side hems on: each takes an edge stitch from it and adds its depth. With the
    edging, which adds its width."""
    across = sizes.across * sizes.stitch_mm + edging_mm(design, sizes)[0]
    wanted = design.hems.sides
    if wanted.kind == "none" or wanted.depth is None:
        return across
    outside = hem_rows(wanted.depth, sizes.rows_per_10cm)
    return across - 2 * EDGE_STITCHES * sizes.stitch_mm + 2 * outside * sizes.row_mm
