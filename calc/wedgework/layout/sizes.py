"""Needles, rows and millimetres of a design: gauge and wanted size, fitted to the bed."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from wedgework.bed import limits, name, panel_needles, place, range_name
from wedgework.exact import nearest
from wedgework.formats.design import Design, DrawnLayout, Gauge
from wedgework.gauge import measure
from wedgework.problems import Problem, Refused
from wedgework.say import say

__all__ = [
    "FEWEST_NEEDLES",
    "FEWEST_ROWS",
    "MOST_ALIKE",
    "Sizes",
    "figures",
    "picture_sizes",
    "profile_too_high",
    "resolve",
    "size_problems",
]

FEWEST_NEEDLES = 2
FEWEST_ROWS = 2
_TOO_SMALL = ("layout.too-narrow", "layout.too-low")
MOST_ALIKE = 5
"""So many needles are named that ask for too many rows."""


@dataclass(frozen=True, slots=True)
class Sizes:
    """What is knitted in needles and rows, without base rows and hems: the panel, or its part of a wider picture."""

    needles: int
    rows: int
    stitches_per_10cm: Fraction
    rows_per_10cm: Fraction
    first_needle: int
    last_needle: int
    across: int
    """Stitches of the whole picture; more than `needles` where this is one panel of several."""

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
    """What is wrong with the size: too wide for the bed, shifted off it, nothing left, a panel that is not in the picture."""
    _, _, across, rows = _counts(design)
    bed, options, part = design.bed, design.options, design.panel.part
    needles = across if part is None else part.needles
    found: list[Problem] = []
    if part is not None and not (part.first <= part.last <= across and part.number <= part.panels):
        sentence = say("layout.part-outside", first=part.first, last=part.last, across=across)
        return [Problem("panel.part", "layout.part-outside", sentence, say("layout.part-outside.way-out", across=across))]
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
    return found + _profile_problems(design, across, rows)


def _profile_problems(design: Design, across: int, rows: int) -> list[Problem]:
    """A profile for another number of needles, or higher than the picture."""
    profile = design.layout.profile if isinstance(design.layout, DrawnLayout) else None
    if profile is None:
        return []
    if len(profile) != across:
        sentence = say("layout.profile-needles", found=len(profile), needles=across)
        return [Problem("layout.profile", "layout.profile-needles", sentence, say("layout.profile-needles.way-out"))]
    return [profile_too_high(number, wanted, rows) for number, wanted in enumerate(profile) if wanted > rows][:MOST_ALIKE]


def profile_too_high(number: int, wanted: int, room: int) -> Problem:
    """The rows that needle `number` (0 is the first one of the front) is to have do not fit into the picture."""
    sentence = say("layout.profile-too-high", found=wanted, number=number + 1, room=room)
    return Problem(f"layout.profile[{number}]", "layout.profile-too-high", sentence, say("layout.profile-too-high.way-out"))


def picture_sizes(design: Design) -> Sizes:
    """Of the whole picture, as if the bed had a needle for each of its stitches. Raises Refused where nothing is left of it."""
    found = [p for p in size_problems(replace(design, panel=replace(design.panel, part=None))) if p.code in _TOO_SMALL]
    if found:
        raise Refused(found)
    stitches, rows_per, across, rows = _counts(design)
    first, last = panel_needles(across)
    return Sizes(across, rows, stitches, rows_per, first, last, across)


def resolve(design: Design) -> Sizes:
    """The sizes of `design`. Raises Refused where the piece does not fit the bed."""
    found = size_problems(design)
    if found:
        raise Refused(found)
    stitches, rows_per, across, rows = _counts(design)
    needles = across if design.panel.part is None else design.panel.part.needles
    first, last = panel_needles(needles, design.options.shift_needles, design.options.odd_needle)
    return Sizes(needles, rows, stitches, rows_per, first, last, across)
