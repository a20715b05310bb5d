"""Which blocks lie beside each other on the finished piece, and how long their common border is.

    >>> neighbours(judged.piece)
    {("b1", "b2"): 57, ...}

Borders between needles count the rows, borders between rows the needles: enough to tell who touches whom. Blocks that meet
in one stitch's corner do not.
"""

from __future__ import annotations

from itertools import pairwise

from wedgework.replay.result import Piece, Run

__all__ = ["neighbours"]


def neighbours(piece: Piece) -> dict[tuple[str, str], int]:
    """Pairs of block ids, each in the order of the ids as text, with stitches along their border."""
    found: dict[tuple[str, str], int] = {}

    def touch(a: Run, b: Run, stitches: int) -> None:
        if a.block != b.block:
            pair = (a.block, b.block) if a.block < b.block else (b.block, a.block)
            found[pair] = found.get(pair, 0) + stitches

    for column in piece.columns:
        for below, above in pairwise(column):
            touch(below, above, 1)
    for left, right in pairwise(piece.columns):
        i = k = 0
        while i < len(left) and k < len(right):
            a, b = left[i], right[k]
            together = min(a.high, b.high) - max(a.low, b.low)
            if together > 0:
                touch(a, b, together)
            if a.high <= b.high:
                i += 1
            else:
                k += 1
    return found
