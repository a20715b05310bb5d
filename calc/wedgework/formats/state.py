"""The state of a bed in the middle of a piece: what a knitter can count and see, whatever led to it."""

from __future__ import annotations

from dataclasses import dataclass

from wedgework.bed import Side

__all__ = ["Hanging", "State"]


@dataclass(frozen=True, slots=True)
class Hanging:
    """A yarn that hangs uncut beside a needle."""

    yarn: str
    needle: int


@dataclass(frozen=True, slots=True)
class State:
    """Rows of the picture on each needle from `first_needle` on (base rows and hems not counted), the needles in holding
    position, the side of the carriage, the yarn in the feeder and those that rest on the mast."""

    first_needle: int
    rows: tuple[int, ...]
    held: tuple[int, ...]
    carriage: Side
    feeder: Hanging | None = None
    mast: tuple[Hanging, ...] = ()
    counter: int | None = None
    """What the machine's counter shows; a hint only."""
    notes: str = ""
