"""What the plan claims of itself, from the blocks as they were fitted. The model bed counts again on its own."""

from __future__ import annotations

from collections.abc import Sequence

from wedgework.bed import at_place
from wedgework.formats.plan import Hole, Uneven
from wedgework.layout import Shaping
from wedgework.plan.arranged import Arranged, steepest
from wedgework.plan.borders import Stretch
from wedgework.plan.edges import Style
from wedgework.plan.ground import Ground
from wedgework.plan.record import away_groups
from wedgework.say import say_n

__all__ = ["columns_of", "fold_of", "heights_of", "holes_of", "uneven_of"]


EARLIER = -1
"""The number of whatever was knitted before planning began."""


def columns_of(order: Sequence[Arranged], ground: Ground, shaping: Shaping) -> list[list[Stretch]]:
    """For each place what was knitted on it, from below, in rows of the picture; also what was there before."""
    columns = [
        [Stretch(EARLIER, *span) for span in shaping.split(place, 0, shaping.in_picture(place, rows)) if rows]
        for place, rows in enumerate(ground.heights)
    ]
    for number, block in enumerate(order):
        fitted = block.fitted
        for i, (below, gaps, rows) in enumerate(zip(block.below, block.under, fitted.rows, strict=True)):
            if rows:
                columns[fitted.low + i].append(Stretch(number, below + gaps, below + gaps + rows))
    return columns


def heights_of(columns: Sequence[Sequence[Stretch]]) -> list[int]:
    """Rows on each needle at the end."""
    return [sum(stretch.high - stretch.low for stretch in column) for column in columns]


def fold_of(order: Sequence[Arranged], ground: Sequence[int]) -> int:
    """The greatest difference of height between neighbours at any time while the blocks are knitted.

    Of two neighbours in a block one joins first and one leaves first, and between them both grow: so the difference is greatest
    before, after, or when both have joined.
    """
    heights = list(ground)
    deepest = steepest(heights)
    for block in order:
        fitted = block.fitted
        low, joins, leaves = fitted.low, fitted.joins, fitted.leaves
        before = heights[low : low + len(joins)]
        for i in range(len(joins) - 1):
            a, b = joins[i], joins[i + 1]
            apart = before[i] - before[i + 1]
            apart += min(b, leaves[i]) - a if a < b else b - min(a, leaves[i + 1])
            if apart > deepest or -apart > deepest:
                deepest = abs(apart)
        for i, rows in enumerate(fitted.rows):
            heights[low + i] += rows
        deepest = max(deepest, steepest(heights[max(low - 1, 0) : low + len(joins) + 1]))
    return deepest


def holes_of(order: Sequence[Arranged], style: Style, first_place: int) -> tuple[Hole, ...]:
    """Groups held away from the carriage after which no needle was held at its side: a turn that nothing wraps."""
    found: list[Hole] = []
    if style.by_hand:
        return ()
    for block in order:
        fitted = block.fitted
        for row, place in away_groups(fitted):
            inward = 1 if place < fitted.knitting(fitted.end_row - 1)[0] else -1
            follower = place + inward - fitted.low
            if row + 1 < fitted.end_row and fitted.leaves[follower] != row + 1:
                i = follower
                height = block.below[i] + min(max(row + 1 - fitted.joins[i], 0), fitted.rows[i])
                found.append(Hole(at_place(first_place + place), height))
    return tuple(found)


def uneven_of(heights: Sequence[int], wanted: Sequence[int], first_place: int) -> tuple[Uneven, ...]:
    """Needles more than one row off, listed where the piece as a whole is not level, or not in its shape, within two."""
    off = [h - rows for h, rows in zip(heights, wanted, strict=True)]
    shaped = len(set(wanted)) > 1
    if all(abs(rows) <= 2 for rows in off) and (shaped or max(off) - min(off) <= 2):
        return ()
    return tuple(
        Uneven(at_place(first_place + p), h, say_n("plan.uneven-why", abs(rows)))
        for p, (h, rows) in enumerate(zip(heights, off, strict=True))
        if abs(rows) > 1
    )
