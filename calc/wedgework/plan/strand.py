"""Where a yarn hangs, and how far it reaches without being cut."""

from __future__ import annotations

from dataclasses import dataclass

from wedgework.bed import Side

__all__ = ["HEIGHT_LIMIT", "Strand", "crossed", "within_reach"]

HEIGHT_LIMIT = 8
"""Rows that a strand may climb along the knitting. Common practice, no source: more pulls or hangs in a loop."""


@dataclass(frozen=True, slots=True)
class Strand:
    """A yarn beside a needle: its place, the rows on it, and on which side the carriage stands or stood."""

    place: int
    height: int
    side: Side


def crossed(hangs: Strand, begins: Strand) -> int:
    """How many needles the strand passes over on its way to the needle that knits first.

    Inward it passes over the needle it hangs from as well (that is the wrap); outward only over what lies between.
    """
    distance = begins.place - hangs.place
    inward = distance > 0 if hangs.side == "L" else distance < 0
    return abs(distance) if inward else max(0, abs(distance) - 1)


def within_reach(hangs: Strand, begins: Strand, limit: int) -> bool:
    """Whether the yarn may go on there uncut."""
    return crossed(hangs, begins) <= limit and abs(begins.height - hangs.height) <= HEIGHT_LIMIT
