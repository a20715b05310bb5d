"""The passes of a block as grouped steps: what repeats is said once, with the number of times.

A *leaf* is what a knitter does at one time: move some needles, then knit so many rows. The needles are
counted from the carriage, not named, so that the same work on the left and on the right is the same leaf:

    hold 1 needle at the carriage, knit 2 rows

`read` turns steps into leaves, `group` folds leaves into repeats (nested where the pattern alternates),
`unfold` and `expand` go back; together they give the steps exactly.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from wedgework.bed import Side, opposite
from wedgework.formats.plan import Hold, Knit, Step, Work, Wrap
from wedgework.words.walk import Bed, step_over

__all__ = ["Grouped", "Leaf", "Literally", "Move", "Repeat", "expand", "group", "read", "unfold"]

Do = Literal["hold", "work", "wrap"]

LONGEST_BODY = 24
"""A pattern longer than this many leaves is no rhythm that a person keeps in mind."""


@dataclass(frozen=True, slots=True)
class Move:
    """Needles at the ends of those that knit, so many at the carriage and so many opposite it: hold the outermost ones,
    return the next held ones, or pass the yarn by hand round the next held one."""

    do: Do
    carriage: int
    opposite: int


@dataclass(frozen=True, slots=True)
class Literally:
    """A step that cannot be counted from the carriage: it stands as it is."""

    step: Step


@dataclass(frozen=True, slots=True)
class Leaf:
    """Some moves, then `rows` passes (none where a block ends with a move)."""

    moves: tuple[Move | Literally, ...]
    rows: int


@dataclass(frozen=True, slots=True)
class Repeat:
    times: int
    body: tuple[Leaf | Repeat, ...]


Grouped = tuple[Leaf | Repeat, ...]


# --- between steps and leaves -------------------------------------------------------------------------------------


def _ends(bed: Bed, side: Side) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """Outward on `side`: the knitting needles from that end inward, and the held needles beyond it outward."""
    working, needles = bed.working, bed.needles
    if not working:
        return (), ()
    if side == "L":
        return working, needles[: bisect_left(needles, working[0])][::-1]
    return working[::-1], needles[bisect_right(needles, working[-1]) :]


def _needles(bed: Bed, move: Move) -> tuple[int, ...]:
    """The needles that `move` means on `bed`, left to right; fewer than asked for where there are no more."""
    chosen: set[int] = set()
    for side, count in ((bed.carriage, move.carriage), (opposite(bed.carriage), move.opposite)):
        inward, beyond = _ends(bed, side)
        chosen.update((inward if move.do == "hold" else beyond)[:count])
    return tuple(sorted(chosen))


def _step(bed: Bed, move: Move | Literally) -> Step:
    if isinstance(move, Literally):
        return move.step
    needles = _needles(bed, move)
    if move.do == "wrap":
        return Wrap(needles[0])
    return Hold(needles) if move.do == "hold" else Work(needles)


def _move(bed: Bed, step: Step) -> Move | Literally:
    """`step` counted from the carriage where that means exactly the same needles."""
    match step:
        case Hold(needles=needles):
            do: Do = "hold"
        case Work(needles=needles):
            do = "work"
        case Wrap(needle=needle):
            do, needles = "wrap", (needle,)
        case _:
            return Literally(step)
    inward, beyond = _ends(bed, bed.carriage)
    here = sum(n in needles for n in (inward if do == "hold" else beyond))
    if do == "hold":  # the needles at the carriage are those before the first one that goes on knitting
        here = next((i for i, n in enumerate(inward) if n not in needles), len(inward))
    move = Move(do, here, len(needles) - here)
    return move if needles and _needles(bed, move) == needles else Literally(step)


def _regular(bed: Bed, step: Knit) -> bool:
    """Whether the pass follows from the bed alone: away from the carriage, the counters one up."""
    return step == Knit(opposite(bed.carriage), bed.row + 1, bed.block, bed.block_row + 1)


def read(bed: Bed, steps: Iterable[Step]) -> tuple[Leaf, ...]:
    """The leaves of `steps`, which begin on `bed`. Only regular passes count as rows; anything else stands literally."""
    leaves: list[Leaf] = []
    moves: list[Move | Literally] = []
    rows = 0
    for step in steps:
        if isinstance(step, Knit) and _regular(bed, step):
            rows += 1
        else:
            if rows:
                leaves.append(Leaf(tuple(moves), rows))
                moves, rows = [], 0
            moves.append(_move(bed, step))
        bed = step_over(bed, step)
    if moves or rows:
        leaves.append(Leaf(tuple(moves), rows))
    return tuple(leaves)


def expand(bed: Bed, grouped: Sequence[Leaf | Repeat]) -> tuple[Step, ...]:
    """The steps that `grouped` means when it begins on `bed`: the inverse of `read` and `group`."""
    steps: list[Step] = []
    for leaf in unfold(grouped):
        for move in leaf.moves:
            steps.append(_step(bed, move))
            bed = step_over(bed, steps[-1])
        for _ in range(leaf.rows):
            steps.append(Knit(opposite(bed.carriage), bed.row + 1, bed.block, bed.block_row + 1))
            bed = step_over(bed, steps[-1])
    return tuple(steps)


def unfold(grouped: Sequence[Leaf | Repeat]) -> Iterator[Leaf]:
    """The leaves one after the other, repeats written out."""
    for item in grouped:
        if isinstance(item, Leaf):
            yield item
        else:
            for _ in range(item.times):
                yield from unfold(item.body)


# --- between leaves and repeats -----------------------------------------------------------------------------------


def group(leaves: Sequence[Leaf]) -> Grouped:
    """A short way to say `leaves` with repeats, one inside another at the most: few phrases first, then few brackets."""
    kinds = tuple(dict.fromkeys(leaves))
    number = {leaf: i for i, leaf in enumerate(kinds)}
    _, items = _shortest(tuple(number[leaf] for leaf in leaves), 2)
    return tuple(_named(item, kinds) for item in items)


# Inside the search a leaf is its number and a repeat is (times, body).
_Item = int | tuple[int, tuple["_Item", ...]]

_PHRASE, _BRACKET = 8, 3


@lru_cache(maxsize=20_000)
def _shortest(word: tuple[int, ...], depth: int) -> tuple[int, tuple[_Item, ...]]:
    """Cost and items of the cheapest way to write `word` with repeats nested at most `depth` deep."""
    n = len(word)
    best: list[tuple[int, tuple[int, int] | None]] = [(0, None)] * (n + 1)
    for start in range(n - 1, -1, -1):
        cost = _PHRASE + best[start + 1][0]
        choice: tuple[int, int] | None = None
        if depth:
            for body in range(1, min(LONGEST_BODY, (n - start) // 2) + 1):
                times = _times(word, start, body)
                if times < 2:
                    continue
                inner, _ = _shortest(word[start : start + body], depth - 1)
                repeat = inner + _BRACKET + best[start + body * times][0]
                if repeat < cost:
                    cost, choice = repeat, (body, times)
        best[start] = (cost, choice)
    items: list[_Item] = []
    at = 0
    while at < n:
        choice = best[at][1]
        if choice is None:
            items.append(word[at])
            at += 1
        else:
            body, times = choice
            items.append((times, _shortest(word[at : at + body], depth - 1)[1]))
            at += body * times
    return best[0][0], tuple(items)


def _times(word: tuple[int, ...], start: int, body: int) -> int:
    """How often the `body` leaves from `start` stand one after the other."""
    at = start + body
    while word[at : at + body] == word[start : start + body]:
        at += body
    return (at - start) // body


def _named(item: _Item, kinds: Sequence[Leaf]) -> Leaf | Repeat:
    if isinstance(item, int):
        return kinds[item]
    times, body = item
    return Repeat(times, tuple(_named(inner, kinds) for inner in body))
