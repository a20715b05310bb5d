"""The blocks that a picture is divided into, before they have an order: which must come first, who may begin where.

A block's id is its number from below, then from the left on the bed, so it stays the same whatever the order.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass

from wedgework.bed import Side
from wedgework.formats.design import OrderWish
from wedgework.plan.fit import Outline
from wedgework.problems import Problem, Refused
from wedgework.say import say

__all__ = ["Division", "Piece", "divided", "lying_below"]

BOTH: tuple[Side, Side] = ("L", "R")


@dataclass(frozen=True, slots=True)
class Piece:
    """A block before it has a place in the order."""

    chain: int
    part: int
    """0, or which part of its chain this is, from 1, when there are several."""
    yarn: str
    shape: Outline
    rank: tuple[int, int]
    """Lowest first, then nearest the home side: among equals the order that a person would take."""


@dataclass(frozen=True, slots=True)
class Division:
    """All blocks, and what an order of them has to respect."""

    pieces: Sequence[Piece]
    ids: Sequence[str]
    first: Sequence[int]
    """For each block those that come before it, as bits: they lie below it, or the person wants it so."""
    sides: Sequence[tuple[Side, ...]]
    """Where the carriage may stand when it begins."""
    free: bool
    """Whether the person left everything to the planner."""


def lying_below(pieces: Sequence[Piece], needles: int) -> list[int]:
    """For each block the blocks right under it on any of its needles, as bits."""
    below = [0] * len(pieces)
    columns: list[list[tuple[int, int]]] = [[] for _ in range(needles)]
    for k, piece in enumerate(pieces):
        for place, turn in enumerate(piece.shape.enter, piece.shape.low):
            columns[place].append((turn, k))
    for column in columns:
        column.sort()
        for (_, under), (_, over) in itertools.pairwise(column):
            below[over] |= 1 << under
    return below


def divided(pieces: Sequence[Piece], needles: int, wishes: Sequence[OrderWish]) -> Division:
    """The division with the person's own wishes. Raises Refused where a block is not there, or they cannot all be true."""
    ids = _ids(pieces)
    below = lying_below(pieces, needles)
    found = _unknown(ids, wishes)
    if found:
        raise Refused(found)
    number = {block: k for k, block in enumerate(ids)}
    first = list(below)
    sides: list[tuple[Side, ...]] = [BOTH for _ in pieces]
    for i, wish in enumerate(wishes):
        k = number[wish.block]
        for earlier, later in _pairs(wish):
            way = _way_down(first, number[earlier], number[later])
            if way is None:
                first[number[later]] |= 1 << number[earlier]
                continue
            found.append(_impossible(i, earlier, later, [ids[step] for step in way], below, number))
        if wish.start is not None and wish.start not in sides[k]:
            found.append(
                Problem(
                    f"options.order[{i}].start",
                    "plan.two-starts",
                    say("plan.two-starts", block=wish.block),
                    say("plan.two-starts.way-out"),
                )
            )
        elif wish.start is not None:
            sides[k] = (wish.start,)
    if found:
        raise Refused(found)
    return Division(pieces, ids, first, sides, not wishes)


def _ids(pieces: Sequence[Piece]) -> list[str]:
    ranked = sorted(range(len(pieces)), key=lambda k: (pieces[k].chain, pieces[k].part))
    ids = [""] * len(pieces)
    for number, k in enumerate(ranked, 1):
        ids[k] = f"b{number}"
    return ids


def _pairs(wish: OrderWish) -> list[tuple[str, str]]:
    """Which block shall come before which."""
    found = []
    if wish.before is not None:
        found.append((wish.block, wish.before))
    if wish.after is not None:
        found.append((wish.after, wish.block))
    return found


def _unknown(ids: Sequence[str], wishes: Sequence[OrderWish]) -> list[Problem]:
    return [
        Problem(
            f"options.order[{i}].{key}",
            "plan.no-such-block",
            say("plan.no-such-block", block=block, last=f"b{len(ids)}"),
            say("plan.no-such-block.way-out"),
        )
        for i, wish in enumerate(wishes)
        for key, block in (("block", wish.block), ("before", wish.before), ("after", wish.after))
        if block is not None and block not in ids
    ]


def _way_down(first: Sequence[int], high: int, low: int) -> list[int] | None:
    """Blocks from `high` down to `low`, each needing the next one done before it; None where `high` does not need `low`."""
    ways: dict[int, list[int]] = {high: [high]}
    waiting = [high]
    for k in waiting:
        if k == low:
            return ways[k]
        for other in range(len(first)):
            if first[k] >> other & 1 and other not in ways:
                ways[other] = [*ways[k], other]
                waiting.append(other)
    return None


def _impossible(i: int, earlier: str, later: str, way: Sequence[str], below: Sequence[int], number: dict[str, int]) -> Problem:
    """The reason: what lies below and is not done, or which wishes contradict each other."""
    lies = all(below[number[a]] >> number[b] & 1 for a, b in itertools.pairwise(way))
    if earlier == later:
        key, between = "plan.before-itself", ""
    elif not lies:
        key, between = "plan.against-wishes", ", ".join(reversed(way))
    elif len(way) == 2:
        key, between = "plan.lies-below", ""
    else:
        key, between = "plan.lies-deeper", ", ".join(way[1:-1])
    sentence = say(key, earlier=earlier, later=later) if not between else say(key, earlier=earlier, later=later, between=between)
    return Problem(f"options.order[{i}]", "plan.impossible-order", sentence, say("plan.impossible-order.way-out"))
