"""How a named layout is declared: parameters with ranges, and shapes made from them."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from typing import Literal

from wedgework.exact import nearest
from wedgework.formats.design import DrawnLayout
from wedgework.layout.yarns import unknown_yarn
from wedgework.problems import Problem
from wedgework.say import say
from wedgework.units import in_language

__all__ = ["Draw", "LayoutDeclaration", "Parameter", "Value", "Values"]

Value = str | Fraction | tuple[str, ...]

FEWEST_NEEDLES, FEWEST_ROWS = 8, 8
"""Repeats of fewer needles or rows are not moved to whole needles and turns: that would change their shape too much."""


class Values:
    """Read parameters, each asked for by its kind (another kind is a programmer's mistake), and the panel they are for.

    Shapes are in fractions of the panel; what has to be so many needles or turns of the carriage takes its measure here.
    """

    def __init__(self, values: Mapping[str, Value], needles: int, rows: int) -> None:
        self.all = dict(values)
        self.needles, self.rows = needles, rows

    @property
    def needle(self) -> Fraction:
        """The width of one needle."""
        return Fraction(1, self.needles)

    @property
    def turn(self) -> Fraction:
        """The height of one turn, two rows."""
        return Fraction(2, self.rows)

    def to_needle(self, x: Fraction) -> Fraction:
        """The border between two needles that lies nearest."""
        return nearest(x / self.needle) * self.needle

    def to_turn(self, y: Fraction) -> Fraction:
        """The border between two turns that lies nearest."""
        return nearest(y / self.turn) * self.turn

    def column(self, k: int, count: int) -> Fraction:
        """Border `k` of `count` columns, between two needles: repeats that begin there are equal.

        Columns too narrow to be even then are left as they are.
        """
        x = Fraction(k, count)
        return self.to_needle(x) if self.needles >= FEWEST_NEEDLES * count else x

    def storey(self, k: int, count: int) -> Fraction:
        """Border `k` of `count` rows of blocks, between two turns, unless they are too low to be even then."""
        y = Fraction(k, count)
        return self.to_turn(y) if self.rows >= FEWEST_ROWS * count else y

    def columns(self, count: int) -> list[tuple[Fraction, Fraction]]:
        """Left and right of each of `count` columns."""
        return list(pairwise(self.column(k, count) for k in range(count + 1)))

    def storeys(self, count: int) -> list[tuple[Fraction, Fraction]]:
        """Foot and top of each of `count` rows of blocks."""
        return list(pairwise(self.storey(k, count) for k in range(count + 1)))

    def lean(self, height: Fraction) -> Fraction:
        """How far across a border of this height leans if it moves one needle every turn: the steepest that joins by itself."""
        return height * self.needle / self.turn

    def climb(self, width: Fraction) -> Fraction:
        """How high a border of this width climbs if it moves one needle every turn: the other way round."""
        return width * self.turn / self.needle

    def yarn(self, name: str) -> str:
        value = self.all[name]
        if not isinstance(value, str):
            raise TypeError(name)
        return value

    def yarns(self, name: str) -> tuple[str, ...]:
        value = self.all[name]
        if not isinstance(value, tuple):
            raise TypeError(name)
        return value

    def number(self, name: str) -> Fraction:
        value = self.all[name]
        if not isinstance(value, Fraction):
            raise TypeError(name)
        return value

    def whole(self, name: str) -> int:
        value = self.number(name)
        if value.denominator != 1:
            raise TypeError(name)
        return int(value)


Draw = Callable[[Values], DrawnLayout]


@dataclass(frozen=True, slots=True)
class Parameter:
    """`kind`: ``yarn`` (an id), ``yarns`` (ids separated by spaces, taken in turn), ``whole`` or ``fraction`` (of the panel)."""

    name: str
    kind: Literal["yarn", "yarns", "whole", "fraction"]
    default: Fraction | None = None
    """None for yarns: they default to the design's own, in order."""
    least: Fraction = Fraction(0)
    most: Fraction = Fraction(0)
    default_yarn: int = 0
    """For ``yarn``: which of the design's yarns; for ``yarns``: the first of those taken."""


@dataclass(frozen=True, slots=True)
class LayoutDeclaration:
    name: str
    parameters: tuple[Parameter, ...]
    draw: Draw

    @property
    def title(self) -> str:
        return say(f"layout.{self.name}.title")

    @property
    def how_it_knits(self) -> str:
        return say(f"layout.{self.name}.how-it-knits")

    def label(self, parameter: Parameter) -> str:
        return say(f"layout.{self.name}.{parameter.name}.label")

    def shapes(self, given: Mapping[str, str | Fraction], yarns: Sequence[str], needles: int, rows: int) -> DrawnLayout:
        """The layout on a panel of so many needles and rows; `given` has been checked by `problems`."""
        return self.draw(Values(self._values(given, yarns), needles, rows))

    def written(self, given: Mapping[str, str | Fraction], yarns: Sequence[str]) -> dict[str, str | Fraction]:
        """The parameters with every default filled in, as they stand in a file; `given` has been checked by `problems`."""
        values = self._values(given, yarns)
        return {key: " ".join(value) if isinstance(value, tuple) else value for key, value in values.items()}

    def _values(self, given: Mapping[str, str | Fraction], yarns: Sequence[str]) -> dict[str, Value]:
        return {p.name: self._value(p, given, yarns) for p in self.parameters}

    def _value(self, p: Parameter, given: Mapping[str, str | Fraction], yarns: Sequence[str]) -> Value:
        value = given.get(p.name)
        if p.kind == "yarns":
            return tuple(str(value).split()) if value is not None else tuple(yarns[p.default_yarn :]) or (yarns[-1],)
        if p.kind == "yarn":
            return str(value) if value is not None else yarns[min(p.default_yarn, len(yarns) - 1)]
        if value is None:
            if p.default is None:
                raise ValueError(f"{self.name}.{p.name} has no default")
            return p.default
        return Fraction(value)

    def problems(self, given: Mapping[str, str | Fraction], yarns: Sequence[str]) -> list[Problem]:
        """Everything that is wrong with `given`."""
        found = [
            Problem(
                f"layout.parameters.{name}",
                "layout.unknown-parameter",
                say("layout.unknown-parameter", layout=self.name, parameter=name),
                say("layout.unknown-parameter.way-out", names=", ".join(p.name for p in self.parameters)),
            )
            for name in given
            if all(p.name != name for p in self.parameters)
        ]
        for p in self.parameters:
            if p.name in given:
                found += self._parameter_problems(p, given[p.name], yarns)
        return found

    def _parameter_problems(self, p: Parameter, value: str | Fraction, yarns: Sequence[str]) -> list[Problem]:
        where = f"layout.parameters.{p.name}"
        if p.kind in ("yarn", "yarns"):
            ids = str(value).split() if isinstance(value, str) else []
            if (p.kind == "yarn" and len(ids) != 1) or not ids:
                return [
                    Problem(
                        where,
                        "layout.yarn-wanted",
                        say("layout.yarn-wanted", found=value),
                        say("layout.unknown-yarn.way-out", yarns=", ".join(yarns)),
                    )
                ]
            return [unknown_yarn(where, i, yarns) for i in ids if i not in yarns]
        whole = p.kind == "whole"
        if isinstance(value, str) or not p.least <= value <= p.most or (whole and value.denominator != 1):
            return [
                Problem(
                    where,
                    "layout.parameter-range",
                    say(
                        "layout.whole-wanted" if whole else "layout.number-wanted",
                        found=_shown(value),
                        least=_shown(p.least),
                        most=_shown(p.most),
                    ),
                    say("layout.parameter-range.way-out"),
                )
            ]
        return []


def _shown(value: str | Fraction) -> str:
    if isinstance(value, str):
        return value
    return str(value.numerator) if value.denominator == 1 else in_language(f"{float(value):.6g}")
