"""The bed as the knitter sees it: L on the left, held needles drawn toward her, the knitting hanging below.

Every needle that moves now is drawn; long runs that stay as they are are shortened, with their number of needles, so that a
bed of 250 needles can be read from a metre away. Four shapes, told apart without colour:

- knitting: a short needle with a stitch, fabric under it
- held: a long needle toward the knitter
- returning now: a dashed long needle with an arrow back
- going to hold now: a short needle with an arrow forward, fabric under it
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, Protocol

from wedgework.bed import Side, range_name, span
from wedgework.draw.colours import ink_on, mixed
from wedgework.draw.marks import words_width
from wedgework.draw.svg import Element, Number, document, label, number, path, rect
from wedgework.say import say

__all__ = ["BedLike", "bed_svg"]

Ranges = tuple[tuple[int, int], ...]
State = Literal["knitting", "held", "returning", "holding"]


class BedLike(Protocol):
    """What has to be known of the bed; needles as first and last of each run, from left to right."""

    @property
    def first(self) -> int: ...
    @property
    def last(self) -> int: ...
    @property
    def knitting(self) -> Ranges: ...
    @property
    def held(self) -> Ranges: ...
    @property
    def returning(self) -> Ranges: ...
    @property
    def holding(self) -> Ranges: ...
    @property
    def carriage(self) -> Side: ...


WIDTH, HEIGHT = 180, 68
BAR, SINKER, FRONT, FOOT = 21, 36, 52, 60
"""Front of the bed, where the fabric hangs from, how far a held needle comes, how far the fabric is drawn."""
MOST = 12
"""Needles of a run that are drawn singly; of a longer one only so many, with a gap."""
MARGIN = 24
"""Room for the carriage at either side."""
SMALL, LARGE = Fraction(3), Fraction(9, 2)


@dataclass(frozen=True, slots=True)
class _Run:
    """Neighbouring needles in one state, drawn from `left` in so many widths of a needle."""

    state: State
    first: int
    last: int
    left: Fraction
    pitch: Fraction

    @property
    def slots(self) -> int:
        return _slots(self.first, self.last)

    @property
    def right(self) -> Fraction:
        return self.left + self.slots * self.pitch

    @property
    def middle(self) -> Fraction:
        return (self.left + self.right) / 2

    def places(self) -> list[Fraction]:
        """The middle of each needle that is drawn; a long run has a gap of one needle in the middle."""
        gap = {MOST // 2} if span(self.first, self.last) > MOST else set()
        return [self.left + (i + Fraction(1, 2)) * self.pitch for i in range(self.slots) if i not in gap]


def _slots(first: int, last: int) -> int:
    count = span(first, last)
    return count if count <= MOST else MOST + 1


def bed_svg(
    bed: BedLike,
    *,
    yarn: str = "",
    colour: str = "#8a8a8a",
    knits: bool = True,
    own_names: Mapping[str, str] | None = None,
    prefix: str = "bed",
) -> str:
    """The bed with the carriage beside the piece; `yarn` and `colour` are those of the yarn in the feeder, `knits` whether
    a row follows (an arrow shows which way), `own_names` the person's words for the positions (`Machine.position_names`)."""
    runs = _runs(bed)
    left, right = runs[0].left, runs[-1].right
    children: list[Element] = [rect(left - 2, BAR - 3, right - left + 4, 3, fill="currentColor", fill_opacity="0.3")]
    for run in runs:
        coloured = run.state == "knitting" or (run.state == "holding" and knits)
        children.append(_fabric(run, colour if coloured else None))
        children += _needles(run, ink_on(colour) if coloured else "currentColor")
    children += _moving_names(runs, own_names or {}) + _waiting_names(runs)
    children += _carriage(bed.carriage, left if bed.carriage == "L" else right, knits)
    return document(WIDTH, HEIGHT, say("draw.bed-title"), _description(bed, runs, yarn), children, prefix=prefix, kind="bed")


def _runs(bed: BedLike) -> list[_Run]:
    """All runs from left to right, set in the middle of the drawing."""
    states: list[tuple[State, Ranges]] = [
        ("knitting", bed.knitting),
        ("held", bed.held),
        ("returning", bed.returning),
        ("holding", bed.holding),
    ]
    found = sorted((first, last, state) for state, ranges in states for first, last in ranges)
    slots = sum(_slots(first, last) for first, last, _ in found)
    pitch = min(Fraction(WIDTH - 2 * MARGIN, slots), Fraction(6))
    at = (WIDTH - slots * pitch) / 2
    runs = []
    for first, last, state in found:
        runs.append(_Run(state, first, last, at, pitch))
        at = runs[-1].right
    return runs


def _fabric(run: _Run, colour: str | None) -> Element:
    """Under every needle: in the colour of the yarn where it has been knitting, faint where it waits."""
    wide, high = run.right - run.left, FOOT - SINKER - 1
    if colour is None:
        return rect(run.left, SINKER + 1, wide, high, fill="currentColor", fill_opacity="0.12")
    edge = mixed(colour, ink_on(colour), 45)
    return rect(run.left, SINKER + 1, wide, high, fill=colour, stroke=edge, stroke_width=Fraction(1, 4))


def _needles(run: _Run, ink: str) -> list[Element]:
    forward = run.state in ("held", "returning")
    end = FRONT if forward else SINKER
    places = run.places()
    wide = min(Fraction(1), run.pitch / 3)
    shafts = "".join(f"M{number(x)} {BAR}V{end}" for x in places)
    attributes: dict[str, str | Number] = {"stroke": "currentColor", "stroke_width": wide, "fill": "none"}
    if run.state == "returning":
        attributes["stroke_dasharray"] = "2 1.2"
    drawn = [path(shafts, **attributes)]
    heads = "".join(_hook(x, end, wide) for x in places)
    drawn.append(path(heads, fill="currentColor"))
    if run.state == "returning":
        drawn.append(path("".join(_arrow(x, FRONT + 7, FRONT + 2, run.pitch) for x in _arrows(run)), fill="currentColor"))
    if run.state == "holding":
        drawn.append(path("".join(_arrow(x, SINKER + 3, FRONT, run.pitch) for x in _arrows(run)), fill=ink))
    if len(places) < span(run.first, run.last):
        drawn.append(label(run.middle, BAR + 9, "…", LARGE, text_anchor="middle"))
    return drawn


def _hook(x: Fraction, y: int, wide: Fraction) -> str:
    """The head of a needle: a small square standing on its point."""
    r = wide * Fraction(11, 10)
    return f"M{number(x - r)} {y}L{number(x)} {number(y + r)}L{number(x + r)} {y}L{number(x)} {number(y - r)}Z"


def _arrows(run: _Run) -> list[Fraction]:
    """One arrow for each needle, or a single one where they stand too close."""
    return run.places() if run.pitch >= 2 else [run.middle]


def _arrow(x: Fraction, tail: int, tip: int, pitch: Fraction) -> str:
    """A broad arrow from `tail` to `tip`, upright."""
    half, thin = min(Fraction(2), max(pitch * Fraction(45, 100), Fraction(1))), Fraction(35, 100)
    neck = tip - 3 if tip > tail else tip + 3
    return f"M{number(x)} {tip}L{number(x + half)} {neck}H{number(x + thin)}V{tail}H{number(x - thin)}V{neck}H{number(x - half)}Z"


def _moving_names(runs: list[_Run], own_names: Mapping[str, str]) -> list[Element]:
    """Needles that move now, above the bed in large type, moved apart where they would meet."""
    moving = [run for run in runs if run.state in ("returning", "holding")]
    places: list[Fraction] = []
    before = Fraction(0)  # half the width of the name before
    for run in moving:
        half = words_width(range_name(run.first, run.last), LARGE) / 2
        places.append(max(run.middle, places[-1] + before + half + 2) if places else run.middle)
        before = half
    back = (places[-1] - moving[-1].middle) / 2 if moving else Fraction(0)
    drawn: list[Element] = []
    for run, place in zip(moving, places, strict=True):
        key, sign = ("upper-working", "draw.uwp") if run.state == "returning" else ("holding", "draw.hp")
        position = own_names.get(key) or say(sign)
        words = range_name(run.first, run.last)
        drawn.append(label(place - back, BAR - 6, words, LARGE, text_anchor="middle", font_weight="700"))
        drawn.append(label(place - back, BAR - 12, say("draw.bed-to", position=position), SMALL, text_anchor="middle"))
    return drawn


def _waiting_names(runs: list[_Run]) -> list[Element]:
    """The other needles, under the fabric: those that knit always, held ones where there is room."""
    drawn: list[Element] = []
    taken: list[tuple[Fraction, Fraction]] = []
    for run in sorted((run for run in runs if run.state in ("knitting", "held")), key=lambda run: run.state != "knitting"):
        words = range_name(run.first, run.last)
        for candidate in (say(f"draw.bed-{run.state}", needles=words), words):
            half = words_width(candidate, SMALL) / 2
            low, high = run.middle - half, run.middle + half
            fits = run.state == "knitting" or 2 * half <= run.right - run.left
            if fits and all(high <= a or low >= b for a, b in taken):
                taken.append((low, high))
                drawn.append(label(run.middle, FOOT + 5, candidate, SMALL, text_anchor="middle"))
                break
    return drawn


def _carriage(side: Side, edge: Fraction, knits: bool) -> list[Element]:
    """Clear of the piece, on its side, with an arrow the way it will go."""
    out = -1 if side == "L" else 1
    middle = edge + out * 13
    body = rect(middle - 8, BAR - 4, 16, 17, rx=2, fill="none", stroke="currentColor", stroke_width=Fraction(4, 5))
    handle = path(f"M{number(middle - 5)} {BAR - 4}v-4h10v4", fill="none", stroke="currentColor", stroke_width=Fraction(4, 5))
    drawn = [body, handle, label(middle, BAR + 6, say(f"draw.carriage-{side}"), LARGE, text_anchor="middle", font_weight="700")]
    if knits:
        tip, tail = middle - out * 8, middle + out * 6
        y = BAR + 19
        drawn.append(
            path(
                f"M{number(tip)} {y}L{number(tip + out * 4)} {y - 2}V{number(y - Fraction(1, 2))}H{number(tail)}"
                f"V{number(y + Fraction(1, 2))}H{number(tip + out * 4)}V{y + 2}Z",
                fill="currentColor",
            )
        )
    return drawn


def _description(bed: BedLike, runs: list[_Run], yarn: str) -> str:
    """The same in words."""
    said = [say("draw.bed-desc", side=say(f"common.{'left' if bed.carriage == 'L' else 'right'}"))]
    for state in ("returning", "holding", "knitting", "held"):
        needles = ", ".join(range_name(run.first, run.last) for run in runs if run.state == state)
        if needles:
            said.append(say(f"draw.bed-desc-{state}", needles=needles))
    if yarn:
        said.append(say("draw.bed-desc-yarn", yarn=yarn))
    return " ".join(said)
