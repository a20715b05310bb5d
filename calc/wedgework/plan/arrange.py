"""The order of the blocks: everything below comes first, and then whatever costs the knitter least time.

A chain is knitted in one go if all that lies below it can be done before. Chains that wait for each other (a border
that zigzags) are knitted in parts: as far as it goes, then the other one, then on.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace

from wedgework.bed import Side
from wedgework.plan.arranged import Arranged, Wishes
from wedgework.plan.division import Piece
from wedgework.plan.fit import Fits, Fitted, Outline, outline_of
from wedgework.plan.ground import Ground
from wedgework.plan.parts import parts_that_free, reach
from wedgework.plan.price import Prices
from wedgework.plan.regions import Chain
from wedgework.plan.strand import Strand, within_reach

__all__ = ["arrange"]


@dataclass(slots=True)
class _State:
    """The bed between two blocks."""

    heights: list[int]
    progress: list[int]
    """The turn up to which each chain is knitted."""
    carriage: Side
    prices: Prices
    fits: Fits
    ground: Ground
    wishes: Wishes
    yarn: str | None = None
    strand: Strand | None = None
    outlines: dict[tuple[int, int, int], Outline] = field(default_factory=dict)
    """Chain, from turn, to turn -> the outline of that part."""


def arrange(chains: Sequence[Chain], wishes: Wishes, fits: Fits, ground: Ground) -> tuple[list[Arranged], list[Piece]]:
    """All chains in an order that can be knitted, and the division into blocks that it makes.

    Each block is fitted to the needles as they will really be by then.
    """
    prices = Prices(wishes.costs, wishes.needles)
    progress = [c.first_turn for c in chains]
    state = _State(list(ground.heights), progress, ground.carriage, prices, fits, ground, wishes, ground.yarn, ground.strand)
    open_chains = set(range(len(chains)))
    parts = [0] * len(chains)
    order: list[Arranged] = []
    pieces: list[Piece] = []
    while open_chains:
        whole = [c for c in sorted(open_chains) if reach(chains, state.progress, c) == chains[c].end_turn]
        if whole:
            number, fitted = _cheapest(chains, whole, state, wishes)
            end_turn = chains[number].end_turn
        else:
            stops = parts_that_free(chains, open_chains, state.progress)
            number, end_turn = min(stops, key=lambda stop: _part_price(chains[stop[0]], stop, state, wishes))
            fitted = _better(_both(chains[number], end_turn, state, number), chains[number].yarn, state, wishes)[1]
        done = end_turn == chains[number].end_turn
        if parts[number] or not done:
            parts[number] += 1
        below = state.heights[fitted.low : fitted.low + len(fitted.joins)]
        shape = _outline(chains[number], number, state.progress[number], end_turn, state)
        block = Arranged(number, parts[number], chains[number].yarn, fitted, below, shape.under)
        rank = (state.progress[number], _from_home(chains[number], wishes))
        pieces.append(Piece(number, parts[number], block.yarn, shape, rank))
        order.append(block)
        for i, rows in enumerate(fitted.rows):
            state.heights[fitted.low + i] += rows
        state.progress[number] = end_turn
        state.carriage, state.yarn, state.strand = fitted.end, block.yarn, block.ends
        if done:
            open_chains.discard(number)
    return order, pieces


def _outline(chain: Chain, number: int, start: int, end: int, state: _State) -> Outline:
    key = number, start, end
    if key not in state.outlines:
        shape = outline_of(chain.runs[start - chain.first_turn : end - chain.first_turn], start, state.wishes.shaping)
        if start == chain.first_turn and chain.yarn == state.ground.yarn:
            shape = _going_on(shape, state.ground.together)
        state.outlines[key] = shape
    return state.outlines[key]


def _going_on(shape: Outline, together: tuple[int, int] | None) -> Outline:
    """The outline of a block that is being knitted when planning begins: the one that has most of the needles that knit."""
    if together is None:
        return shape
    first, last = max(together[0], shape.first_run[0]), min(together[1], shape.first_run[1])
    if 2 * (last - first + 1) <= together[1] - together[0] + 1:
        return shape
    return replace(shape, together=(first, last))


def _both(chain: Chain, end_turn: int, state: _State, number: int) -> tuple[Fitted, Fitted]:
    """The chain, from where it stands to `end_turn`, begun from the left and from the right."""
    shape = _outline(chain, number, state.progress[number], end_turn, state)
    under = tuple(state.heights[shape.low : shape.high + 1])
    return state.fits.of(shape, under, "L"), state.fits.of(shape, under, "R")


def _price(fitted: Fitted, yarn: str, state: _State, wishes: Wishes) -> int:
    """What it costs to begin this block now; how it ends is counted with whatever follows. Needles left a row off count too."""
    place, prices = fitted.first_needle, state.prices
    price = prices.uneven(fitted.uneven) + (prices.free if fitted.start != state.carriage else 0)
    if yarn == state.yarn and state.strand is not None:
        begins = Strand(place, state.heights[place], fitted.start)
        if within_reach(state.strand, begins, wishes.strand_limit):
            return price
    return price + prices.begin(place) + prices.cut(fitted.last_needle)


def _better(both: Iterable[Fitted], yarn: str, state: _State, wishes: Wishes) -> tuple[int, Fitted]:
    """The cheaper of two start sides, with its price; of equals the one at home."""
    priced = [(_price(fitted, yarn, state, wishes), fitted.start != wishes.start, k, fitted) for k, fitted in enumerate(both)]
    price, _, _, fitted = min(priced, key=lambda row: row[:3])
    return price, fitted


def _cheapest(chains: Sequence[Chain], whole: Sequence[int], state: _State, wishes: Wishes) -> tuple[int, Fitted]:
    """The chain to knit next. Among equals the lowest, then the one nearest the home side: a rhythm to remember."""
    best: tuple[tuple[int, int, int], int, Fitted] | None = None
    for c in whole:
        price, fitted = _better(_both(chains[c], chains[c].end_turn, state, c), chains[c].yarn, state, wishes)
        key = (price, chains[c].first_turn, _from_home(chains[c], wishes))
        if best is None or key < best[0]:
            best = key, c, fitted
    if best is None:
        raise AssertionError("nothing to choose from")
    return best[1], best[2]


def _from_home(chain: Chain, wishes: Wishes) -> int:
    """How far a chain begins from the home side; only for comparing."""
    first, last = chain.runs[0]
    return first if wishes.start == "L" else -last


def _part_price(chain: Chain, stop: tuple[int, int], state: _State, wishes: Wishes) -> tuple[int, int, int]:
    """What it costs to begin a part of a chain now; among equals the lowest, then the one nearest the home side."""
    number, turn = stop
    price, _ = _better(_both(chain, turn, state, number), chain.yarn, state, wishes)
    return price, chain.first_turn, _from_home(chain, wishes)
