"""Regions that wait for each other are knitted in the fewest parts: the planner against trying everything.

The brute force below knows pictures as letters only: a part may stop at any turn, whatever lies under it must be done.
"""

from __future__ import annotations

import itertools
import random
from collections.abc import Iterator

from hypothesis import given, settings
from hypothesis import strategies as st

from pieces import design_from
from wedgework.layout import grid_of, resolve
from wedgework.plan.arrange import arrange
from wedgework.plan.fit import Fits
from wedgework.plan.ground import bare
from wedgework.plan.piece import around_of, wishes_of
from wedgework.plan.regions import chains_of

Cells = tuple[tuple[int, ...], ...]


def random_picture(rnd: random.Random, needles: int, turns: int) -> list[str]:
    """A border that wanders between two or three yarns: the top turn first."""
    borders = sorted(rnd.sample(range(2, needles - 2), rnd.randint(1, 2)))
    lines = []
    for _ in range(turns):
        borders = sorted({min(max(b + rnd.randint(-2, 2), 1), needles - 1) for b in borders})
        edges = [0, *borders, needles]
        lines.append("".join("abc"[i] * (b - a) for i, (a, b) in enumerate(itertools.pairwise(edges))))
    return lines[::-1]


def fewest(owner: Cells, chains: int) -> int:
    """Breadth first over how far each chain is knitted; a chain may be knitted on to any turn that has all below it."""
    spans = [[t for t, turn in enumerate(owner) if c in turn] for c in range(chains)]
    start = tuple(min(span) for span in spans)
    goal = tuple(max(span) + 1 for span in spans)

    def open_to(progress: tuple[int, ...], c: int) -> Iterator[int]:
        for turn in range(progress[c], goal[c]):
            below = {owner[turn - 1][x] for x, other in enumerate(owner[turn]) if other == c} - {c} if turn else set()
            if any(progress[other] < turn for other in below):
                return
            yield turn + 1

    level, seen, blocks = {start}, {start}, 0
    while goal not in level:
        level = {
            (*progress[:c], stop, *progress[c + 1 :])
            for progress in level
            for c in range(chains)
            for stop in open_to(progress, c)
        } - seen
        seen |= level
        blocks += 1
    return blocks


@settings(max_examples=120, deadline=None)
@given(st.integers(0, 10**9))
def test_the_planner_makes_the_fewest_blocks(seed: int) -> None:
    rnd = random.Random(seed)
    lines = random_picture(rnd, 10, rnd.randint(4, 8))
    design = design_from(*lines)
    sizes = resolve(design)
    grid = grid_of(design, sizes).mirrored()
    chains = chains_of(grid)
    if len(chains) > 6:
        return
    owner = [[-1] * 10 for _ in lines]
    for number, chain in enumerate(chains):
        for turn, (first, last) in enumerate(chain.runs, chain.first_turn):
            owner[turn][first : last + 1] = [number] * (last - first + 1)
    wishes = wishes_of(design, sizes, grid)
    _, pieces = arrange(chains, wishes, Fits(wishes.style), bare(wishes, around_of(design)))
    assert len(pieces) == fewest(tuple(map(tuple, owner)), len(chains))


def test_a_zigzag_border_is_knitted_in_parts() -> None:
    lines = ["aaaaabbbbb", "aaabbbbbbb", "aaaaaaabbb", "aaabbbbbbb", "aaaaaaabbb"]
    design = design_from(*lines)
    sizes = resolve(design)
    grid = grid_of(design, sizes).mirrored()
    chains = chains_of(grid)
    assert len(chains) == 2
    wishes = wishes_of(design, sizes, grid)
    _, pieces = arrange(chains, wishes, Fits(wishes.style), bare(wishes, around_of(design)))
    assert len(pieces) == 5
    assert sorted((piece.chain, piece.part) for piece in pieces) == [(0, 1), (0, 2), (1, 1), (1, 2), (1, 3)]
