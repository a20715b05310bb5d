"""The project: everything that a person keeps. It is what export writes, import reads, and what a backup is."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

from wedgework.formats.classes import Class
from wedgework.formats.design import Bed, Design, Swatch, Yarn
from wedgework.formats.plan import Plan
from wedgework.formats.report import Report

__all__ = ["Fields", "KeptSwatch", "Pace", "Pause", "Progress", "Project", "StepNote"]


@dataclass(frozen=True, slots=True)
class KeptSwatch:
    """A swatch with what has to be remembered of it."""

    name: str
    swatch: Swatch
    yarn: str = ""
    """The yarn in the person's own words."""
    machine: str = ""
    tension: Fraction | None = None
    date: str = ""
    notes: str = ""


@dataclass(frozen=True, slots=True)
class Pace:
    """How long this person takes; None where she has not said or measured it."""

    seconds_per_row: Fraction | None = None
    seconds_per_change: Fraction | None = None
    """To hold or return needles between two rows."""
    seconds_per_yarn: Fraction | None = None
    """To cut a yarn and thread the next."""


@dataclass(frozen=True, slots=True)
class StepNote:
    """What was noted when so many steps of the plan were done."""

    steps_done: int
    text: str


@dataclass(frozen=True, slots=True)
class Pause:
    at: str
    """When it began, as ISO 8601 writes it."""
    seconds: Fraction


@dataclass(frozen=True, slots=True)
class Progress:
    """A plan on the machine, and the place in it. The plan itself is kept: a later planner may make another one."""

    plan: Plan
    steps_done: int = 0
    """So many of the plan's steps have been carried out."""
    seconds: Fraction = Fraction(0)
    """Time at the machine so far."""
    notes: str = ""
    step_notes: tuple[StepNote, ...] = ()
    row_seconds: tuple[Fraction, ...] = ()
    """What the last rows took, one by one."""
    change_seconds: tuple[Fraction, ...] = ()
    """What the last changes between blocks took."""
    pauses: tuple[Pause, ...] = ()
    carried_from: int | None = None
    """The place, in the list that it stands in, of the plan that the piece had before it was carried on from what was there."""
    report: Report | None = None
    """What there is so far of the report for its designer; what is noted at single steps is in `step_notes`."""


@dataclass(frozen=True, slots=True)
class Fields:
    """What stands in the fields of a calculator: name and text of each."""

    calculator: str
    inputs: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Project:
    title: str = ""
    designs: tuple[Design, ...] = ()
    swatches: tuple[KeptSwatch, ...] = ()
    machines: tuple[Bed, ...] = ()
    """Machine profiles: a bed and what the machine can do; the name is that of the machine."""
    yarns: tuple[Yarn, ...] = ()
    """On the shelf."""
    pace: Pace = Pace()
    progress: tuple[Progress, ...] = ()
    fields: tuple[Fields, ...] = ()
    """What was last typed into the calculators."""
    classes: tuple[Class, ...] = ()
    made_by: str = field(default="", compare=False)
    """The version that wrote the file; not part of what the project says."""
