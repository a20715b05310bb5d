"""The order of the blocks: everything below comes first, and then whatever costs the knitter least time.

A chain is knitted in one go if all that lies below it can be done before. Chains that wait for each other (a border
that zigzags) are knitted in parts: as far as it goes, then the other one, then on.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from wedgework.bed import Side
from wedgework.formats.design import Costs
from wedgework.plan.edges import Style, row_error
from wedgework.plan.fit import Fitted, Outline, fit, outline_of
from wedgework.plan.regions import Chain
from wedgework.plan.strand import Strand, within_reach

__all__ = ["Arranged", "Wishes", "arrange"]


_UNEVEN = Fraction(1, 20 * row_error(1))
"""Minutes that a needle one row off is worth: three seconds, so that a whole block a row off costs as much as an end inside."""
_NOT_EXACT = Fraction(1, 4)
"""And that not every needle is exact: a little more than a free pass."""


DEEPEST, WIDEST = 4, 2000
"""How many parts ahead, and how many sequences of them, are looked at when chains wait for each other."""


@dataclass(frozen=True, slots=True)
class Wishes:
    """What the arrangement has to respect."""

    needles: int
    rows: int
    start: Side
    """Where the carriage stands before the first block."""
    home: Side
    strand_limit: int
    costs: Costs
    style: Style


@dataclass(frozen=True, slots=True)
class Arranged:
    """A block in its place in the order; `below` are the real heights of its needles when it begins."""

    chain: int
    part: int
    """0, or which part of its chain this is, from 1, when there are several."""
    yarn: str
    fitted: Fitted
    below: list[int]

    def height(self, place: int) -> int:
        """Real rows on a needle of this block when the block is done."""
        i = place - self.fitted.low
        return self.below[i] + self.fitted.leaves[i] - self.fitted.joins[i]

    @property
    def first_needle(self) -> int:
        """The place where the first pass begins."""
        run = self.fitted.knitting(self.fitted.first_row)
        return run[0] if self.fitted.start == "L" else run[1]

    @property
    def last_needle(self) -> int:
        """The place where the last pass ends, and its yarn hangs."""
        run = self.fitted.knitting(self.fitted.end_row - 1)
        return run[0] if self.fitted.end == "L" else run[1]

    @property
    def begins(self) -> Strand:
        """Where its yarn has to come from."""
        return Strand(self.first_needle, self.below[self.first_needle - self.fitted.low], self.fitted.start)

    @property
    def ends(self) -> Strand:
        """Where its yarn hangs afterwards."""
        return Strand(self.last_needle, self.height(self.last_needle), self.fitted.end)


@dataclass(slots=True)
class _State:
    """The bed between two blocks."""

    heights: list[int]
    progress: list[int]
    """The turn up to which each chain is knitted."""
    carriage: Side
    yarn: str | None = None
    strand: Strand | None = None
    fits: dict[tuple[int, int, int], tuple[Fitted, Fitted]] = field(default_factory=dict)
    """Fits found so far: chain, from turn, to turn -> begun from the left, from the right."""


def arrange(chains: Sequence[Chain], wishes: Wishes) -> list[Arranged]:
    """All chains in an order that can be knitted. Each is fitted to the needles as they will really be by then."""
    state = _State([0] * wishes.needles, [c.first_turn for c in chains], wishes.start)
    open_chains = set(range(len(chains)))
    parts = [0] * len(chains)
    order: list[Arranged] = []
    while open_chains:
        whole = [c for c in sorted(open_chains) if _reach(chains[c], state.progress, c) == chains[c].end_turn]
        if whole:
            number, fitted = _cheapest(chains, whole, state, wishes)
            end_turn = chains[number].end_turn
        else:
            number, end_turn = _part_that_frees(chains, open_chains, state, wishes)
            both = _fits(chains[number], end_turn, state, number, wishes)
            fitted = _better(both, chains[number].yarn, state, wishes)[1]
        done = end_turn == chains[number].end_turn
        if parts[number] or not done:
            parts[number] += 1
        below = state.heights[fitted.low : fitted.low + len(fitted.joins)]
        block = Arranged(number, parts[number], chains[number].yarn, fitted, below)
        order.append(block)
        for i, rows in enumerate(fitted.rows):
            state.heights[fitted.low + i] += rows
        state.progress[number] = end_turn
        state.carriage, state.yarn, state.strand = fitted.end, block.yarn, block.ends
        if done:
            open_chains.discard(number)
    return order


def _reach(chain: Chain, progress: Sequence[int], number: int) -> int:
    """The turn up to which a chain can be knitted now."""
    reach = chain.end_turn
    for other, turns in chain.waits.items():
        k = bisect_right(turns, max(progress[other], progress[number] - 1))
        if k < len(turns):
            reach = min(reach, turns[k])
    return reach


def _outline(chain: Chain, start: int, end: int) -> Outline:
    return outline_of(chain.runs[start - chain.first_turn : end - chain.first_turn], start)


def _fits(chain: Chain, end_turn: int, state: _State, number: int, wishes: Wishes) -> tuple[Fitted, Fitted]:
    """The chain, from where it stands to `end_turn`, begun from the left and from the right.

    All that lies below is done when this is asked, so the heights under it are final and the fit can be kept.
    """
    key = number, state.progress[number], end_turn
    if key not in state.fits:
        state.fits[key] = _new_fits(chain, end_turn, state, number, wishes)
    return state.fits[key]


def _new_fits(chain: Chain, end_turn: int, state: _State, number: int, wishes: Wishes) -> tuple[Fitted, Fitted]:
    shape = _outline(chain, state.progress[number], end_turn)
    heights = state.heights[shape.low : shape.high + 1]
    return fit(shape, heights, wishes.rows, "L", wishes.style), fit(shape, heights, wishes.rows, "R", wishes.style)


def _minutes(fitted: Fitted, yarn: str, state: _State, wishes: Wishes) -> Fraction:
    """What it costs to begin this block now, in the person's minutes; how it ends is counted with whatever follows."""
    run = fitted.knitting(fitted.first_row)
    place = run[0] if fitted.start == "L" else run[1]
    costs = wishes.costs
    free = costs.free_pass if fitted.start != state.carriage else Fraction(0)
    if yarn == state.yarn and state.strand is not None:
        begins = Strand(place, state.heights[place], fitted.start)
        if within_reach(state.strand, begins, wishes.strand_limit):
            return free
    at_selvedge = place in (0, wishes.needles - 1)
    tail = costs.end_at_selvedge if at_selvedge else costs.inside_start + costs.end_inside
    last = fitted.knitting(fitted.end_row - 1)
    ends_at = last[0] if fitted.end == "L" else last[1]
    cut = costs.end_at_selvedge if ends_at in (0, wishes.needles - 1) else costs.end_inside
    return free + costs.yarn_change + tail + cut


def _better(both: Iterable[Fitted], yarn: str, state: _State, wishes: Wishes) -> tuple[Fraction, Fitted]:
    """The cheaper of two start sides, in minutes; needles left a row off count as time too, and so does leaving home."""
    priced = [
        (
            _minutes(fitted, yarn, state, wishes) + fitted.uneven * _UNEVEN + bool(fitted.uneven) * _NOT_EXACT,
            fitted.start != wishes.home,
            k,
            fitted,
        )
        for k, fitted in enumerate(both)
    ]
    minutes, _, _, fitted = min(priced, key=lambda row: row[:3])
    return minutes, fitted


def _cheapest(chains: Sequence[Chain], whole: Sequence[int], state: _State, wishes: Wishes) -> tuple[int, Fitted]:
    """The chain to knit next. Among equals the lowest, then the one nearest the home side: a rhythm to remember."""
    best: tuple[tuple[Fraction, int, int], int, Fitted] | None = None
    for c in whole:
        minutes, fitted = _better(_fits(chains[c], chains[c].end_turn, state, c, wishes), chains[c].yarn, state, wishes)
        key = (minutes, chains[c].first_turn, _from_home(chains[c], wishes))
        if best is None or key < best[0]:
            best = key, c, fitted
    if best is None:
        raise AssertionError("nothing to choose from")
    return best[1], best[2]


def _from_home(chain: Chain, wishes: Wishes) -> int:
    """How far a chain begins from the home side; only for comparing."""
    first, last = chain.runs[0]
    return first if wishes.home == "L" else -last


def _part_that_frees(chains: Sequence[Chain], waiting: Iterable[int], state: _State, wishes: Wishes) -> tuple[int, int]:
    """When every chain waits for another: which one to knit in part, and up to which turn.

    The fewest parts after which some chain can be knitted to its end; among those the ones without crumbs, then the cheapest.
    Going as far as possible never hurts, so only the sequence of chains is searched, and no deeper than `DEEPEST`.
    """
    open_chains = sorted(waiting)
    # Chains advanced so far, progress, smallest advance in turns.
    level: list[tuple[tuple[int, ...], tuple[int, ...], int]] = [((), tuple(state.progress), 1 << 30)]
    firsts: dict[int, int] = {}
    for _ in range(DEEPEST):
        found = []
        for taken, progress, smallest in level:
            for c in open_chains:
                reach = _reach(chains[c], progress, c)
                if c in taken or reach <= progress[c]:
                    continue
                after = (*progress[:c], reach, *progress[c + 1 :])
                found.append(((*taken, c), after, min(smallest, reach - progress[c])))
        if not found:
            break
        for taken, after, smallest in found:
            moved = taken[-1]
            whole = after[moved] == chains[moved].end_turn or any(
                moved in chains[c].waits and after[c] < chains[c].end_turn == _reach(chains[c], after, c)
                for c in open_chains
                if c not in taken
            )
            if whole:
                firsts[taken[0]] = max(firsts.get(taken[0], 0), smallest)
        level = found[:WIDEST]
        if firsts:
            break
    if not firsts:
        firsts = {taken[0]: smallest for taken, _, smallest in level}
    if not firsts:
        raise AssertionError("no chain can go on, though cells always lie on cells")
    best = max(firsts.values())
    stops = [
        (c, _halfway(chains[c], _reach(chains[c], state.progress, c), state.progress[c])) for c, n in firsts.items() if n == best
    ]

    def price(stop: tuple[int, int]) -> tuple[Fraction, int, int]:
        c, turn = stop
        minutes, _ = _better(_fits(chains[c], turn, state, c, wishes), chains[c].yarn, state, wishes)
        return minutes, chains[c].first_turn, _from_home(chains[c], wishes)

    return min(stops, key=price)


def _halfway(chain: Chain, reach: int, progress: int) -> int:
    """Where to stop a part that can go no further than `reach`, because there an edge turns back over another block.

    Since that edge last moved the border has been standing. Stopping halfway lets the next part take the other half,
    so that neither stands long enough for a slit.
    """
    runs, origin = chain.runs, chain.first_turn
    first, last = runs[reach - origin]
    before = runs[reach - 1 - origin]
    moved = progress
    for side, turns_back in ((0, first < before[0]), (1, last > before[1])):
        if turns_back:
            turn = reach - 1
            while turn > progress and runs[turn - origin][side] == runs[turn - 1 - origin][side]:
                turn -= 1
            moved = max(moved, turn)
    return max((moved + reach + 1) // 2, progress + 1)
