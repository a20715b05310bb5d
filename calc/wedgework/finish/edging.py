"""A narrow strip knitted on along the edges: its rows, where it is joined, how it goes round corners."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import lcm

from wedgework.angles import nearest_pi
from wedgework.exact import nearest, nearest_with
from wedgework.finish.end_hems import END_HEMS, end_hem
from wedgework.formats.design import Design
from wedgework.layout.sizes import Sizes
from wedgework.pickups import PickUp, pick_up

__all__ = ["Run", "Strip", "corner_rows", "edging_mm", "run_along", "strip_of"]


@dataclass(frozen=True, slots=True)
class Run:
    """The strip along one edge of the piece."""

    key: str
    """``end`` along stitches, ``side`` along rows."""
    places: int
    """Stitches or rows of the piece."""
    length_mm: Fraction
    exact: Fraction
    """Rows of edging before rounding."""
    rows: int
    hung: PickUp
    """Which places are joined, from 1."""

    @property
    def joins(self) -> int:
        return self.hung.stitches

    @property
    def off_percent(self) -> Fraction:
        return (self.rows / self.exact - 1) * 100

    def off_mm(self, row_mm: Fraction) -> Fraction:
        return (self.rows - self.exact) * row_mm


@dataclass(frozen=True, slots=True)
class Strip:
    round: bool
    runs: tuple[Run, ...]
    stitches: int
    """Across."""
    width_mm: Fraction
    row_mm: Fraction
    join_every: int
    step: int
    """Rows come in multiples of it: whole repeats, and whole joins."""
    repeat: int
    corner: str
    corner_rows: int
    """More at each corner."""

    @property
    def edges(self) -> tuple[tuple[str, Run], ...]:
        """Each edge once, in the order in which the edging goes round."""
        if not self.round:
            return ((self.runs[0].key, self.runs[0]),)
        end, side = self.runs
        return (("bottom", end), ("right", side), ("top", end), ("left", side))

    @property
    def rows(self) -> int:
        return sum(run.rows for _, run in self.edges) + (4 * self.corner_rows if self.round else 0)

    @property
    def strips(self) -> int:
        """How many like this one the piece gets: one that goes all round, or one along each of two edges."""
        return 1 if self.round else 2

    @property
    def knitted(self) -> int:
        """Stitches of all of them."""
        return self.strips * self.rows * self.stitches

    @property
    def joins(self) -> int:
        """Along the edges; those into the corners come on top."""
        return sum(run.joins for _, run in self.edges)


def run_along(key: str, places: int, place_mm: Fraction, row_mm: Fraction, step: int, join: int) -> Run:
    """Along one edge of so many stitches or rows: whole repeats, and a join every so many rows of them."""
    exact = places * place_mm / row_mm
    rows = max(step, nearest_with(exact, step))
    return Run(key, places, places * place_mm, exact, rows, pick_up(places, rows // join))


def corner_rows(corner: str, rows_wide: Fraction, step: int) -> int:
    """Rows more at a corner, in whole repeats; `rows_wide`: so many rows are as long as the edging is wide.

    Its outer edge goes round a quarter of a circle, pi / 2 widths, or along a square, 2 widths.
    """
    if corner == "none":
        return 0
    if corner == "square":
        return step * nearest(2 * rows_wide / step)
    return step * nearest_pi(rows_wide / (2 * step))


def strip_of(design: Design, sizes: Sizes, rows: int) -> Strip | None:
    """The edging that `design` wants, where the piece is `rows` rows high without end hems; None for none.

    Along sides and along ends there are two alike, and this is one of them. Round panels it goes when they are joined.
    """
    wanted = design.edging
    if wanted is None:
        return None
    step, join = lcm(wanted.repeat, wanted.join_every), wanted.join_every
    high = rows + sum(hem.outside for end in END_HEMS if (hem := end_hem(design, sizes, end)) is not None)
    runs = []
    if wanted.along in ("all", "ends"):
        runs.append(run_along("end", sizes.across, sizes.stitch_mm, sizes.row_mm, step, join))
    if wanted.along in ("all", "sides"):
        runs.append(run_along("side", high, sizes.row_mm, sizes.row_mm, step, join))
    width_mm, round_ = wanted.stitches * sizes.stitch_mm, wanted.along == "all"
    corner = corner_rows(wanted.corner, width_mm / sizes.row_mm, step) if round_ else 0
    kind = wanted.corner if round_ else "none"
    return Strip(round_, tuple(runs), wanted.stitches, width_mm, sizes.row_mm, join, step, wanted.repeat, kind, corner)


def edging_mm(design: Design, sizes: Sizes) -> tuple[Fraction, Fraction]:
    """What the edging adds to the width and to the height of the piece, both edges together."""
    if design.edging is None:
        return Fraction(0), Fraction(0)
    both = 2 * design.edging.stitches * sizes.stitch_mm
    return (
        both if design.edging.along in ("all", "sides") else Fraction(0),
        both if design.edging.along in ("all", "ends") else Fraction(0),
    )
