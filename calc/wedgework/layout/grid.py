"""The picture as cells of one needle x one turn (two rows): for each turn the runs of needles of one shape."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["Cells", "Grid"]


@dataclass(frozen=True, slots=True)
class Cells:
    """Columns `first` ... `last` (both counted, 0 at the left) of one turn, all of one shape."""

    first: int
    last: int
    shape: int
    """Index of the shape; -1 is the background."""
    yarn: str


@dataclass(frozen=True, slots=True)
class Grid:
    """`turns[t]` are the runs of turn t, from below, left to right, seen from the finished front."""

    needles: int
    turns: tuple[tuple[Cells, ...], ...]
    """Where a turn leaves places out, nothing is knitted there."""
    tops: tuple[int, ...] = ()
    """The row where each column ends, where these are not all at the top of its highest turn; a single row may be asked for."""

    def mirrored(self) -> Grid:
        """The same picture from the other side: what hangs on the bed, left to right."""
        end = self.needles - 1
        return Grid(
            self.needles,
            tuple(tuple(Cells(end - c.last, end - c.first, c.shape, c.yarn) for c in reversed(turn)) for turn in self.turns),
            self.tops[::-1],
        )
