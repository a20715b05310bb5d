"""What the blocks that are left must cost at the least: a promise that the search can trust.

Heights, start sides and evenness are left out, and every yarn is believed to reach as far as it possibly might. What
remains is which blocks are done and which was last. The cheapest way on from each such set is found by dynamic programming
(Held and Karp 1962; from memory); where there are too many sets each block is counted on its own.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from wedgework.plan.arranged import Wishes
from wedgework.plan.division import Division, Piece
from wedgework.plan.fit import Outline
from wedgework.plan.ground import Around, Ground
from wedgework.plan.price import Prices
from wedgework.plan.strand import HEIGHT_LIMIT

__all__ = ["Bound"]

MOST_SETS = 3000
"""Up to so many sets of done blocks, each with all below it, are looked at; most pictures have far fewer."""
_SLACK_NEEDLES, _SLACK_ROWS = 1, 6
"""A fit may begin and end a block by so many needles and rows beside the drawing, over what its first two turns enter."""


@dataclass(frozen=True, slots=True)
class _End:
    """Where a block's yarn may come from or hang: places from the first to the last, rows by the drawing."""

    first: int
    last: int
    low: int
    high: int


class Bound:
    """Lower bounds for one division into blocks; `to_come` is what the search asks."""

    def __init__(self, division: Division, wishes: Wishes, around: Around, mast: int, prices: Prices, ground: Ground) -> None:
        pieces = division.pieces
        self._division, self._around, self._mast, self._prices, self._wishes = division, around, mast, prices, wishes
        self._starts = [_start(piece) for piece in pieces]
        self._tops = [_top(piece) for piece in pieces]
        self.begins = [min(map(prices.begin, self._kinds(end))) for end in self._starts]
        """What a new end for each block costs at the least."""
        self.cuts = [min(map(prices.cut, self._kinds(end))) for end in self._tops]
        """What cutting its yarn costs at the least."""
        same = [[k != j and a.yarn == b.yarn for j, b in enumerate(pieces)] for k, a in enumerate(pieces)]
        self._reaches = [
            [same[i][k] and self._near(top, start) for k, start in enumerate(self._starts)] for i, top in enumerate(self._tops)
        ]
        after = _all_after(division.first)
        self._sinks = [
            _bits(k for k, yes in enumerate(row) if yes and not after[k] >> i & 1) for i, row in enumerate(self._reaches)
        ]
        """For each block those that might take up its yarn where it hangs, as bits."""
        self._sources = [
            _bits(i for i in range(len(pieces)) if self._reaches[i][k] and not after[k] >> i & 1) for k in range(len(pieces))
        ]
        strand = ground.strand
        self._from_base = [
            strand is not None
            and ground.yarn in (None, piece.yarn)
            and self._near(_End(strand.place, strand.place, strand.height, strand.height), start)
            for piece, start in zip(pieces, self._starts, strict=True)
        ]
        """Whether a block might go on with the yarn that is threaded when planning begins."""
        last = wishes.needles - 1
        wanted = wishes.shaping.wanted
        self._to_base = [
            around.above
            and around.yarn_above in (None, piece.yarn)
            and any(self._near(top, _End(edge, edge, wanted[edge], wanted[edge])) for edge in (0, last))
            for piece, top in zip(pieces, self._tops, strict=True)
        ]
        self._everything = (1 << len(pieces)) - 1
        self._few = _sets(division.first) <= MOST_SETS
        self._known: dict[tuple[int, int], int] = {}

    def to_come(self, done: int, last: int) -> int:
        """The least price of all blocks that are not `done`, after block `last` (-1: none yet), to the end of the piece."""
        key = done, last
        if key not in self._known:
            self._known[key] = self._cheapest(done, last) if self._few else self._one_by_one(done, last)
        return self._known[key]

    def _cheapest(self, done: int, last: int) -> int:
        if done == self._everything:
            return self._closing(last)
        best: int | None = None
        for k, first in enumerate(self._division.first):
            if not done >> k & 1 and not first & ~done:
                price = self._step(done, last, k) + self.to_come(done | 1 << k, k)
                best = price if best is None else min(best, price)
        if best is None:
            raise AssertionError("every division into blocks has an order")
        return best

    def _step(self, done: int, last: int, k: int) -> int:
        """Knitting block k after block `last`, at the least."""
        prices, pieces = self._prices, self._division.pieces
        if last < 0:
            return 0 if self._from_base[k] else self.begins[k]
        if pieces[last].yarn == pieces[k].yarn:
            return 0 if self._reaches[last][k] else self.cuts[last] + self.begins[k]
        left = self._everything & ~done & ~(1 << k)
        waits = self._mast > 1 and (bool(self._sinks[last] & left) or self._to_base[last])
        rested = self._mast > 1 and (bool(self._sources[k] & done & ~(1 << last)) or self._from_base[k])
        return (0 if waits else self.cuts[last]) + (prices.again if rested else self.begins[k])

    def _closing(self, last: int) -> int:
        if last < 0:
            return 0
        if not self._around.above:
            return self.cuts[last]
        edge = self._prices.cut(0)
        return (
            edge if self._to_base[last] or self._around.yarn_above is not None else self.cuts[last] + self._prices.begin(0) + edge
        )

    def _one_by_one(self, done: int, last: int) -> int:
        """Nothing for an end where a yarn might hang near, its full price otherwise."""
        total = 0
        for k in range(len(self._division.pieces)):
            if not done >> k & 1:
                total += 0 if self._sources[k] or self._from_base[k] else self.begins[k]
            if not done >> k & 1 or k == last:
                total += 0 if self._sinks[k] or self._to_base[k] else self.cuts[k]
        return total

    def _near(self, hangs: _End, begins: _End) -> bool:
        """Whether a strand might reach from one to the other."""
        reach = self._wishes.strand_limit + 1
        return (
            begins.first - reach <= hangs.last
            and hangs.first <= begins.last + reach
            and max(begins.low - hangs.high, hangs.low - begins.high) <= HEIGHT_LIMIT + _SLACK_ROWS
        )

    def _kinds(self, end: _End) -> set[int]:
        """Places where a yarn may begin or hang, one of each kind: inside, and at a selvedge."""
        last = self._wishes.needles - 1
        found = {p for p in (0, last) if end.first <= p <= end.last}
        return found | ({1} if last > 1 else set())


def _start(piece: Piece) -> _End:
    shape = piece.shape
    row = shape.enter[shape.first_run[0] - shape.low]
    return _end(shape, shape.first_run, [turn <= row + 1 for turn in shape.enter], 2 * row)


def _top(piece: Piece) -> _End:
    shape = piece.shape
    row = shape.leave[shape.last_run[0] - shape.low]
    return _end(shape, shape.last_run, [turn >= row - 1 for turn in shape.leave], 2 * row)


def _end(shape: Outline, run: tuple[int, int], near: Sequence[bool], row: int) -> _End:
    """Over a gap of the picture a needle has fewer rows of its own than the picture."""
    first, last = _around_run(run, shape.low, near)
    gaps = shape.under[first - shape.low : last + 1 - shape.low]
    return _End(first - _SLACK_NEEDLES, last + _SLACK_NEEDLES, row - max(gaps), row - min(gaps))


def _around_run(run: tuple[int, int], low: int, near: Sequence[bool]) -> tuple[int, int]:
    """A run and the needles beside it that might still begin or end with it."""
    first, last = run[0] - low, run[1] - low
    while first > 0 and near[first - 1]:
        first -= 1
    while last < len(near) - 1 and near[last + 1]:
        last += 1
    return low + first, low + last


def _all_after(first: Sequence[int]) -> list[int]:
    """For each block all blocks that come after it, as bits."""
    after = [0] * len(first)
    order: list[int] = []
    done = 0
    while len(order) < len(first):
        ready = [k for k, mask in enumerate(first) if not done >> k & 1 and not mask & ~done]
        order += ready
        done |= _bits(ready)
    for k in reversed(order):
        for j in range(len(first)):
            if first[k] >> j & 1:
                after[j] |= after[k] | 1 << k
    return after


def _sets(first: Sequence[int]) -> int:
    """How many sets of blocks can be done at some time; counted no further than just beyond `MOST_SETS`."""
    seen = {0}
    waiting = [0]
    for done in waiting:
        for k, mask in enumerate(first):
            if not done >> k & 1 and not mask & ~done and done | 1 << k not in seen:
                seen.add(done | 1 << k)
                waiting.append(done | 1 << k)
        if len(seen) > MOST_SETS:
            break
    return len(seen)


def _bits(numbers: Iterable[int]) -> int:
    found = 0
    for number in numbers:
        found |= 1 << number
    return found
