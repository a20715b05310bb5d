"""Which leftover for which block, so that none runs out inside a block: the least number of ends and of strange pairs.

    found = assign(task)
    found.leftovers, found.cost, found.proved      # one leftover for each block, in knitting order

An end is left at each thread and each cut; a pair is strange where two neighbours are of different kinds. The search goes
block by block in knitting order and leaves a branch that cannot become better than the best so far: what it finds on a
piece of usual size is the true optimum. It gives up after `NODES` blocks tried, and then says how far off it may be.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

__all__ = ["NODES", "Found", "Nothing", "Shortage", "Task", "assign", "cost_of", "least_ends", "shortage"]

NODES = 40_000
"""Blocks tried before the search ends."""
TOO_MUCH = 10**15


@dataclass(frozen=True, slots=True)
class Task:
    """Blocks 0, 1, 2 ... in knitting order, leftovers 0, 1, 2 ...; lengths in whole mm."""

    needs: tuple[int, ...]
    """Of each block, margin and tails included."""
    stocks: tuple[int, ...]
    """Of each leftover."""
    may: tuple[tuple[int, ...], ...]
    """For each block the leftovers that it may have; one where it is fixed."""
    areas: tuple[int, ...]
    """Blocks with the same number get the same leftover."""
    beside: tuple[tuple[int, int, bool], ...]
    """Neighbours, the earlier first, and whether the same leftover may stand in both."""
    distinct: tuple[tuple[bool, ...], ...]
    """For each two leftovers whether they can be told apart."""
    kinds: tuple[int, ...]
    """Of each leftover."""
    most_kinds: int
    carried: tuple[bool, ...]
    """For each block whether the yarn of the block before it can go on in it uncut; the first says False."""

    def with_others(self, count: int) -> Task:
        """With so many leftovers more that nobody has yet: nothing of each, in a colour apart, of the kind of the first."""
        old = len(self.stocks)
        new = tuple(range(old, old + count))
        return replace(
            self,
            stocks=(*self.stocks, *(0 for _ in new)),
            may=tuple(may if len(may) < old else (*may, *new) for may in self.may),
            distinct=(*((*row, *(True for _ in new)) for row in self.distinct), *((True,) * (old + count) for _ in new)),
            kinds=(*self.kinds, *(self.kinds[0] for _ in new)),
        )


@dataclass(frozen=True, slots=True)
class Found:
    leftovers: tuple[int, ...]
    ends: int
    strange: int
    proved: bool
    """No assignment costs less."""
    bound: int
    """Nothing costs less than this."""

    @property
    def cost(self) -> int:
        return self.ends + self.strange


@dataclass(frozen=True, slots=True)
class Nothing:
    """No assignment was found."""

    proved: bool
    """There is none."""


@dataclass(frozen=True, slots=True)
class Shortage:
    """What is missing at the least, by leftover, in mm, for the assignment that misses least."""

    leftovers: tuple[int, ...]
    missing: tuple[int, ...]
    proved: bool


def cost_of(task: Task, leftovers: Sequence[int]) -> tuple[int, int]:
    """Ends and strange pairs of an assignment."""
    threads = sum(not (task.carried[i] and i and leftovers[i] == leftovers[i - 1]) for i in range(len(leftovers)))
    strange = sum(task.kinds[leftovers[i]] != task.kinds[leftovers[k]] for i, k, _ in task.beside)
    return 2 * threads, strange


def assign(task: Task, nodes: int = NODES) -> Found | Nothing:
    """The best assignment that was found."""
    best = _search(task, nodes)
    if best.leftovers is None:
        return Nothing(best.whole)
    ends, strange = cost_of(task, best.leftovers)
    bound = ends + strange if best.whole else least_ends(task)[0]
    return Found(best.leftovers, ends, strange, best.whole or bound == ends + strange, bound)


def shortage(task: Task, nodes: int = NODES) -> Shortage | None:
    """The assignment that keeps all rules but the lengths and misses least; None where even that is not found."""
    best = _search(task, nodes, short=True)
    if best.leftovers is None:
        return None
    used = [0] * len(task.stocks)
    for need, one in zip(task.needs, best.leftovers, strict=True):
        used[one] += need
    return Shortage(best.leftovers, tuple(max(u - s, 0) for u, s in zip(used, task.stocks, strict=True)), best.whole)


def least_ends(task: Task) -> tuple[int, list[list[int]]]:
    """A bound: the fewest ends if no leftover ever ran out; and the same for each block and leftover of the one before it."""
    count = len(task.stocks)
    after = [[0] * count for _ in range(len(task.needs) + 1)]
    for i in range(len(task.needs) - 1, -1, -1):
        new = min((2 + after[i + 1][one] for one in task.may[i]), default=TOO_MUCH)
        for before in range(count):
            stays = after[i + 1][before] if task.carried[i] and i and before in task.may[i] else TOO_MUCH
            after[i][before] = min(new, stays)
    return (min(after[0]) if count else TOO_MUCH), after


@dataclass(slots=True)
class _Best:
    leftovers: tuple[int, ...] | None = None
    cost: tuple[int, int] = (TOO_MUCH, TOO_MUCH)
    whole: bool = True


class _Search:
    """Depth first, in knitting order. `short`: leftovers may run out; what is missing is then the first cost."""

    def __init__(self, task: Task, nodes: int, short: bool) -> None:
        self.task, self.nodes, self.short = task, nodes, short
        self.best = _Best()
        self.left = list(task.stocks)
        self.chosen: list[int] = []
        self.after = least_ends(task)[1]
        self.earlier: list[list[tuple[int, bool]]] = [[] for _ in task.needs]
        for i, k, same in task.beside:
            self.earlier[k].append((i, same))
        self.area: dict[int, int] = {}
        self.area_needs: dict[int, int] = {}
        for area, need in zip(task.areas, task.needs, strict=True):
            self.area_needs[area] = self.area_needs.get(area, 0) + need
        self.wanted = sum(task.needs)
        """By areas that have no leftover yet."""
        self.kinds: dict[int, int] = {}

    def go(self, i: int, ends: int, strange: int, missing: int) -> None:
        task = self.task
        if i == len(task.needs):
            cost = (missing, ends + strange)
            if cost < self.best.cost:
                self.best.leftovers, self.best.cost = tuple(self.chosen), cost
            return
        if self.nodes <= 0:
            self.best.whole = False
            return
        area = task.areas[i]
        known = self.area.get(area)
        for one in (known,) if known is not None else self.order(i):
            if one not in task.may[i]:
                continue
            more = self.pairs(i, one)
            if more is None or (self.kinds.get(task.kinds[one], 0) == 0 and len(self.kinds) >= task.most_kinds):
                continue
            stays = i > 0 and task.carried[i] and self.chosen[-1] == one
            new_ends = ends if stays else ends + 2
            # An area takes all that it needs at its first block, so that what cannot do is seen at once.
            need = self.area_needs[area] if known is None else 0
            lacks = missing + max(need - max(self.left[one], 0), 0)
            if lacks > missing and not self.short:
                continue
            self.nodes -= 1
            self.left[one] -= need
            self.wanted -= need
            if (self.hoped(lacks), new_ends + strange + more + self.after[i + 1][one]) < self.best.cost:
                self.chosen.append(one)
                kind = task.kinds[one]
                self.kinds[kind] = self.kinds.get(kind, 0) + 1
                if known is None:
                    self.area[area] = one
                self.go(i + 1, new_ends, strange + more, lacks)
                if known is None:
                    del self.area[area]
                self.kinds[kind] -= 1
                if not self.kinds[kind]:
                    del self.kinds[kind]
                self.chosen.pop()
            self.left[one] += need
            self.wanted += need

    def order(self, i: int) -> list[int]:
        """The leftover in hand first, if it can go on; then those with most of it."""
        task = self.task
        hand = self.chosen[-1] if i and task.carried[i] else -1
        return sorted(task.may[i], key=lambda one: (one != hand, -self.left[one], one))

    def pairs(self, i: int, one: int) -> int | None:
        """Strange pairs with the neighbours that have their leftover; None where two could not be told apart."""
        task = self.task
        strange = 0
        for k, same in self.earlier[i]:
            other = self.chosen[k]
            if other == one:
                if not same:
                    return None
            elif not task.distinct[one][other]:
                return None
            strange += task.kinds[one] != task.kinds[other]
        return strange

    def hoped(self, missing: int) -> int:
        """What will be missing at the least: what is missing now, and what the rest needs more than there is."""
        return missing + max(self.wanted - sum(length for length in self.left if length > 0), 0)


def _search(task: Task, nodes: int, short: bool = False) -> _Best:
    search = _Search(task, nodes, short)
    if not short and sum(task.needs) > sum(task.stocks):
        return search.best
    if not short:
        # A cost in the first place can only be nothing.
        search.best.cost = (0, TOO_MUCH)
    search.go(0, 0, 0, 0)
    return search.best
