"""The grid as chains: regions of one yarn that have a single run of needles in every turn.

Only such a region can be knitted as one block, because a pass knits one run of needles. Where a region forks or
two arms of it meet, a new chain begins. Places are 0, 1, 2 ... from the left end of the panel on the bed.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from wedgework.layout.grid import Grid

__all__ = ["Chain", "chains_of"]


@dataclass(slots=True)
class Chain:
    """Runs (first and last place, both counted) of the turns `first_turn`, `first_turn` + 1, ..."""

    yarn: str
    first_turn: int
    runs: list[tuple[int, int]]
    shapes: list[tuple[int, int]]
    """Shape at the first and at the last place of each run."""
    waits: dict[int, list[int]] = field(default_factory=dict)
    """Which chains lie below: chain -> turns (rising) at which this one enters needles of it; to knit turn t of
    this chain, that one must have been knitted up to t."""

    @property
    def end_turn(self) -> int:
        return self.first_turn + len(self.runs)


def chains_of(grid: Grid) -> list[Chain]:
    """The chains of a grid as it hangs on the bed, from below, then from the left. Where turns have gaps nothing is knitted.

    Over a gap a new chain begins where the same one would come back to needles that it has left: a block holds a needle once.
    """
    chains: list[Chain] = []
    below: list[int] = []  # the chain of each run of the turn before
    latest = [-1] * grid.needles  # the chain that knitted last on each place
    gaps = False  # in the turn before
    for turn, cells in enumerate(grid.turns):
        runs = _by_yarn((c.first, c.last, c.shape, c.yarn) for c in cells)
        follows = _continued(chains, below, runs)
        over = _over_gaps(chains, below, runs, latest) if gaps else [set() for _ in runs]
        follows = [None if before in others else before for before, others in zip(follows, over, strict=True)]
        here: list[int] = []
        for (first, last, shape_left, shape_right, yarn), before in zip(runs, follows, strict=True):
            if before is None:
                chains.append(Chain(yarn, turn, [(first, last)], [(shape_left, shape_right)]))
                here.append(len(chains) - 1)
            else:
                chains[before].runs.append((first, last))
                chains[before].shapes.append((shape_left, shape_right))
                here.append(before)
        if turn:
            _note_waits(chains, below, here, turn)
        for c, others in zip(here, over, strict=True):
            for other in sorted(others):
                turns = chains[c].waits.setdefault(other, [])
                if turn not in turns[-1:]:
                    turns.append(turn)
        for c in below:
            first, last = chains[c].runs[-1 if c not in here else -2]
            latest[first : last + 1] = [c] * (last - first + 1)
        below = here
        gaps = sum(last - first + 1 for first, last, *_ in runs) < grid.needles
    return chains


def _over_gaps(chains: list[Chain], below: list[int], runs: list[Run], latest: Sequence[int]) -> list[set[int]]:
    """For each run the chains that end under a gap over which it comes back."""
    found: list[set[int]] = [set() for _ in runs]
    covered = sorted(chains[c].runs[-1] for c in below)
    for others, (first, last, _, _, _) in zip(found, runs, strict=True):
        at = first
        for low, high in [*covered, (last + 1, last + 1)]:
            others.update(c for c in latest[at : min(low, last + 1)] if c >= 0)
            at = max(at, high + 1)
            if at > last:
                break
    return found


Run = tuple[int, int, int, int, str]


def _by_yarn(cells: Iterable[tuple[int, int, int, str]]) -> list[Run]:
    """Neighbouring cells of one yarn are one run: first, last, shape at either end, yarn."""
    runs: list[Run] = []
    for first, last, shape, yarn in cells:
        if runs and runs[-1][4] == yarn and runs[-1][1] + 1 == first:
            runs[-1] = (runs[-1][0], last, runs[-1][2], shape, yarn)
        else:
            runs.append((first, last, shape, shape, yarn))
    return runs


def _continued(chains: list[Chain], below: list[int], runs: list[Run]) -> list[int | None]:
    """For each run the chain that goes on in it: the only one of its yarn under it, if nothing else goes on from there.

    Where no run of the yarn lies under it, one that only touches its corner counts if both are the same shape:
    a thin band may lean by more than its width in a turn.
    """
    over: dict[int, list[int]] = {}  # chain -> runs of its yarn that lie over it
    under: list[list[int]] = []
    k = 0
    for i, (first, last, _, _, yarn) in enumerate(runs):
        while k < len(below) and chains[below[k]].runs[-1][1] < first:
            k += 1
        found = []
        j = k
        while j < len(below) and chains[below[j]].runs[-1][0] <= last:
            if chains[below[j]].yarn == yarn:
                found.append(below[j])
                over.setdefault(below[j], []).append(i)
            j += 1
        under.append(found)
    result: list[int | None] = [found[0] if len(found) == 1 and len(over[found[0]]) == 1 else None for found in under]
    leaning = [(c, i) for c in below if c not in over for i, run in enumerate(runs) if not under[i] and _leans(chains[c], run)]
    for c, i in leaning:
        if sum(c == other for other, _ in leaning) == sum(i == other for _, other in leaning) == 1:
            result[i] = c
    return result


def _leans(chain: Chain, run: Run) -> bool:
    """Whether the run touches the corner of the chain's last one, in the same shape and yarn."""
    (a, b), (shape_a, shape_b) = chain.runs[-1], chain.shapes[-1]
    first, last, left, right, yarn = run
    return chain.yarn == yarn and ((b + 1 == first and shape_b == left) or (a - 1 == last and shape_a == right))


def _note_waits(chains: list[Chain], below: list[int], here: list[int], turn: int) -> None:
    """Every run waits for the chains under the needles that it enters in this turn."""
    k = 0
    edge = [chains[c].runs[turn - 1 - chains[c].first_turn] for c in below]
    for c in here:
        first, last = chains[c].runs[-1]
        while k < len(below) and edge[k][1] < first:
            k += 1
        j = k
        while j < len(below) and edge[j][0] <= last:
            if below[j] != c:
                chains[c].waits.setdefault(below[j], []).append(turn)
            j += 1
