"""Which yarn is in the feeder, which rests uncut on the mast, where it is cut and where a new end begins."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from wedgework.plan.price import Prices
from wedgework.plan.strand import Strand, within_reach

__all__ = ["Change", "Passage", "feed"]


@dataclass(frozen=True, slots=True)
class Passage:
    """Something knitted in one go with one yarn: a block, or base rows."""

    yarn: str
    begins: Strand
    ends: Strand


@dataclass(frozen=True, slots=True)
class Change:
    """What happens to the yarns before a passage.

    `away`: what becomes of the yarn in the feeder; `nothing` where it knits on, or none is threaded.
    `thread`: whether a yarn is threaded; `anew` with a new end, or where it hangs.
    """

    away: Literal["nothing", "cut", "rest"]
    thread: bool
    anew: bool


@dataclass(frozen=True, slots=True)
class _Way:
    """The cheapest way so far to have these yarns resting."""

    price: int
    change: Change
    before: _Way | None


def feed(passages: Sequence[Passage], strand_limit: int, yarns_on_mast: int, prices: Prices) -> list[Change]:
    """The cheapest changes, one before each passage.

    A yarn that rests is taken up by the next passage of its colour, which it must reach; a resting yarn saves two ends.
    Every choice is followed, but only the cheapest for each set of resting yarns: they are few, as the mast is small.
    """
    next_use = _next_uses(passages)
    ways: dict[frozenset[str], _Way] = {frozenset(): _Way(0, Change("nothing", True, True), None)}
    for i in range(1, len(passages)):
        found: dict[frozenset[str], _Way] = {}
        for resting, way in ways.items():
            for change, rests, price in _changes(passages, i, resting, next_use, strand_limit, yarns_on_mast, prices):
                known = found.get(rests)
                if known is None or way.price + price < known.price:
                    found[rests] = _Way(way.price + price, change, way)
        ways = found
    last: _Way | None = ways[frozenset()]
    changes: list[Change] = []
    while last is not None:
        changes.append(last.change)
        last = last.before
    return changes[::-1]


def _next_uses(passages: Sequence[Passage]) -> list[int | None]:
    """For each passage the next one of the same yarn."""
    later: dict[str, int] = {}
    found: list[int | None] = [None] * len(passages)
    for i in range(len(passages) - 1, -1, -1):
        found[i] = later.get(passages[i].yarn)
        later[passages[i].yarn] = i
    return found


def _changes(
    passages: Sequence[Passage],
    i: int,
    resting: frozenset[str],
    next_use: Sequence[int | None],
    strand_limit: int,
    yarns_on_mast: int,
    prices: Prices,
) -> list[tuple[Change, frozenset[str], int]]:
    """The changes that are possible before passage `i`, with the yarns that rest then, and the price. Resting comes first."""
    before, passage = passages[i - 1], passages[i]
    again = next_use[i - 1]
    reaches = again is not None and within_reach(before.ends, passages[again].begins, strand_limit)
    if before.yarn == passage.yarn:
        if reaches and before.ends.side == passage.begins.side:
            return [(Change("nothing", False, False), resting, 0)]
        if reaches:  # the carriage has to go to the other side without it
            return [(Change("rest", True, False), resting, 0)]
        return [(Change("cut", True, True), resting, prices.cut(before.ends.place) + prices.begin(passage.begins.place))]
    anew = passage.yarn not in resting
    left = resting - {passage.yarn}
    taken = prices.begin(passage.begins.place) if anew else prices.again
    ways = [(Change("cut", True, anew), left, taken + prices.cut(before.ends.place))]
    if reaches and len(left) + 2 <= yarns_on_mast:
        ways.insert(0, (Change("rest", True, anew), left | {before.yarn}, taken))
    return ways
