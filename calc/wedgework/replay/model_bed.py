"""The model bed: needles, loops, carriage and yarn as they would really be. It moves; it does not judge the piece.

Rows are counted lazily: while a needle works, every pass adds one row, so only holding, returning and a change of
block touch single needles. Places are 0, 1, 2 ... from the left end of the piece.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from wedgework.bed import Side
from wedgework.formats.plan import is_edge, is_facing, is_hem
from wedgework.replay.result import Run

__all__ = ["Hanging", "ModelBed"]


@dataclass(slots=True)
class Hanging:
    """Where a yarn hangs: beside which place, at how many rows, on which side of it."""

    place: int
    rows: int
    side: Side


class ModelBed:
    """`needles` needles in use, each with one loop, all working, the lever on knit."""

    def __init__(self, needles: int, carriage: Side) -> None:
        self.needles = needles
        self.carriage: Side = carriage
        self.lever_on_hold = False
        self.held = bytearray(needles)
        self.loops = bytearray(b"\x01" * needles)
        self.odd_loops: set[int] = set()
        """Places with no loop or two."""
        self.passes = 0
        self.block = ""
        self.yarn = ""
        self.in_picture = False
        self.runs: list[list[Run]] = [[] for _ in range(needles)]
        self.edge_rows: list[list[tuple[str, int]]] = [[], []]
        """Yarn and rows outside the picture: below it, above it."""
        self.hem_rows: list[list[tuple[str, int]]] = [[], []]
        """The same of the outsides of hems; what lies behind them adds no height."""
        self.edge_stitches: dict[str, int] = {}
        """By yarn, and by block in `edge_block_stitches`."""
        self.edge_block_stitches: dict[str, int] = {}
        self.deepest = 0
        self.dropped = 0
        self._rows = [0] * needles
        self._since = [0] * needles  # passes when the needle began to work in this block; -1 while it is held
        self._working = needles
        self._low, self._high = 0, needles - 1

    def begin_with(self, rows: Sequence[int], held: Iterable[int], earlier: Sequence[Sequence[Run]]) -> None:
        """A bed in the middle of a piece: these rows on each needle, these places in holding position, `earlier` what was seen
        of the picture so far."""
        self._rows = list(rows)
        self.runs = [list(runs) for runs in earlier]
        for place in held:
            self._since[place] = -1
            self.held[place] = 1
            self._working -= 1
        self.deepest = max((abs(a - b) for a, b in pairwise(rows)), default=0)

    def rows(self, place: int) -> int:
        """Rows of the picture on a needle, now."""
        since = self._since[place]
        open_rows = self.passes - since if since >= 0 and self.in_picture else 0
        return self._rows[place] + open_rows

    def extent(self) -> tuple[int, int] | None:
        """First and last working place."""
        if not self._working:
            return None
        held = self.held
        while held[self._low]:
            self._low += 1
        while held[self._high]:
            self._high -= 1
        return self._low, self._high

    def unbroken(self) -> bool:
        """Whether no needle between the outermost working ones is held."""
        extent = self.extent()
        return extent is not None and extent[1] - extent[0] + 1 == self._working

    def all_held(self) -> bool:
        return self._working == 0

    def all_working(self) -> bool:
        return self._working == self.needles

    def hold(self, place: int) -> None:
        self._compare(place)
        self._close(place)
        self._since[place] = -1
        self.held[place] = 1
        self._working -= 1

    def work(self, place: int) -> None:
        self._compare(place)
        self.held[place] = 0
        self._since[place] = self.passes
        if self._working == 0:
            self._low = self._high = place
        else:
            self._low, self._high = min(self._low, place), max(self._high, place)
        self._working += 1

    def begin(self, block: str, yarn: str) -> None:
        """From here on passes belong to this block and this yarn."""
        self._close_all()
        self.block, self.yarn = block, yarn
        self.in_picture = not is_edge(block)

    def knit(self, to: Side) -> None:
        """Every working needle knits one stitch."""
        self.passes += 1
        self.carriage = to
        if not self.in_picture:
            if not is_facing(self.block):
                self._higher((self.hem_rows if is_hem(self.block) else self.edge_rows)[self.above])
            for counts, key in ((self.edge_stitches, self.yarn), (self.edge_block_stitches, self.block)):
                counts[key] = counts.get(key, 0) + self._working
        if self.odd_loops:
            for place in [p for p in self.odd_loops if not self.held[p]]:
                self.loops[place] = 1
                self.odd_loops.discard(place)

    @property
    def above(self) -> bool:
        """Whether the picture lies below what is knitted now."""
        return any(self.runs)

    def _higher(self, rows: list[tuple[str, int]]) -> None:
        """A row more in the yarn of now."""
        if rows and rows[-1][0] == self.yarn:
            rows[-1] = (self.yarn, rows[-1][1] + 1)
        else:
            rows.append((self.yarn, 1))

    def free(self, to: Side) -> list[int]:
        """A pass without yarn; the places that dropped their stitch."""
        self.carriage = to
        lost = [p for p in range(self.needles) if self.loops[p] and not (self.held[p] and self.lever_on_hold)]
        for place in lost:
            self.set_loops(place, 0)
        self.dropped += len(lost)
        return lost

    def set_loops(self, place: int, count: int) -> None:
        self.loops[place] = count
        if count == 1:
            self.odd_loops.discard(place)
        else:
            self.odd_loops.add(place)

    def finish(self) -> None:
        """Closes every open run."""
        self._close_all()

    def _close_all(self) -> None:
        for place in range(self.needles):
            if self._since[place] >= 0:
                self._compare(place)
                self._close(place)

    def _close(self, place: int) -> None:
        since = self._since[place]
        rows = self.passes - since
        if rows and self.in_picture:
            self.runs[place].append(Run(self.block, self.yarn, self._rows[place], rows, since + 1, self.passes))
            self._rows[place] += rows
        self._since[place] = self.passes

    def _compare(self, place: int) -> None:
        """The fold beside a needle is deepest when it or its neighbour changes; so it is measured then."""
        here = self.rows(place)
        for beside in (place - 1, place + 1):
            if 0 <= beside < self.needles:
                self.deepest = max(self.deepest, abs(here - self.rows(beside)))
