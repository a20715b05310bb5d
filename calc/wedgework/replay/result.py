"""What a replay found: the picture as it was really knitted, the judgement, the figures."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from wedgework.bed import place
from wedgework.formats.plan import Summary
from wedgework.problems import Problem

__all__ = ["Piece", "Replay", "Run"]


@dataclass(frozen=True, slots=True)
class Run:
    """Stitches of one block above each other on one needle.

    `level` rows lie below it on that needle (of the picture, base rows not counted), `rows` it has itself;
    the passes that made it were the rows `first_pass` ... `last_pass` of the piece (`Knit.row`).
    """

    block: str
    yarn: str
    level: int
    rows: int
    first_pass: int
    last_pass: int
    gaps: int = 0
    """Rows of the picture below it in which nothing is knitted on this needle, where the piece is shaped."""

    @property
    def low(self) -> int:
        """The row of the picture where it begins."""
        return self.level + self.gaps

    @property
    def high(self) -> int:
        """The row of the picture after its last one."""
        return self.low + self.rows


@dataclass(frozen=True, slots=True)
class Piece:
    """The picture as it hangs on the bed (purl side to the knitter): for each needle its runs, from below.

    Base rows and hems are apart: how many rows lie below and above the picture, and in which yarn. Of a hem only its outside
    is height.
    """

    first_needle: int
    last_needle: int
    columns: tuple[tuple[Run, ...], ...]
    """Left to right on the bed, one for each needle from `first_needle` to `last_needle`."""
    base_below: tuple[tuple[str, int], ...] = ()
    """Yarn and rows, from the lower edge up."""
    base_above: tuple[tuple[str, int], ...] = ()
    hem_below: tuple[tuple[str, int], ...] = ()
    """Yarn and rows of the outside of the hem, from its fold up to the base rows."""
    hem_above: tuple[tuple[str, int], ...] = ()

    def in_picture(self, needle: int, rows: int) -> int:
        """The row of the picture that a needle with so many rows of its own has reached."""
        column = self.columns[place(needle) - place(self.first_needle)]
        run = next((run for run in column if rows <= run.level + run.rows), column[-1] if column else None)
        return rows + (run.gaps if run else 0)

    @property
    def rows_below(self) -> int:
        """Rows of height below the picture."""
        return sum(rows for _, rows in (*self.hem_below, *self.base_below))

    @property
    def rows_above(self) -> int:
        return sum(rows for _, rows in (*self.base_above, *self.hem_above))


@dataclass(frozen=True, slots=True)
class Replay:
    """The judgement. `problems` is empty for a plan that is legal, level, joined, gives its design's picture and
    tells the truth about itself; `summary` holds the replayed figures."""

    problems: tuple[Problem, ...]
    warnings: tuple[Problem, ...]
    summary: Summary
    piece: Piece
    block_rows: Mapping[str, int]
    """Passes of each block."""
    block_stitches: Mapping[str, int]
    """Stitches of each block, base rows and hems too."""

    @property
    def joined(self) -> bool:
        """Whether every border is closed: no slit, no hole."""
        return not self.summary.slits and not self.summary.holes

    @property
    def sound(self) -> bool:
        """Legal, level, joined, its design's picture, and true."""
        return not self.problems and self.joined

    @property
    def rows_min(self) -> int:
        return self.summary.rows_min

    @property
    def rows_max(self) -> int:
        return self.summary.rows_max

    @property
    def stitches(self) -> Mapping[str, int]:
        return self.summary.stitches
