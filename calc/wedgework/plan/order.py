"""The best order and the best start sides for a given division into blocks.

A search over the states between two blocks: which blocks are done, the real height of every needle, where the carriage
stands, which yarn is in the feeder and where each resting one hangs. The cheapest state goes on first, its price so far plus
what the rest must cost at the least (A*, Hart, Nilsson and Raphael 1968; from memory). So the first finished order is a best one.
Beyond `EXACT` blocks there is no search, since one that gives up costs more than it finds; the order at hand is kept.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from heapq import heappop, heappush

from wedgework.bed import Side
from wedgework.plan.arranged import Arranged, Wishes
from wedgework.plan.fit import Fitted, Outline, fit
from wedgework.plan.price import Prices
from wedgework.plan.strand import HEIGHT_LIMIT, Strand, within_reach

__all__ = ["EXACT", "Around", "Piece", "Searched", "best_order"]

EXACT = 12
"""Up to so many blocks a best order is searched for."""
NODES = 10_000
"""After so many states the search gives up also below that: a few pictures have too many orders of nearly one price."""

_ZERO = Fraction(0)


@dataclass(frozen=True, slots=True)
class Piece:
    """A block before it has a place in the order."""

    chain: int
    part: int
    yarn: str
    shape: Outline
    rank: tuple[int, int]
    """Lowest first, then nearest the home side: among equals the order that a person would take."""


@dataclass(frozen=True, slots=True)
class Around:
    """Base rows below and above: their yarn (None: that of the block beside them) and whether there are any."""

    below: bool
    yarn_below: str | None
    above: bool
    yarn_above: str | None


@dataclass(frozen=True, slots=True)
class Searched:
    """What the search found."""

    order: list[Arranged] | None
    """None where it gave up and the order at hand stays."""
    minutes: Fraction
    """The price of that order, or what any order costs at the least where the search gave up."""
    nodes: int


_Resting = tuple[tuple[str, Strand], ...]


@dataclass(slots=True)
class _State:
    done: int
    heights: tuple[int, ...]
    carriage: Side
    yarn: str | None
    strand: Strand | None
    resting: _Resting
    minutes: Fraction
    last: int = -1
    """The piece whose yarn is in the feeder."""
    before: _State | None = None
    block: Arranged | None = None

    def key(self) -> tuple[int, tuple[int, ...], Side, str | None, Strand | None, _Resting]:
        return self.done, self.heights, self.carriage, self.yarn, self.strand, self.resting


@dataclass(slots=True)
class _Search:
    pieces: Sequence[Piece]
    wishes: Wishes
    around: Around
    mast: int
    prices: Prices
    below: list[int]
    """For each piece the pieces under it, as bits."""
    begins: list[Fraction]
    """What beginning each piece costs at the least."""
    cuts: list[Fraction]
    """What putting its yarn away costs at the least."""
    fits: dict[tuple[int, Side, tuple[int, ...]], Fitted] = field(default_factory=dict)

    def fitted(self, number: int, side: Side, heights: tuple[int, ...]) -> Fitted:
        shape = self.pieces[number].shape
        under = heights[shape.low : shape.high + 1]
        key = number, side, under
        if key not in self.fits:
            self.fits[key] = fit(shape, under, self.wishes.rows, side, self.wishes.style)
        return self.fits[key]

    def to_come(self, state: _State) -> Fraction:
        """What everything that is left costs at the least."""
        total = self.cuts[state.last] if state.last >= 0 and state.yarn is not None else _ZERO
        for k in range(len(self.pieces)):
            if not state.done >> k & 1:
                total += self.begins[k] + self.cuts[k]
        return total


def best_order(pieces: Sequence[Piece], wishes: Wishes, around: Around, mast: int, nodes: int = NODES) -> Searched:
    """A cheapest order of `pieces`; after `nodes` states none, only what any order costs at the least."""
    if len(pieces) > EXACT:
        return Searched(None, _ZERO, 0)
    search = _prepared(pieces, wishes, around, mast)
    everything = (1 << len(pieces)) - 1
    home = wishes.start
    start = Strand(0 if home == "L" else wishes.needles - 1, 0, home) if around.below else None
    root = _State(0, (0,) * wishes.needles, home, around.yarn_below if around.below else None, start, (), _ZERO)
    heap: list[tuple[Fraction, int, tuple[int, int], int, _State]] = []
    best: dict[object, Fraction] = {}
    count = looked = 0
    heappush(heap, (search.to_come(root), 0, (0, 0), count, root))
    while heap:
        bound, _, _, _, state = heappop(heap)
        if state.done == everything and state.yarn is None and not state.resting:
            return Searched(_path(state), state.minutes, looked)
        if best.get(state.key(), state.minutes) < state.minutes:
            continue
        looked += 1
        if looked > nodes:
            return Searched(None, bound, looked)
        for after, rank in _after(search, state, everything):
            key = after.key()
            if after.minutes < best.get(key, after.minutes + 1):
                best[key] = after.minutes
                count += 1
                heappush(heap, (after.minutes + search.to_come(after), -after.done.bit_count(), rank, count, after))
    raise AssertionError("every division into blocks has an order")


def _prepared(pieces: Sequence[Piece], wishes: Wishes, around: Around, mast: int) -> _Search:
    below = [0] * len(pieces)
    for place in range(wishes.needles):
        column = sorted(
            (piece.shape.enter[place - piece.shape.low], k)
            for k, piece in enumerate(pieces)
            if piece.shape.low <= place <= piece.shape.high
        )
        for (_, under), (_, over) in itertools.pairwise(column):
            below[over] |= 1 << under
    prices = Prices(wishes.costs, wishes.needles)
    begins, cuts = _least(pieces, below, wishes, around, prices)
    return _Search(pieces, wishes, around, mast, prices, below, begins, cuts)


def _least(
    pieces: Sequence[Piece], below: Sequence[int], wishes: Wishes, around: Around, prices: Prices
) -> tuple[list[Fraction], list[Fraction]]:
    """What beginning and ending each piece costs at the least: nothing where a yarn might hang near, for sure otherwise.

    A fit may move the ends of a piece by a few needles and rows; `_SLACK_NEEDLES` and `_SLACK_ROWS` cover that.
    """
    count, last = len(pieces), wishes.needles - 1
    under = list(below)
    for _ in range(count):
        under = [mask | _joined(under, mask) for mask in under]
    begins, cuts = [], []
    for k, piece in enumerate(pieces):
        first, start = piece.shape.first_run, 2 * piece.shape.enter[piece.shape.first_run[0] - piece.shape.low]
        top, end = piece.shape.last_run, 2 * piece.shape.leave[piece.shape.last_run[0] - piece.shape.low]
        base_yarn = around.yarn_below in (None, piece.yarn)
        from_base = around.below and base_yarn and start <= _REACH_ROWS and _near(first, (0, 0), (last, last), wishes)
        to_base = around.above and end >= wishes.rows - _REACH_ROWS and _near(top, (0, 0), (last, last), wishes)
        source = sink = False
        for j, other in enumerate(pieces):
            if j == k or other.yarn != piece.yarn:
                continue
            its_top, its_end = other.shape.last_run, 2 * other.shape.leave[other.shape.last_run[0] - other.shape.low]
            its_first, its_start = other.shape.first_run, 2 * other.shape.enter[other.shape.first_run[0] - other.shape.low]
            source |= not under[j] >> k & 1 and abs(its_end - start) <= _REACH_ROWS and _near(first, its_top, its_top, wishes)
            sink |= not under[k] >> j & 1 and abs(its_start - end) <= _REACH_ROWS and _near(top, its_first, its_first, wishes)
        begins.append(_ZERO if source or from_base else min(prices.begin(p) for p in _ends(first, last)))
        cuts.append(_ZERO if sink or to_base else min(prices.cut(p) for p in _ends(top, last)))
    return begins, cuts


_SLACK_NEEDLES, _SLACK_ROWS = 4, 6
_REACH_ROWS = HEIGHT_LIMIT + _SLACK_ROWS


def _joined(masks: Sequence[int], chosen: int) -> int:
    """Everything under the chosen pieces."""
    found = 0
    for k, mask in enumerate(masks):
        if chosen >> k & 1:
            found |= mask
    return found


def _near(run: tuple[int, int], one: tuple[int, int], other: tuple[int, int], wishes: Wishes) -> bool:
    """Whether a strand might reach from one of two runs to this one."""
    reach = wishes.strand_limit + 1 + _SLACK_NEEDLES
    return any(run[0] - reach <= b and a <= run[1] + reach for a, b in (one, other))


def _ends(run: tuple[int, int], last: int) -> set[int]:
    """Places where a run may begin or end, one of each kind: inside, and at a selvedge that it comes near."""
    found = {1} if last > 1 else {0}
    if run[0] <= _SLACK_NEEDLES:
        found.add(0)
    if run[1] >= last - _SLACK_NEEDLES:
        found.add(last)
    return found


def _after(search: _Search, state: _State, everything: int) -> list[tuple[_State, tuple[int, int]]]:
    """The states that can follow, each with the rank of the block that was knitted."""
    if state.done == everything:
        return [(after, (0, 0)) for after in _closed(search, state)]
    found = []
    for k, piece in enumerate(search.pieces):
        if state.done >> k & 1 or search.below[k] & ~state.done:
            continue
        sides: tuple[Side, Side] = ("L", "R")
        for side in sides:
            fitted = search.fitted(k, side, state.heights)
            shape = piece.shape
            under = state.heights[shape.low : shape.high + 1]
            block = Arranged(piece.chain, piece.part, piece.yarn, fitted, list(under))
            grown = tuple(height + rows for height, rows in zip(under, fitted.rows, strict=True))
            heights = (*state.heights[: shape.low], *grown, *state.heights[shape.high + 1 :])
            free = search.prices.free() if side != state.carriage else _ZERO
            minutes = state.minutes + free + search.prices.uneven(fitted.uneven)
            for price, resting in _fed(search, state, piece.yarn, block.begins):
                found.append(
                    (
                        _State(
                            state.done | 1 << k,
                            heights,
                            fitted.end,
                            piece.yarn,
                            block.ends,
                            resting,
                            minutes + price,
                            k,
                            state,
                            block,
                        ),
                        piece.rank,
                    )
                )
    return found


def _fed(search: _Search, state: _State, yarn: str, begins: Strand) -> list[tuple[Fraction, _Resting]]:
    """Ways to bring `yarn` to where it begins: the price, and which yarns rest then."""
    prices, limit = search.prices, search.wishes.strand_limit
    hangs, resting = state.strand, dict(state.resting)
    feeder = state.yarn if state.yarn is not None else (yarn if hangs is not None else None)
    if hangs is None or feeder is None:
        return [(prices.begin(begins.place), ())]
    if feeder == yarn:
        if within_reach(hangs, begins, limit):
            return [(_ZERO, state.resting)]
        return [(prices.cut(hangs.place) + prices.begin(begins.place), state.resting)]
    if yarn in resting:
        if not within_reach(resting[yarn], begins, limit):
            return []  # it was left hanging for this block, and does not reach
        taken = prices.again()
        del resting[yarn]
    else:
        taken = prices.begin(begins.place)
    ways = [(prices.cut(hangs.place) + taken, _sorted(resting))]
    if len(resting) + 2 <= search.mast:
        ways.append((taken, _sorted({**resting, feeder: hangs})))
    return ways


def _sorted(resting: dict[str, Strand]) -> _Resting:
    return tuple(sorted(resting.items(), key=lambda item: item[0]))


def _closed(search: _Search, state: _State) -> list[_State]:
    """The end of the piece: rows over all needles where there are any, and the last cut."""
    if state.yarn is None or state.strand is None:
        return []
    around, needles = search.around, search.wishes.needles
    ways: list[tuple[Fraction, _Resting]] = [(_ZERO, state.resting)]
    hangs = state.strand
    if around.above:
        edge = 0 if state.carriage == "L" else needles - 1
        begins = Strand(edge, state.heights[edge], state.carriage)
        ways = _fed(search, state, around.yarn_above or state.yarn, begins)
        hangs = begins
    return [
        _State(
            state.done,
            state.heights,
            state.carriage,
            None,
            None,
            (),
            state.minutes + price + search.prices.cut(hangs.place),
            -1,
            state,
        )
        for price, resting in ways
        if not resting
    ]


def _path(state: _State | None) -> list[Arranged]:
    found = []
    while state is not None:
        if state.block is not None:
            found.append(state.block)
        state = state.before
    return found[::-1]
