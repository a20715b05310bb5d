"""How far a chain can be knitted now, and what to knit in part when chains wait for each other."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from wedgework.plan.regions import Chain

__all__ = ["fewest_parts", "parts_that_free", "reach"]

FEW = 6
"""Up to so many chains that wait, the fewest parts are found by trying everything."""
DEEPEST, WIDEST = 4, 200
"""Beyond that: how many parts ahead, and how many sets of them, are looked at."""


def reach(chains: Sequence[Chain], progress: Sequence[int], number: int) -> int:
    """The turn up to which a chain can be knitted now."""
    chain, own = chains[number], progress[number] - 1
    up_to = chain.end_turn
    for other, turns in chain.waits.items():
        there = progress[other]
        k = bisect_right(turns, there if there > own else own)
        if k < len(turns) and turns[k] < up_to and there != chains[other].end_turn:
            up_to = turns[k]
    return up_to


@dataclass(slots=True)
class _Ahead:
    """Some chains knitted on in part, in whatever order."""

    progress: tuple[int, ...]
    taken: frozenset[int]
    movable: list[int]
    """Chains that may move now."""
    starts: dict[int, int]
    """Which of them can come first -> the fewest turns that any of them is knitted on then."""


def _keep_best(kept: dict[int, int], new: Mapping[int, int]) -> None:
    for first, turns in new.items():
        kept[first] = max(kept.get(first, 0), turns)


def fewest_parts(chains: Sequence[Chain], progress: Sequence[int]) -> int:
    """The fewest parts that are no chain's last one, in which all that is left can be knitted.

    Going as far as possible never hurts, and what can be knitted to its end is best knitted to its end; so only the sequence
    of parts is searched, breadth first.
    """
    everything = tuple(chain.end_turn for chain in chains)
    level = {_finished(chains, tuple(progress))}
    seen = set(level)
    parts = 0
    while everything not in level:
        found = set()
        for state in level:
            for c in range(len(chains)):
                up_to = reach(chains, state, c)
                if up_to > state[c]:
                    found.add(_finished(chains, (*state[:c], up_to, *state[c + 1 :])))
        level = found - seen
        seen |= level
        parts += 1
        if not level:
            raise AssertionError("cells always lie on cells")
    return parts


def _finished(chains: Sequence[Chain], progress: tuple[int, ...]) -> tuple[int, ...]:
    """Everything knitted to its end that can be."""
    again = True
    while again:
        again = False
        for c, chain in enumerate(chains):
            if progress[c] < chain.end_turn and reach(chains, progress, c) == chain.end_turn:
                progress = (*progress[:c], chain.end_turn, *progress[c + 1 :])
                again = True
    return progress


def parts_that_free(chains: Sequence[Chain], waiting: Iterable[int], progress: Sequence[int]) -> list[tuple[int, int]]:
    """When every chain waits for another: which ones might be knitted in part now, and up to which turn.

    For few chains those that lead to the fewest blocks in all; among those the ones that leave no crumbs.
    """
    those = sorted(waiting)
    if len(those) > FEW:
        return _soon_free(chains, those, progress)
    found: list[tuple[int, int, int, int]] = []
    for c in those:
        up_to = reach(chains, progress, c)
        if up_to > progress[c]:
            furthest = fewest_parts(chains, (*progress[:c], up_to, *progress[c + 1 :]))
            halfway = _halfway(chains[c], up_to, progress[c])
            # Stopping halfway keeps a border from standing; but not for the price of one more block.
            if halfway < up_to and fewest_parts(chains, (*progress[:c], halfway, *progress[c + 1 :])) > furthest:
                halfway = up_to
            found.append((furthest, progress[c] - up_to, c, halfway))
    best = min(found)[:2]
    return [(c, turn) for parts, turns, c, turn in found if (parts, turns) == best]


def _soon_free(chains: Sequence[Chain], waiting: Sequence[int], progress: Sequence[int]) -> list[tuple[int, int]]:
    """The fewest parts after which some chain can be knitted to its end; among those the ones that leave no crumbs.

    Only the sequence of chains is searched, and no deeper than `DEEPEST`.
    """
    users: dict[int, list[int]] = {}  # chain -> open chains that wait for it
    for c in waiting:
        for below in chains[c].waits:
            users.setdefault(below, []).append(c)
    movable = [c for c in waiting if reach(chains, progress, c) > progress[c]]
    level = [_Ahead(tuple(progress), frozenset(), movable, {})]
    firsts: dict[int, int] = {}
    for _ in range(DEEPEST):
        found: dict[tuple[int, ...], _Ahead] = {}
        for ahead in level:
            for c in ahead.movable:
                up_to = reach(chains, ahead.progress, c)
                if c in ahead.taken or up_to <= ahead.progress[c]:
                    continue
                after = (*ahead.progress[:c], up_to, *ahead.progress[c + 1 :])
                turns = up_to - ahead.progress[c]
                starts = {first: min(least, turns) for first, least in ahead.starts.items()} or {c: turns}
                freed = [other for other in users.get(c, ()) if other not in ahead.taken]
                if up_to == chains[c].end_turn or any(reach(chains, after, other) == chains[other].end_turn for other in freed):
                    _keep_best(firsts, starts)
                if after in found:
                    _keep_best(found[after].starts, starts)
                elif len(found) < WIDEST:
                    more = [*ahead.movable, *(other for other in freed if other not in ahead.movable)]
                    found[after] = _Ahead(after, ahead.taken | {c}, more, starts)
        if firsts or not found:
            break
        level = list(found.values())
    if not firsts:
        for ahead in level:
            _keep_best(firsts, ahead.starts)
    if not firsts:
        raise AssertionError("no chain can go on, though cells always lie on cells")
    best = max(firsts.values())
    return [(c, _halfway(chains[c], reach(chains, progress, c), progress[c])) for c, turns in firsts.items() if turns == best]


def _halfway(chain: Chain, up_to: int, progress: int) -> int:
    """Where to stop a part that can go no further than `up_to`, because there an edge turns back over another block.

    Since that edge last moved the border has been standing. Stopping halfway lets the next part take the other half,
    so that neither stands long enough for a slit.
    """
    runs, origin = chain.runs, chain.first_turn
    first, last = runs[up_to - origin]
    before = runs[up_to - 1 - origin]
    moved = progress
    for side, turns_back in ((0, first < before[0]), (1, last > before[1])):
        if turns_back:
            turn = up_to - 1
            while turn > progress and runs[turn - origin][side] == runs[turn - 1 - origin][side]:
                turn -= 1
            moved = max(moved, turn)
    return max((moved + up_to + 1) // 2, progress + 1)
