"""Needles, rows and millimetres of a design: gauge and wanted size, fitted to the bed."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from wedgework.bed import limits, name, panel_needles, place, range_name
from wedgework.exact import nearest
from wedgework.formats.design import Design, Gauge
from wedgework.gauge import measure
from wedgework.problems import Problem, Refused
from wedgework.say import say

__all__ = ["FEWEST_NEEDLES", "FEWEST_ROWS", "Sizes", "figures", "resolve", "size_problems"]

FEWEST_NEEDLES = 2
FEWEST_ROWS = 2


@dataclass(frozen=True, slots=True)
class Sizes:
    """The panel in needles and rows, without base rows and hems."""

    needles: int
    rows: int
    stitches_per_10cm: Fraction
    rows_per_10cm: Fraction
    first_needle: int
    last_needle: int

    @property
    def stitch_mm(self) -> Fraction:
        return 100 / self.stitches_per_10cm

    @property
    def row_mm(self) -> Fraction:
        return 100 / self.rows_per_10cm

    @property
    def width_mm(self) -> Fraction:
        return self.needles * self.stitch_mm

    @property
    def height_mm(self) -> Fraction:
        return self.rows * self.row_mm


def figures(gauge: Gauge) -> tuple[Fraction, Fraction]:
    """Stitches and rows per 10 cm: as typed, or from the swatch, treated as the piece will be if it was measured so."""
    if gauge.swatch is not None:
        state = gauge.swatch.washed or gauge.swatch.unwashed
        if state is None:
            raise ValueError("a swatch without a measured state")
        found = measure(gauge.swatch.stitches, state.widths_mm, gauge.swatch.rows, state.heights_mm)
        return found.stitches_per_10cm, found.rows_per_10cm
    if gauge.stitches_per_10cm is None or gauge.rows_per_10cm is None:
        raise ValueError("a gauge without figures")
    return gauge.stitches_per_10cm, gauge.rows_per_10cm


def _counts(design: Design) -> tuple[Fraction, Fraction, int, int]:
    stitches, rows = figures(design.gauge)
    width, height = design.panel.width, design.panel.height
    across = width.count if width.mm is None else nearest(width.mm * stitches / 100)
    # A wanted height becomes whole turns (two rows), since every edge of the picture moves by turns.
    up = height.count if height.mm is None else 2 * nearest(height.mm * rows / 200)
    if across is None or up is None:
        raise ValueError("an extent without a figure")
    return stitches, rows, across, up


def size_problems(design: Design) -> list[Problem]:
    """What is wrong with the size: too wide for the bed, shifted off it, nothing left of it."""
    _, _, needles, rows = _counts(design)
    bed, options = design.bed, design.options
    found: list[Problem] = []
    if needles > bed.needles:
        found.append(
            Problem(
                "panel.width",
                "layout.too-wide",
                say("layout.too-wide", needles=needles, bed=bed.needles),
                say("layout.too-wide.way-out", bed=bed.needles),
            )
        )
    elif needles >= FEWEST_NEEDLES:
        first, last = panel_needles(needles, options.shift_needles, options.odd_needle)
        low, high = limits(bed.needles)
        room_left, room_right = place(first) - place(low), place(high) - place(last)
        if room_left < 0 or room_right < 0:
            found.append(
                Problem(
                    "options.shift_needles",
                    "layout.off-the-bed",
                    say("layout.off-the-bed", needles=range_name(first, last), first=name(low), last=name(high)),
                    say("layout.off-the-bed.way-out"),
                )
            )
    if needles < FEWEST_NEEDLES:
        found.append(
            Problem(
                "panel.width", "layout.too-narrow", say("layout.too-narrow", needles=needles), say("layout.too-small.way-out")
            )
        )
    if rows < FEWEST_ROWS:
        found.append(Problem("panel.height", "layout.too-low", say("layout.too-low", rows=rows), say("layout.too-small.way-out")))
    return found


def resolve(design: Design) -> Sizes:
    """The sizes of `design`. Raises Refused where the piece does not fit the bed."""
    found = size_problems(design)
    if found:
        raise Refused(found)
    stitches, rows_per, needles, rows = _counts(design)
    first, last = panel_needles(needles, design.options.shift_needles, design.options.odd_needle)
    return Sizes(needles, rows, stitches, rows_per, first, last)
