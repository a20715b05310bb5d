"""The order of the blocks is a best one: the search against every order, every start side, every choice of resting yarns.

The brute force below shares the fit of a block and the reach of a yarn with the planner, and nothing of the search.
"""

from __future__ import annotations

import itertools
import random
from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import product

import pytest

from pieces import diamond, drawn, piece
from wedgework.formats.design import Design, DrawnLayout, Shape
from wedgework.layout import grid_of, resolve
from wedgework.layout.checks import layout_problems
from wedgework.plan import plan_piece
from wedgework.plan.arrange import arrange
from wedgework.plan.arranged import Arranged, Wishes
from wedgework.plan.division import Piece, divided
from wedgework.plan.feed import Passage, feed
from wedgework.plan.fit import Fits, fit
from wedgework.plan.ground import Around, bare
from wedgework.plan.order import Searched, best_order
from wedgework.plan.piece import wishes_of
from wedgework.plan.price import Prices
from wedgework.plan.regions import chains_of
from wedgework.plan.strand import Strand, within_reach

MAST = 2
ROWS_AROUND = Around(True, None, True, None)


def division(design: Design) -> tuple[list[Piece], Wishes]:
    sizes = resolve(design)
    grid = grid_of(design, sizes).mirrored()
    wishes = wishes_of(design, sizes, grid)
    _, pieces = arrange(chains_of(grid), wishes, Fits(wishes.style), bare(wishes, ROWS_AROUND))
    return pieces, wishes


def orders(pieces: list[Piece]) -> Iterator[list[int]]:
    """Every order in which whatever lies below on any needle comes first."""

    def under(a: Piece, b: Piece) -> bool:
        shared = range(max(a.shape.low, b.shape.low), min(a.shape.high, b.shape.high) + 1)
        return any(a.shape.enter[p - a.shape.low] < b.shape.enter[p - b.shape.low] for p in shared)

    def grow(taken: list[int]) -> Iterator[list[int]]:
        if len(taken) == len(pieces):
            yield taken
        for k in range(len(pieces)):
            if k not in taken and all(j in taken for j in range(len(pieces)) if j != k and under(pieces[j], pieces[k])):
                yield from grow([*taken, k])

    return grow([])


def searched(pieces: list[Piece], wishes: Wishes) -> Searched:
    return best_order(
        divided(pieces, wishes.needles, ()), wishes, ROWS_AROUND, MAST, Fits(wishes.style), bare(wishes, ROWS_AROUND)
    )


def cheapest_by_trying_all(pieces: list[Piece], wishes: Wishes) -> Fraction:
    prices = Prices(wishes.costs, wishes.needles)
    best: int | None = None
    for order in orders(pieces):
        for sides in product("LR", repeat=len(order)):
            heights = [0] * wishes.needles
            blocks = []
            spent = 0
            carriage = wishes.start
            for k, side in zip(order, sides, strict=True):
                shape = pieces[k].shape
                under = heights[shape.low : shape.high + 1]
                fitted = fit(shape, under, side, wishes.style)  # type: ignore[arg-type]
                blocks.append(Arranged(0, 0, pieces[k].yarn, fitted, under, shape.under))
                for i, rows in enumerate(fitted.rows):
                    heights[shape.low + i] += rows
                spent += prices.uneven(fitted.uneven) + (prices.free if side != carriage else 0)
                carriage = fitted.end
            home = 0 if wishes.start == "L" else wishes.needles - 1
            passages = [(blocks[0].yarn, Strand(home, 0, wishes.start), Strand(home, 0, wishes.start))]
            passages += [(b.yarn, b.begins, b.ends) for b in blocks]
            for top in closings(heights, wishes):
                across = prices.free if top.side != carriage else 0
                if best is None or spent + across < best:
                    yarns = cheapest_yarns([*passages, (blocks[-1].yarn, top, top)], wishes, prices)
                    best = min(spent + across + yarns, spent + across + yarns if best is None else best)
    assert best is not None
    return prices.minutes(best)


def deepest(blocks: list[Arranged], needles: int) -> int:
    """The greatest difference between neighbouring needles between two blocks."""
    heights, found = [0] * needles, 0
    for block in blocks:
        for i in range(len(block.below)):
            heights[block.fitted.low + i] = block.height(block.fitted.low + i)
        found = max(found, max((abs(a - b) for a, b in itertools.pairwise(heights)), default=0))
    return found


def shallowest_of_the_cheapest(pieces: list[Piece], wishes: Wishes) -> int:
    """Over every order and every start side that costs the least: the shallowest deepest fold."""
    least = searched(pieces, wishes).minutes
    found = []
    for order in orders(pieces):
        for sides in product("LR", repeat=len(order)):
            heights, blocks = [0] * wishes.needles, []
            for k, side in zip(order, sides, strict=True):
                shape = pieces[k].shape
                under = heights[shape.low : shape.high + 1]
                fitted = fit(shape, under, side, wishes.style)  # type: ignore[arg-type]
                blocks.append(Arranged(0, 0, pieces[k].yarn, fitted, under, shape.under))
                for i, rows in enumerate(fitted.rows):
                    heights[shape.low + i] += rows
            if spent_on(blocks, wishes) == least:
                found.append(deepest(blocks, wishes.needles))
    return min(found)


def cheapest_yarns(passages: list[tuple[str, Strand, Strand]], wishes: Wishes, prices: Prices) -> int:
    """Every choice, at each change of yarn, of cutting the old yarn or letting it rest."""
    changes = len(passages) - 1
    best: int | None = None
    for rests in product((False, True), repeat=changes):
        spent: int | None = prices.cut(passages[-1][2].place)
        resting: dict[str, Strand] = {}
        for (old, _, hangs), (new, begins, _), rest in zip(passages, passages[1:], rests, strict=False):
            if spent is None:
                break
            if old == new:
                if within_reach(hangs, begins, wishes.strand_limit):
                    spent = None if rest else spent
                else:
                    spent = None if rest else spent + prices.cut(hangs.place) + prices.begin(begins.place)
                continue
            if new in resting:
                reaches = within_reach(resting.pop(new), begins, wishes.strand_limit)
                spent = spent + prices.again if reaches else None
            else:
                spent += prices.begin(begins.place)
            if spent is None:
                break
            if rest:
                resting[old] = hangs
                if len(resting) + 1 > MAST:
                    spent = None
            else:
                spent += prices.cut(hangs.place)
        if spent is not None and not resting:
            best = spent if best is None else min(best, spent)
    assert best is not None
    return best


def closings(heights: Sequence[int], wishes: Wishes) -> tuple[Strand, Strand]:
    """Where the rows above the picture may begin."""
    last = wishes.needles - 1
    return Strand(0, heights[0], "L"), Strand(last, heights[last], "R")


def spent_on(order: list[Arranged], wishes: Wishes) -> Fraction:
    """The price of an order with the yarn changes that the planner really makes."""
    prices = Prices(wishes.costs, wishes.needles)
    carriage, spent = wishes.start, 0
    for block in order:
        spent += prices.uneven(block.fitted.uneven) + (prices.free if block.fitted.start != carriage else 0)
        carriage = block.fitted.end
    heights = [0] * wishes.needles
    for block in order:
        for i in range(len(block.below)):
            heights[block.fitted.low + i] = block.height(block.fitted.low + i)
    home = 0 if wishes.start == "L" else wishes.needles - 1
    bottom = Strand(home, 0, wishes.start)
    passages = [Passage(order[0].yarn, bottom, bottom), *(Passage(b.yarn, b.begins, b.ends) for b in order)]
    ways = []
    for top in closings(heights, wishes):
        closed = [*passages, Passage(order[-1].yarn, top, top)]
        changes = feed(closed, wishes.strand_limit, MAST, prices)
        price = prices.cut(top.place) + (prices.free if top.side != carriage else 0)
        for before, after, change in zip(closed, closed[1:], changes[1:], strict=False):
            if change.away == "cut":
                price += prices.cut(before.ends.place)
            if change.thread and change.anew:
                price += prices.begin(after.begins.place)
            elif change.thread and before.yarn != after.yarn:
                price += prices.again
        ways.append(price)
    return prices.minutes(spent + min(ways))


def pictures(most: int, count: int, seed: int, least: int = 2) -> Iterator[tuple[list[Piece], Wishes]]:
    rnd = random.Random(seed)
    found = 0
    while found < count:
        shapes = tuple(
            Shape(
                rnd.choice("abc"), tuple((Fraction(rnd.randint(-3, 13), 10), Fraction(rnd.randint(-3, 13), 10)) for _ in range(3))
            )
            for _ in range(rnd.randint(1, 3 if least < 8 else 6))
        )
        design = piece(
            DrawnLayout(rnd.choice("abc"), shapes), rnd.randint(8, 30), rnd.randint(12, 60), start_side=rnd.choice("LR")
        )
        if layout_problems(design):
            continue
        pieces, wishes = division(design)
        if least <= len(pieces) <= most:
            found += 1
            yield pieces, wishes


def test_the_search_equals_trying_everything_up_to_five_blocks() -> None:
    for pieces, wishes in pictures(5, 300, seed=7):
        found = searched(pieces, wishes)
        assert found.minutes == found.at_least == cheapest_by_trying_all(pieces, wishes)


@pytest.mark.long
def test_the_search_equals_trying_everything_up_to_seven_blocks() -> None:
    for pieces, wishes in pictures(7, 100, seed=11):
        found = searched(pieces, wishes)
        assert found.minutes == found.at_least == cheapest_by_trying_all(pieces, wishes)


def test_the_yarn_changes_of_the_plan_cost_what_the_search_says() -> None:
    for pieces, wishes in pictures(9, 60, seed=5):
        found = searched(pieces, wishes)
        assert spent_on(found.order, wishes) == found.minutes


def test_deep_folds_break_ties() -> None:
    for pieces, wishes in pictures(4, 60, seed=17):
        assert deepest(searched(pieces, wishes).order, wishes.needles) == shallowest_of_the_cheapest(pieces, wishes)


def test_beyond_twelve_blocks_nothing_costs_less_than_the_bound_says() -> None:
    """The bound holds for the order that was found, for the first one at hand, and for any other that one thinks of."""
    rnd = random.Random(23)
    found = 0
    for pieces, wishes in pictures(40, 40, seed=29, least=13):
        result = searched(pieces, wishes)
        assert result.at_least <= result.minutes == spent_on(result.order, wishes)
        division = divided(pieces, wishes.needles, ())
        for _ in range(5):
            done, heights, blocks = 0, [0] * wishes.needles, []
            while len(blocks) < len(pieces):
                k = rnd.choice([k for k, first in enumerate(division.first) if not done >> k & 1 and not first & ~done])
                shape = pieces[k].shape
                under = heights[shape.low : shape.high + 1]
                fitted = fit(shape, under, rnd.choice(("L", "R")), wishes.style)
                blocks.append(Arranged(0, 0, pieces[k].yarn, fitted, under, shape.under))
                for i, rows in enumerate(fitted.rows):
                    heights[shape.low + i] += rows
                done |= 1 << k
            assert result.at_least <= spent_on(blocks, wishes)
            found += 1
    assert found == 200


def test_below_comes_first() -> None:
    for pieces, wishes in pictures(9, 60, seed=3):
        order = searched(pieces, wishes).order
        position = {(block.chain, block.part): i for i, block in enumerate(order)}
        allowed = [[(pieces[k].chain, pieces[k].part) for k in one] for one in [next(orders(pieces))]]
        assert sorted(position) == sorted(allowed[0])
        for a in pieces:
            for b in pieces:
                shared = range(max(a.shape.low, b.shape.low), min(a.shape.high, b.shape.high) + 1)
                if any(a.shape.enter[p - a.shape.low] < b.shape.enter[p - b.shape.low] for p in shared):
                    assert position[a.chain, a.part] < position[b.chain, b.part]


def test_a_yarn_that_hangs_within_reach_rests_instead_of_being_cut() -> None:
    """The corners of the diamond: the yarn of the last lower corner waits at the selvedge for the upper corner above it."""
    plan = plan_piece(diamond())
    assert plan.summary.ends == 8


def test_bands_across_the_panel_follow_each_other() -> None:
    layout = drawn(
        "a", ("b", [(0, "0.25"), (1, "0.25"), (1, "0.5"), (0, "0.5")]), ("c", [(0, "0.75"), (1, "0.75"), (1, 1), (0, 1)])
    )
    plan = plan_piece(piece(layout, 20, 80))
    assert [b.yarn for b in plan.blocks] == ["a", "a", "b", "a", "c", "c"]
    assert plan.summary.free_passes == 0
