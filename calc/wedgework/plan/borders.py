"""What the plan claims of its borders: slits and stairs, from the blocks as they were fitted. The model bed looks again."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from wedgework.bed import at_place
from wedgework.formats.plan import Slit, Stair

__all__ = ["STANDING", "WIDE", "Stretch", "slits_of", "stairs_of"]

STANDING = 4
"""Rows that a border may stand on one needle in a good plan; more is a slit. Common practice, no source."""
WIDE = 6
"""Needles that a step within a slope may have; more is a stair. Our own choice."""
_NEXT = 2  # rows from where one standing step ends to where the next of its border begins
_STEP = 4  # rows that a step of a slope climbs at the most


@dataclass(frozen=True, slots=True)
class Stretch:
    """Rows of one block on one needle: from height `low` to `high`."""

    block: int
    low: int
    high: int


@dataclass(slots=True)
class _Leaning:
    """Standing steps of one border; `way` is 1 where it rises to the right, -1 where it falls, 0 while there is one step."""

    first: tuple[int, int]
    """Place and lower height of its first step."""
    last: tuple[int, int]
    high: int
    """Upper height of its last step."""
    rows: int
    steps: int = 1
    way: int = 0

    def goes_on(self, low: int, high: int) -> int:
        """The way in which a step on the next needle would continue it, or 0."""
        if self.way >= 0 and abs(low - self.high) <= _NEXT:
            return 1
        if self.way <= 0 and abs(self.last[1] - high) <= _NEXT:
            return -1
        return 0


def slits_of(columns: Sequence[Sequence[Stretch]], first_place: int) -> tuple[Slit, ...]:
    """Borders between two neighbours that stand for more than `STANDING` rows; one for each border."""
    done: list[_Leaning] = []
    open_: list[_Leaning] = []
    for p, (left, right) in enumerate(itertools.pairwise(columns)):
        now: list[_Leaning] = []
        for low, high in _standing(left, right):
            # Rising borders are continued before falling ones, the lower before the higher.
            ways = sorted((-run.goes_on(low, high), i) for i, run in enumerate(open_) if run.goes_on(low, high))
            if ways:
                run = open_.pop(ways[0][1])
                run.way = -ways[0][0]
                run.last, run.high, run.steps, run.rows = (p, low), high, run.steps + 1, run.rows + high - low
                now.append(run)
            else:
                now.append(_Leaning((p, low), (p, low), high, high - low))
        done += open_
        open_ = now
    done += open_
    return tuple(slit for _, slit in sorted((_slit(run, first_place) for run in done), key=lambda item: item[0]))


def _slit(run: _Leaning, first_place: int) -> tuple[tuple[int, int], Slit]:
    """The slit, with the place and height of its lowest step to sort by."""
    lowest, highest = sorted((run.first, run.last), key=lambda step: step[1])
    to_needle = at_place(first_place + highest[0]) if run.steps > 1 else None
    return lowest, Slit(at_place(first_place + lowest[0]), lowest[1] + 1, run.rows, run.steps, to_needle)


def _standing(left: Sequence[Stretch], right: Sequence[Stretch]) -> Iterator[tuple[int, int]]:
    """From below: heights between which two neighbouring needles belong to different blocks for too long."""
    i = k = 0
    while i < len(left) and k < len(right):
        low, high = max(left[i].low, right[k].low), min(left[i].high, right[k].high)
        if left[i].block != right[k].block and high - low > STANDING:
            yield low, high
        if left[i].high <= right[k].high:
            i += 1
        else:
            k += 1


@dataclass(slots=True)
class _Tread:
    """Needles of a slope whose heights lie within a row of the first one's."""

    first: int
    last: int
    heights: list[int]


def stairs_of(columns: Sequence[Sequence[Stretch]], first_place: int) -> tuple[Stair, ...]:
    """Slopes between two blocks with treads of more than `WIDE` needles that climb on both sides; one entry for each slope.

    A level stretch at the end of a slope, or between two slopes that fall away from it, is drawn so and is no stair.
    """
    slopes: dict[tuple[int, int], list[_Tread]] = {}  # lower and upper block -> treads from the left
    ended: list[list[_Tread]] = []
    for p, column in enumerate(columns):
        pairs = {(below.block, above.block): above.low for below, above in itertools.pairwise(column)}
        ended += [slopes.pop(pair) for pair in list(slopes) if pair not in pairs]
        for pair, height in pairs.items():
            treads = slopes.setdefault(pair, [])
            if treads and -1 <= height - treads[-1].heights[0] <= 1:
                treads[-1].last = p
                treads[-1].heights.append(height)
            else:
                treads.append(_Tread(p, p, [height]))
    found = []
    for treads in (*ended, *slopes.values()):
        wide = [
            tread
            for before, tread, after in zip(treads, treads[1:], treads[2:], strict=False)
            if tread.last - tread.first >= WIDE
            and _climbs(tread.heights[0] - before.heights[-1], after.heights[0] - tread.heights[-1])
        ]
        if wide:
            heights = [height for tread in wide for height in tread.heights]
            widest = max(tread.last - tread.first + 1 for tread in wide)
            needles = at_place(first_place + wide[0].first), at_place(first_place + wide[-1].last)
            found.append(((wide[0].first, min(heights)), Stair(*needles, min(heights), max(heights), len(wide), widest)))
    return tuple(stair for _, stair in sorted(found, key=lambda item: item[0]))


def _climbs(before: int, after: int) -> bool:
    return 0 < min(before, after) <= max(before, after) <= _STEP or 0 > max(before, after) >= min(before, after) >= -_STEP
