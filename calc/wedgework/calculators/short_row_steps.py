"""What a plan does at the edges of one shape: needles a turn, wraps, and the angle that the needles really give."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from wedgework.bed import place
from wedgework.formats.plan import Knit, Plan, Wrap
from wedgework.lines import line_through
from wedgework.replay.result import Replay
from wedgework.slopes import degrees
from wedgework.words.walk import Bed, step_over

__all__ = ["Edge", "Slope", "Turn", "Wraps", "edges_of", "shape_blocks", "turns_of", "wraps_of"]


NEAR = 1
"""Rows by which a needle may end beside the drawing."""


@dataclass(frozen=True, slots=True)
class Slope:
    """A slanted edge of the shape, seen from the front, from `first` to `last` in fractions of the width."""

    key: str
    first: Fraction
    last: Fraction
    upper: bool
    """Whether the shape ends there; else it begins."""
    wanted: Fraction
    """Degrees against the rows."""
    band: tuple[int, int] | None = None
    """Rows of the picture between which it lies, where a needle has more than one such edge."""


@dataclass(frozen=True, slots=True)
class Edge:
    slope: Slope
    needles: int
    """That the edge crosses."""
    rows: int
    """Between its lowest and its highest needle."""
    got: Fraction | None
    """The angle of the line through the rows really knitted; None where there are too few needles for a line."""


@dataclass(frozen=True, slots=True)
class Turn:
    """Two rows of a block, and how many needles each end has more than after the two rows before, less where negative.

    The first one is compared with the block's first row.
    """

    block: str
    rows: int
    """Done after it."""
    left: int
    right: int


@dataclass(frozen=True, slots=True)
class Wraps:
    """Turns of the carriage within the shape, by what closes them."""

    by_itself: int
    """A needle was held at the carriage's side: the yarn goes round it."""
    by_hand: int
    at_selvedge: int
    open: int
    """On an edge that widens or stays: nothing to close."""


def shape_blocks(plan: Plan, yarn: str) -> tuple[str, ...]:
    """Ids of the blocks in that yarn, without base rows and hems."""
    return tuple(block.id for block in plan.blocks if block.yarn == yarn and not block.id.startswith(("base", "hem")))


def edges_of(judged: Replay, yarn: str, slopes: Iterable[Slope], stitch_mm: Fraction, row_mm: Fraction) -> tuple[Edge, ...]:
    """Each slope as the model bed knitted it."""
    columns = judged.piece.columns[::-1]  # as seen from the front
    n = len(columns)
    found = []
    for slope in slopes:
        places = []
        for i, column in enumerate(columns):
            if not slope.first < Fraction(2 * i + 1, 2 * n) < slope.last:
                continue
            ends = [run.high if slope.upper else run.low for run in column if run.yarn == yarn]
            if slope.band is not None:
                ends = [row for row in ends if slope.band[0] - NEAR <= row <= slope.band[1]]
            if ends:
                places.append((Fraction(i), Fraction(max(ends) if slope.upper else min(ends))))
        rows = [int(level) for _, level in places]
        got = None
        if len(places) > 1:
            got = degrees(abs(line_through(places).slope) * row_mm, stitch_mm)
        found.append(Edge(slope, len(places), max(rows) - min(rows) if rows else 0, got))
    return tuple(found)


@dataclass(frozen=True, slots=True)
class _Pass:
    knit: Knit
    first: int
    """Places of the outermost needles that knit."""
    last: int
    wrapped: bool
    """A hand wrap lies before the pass."""


def _passes(plan: Plan, blocks: Sequence[str]) -> dict[str, list[_Pass]]:
    found: dict[str, list[_Pass]] = {block: [] for block in blocks}
    bed, wrapped = Bed.at_start(plan), False
    for step in plan.steps:
        if isinstance(step, Wrap):
            wrapped = True
        if isinstance(step, Knit):
            working = bed.working
            if step.block in found and working:
                found[step.block].append(_Pass(step, place(working[0]), place(working[-1]), wrapped))
            wrapped = False
        bed = step_over(bed, step)
    return found


def turns_of(plan: Plan, blocks: Sequence[str]) -> tuple[Turn, ...]:
    """How the ends move, two rows at a time; the last one may have a single row."""
    found = []
    for block, passes in _passes(plan, blocks).items():
        ends = passes[1::2] if len(passes) % 2 == 0 else [*passes[1::2], passes[-1]]
        for before, after in pairwise([*passes[:1], *ends]):
            found.append(Turn(block, after.knit.block_row, before.first - after.first, after.last - before.last))
    return tuple(found)


def wraps_of(plan: Plan, blocks: Sequence[str]) -> Wraps:
    ends = {"L": place(plan.first_needle), "R": place(plan.last_needle)}
    by_itself = by_hand = at_selvedge = opened = 0
    for passes in _passes(plan, blocks).values():
        for before, after in pairwise(passes):
            right = before.knit.to == "R"
            here, then = (before.last, after.last) if right else (before.first, after.first)
            if after.wrapped:
                by_hand += 1
            elif (then < here) if right else (then > here):
                by_itself += 1
            elif here == ends[before.knit.to]:
                at_selvedge += 1
            else:
                opened += 1
    return Wraps(by_itself, by_hand, at_selvedge, opened)
