"""What a calculator gives back: values for programs, and parts to show, for which each face has its own form."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from wedgework.problems import Problem

__all__ = ["Bullets", "Figure", "Figures", "Picture", "Plain", "Prose", "Result", "Shown", "Table", "Written"]

Plain = str | int | bool | Fraction | None | Sequence["Plain"] | Mapping[str, "Plain"]


@dataclass(frozen=True, slots=True)
class Figure:
    """One line: what it is, the figure with its unit, a remark."""

    label: str
    value: str
    note: str = ""
    name: str = ""
    """Its key in `Result.values`, where it has one."""


@dataclass(frozen=True, slots=True)
class Figures:
    title: str
    rows: tuple[Figure, ...]


@dataclass(frozen=True, slots=True)
class Picture:
    """`svg` comes from the draw room, finished and safe."""

    title: str
    svg: str
    caption: str


@dataclass(frozen=True, slots=True)
class Table:
    """The first cell of each row is its head."""

    title: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    keys: tuple[str, ...] = ()
    """What each row is about, for the page's own script; one for each row, or none at all."""
    sides: tuple[str, ...] = ()
    """In the same way: "L" or "R", where what the row is about begins; empty where that is not said."""


@dataclass(frozen=True, slots=True)
class Bullets:
    title: str
    items: tuple[str, ...]
    ordered: bool = False


@dataclass(frozen=True, slots=True)
class Prose:
    title: str
    paragraphs: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Written:
    """What another room has already written, both ways; `html` is finished and safe."""

    title: str
    html: str
    text: str


Shown = Figures | Picture | Table | Bullets | Prose | Written


@dataclass(frozen=True, slots=True)
class Result:
    """`values`: plain numbers, the unit in each name; fractions become rounded decimals at the edge."""

    values: Mapping[str, Plain]
    view: tuple[Shown, ...]
    warnings: tuple[Problem, ...] = ()
