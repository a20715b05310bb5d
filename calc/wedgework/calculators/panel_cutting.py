"""A picture cut into panels that a bed takes: as few as can be, or as many as are asked for."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from wedgework.calculators.panel_cuts import Cut, best_cuts, equal_cuts, inside
from wedgework.exact import up
from wedgework.formats.design import DrawnLayout, Part
from wedgework.layout.picture import paint
from wedgework.problems import Problem, Refused
from wedgework.say import say

__all__ = ["MOST_PANELS", "SEAMS", "Cutting", "cut_picture"]

SEAMS = {"none": Fraction(0), "half": Fraction(1, 2), "one": Fraction(1)}
"""What a seam takes from each edge, in stitches."""
MOST_PANELS = 30


def _say(key: str, **values: object) -> str:
    return say(f"calculators.panels.{key}", **values)


@dataclass(frozen=True, slots=True)
class Cutting:
    """A design of so many stitches cut into panels."""

    layout: DrawnLayout
    stitches: int
    turns: int
    cuts: tuple[Cut, ...]
    equal: tuple[Cut, ...]
    """Where equal panels would be cut."""
    seam: Fraction
    """Stitches that a seam takes from each edge."""
    more: tuple[Cut, ...] = ()
    """What one panel more would be cut by; empty where it cannot be."""

    @property
    def widths(self) -> tuple[int, ...]:
        """Stitches of the design in each panel."""
        ends = (0, *(cut.after for cut in self.cuts), self.stitches)
        return tuple(b - a for a, b in pairwise(ends))

    @property
    def needles(self) -> tuple[int, ...]:
        """The same with the seam stitches, whole needles."""
        last = len(self.widths) - 1
        return tuple(width + up(self.seam * ((i > 0) + (i < last))) for i, width in enumerate(self.widths))

    @property
    def spans(self) -> tuple[tuple[int, int], ...]:
        """First and last stitch of the design in each panel, from 1."""
        ends = (0, *(cut.after for cut in self.cuts), self.stitches)
        return tuple((a + 1, b) for a, b in pairwise(ends))

    def part(self, number: int) -> Part:
        """Panel `number`, from 1 at the left of the front. Half a stitch of two edges is one of the right."""
        first, last = self.spans[number - 1]
        panels = len(self.spans)
        more = self.needles[number - 1] - self.widths[number - 1]
        right = up(self.seam) if number < panels else 0
        return Part(number, panels, first, last, more - right, right)


def cut_picture(
    drawn: DrawnLayout, stitches: int, rows: int, bed: int, seam: Fraction, wanted: int | None, equal: bool = False
) -> Cutting:
    """`wanted` panels, or the fewest; cut beside blocks, or with `equal` to equal widths, to a stitch. Raises Refused."""
    panels = wanted or next((p for p in range(1, MOST_PANELS + 1) if sum(_room(bed, seam, p)) >= stitches), MOST_PANELS + 1)
    columns = inside(paint(drawn, stitches, rows))
    while True:
        room = _room(bed, seam, panels)
        cuts = None
        if panels <= MOST_PANELS and sum(room) >= stitches:
            cuts = _equal(equal_cuts(columns, panels), stitches, room) if equal else best_cuts(columns, panels, room)
        if cuts is not None:
            break
        if wanted is not None or panels > MOST_PANELS:
            sentence = _say("design-no-cut", panels=min(panels, MOST_PANELS), needles=bed)
            raise Refused([Problem("panels", "panels.design-no-cut", sentence, _say("design-no-cut.way-out"))])
        panels += 1
    more = best_cuts(columns, panels + 1, _room(bed, seam, panels + 1)) if panels < MOST_PANELS and not equal else None
    return Cutting(drawn, stitches, columns.turns, cuts, equal_cuts(columns, panels), seam, more or ())


def _equal(cuts: tuple[Cut, ...], stitches: int, room: list[int]) -> tuple[Cut, ...] | None:
    """None where one of them is too wide, or nothing is left of it."""
    ends = (0, *(cut.after for cut in cuts), stitches)
    return cuts if all(1 <= b - a <= most for (a, b), most in zip(pairwise(ends), room, strict=True)) else None


def _room(bed: int, seam: Fraction, panels: int) -> list[int]:
    """Stitches that each of so many panels can show."""
    return [max(0, bed - up(seam * ((i > 0) + (i < panels - 1)))) for i in range(panels)]
