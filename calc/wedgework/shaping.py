"""Changes spread evenly: k changes over n rows or stitches, and edges given by points.

    >>> found = spaced(14, 124)
    >>> found.groups
    (Group(size=8, times=2), Group(size=9, times=12))
    >>> found.positions[:3], found.positions[-1]
    ((8, 17, 26), 124)

With q = n div k and r = n mod k there are r gaps of q + 1 and k - r of q (the same in every knitwear textbook). Two
conventions are met. `closing` False: as many gaps as changes, the last change ends the last gap, as in a round or up an edge.
True: one more, so that a plain part follows the last change, as across a flat row.

`step` 2 leaves only every second row: an empty needle is added, and stitches are cast off, at the carriage's side, and
the carriage is there every second row (common practice of the trade).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise
from typing import Literal

from wedgework.exact import Group, even_positions, even_spread

__all__ = ["Mixing", "Spacing", "Stage", "most_changes", "runs", "spaced", "stages"]

Mixing = Literal["spread", "smaller-first", "larger-first"]


@dataclass(frozen=True, slots=True)
class Spacing:
    """Gap i ends at change i; the first begins at the start. All counted in rows or stitches."""

    gaps: tuple[int, ...]
    closing: int
    """The plain part after the last change, where the convention has one."""
    left_over: int
    """What does not come out even: one row where only even rows count, the rest behind a single change that was fixed."""

    @property
    def positions(self) -> tuple[int, ...]:
        return tuple(accumulate(self.gaps))

    @property
    def over(self) -> int:
        return sum(self.gaps) + self.closing + self.left_over

    @property
    def sections(self) -> tuple[int, ...]:
        """All parts from start to end, without what is left over."""
        return (*self.gaps, self.closing) if self.closing else self.gaps

    @property
    def groups(self) -> tuple[Group, ...]:
        """The sizes of the sections and how often each occurs, the smaller first. With `left_over` they add up to `over`."""
        return tuple(Group(size, times) for size, times in sorted(Counter(self.sections).items()) if size)


def most_changes(over: int, *, closing: bool = False, step: int = 1, first: int | None = None, least: int = 1) -> int:
    """How many changes `over` has room for, no gap smaller than `least`; 0 if not even one."""
    if (first or 0) > over:
        return 0
    smallest = -(-least // step)  # in steps, rounded up
    parts = (over - (first or 0)) // step // smallest
    return max(0, parts - closing + (first is not None))


def spaced(
    changes: int,
    over: int,
    *,
    closing: bool = False,
    step: int = 1,
    first: int | None = None,
    mixing: Mixing = "spread",
) -> Spacing:
    """`changes` spread over `over`; `first` fixes where the first one falls. ValueError where there is no room."""
    if changes < 1 or changes > most_changes(over, closing=closing, step=step, first=first):
        raise ValueError("no room for so many changes")
    parts = changes + closing - (first is not None)
    room = over - (first or 0)
    if not parts:
        return Spacing((first or 0,), 0, room)
    units = room // step
    sizes = [size * step for size in even_spread(units, parts)]
    if mixing != "spread":
        sizes.sort(reverse=mixing == "larger-first")
    if first is not None:
        sizes.insert(0, first)
    last = sizes.pop() if closing else 0
    return Spacing(tuple(sizes), last, room - units * step)


def runs(sizes: Sequence[int]) -> tuple[Group, ...]:
    """The same sizes in their order, equal neighbours together: 8, 9, 9, 8 -> 8 once, 9 twice, 8 once."""
    found: list[Group] = []
    for size in sizes:
        if found and found[-1].size == size:
            found[-1] = Group(size, found[-1].times + 1)
        else:
            found.append(Group(size, 1))
    return tuple(found)


@dataclass(frozen=True, slots=True)
class Stage:
    """From one point of an edge to the next; `places` are the rows and how many stitches change there, less where negative."""

    start: int
    end: int
    places: tuple[tuple[int, int], ...]

    @property
    def change(self) -> int:
        return sum(stitches for _, stitches in self.places)

    @property
    def at_once(self) -> bool:
        """Whether several stitches change in one row somewhere."""
        return any(abs(stitches) > 1 for _, stitches in self.places)


def stages(points: Sequence[tuple[int, int]], step: int = 1) -> tuple[Stage, ...]:
    """The edge through `points` (row, stitches), rows not falling: one stitch at a time where there are rows enough.

    Where there are not, several stitches change at once, every second row. Two points in one row change at once there.
    With `step` 2 every change falls on an even row counted from 0. ValueError where a change finds no such row.
    """
    return tuple(_stage(start, end, after - before, step) for (start, before), (end, after) in pairwise(points))


def _stage(start: int, end: int, change: int, step: int) -> Stage:
    if end < start:
        raise ValueError("rows do not fall")
    if not change:
        return Stage(start, end, ())
    if start == end:
        return Stage(start, end, ((end, change),))
    size, sign = abs(change), 1 if change > 0 else -1
    slots = end // step - start // step
    if size > slots:
        step, slots = 2, end // 2 - start // 2
    if not slots:
        raise ValueError("no row for the change")
    if size <= slots:
        return Stage(start, end, tuple((step * (start // step + at), sign) for at in even_positions(slots, size)))
    sizes = even_spread(size, slots)
    return Stage(start, end, tuple((2 * (start // 2 + i + 1), sign * n) for i, n in enumerate(sizes)))
