"""A border along cells as straight lines: the fewest corners that leave every cell on its own side.

Places are in half cells (see `contours`): a needle is two units across, a turn, which is two rows, is two units up.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wedgework.layout.contours import Step

__all__ = ["JOINED_ROWS", "WIDE_NEEDLES", "straightened"]

JOINED_ROWS = 4
"""Rows for each needle, at the most, with which a slope joins by itself: no needle of its border stands for longer. Steeper than
that it leaves slits. Common practice, no source; held against planned pieces in the tests."""
WIDE_NEEDLES = 3
"""Needles for each turn, at the most, with which a slope has no wide steps. Flatter than that it shows stairs. Our own choice."""

Place = tuple[int, int]
# What a line costs: a corner, a corner beside the lattice of needles and turns, a slope that leaves a slit or stairs.
_CORNER, _BESIDE, _NOT_JOINED = 10, 3, 4
_LONGEST = 300
"""Steps that one line is tried over."""


def straightened(steps: Sequence[Step], left_later: bool, slack: int = 0) -> list[Place]:
    """Places of a line from the first corner to the last. A centre may lie on the line where it belongs to the later side,
    the left or the right one. With `slack` cells may change sides: the line passes everything within so many units."""
    ends = _ends(steps)
    best: list[tuple[int, int]] = [(0, -1)] + [(1 << 60, -1)] * (len(ends) - 1)  # cost, and from where
    for i, (at, _) in enumerate(ends):
        if best[i][0] >= 1 << 60:
            continue
        for j in _reached(steps, ends, i, left_later, slack):
            to, beside = ends[j]
            cost = best[i][0] + _CORNER + (_BESIDE if beside else 0) + _slope(to[0] - at[0], to[1] - at[1])
            if cost < best[j][0]:
                best[j] = cost, i
    found, i = [], len(ends) - 1
    while i >= 0:
        found.append(ends[i][0])
        i = best[i][1]
    return found[::-1]


def _slope(across: int, up: int) -> int:
    """Half cells: a needle is two across, a row is one up."""
    across, up = abs(across), abs(up)
    steep = 2 * up > JOINED_ROWS * across and up > JOINED_ROWS and across
    flat = across > WIDE_NEEDLES * up and across > 2 * WIDE_NEEDLES and up
    return _NOT_JOINED if steep or flat else 0


def _ends(steps: Sequence[Step]) -> list[tuple[Place, bool]]:
    """Where a line may end: the corners, and the middle of each straight part; whether it lies beside the lattice."""
    found: list[tuple[Place, bool]] = []
    for step in steps:
        middle = (step.start[0] + step.end[0]) // 2, (step.start[1] + step.end[1]) // 2
        found += [(step.start, False), (middle, middle[0] % 2 == 1 or middle[1] % 2 == 1)]
    return [*found, (steps[-1].end, False)]


def _reached(steps: Sequence[Step], ends: Sequence[tuple[Place, bool]], i: int, left_later: bool, slack: int) -> Iterator[int]:
    """Ends that a straight line from end `i` reaches with every cell beside it on its own side."""
    ax, ay = ends[i][0]
    low: Place | None = None  # directions from here: counter-clockwise of `low`, clockwise of `high`
    high: Place | None = None
    low_open = high_open = False
    for j in range(i + 1, min(len(ends), i + 2 * _LONGEST)):
        # The part of the border from end j - 1 to end j, half of a straight part: its first and its last cell on either side.
        step = steps[(j - 1) // 2]
        begin, end = ends[j - 1][0], ends[j][0]
        for left, right in _within((ax, ay), begin, end, slack) if slack else _beside(step, begin, end):
            lx, ly = left[0] - ax, left[1] - ay
            rx, ry = right[0] - ax, right[1] - ay
            if high is None or high[0] * ly - high[1] * lx < 0 or (high[0] * ly - high[1] * lx == 0 and not left_later):
                high, high_open = (lx, ly), not left_later
            if low is None or low[0] * ry - low[1] * rx > 0 or (low[0] * ry - low[1] * rx == 0 and left_later):
                low, low_open = (rx, ry), left_later
        if low is None or high is None:
            if ends[j][0] != (ax, ay):
                yield j
            continue
        turn = low[0] * high[1] - low[1] * high[0]
        if turn < 0 or (turn == 0 and (low_open or high_open) and low[0] * high[0] + low[1] * high[1] > 0):
            return
        dx, dy = ends[j][0][0] - ax, ends[j][0][1] - ay
        over = low[0] * dy - low[1] * dx
        under = dx * high[1] - dy * high[0]
        if (dx or dy) and (over > 0 or (over == 0 and not low_open)) and (under > 0 or (under == 0 and not high_open)):
            yield j


def _beside(step: Step, begin: Place, end: Place) -> Iterator[tuple[Place, Place]]:
    """Centres of the cells at the left and at the right of this part's two ends."""
    wx, wy = step.way[0] // 2, step.way[1] // 2
    for (x, y), inward in ((begin, 1), (end, -1)):
        # A part may begin or end in the middle of a cell's side.
        if (x - step.start[0] + y - step.start[1]) % 2 == 0:
            x, y = x + inward * wx, y + inward * wy
        yield (x - wy, y + wx), (x + wy, y - wx)


def _within(start: Place, begin: Place, end: Place, slack: int) -> Iterator[tuple[Place, Place]]:
    """With freedom: the outermost places, seen from `start`, that a line may pass this part's two ends at."""
    for x, y in (begin, end):
        dx, dy = x - start[0], y - start[1]
        if max(abs(dx), abs(dy)) <= slack:
            continue
        corners = [(x + sx * slack, y + sy * slack) for sx in (-1, 1) for sy in (-1, 1)]

        def left_of(place: Place, dx: int = dx, dy: int = dy, x: int = x, y: int = y) -> int:
            return dx * (place[1] - y) - dy * (place[0] - x)

        yield max(corners, key=left_of), min(corners, key=left_of)
