"""The report of a test knitter: how a piece of somebody's design went at the machine, for the one who designed it."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

__all__ = ["MISHAP_KINDS", "BlockTime", "CountNote", "Mishap", "PlaceNote", "Report", "YarnUsed"]

MISHAP_KINDS = ("stitch", "held", "edge", "knitted", "forgotten", "jam", "yarn", "fell", "other")
"""What can happen, as the page at the machine names it."""


@dataclass(frozen=True, slots=True)
class BlockTime:
    block: str
    minutes: Fraction
    """At the machine in this block, without interruptions."""
    rows: int = 0
    """The rows that were knitted in that time."""


@dataclass(frozen=True, slots=True)
class PlaceNote:
    """What was noted when so many steps of the plan were done."""

    steps_done: int
    text: str
    block: str = ""


@dataclass(frozen=True, slots=True)
class Mishap:
    kind: str
    steps_done: int
    block: str = ""
    text: str = ""


@dataclass(frozen=True, slots=True)
class CountNote:
    """Needles that did not come out as the step says."""

    steps_done: int
    planned: int
    counted: int
    block: str = ""


@dataclass(frozen=True, slots=True)
class YarnUsed:
    yarn: str
    grams: Fraction


@dataclass(frozen=True, slots=True)
class Report:
    """Of one piece; `digest` names the steps of its plan, so that nobody compares it with another one."""

    title: str
    digest: str
    steps: int
    steps_done: int
    knitter: str = ""
    begun: str = ""
    """The day, as the writer writes dates."""
    ended: str = ""
    minutes: Fraction = Fraction(0)
    """At the machine, without interruptions."""
    interruptions: int = 0
    interruption_minutes: Fraction = Fraction(0)
    carried_on: int = 0
    """So many times the rest was planned anew; what is told by blocks and steps is that of the first plan."""
    blocks: tuple[BlockTime, ...] = ()
    notes: tuple[PlaceNote, ...] = ()
    mishaps: tuple[Mishap, ...] = ()
    counts: tuple[CountNote, ...] = ()
    yarns: tuple[YarnUsed, ...] = ()
    text: str = ""
    made_by: str = field(default="", compare=False)
    """The version that wrote the file; not part of what the report says."""
