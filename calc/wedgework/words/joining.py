"""What is done when the pieces are off the machine: panels are joined, an edging is knitted on."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from wedgework.finish import Run, Strip, joins
from wedgework.formats.design import Part
from wedgework.say import say, say_n
from wedgework.units import both_text

__all__ = ["edging_sentences", "join_sentences", "seam_sentences"]


def join_sentences(panels: int) -> tuple[str, ...]:
    """What is sewn to what, in order."""
    return tuple(say("words.finish-join", left=_group(*left), right=_group(*right)) for left, right in joins(panels))


def seam_sentences(part: Part, height_mm: Fraction) -> Iterable[str]:
    """Which edges of this panel go into seams, how they are sewn, in what order all of them."""
    yield say_n("words.finish-panels", part.panels)
    for edge, stitches, other in (("left", part.seam_left, part.number - 1), ("right", part.seam_right, part.number + 1)):
        if 1 <= other <= part.panels:
            yield say_n(f"words.finish-seam-{edge}", stitches, other=other, length=both_text(height_mm))
    yield say("words.finish-seam-how")
    yield from join_sentences(part.panels)


def _group(first: int, last: int) -> str:
    if first == last:
        return say("words.panel", n=first)
    return say("words.panels-two" if last == first + 1 else "words.panels-span", first=first, last=last)


def edging_sentences(strip: Strip, along: str) -> Iterable[str]:
    """Cast on beside the edge, join, corners, end, yarn."""
    width, stitches = both_text(strip.width_mm), say_n("common.stitches", strip.stitches)
    yield say(f"words.finish-edging-{along}", stitches=stitches, width=width)
    yield say_n("words.finish-edging-join", strip.join_every)
    for run in strip.runs:
        yield _along(run)
    if strip.corner_rows:
        rows, joined = say_n("common.rows", strip.corner_rows), strip.corner_rows // strip.join_every
        yield say_n("words.finish-edging-corner", joined, rows=rows)
    yield say("words.finish-edging-end-round" if strip.round else "words.finish-edging-end-one")
    yield say("words.finish-edging-yarn", stitches=say_n("common.stitches", strip.knitted))


def _along(run: Run) -> str:
    """Rows, joins and their rhythm along both edges of one kind."""
    rhythm = run.hung.rhythm()
    places = say_n("common.stitches" if run.key == "end" else "common.rows", run.places)
    values = {"rows": say_n("common.rows", run.rows), "places": places, "hung": rhythm.numerator, "of": rhythm.denominator}
    return say_n(f"words.finish-edging-along-{run.key}", run.joins, **values)
