"""The best order and the best start sides for a given division into blocks.

A search over the states between two blocks: which blocks are done, the real height of every needle, where the carriage
stands, which yarn is in the feeder and where each resting one hangs. Few blocks: the cheapest state goes on first, its price
so far plus what the rest must cost at the least (A*, Hart, Nilsson and Raphael 1968; from memory), so the first finished order
is a best one; of equals, the one with the shallower folds. Many blocks: from the states with equally many blocks done only the
best few go on (a beam); how many follows from the number of blocks, never from a clock. What no order can undercut is told
with it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from heapq import heappop, heappush

from wedgework.bed import Side
from wedgework.plan.arranged import Arranged, Wishes, steepest
from wedgework.plan.bound import Bound
from wedgework.plan.division import Division, Piece
from wedgework.plan.fit import Fits
from wedgework.plan.ground import Around, Ground
from wedgework.plan.price import Prices
from wedgework.plan.strand import Strand, within_reach

__all__ = ["EXACT", "Searched", "best_order"]

EXACT = 12
"""Up to so many blocks a best order is searched for."""
NODES = 80_000
"""States that the exact search may look at before it gives up and the beam's order stays."""
WIDEST, NARROWEST = 10_000, 4
"""How many states the beam follows at a time: `WIDEST` over the square of the number of blocks, not fewer than `NARROWEST`."""
ALONG = 400
"""How many are followed along an order that is given: only the ways to treat the yarns differ."""
RHYTHM = Fraction(97, 100)
"""Beyond `EXACT` the first order, a rhythm that one can remember, is kept unless another costs less than this part of it."""


@dataclass(frozen=True, slots=True)
class Searched:
    """What the search found. Prices are in minutes of the person's time, evenness counted in."""

    order: list[Arranged]
    minutes: Fraction
    at_least: Fraction
    """What any order of these blocks costs at the least; the same as `minutes` where the search came to its end."""
    closing: Side | None = None
    """Where the carriage stands before the rows above the picture; None where there is nothing to choose."""


_Resting = tuple[tuple[str, Strand], ...]


class _Bed:
    """The real heights of all needles between two blocks, with what has been found out about going on from there."""

    __slots__ = ("after", "heights", "keys")

    def __init__(self, heights: tuple[int, ...]) -> None:
        self.heights = heights
        self.after: dict[tuple[int, Side], _Knitted] = {}
        """What a block from a side makes of it."""
        self.keys: dict[int, int] = {}
        """For each set of done blocks a number, the same for all beds that are alike in what still matters."""


@dataclass(frozen=True, slots=True)
class _Knitted:
    """A block knitted on a bed."""

    block: Arranged
    bed: _Bed
    begins: Strand
    ends: Strand
    uneven: int
    """Price of the needles that it leaves off their height."""
    fold: int
    """The greatest difference between neighbouring needles around it afterwards."""


@dataclass(slots=True)
class _State:
    done: int
    bed: _Bed
    carriage: Side
    yarn: str | None
    strand: Strand | None
    resting: _Resting
    price: int
    fold: int
    """The greatest difference between neighbouring needles between two blocks so far."""
    last: int = -1
    """The block whose yarn is in the feeder."""
    before: _State | None = None
    block: Arranged | None = None


@dataclass(frozen=True, slots=True)
class _Move:
    """A block that may come next, not carried out yet."""

    state: _State
    k: int
    knitted: _Knitted
    resting: _Resting
    price: int


class _Search:
    def __init__(self, division: Division, wishes: Wishes, around: Around, mast: int, fits: Fits, ground: Ground) -> None:
        self._fits = fits
        self.division, self.wishes, self.around, self.mast = division, wishes, around, mast
        self.prices = Prices(wishes.costs, wishes.needles)
        self.bound = Bound(division, wishes, around, mast, self.prices, ground)
        self.everything = (1 << len(division.pieces)) - 1
        self._last_blocks = _last_blocks(division.pieces, wishes.needles)
        self._beds: dict[tuple[int, ...], _Bed] = {}
        self._alike: dict[tuple[int, ...], int] = {}

    def root(self, ground: Ground) -> _State:
        return _State(0, self._bed(ground.heights), ground.carriage, ground.yarn, ground.strand, (), 0, 0)

    def _bed(self, heights: tuple[int, ...]) -> _Bed:
        found = self._beds.get(heights)
        if found is None:
            found = self._beds[heights] = _Bed(heights)
        return found

    def key(self, state: _State) -> tuple[object, ...]:
        """What of a state matters for what is still to come: not the heights of needles on which nothing more is knitted."""
        bed, done = state.bed, state.done
        number = bed.keys.get(done)
        if number is None:
            heights = tuple(h if last & ~done else -1 for h, last in zip(bed.heights, self._last_blocks, strict=True))
            number = bed.keys[done] = self._alike.setdefault(heights, len(self._alike))
        return done, number, state.carriage, state.yarn, state.strand, state.resting

    def knitted(self, bed: _Bed, k: int, side: Side) -> _Knitted:
        """Block k begun from `side` on this bed."""
        found = bed.after.get((k, side))
        if found is None:
            found = bed.after[k, side] = self._newly_knitted(bed, k, side)
        return found

    def _newly_knitted(self, bed: _Bed, k: int, side: Side) -> _Knitted:
        piece, heights = self.division.pieces[k], bed.heights
        low, high = piece.shape.low, piece.shape.high + 1
        under = heights[low:high]
        fitted = self._fits.of(piece.shape, under, side)
        grown = [height + rows for height, rows in zip(under, fitted.rows, strict=True)]
        after = (*heights[:low], *grown, *heights[high:])
        block = Arranged(piece.chain, piece.part, piece.yarn, fitted, list(under), piece.shape.under, self.division.ids[k])
        fold = steepest(after[max(low - 1, 0) : high + 1])
        return _Knitted(block, self._bed(after), block.begins, block.ends, self.prices.uneven(fitted.uneven), fold)

    def to_come(self, state: _State) -> int:
        if state.done == self.everything and state.yarn is None:
            return 0
        return self.bound.to_come(state.done, state.last)

    def moves(self, state: _State, chosen: tuple[int, Side] | None = None) -> list[_Move]:
        """All blocks that can come next, from either side, with each way to treat the yarns; or only the `chosen` one."""
        found = []
        for k, first in enumerate(self.division.first):
            if state.done >> k & 1 or first & ~state.done or (chosen is not None and k != chosen[0]):
                continue
            for side in self.division.sides[k] if chosen is None else (chosen[1],):
                knitted = self.knitted(state.bed, k, side)
                price = state.price + knitted.uneven + (self.prices.free if side != state.carriage else 0)
                for more, resting in self._fed(state, knitted.block.yarn, knitted.begins):
                    found.append(_Move(state, k, knitted, resting, price + more))
        return found

    def after(self, move: _Move) -> _State:
        state, knitted = move.state, move.knitted
        return _State(
            state.done | 1 << move.k,
            knitted.bed,
            knitted.block.fitted.end,
            knitted.block.yarn,
            knitted.ends,
            move.resting,
            move.price,
            max(state.fold, knitted.fold),
            move.k,
            state,
            knitted.block,
        )

    def _fed(self, state: _State, yarn: str, begins: Strand) -> list[tuple[int, _Resting]]:
        """Ways to bring `yarn` to where it begins: the price, and which yarns rest then."""
        prices, limit = self.prices, self.wishes.strand_limit
        hangs = state.strand
        feeder = state.yarn if state.yarn is not None else (yarn if hangs is not None else None)
        if hangs is None or feeder is None:
            return [(prices.begin(begins.place), ())]
        if feeder == yarn:
            if within_reach(hangs, begins, limit):
                return [(0, state.resting)]
            return [(prices.cut(hangs.place) + prices.begin(begins.place), state.resting)]
        resting = dict(state.resting)
        if yarn in resting:
            if not within_reach(resting.pop(yarn), begins, limit):
                return []  # it was left hanging for this block, and does not reach
            taken = prices.again
        else:
            taken = prices.begin(begins.place)
        ways = [(prices.cut(hangs.place) + taken, _sorted(resting))]
        if len(resting) + 2 <= self.mast:
            ways.append((taken, _sorted({**resting, feeder: hangs})))
        return ways

    def closed(self, state: _State) -> list[_State]:
        """The end of the piece: rows over all needles where there are any, and the last cut."""
        if state.yarn is None or state.strand is None:
            return []
        if not self.around.above:
            return [] if state.resting else [self._closed(state, self.prices.cut(state.strand.place), state.carriage)]
        found = []
        for side in ("L", "R"):
            # From the other side it takes a pass without yarn, which may save a cut: the yarn may hang at that selvedge.
            edge = 0 if side == "L" else self.wishes.needles - 1
            begins = Strand(edge, state.bed.heights[edge], side)
            across = self.prices.free if side != state.carriage else 0
            for price, resting in self._fed(state, self.around.yarn_above or state.yarn, begins):
                if not resting:
                    found.append(self._closed(state, across + price + self.prices.cut(edge), side))
        return found

    @staticmethod
    def _closed(state: _State, price: int, side: Side) -> _State:
        return _State(state.done, state.bed, side, None, None, (), state.price + price, state.fold, -1, state)


def _last_blocks(pieces: Sequence[Piece], needles: int) -> list[int]:
    """For each needle the block that is knitted last on it, as a bit; at the selvedges one more, for the rows above."""
    latest = [(-1, 0)] * needles
    for k, piece in enumerate(pieces):
        for place, turn in enumerate(piece.shape.enter, piece.shape.low):
            latest[place] = max(latest[place], (turn, 1 << k))
    bits = [bit for _, bit in latest]
    for edge in (0, -1):
        bits[edge] |= 1 << len(pieces)
    return bits


def _sorted(resting: dict[str, Strand]) -> _Resting:
    return tuple(sorted(resting.items(), key=lambda item: item[0]))


def best_order(
    division: Division,
    wishes: Wishes,
    around: Around,
    mast: int,
    fits: Fits,
    ground: Ground,
    first: Sequence[tuple[int, Side]] = (),
    nodes: int = NODES,
) -> Searched:
    """A cheapest order of the blocks; for more than `EXACT`, or after `nodes` states, a good one and what none undercuts.

    `first`, where it is given, is an order at hand: blocks by their number, with their start sides.
    """
    search = _Search(division, wishes, around, mast, fits, ground)
    root = search.root(ground)
    found, at_least = _beam(search, root), search.to_come(root)
    if len(division.pieces) <= EXACT:
        exact = _cheapest(search, root, found, nodes)
        found, at_least = exact.state, exact.at_least
    elif first and division.free:
        at_hand = _along(search, root, first)
        found = at_hand if found.price >= at_hand.price * RHYTHM else found
    minutes = search.prices.minutes
    return Searched(_path(found), minutes(found.price), minutes(at_least), found.carriage if around.above else None)


@dataclass(frozen=True, slots=True)
class _Exact:
    state: _State
    at_least: int


def _cheapest(search: _Search, root: _State, beam: _State, nodes: int) -> _Exact:
    """The best state at the end of the piece, never worse than that of the beam."""
    heap: list[tuple[int, int, int, tuple[int, int], int, _State]] = []
    best: dict[object, tuple[int, int]] = {}
    most = beam.price
    count = looked = 0
    heappush(heap, (search.to_come(root), 0, 0, (0, 0), count, root))
    while heap:
        bound, _, _, _, _, state = heappop(heap)
        if state.done == search.everything and state.yarn is None:
            return _Exact(state, bound)
        own = state.price, state.fold
        if best.get(search.key(state), own) < own:
            continue
        looked += 1
        if looked > nodes:
            return _Exact(beam, bound)
        for after, rank in _followers(search, state):
            total = after.price + search.to_come(after)
            key = search.key(after)
            reached = after.price, after.fold
            if total <= most and (key not in best or reached < best[key]):
                best[key] = reached
                count += 1
                heappush(heap, (total, after.fold, -after.done.bit_count(), rank, count, after))
    raise AssertionError("the beam's own order is always found again")


def _followers(search: _Search, state: _State) -> Iterable[tuple[_State, tuple[int, int]]]:
    """The states that can follow, each with the rank of the block that was knitted."""
    if state.done == search.everything:
        return [(after, (0, 0)) for after in search.closed(state)]
    pieces = search.division.pieces
    return [(search.after(move), pieces[move.k].rank) for move in search.moves(state)]


def _beam(search: _Search, root: _State) -> _State:
    """A good state at the end of the piece: of those with equally many blocks done only the best few are followed."""
    pieces = search.division.pieces
    width = max(NARROWEST, WIDEST // len(pieces) ** 2)
    states = [root]
    for _ in pieces:
        states = _best_few(search, [move for state in states for move in search.moves(state)], width)
    ends = [end for state in states for end in search.closed(state)]
    return min(ends, key=lambda end: end.price)


def _along(search: _Search, root: _State, order: Sequence[tuple[int, Side]]) -> _State:
    """The best state at the end of the piece when the blocks come in this order, from these sides."""
    states = [root]
    for chosen in order:
        states = _best_few(search, [move for state in states for move in search.moves(state, chosen)], ALONG)
    return min((end for state in states for end in search.closed(state)), key=lambda end: end.price)


def _best_few(search: _Search, moves: Iterable[_Move], width: int) -> list[_State]:
    """The best of what the moves lead to; at least one in which no yarn is left hanging, so that there is always a way on."""
    pieces = search.division.pieces

    def worth(move: _Move) -> tuple[int, tuple[int, int]]:
        return move.price + search.bound.to_come(move.state.done | 1 << move.k, move.k), pieces[move.k].rank

    found: dict[object, _State] = {}
    plain: _State | None = None
    for move in sorted(moves, key=worth):
        if len(found) >= width and (plain is not None or move.resting):
            continue
        state = search.after(move)
        # Of states that differ in nothing but the heights of needles the best is enough: the others crowd the beam.
        key = state.done, state.carriage, state.last, state.resting
        if key not in found:
            found[key] = state
            plain = plain or (state if not state.resting else None)
    return list(found.values())


def _path(state: _State | None) -> list[Arranged]:
    found = []
    while state is not None:
        if state.block is not None:
            found.append(state.block)
        state = state.before
    return found[::-1]
