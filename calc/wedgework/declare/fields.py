"""One field: its kind, its range, its own unit, its default as typed, and how its text is read."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Literal

from wedgework.declare.inputs import Value
from wedgework.problems import Problem, Refused
from wedgework.say import has, say
from wedgework.units import (
    LENGTH_UNITS,
    MASS_UNITS,
    MOST_MEASUREMENTS,
    from_mm,
    in_language,
    length_mm,
    lengths_mm,
    mass_g,
    number,
    per_10cm,
    short_decimal,
)

__all__ = [
    "Field",
    "Kind",
    "Only",
    "choice",
    "colour",
    "decimal",
    "length",
    "lengths",
    "lines",
    "mass",
    "text",
    "whole",
    "yes_no",
]

Kind = Literal["whole", "decimal", "length", "lengths", "mass", "choice", "colour", "text", "lines", "yes-no"]
Words = Callable[[], str]

PER_LENGTH = ("stitches-per-10cm", "rows-per-10cm")
"""Units of a gauge."""

_NAME = re.compile(r"[a-z][a-z0-9_]*")
# Control characters but tab and line end, halves of pairs, marks that turn the direction of writing, no characters at all.
_ODD = re.compile("[\x00-\x08\x0e-\x1f\x7f-\x84\x86-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff\ufffe\uffff]")
_COLOUR = re.compile(r"#[0-9a-f]{6}")


@dataclass(frozen=True, slots=True)
class Only:
    """The field is read only while the choice `field` is one of `values`."""

    field: str
    values: tuple[str, ...]

    def met(self, choices: Mapping[str, object]) -> bool:
        """Whether the field is in use with what is chosen, by field; a choice that is not there is none of them."""
        return choices.get(self.field) in self.values


@dataclass(frozen=True, slots=True)
class Field:
    """Made by the functions below; `least` and `most` are in the field's own unit and both allowed."""

    name: str
    kind: Kind
    default: str
    least: Fraction | None = None
    most: Fraction | None = None
    unit: str = ""
    """Lengths: the unit of a number typed alone. Numbers: the end of a key ``declare.unit-...``; empty for none."""
    choices: tuple[str, ...] = ()
    choice_words: Callable[[str], str] | None = None
    """What a choice is called, where that is said elsewhere than under ``calculators.<slug>.<field>.<choice>``."""
    optional: bool = False
    most_values: int = 1
    longest: int = 80
    only: Only | None = None
    label_words: Words | None = None
    help_words: Words | None = None
    allowed_words: Words | None = None
    """What may be typed, where the range alone does not say it."""

    def __post_init__(self) -> None:
        if not _NAME.fullmatch(self.name) or self.name in ("json", "help"):
            raise ValueError(f"{self.name!r} cannot be the name of a field")

    def label(self, slug: str) -> str:
        return self.label_words() if self.label_words else say(f"calculators.{slug}.{self.name}.label")

    def help(self, slug: str) -> str:
        return self.help_words() if self.help_words else say(f"calculators.{slug}.{self.name}.help")

    def choice_label(self, slug: str, chosen: str) -> str:
        if self.kind == "yes-no":
            return say(f"declare.{chosen}")
        return self.choice_words(chosen) if self.choice_words else say(f"calculators.{slug}.{self.name}.{chosen}")

    @property
    def typed_default(self) -> str:
        """The default as somebody would type it in the language that is spoken: with its decimal mark, a name in its words."""
        if self.kind in ("text", "lines"):
            key = f"declare.default-{'-'.join(re.findall('[a-z0-9]+', self.default.lower()))[:40]}"
            return say(key) if has(key) else self.default
        return self.with_mark(self.default)

    def with_mark(self, typed: str) -> str:
        """A number as a link or a file has it, with the decimal mark of the language; other kinds as they are."""
        return in_language(typed) if self.kind in ("decimal", "length", "lengths", "mass") else typed

    @property
    def per_length(self) -> bool:
        """Whether it is a gauge, which may be typed to any length: 14, or 3.5 per in."""
        return self.kind == "decimal" and self.unit in PER_LENGTH

    @property
    def range_text(self) -> str:
        """What may be typed, in words: shown beside the field, in the help text and in messages."""
        if self.allowed_words:
            return self.allowed_words()
        if self.kind == "choice":
            return ", ".join(self.choices)
        if self.kind in ("colour", "yes-no"):
            return say(f"declare.range-{self.kind}")
        if self.kind in ("text", "lines"):
            return say("declare.range-text", most=self.longest)
        if self.least is None or self.most is None:
            raise AssertionError(f"{self.name} has no range")
        least, most = (self._shown(limit) for limit in (self.least, self.most))
        words = say("declare.range", least=least, most=most, unit=self.unit_text).rstrip()
        if self.kind == "lengths":
            return say("declare.range-several", words=words, most=self.most_values)
        return say("declare.range-per-length", words=words) if self.per_length else words

    @property
    def unit_text(self) -> str:
        if self.kind in ("length", "lengths", "mass"):
            return self.unit
        return say(f"declare.unit-{self.unit}") if self.unit else ""

    def read(self, typed: str) -> Value:
        """The value of what was typed. Raises Refused with problems that name this field and what is allowed."""
        if _ODD.search(typed):
            raise self._wrong("declare.odd-characters", "")
        try:
            return self._read(_lines(typed) if self.kind == "lines" else " ".join(typed.split()))
        except Refused as refused:
            raise Refused(self._placed(problem) for problem in refused.problems) from None

    def _placed(self, problem: Problem) -> Problem:
        allowed = say("declare.way-out", allowed=self.range_text)
        way_out = problem.way_out if allowed in problem.way_out else f"{problem.way_out} {allowed}".lstrip()
        return replace(problem, where=self.name, way_out=way_out)

    def _read(self, typed: str) -> Value:
        if not typed:
            if self.optional:
                return None
            raise self._wrong("declare.missing", "")
        if self.kind == "choice" or self.kind == "yes-no":
            if typed not in self.choices:
                raise self._wrong("declare.not-a-choice", typed)
            return typed == "yes" if self.kind == "yes-no" else typed
        if self.kind == "colour":
            if not _COLOUR.fullmatch(typed.lower()):
                raise self._wrong("declare.not-a-colour", typed)
            return typed.lower()
        if self.kind in ("text", "lines"):
            if len(typed) > self.longest:
                raise self._wrong("declare.too-long", typed)
            return typed
        return self._measured(typed)

    def _measured(self, typed: str) -> Value:
        if self.kind == "lengths":
            several = lengths_mm(typed, self.unit, self.most_values)
            for one in several:
                self._check(from_mm(one, self.unit), typed)
            return several
        if self.kind == "length":
            one = length_mm(typed, self.unit)
            self._check(from_mm(one, self.unit), typed)
            return one
        if self.kind == "mass":
            one = mass_g(typed, self.unit)
            self._check(one / MASS_UNITS[self.unit], typed)
            return one
        value = per_10cm(typed) if self.per_length else number(typed)
        if self.kind == "whole" and value.denominator != 1:
            raise self._wrong("declare.not-whole", typed)
        self._check(value, typed)
        return int(value) if self.kind == "whole" else value

    def _check(self, value: Fraction, typed: str) -> None:
        if (self.least is not None and value < self.least) or (self.most is not None and value > self.most):
            raise self._wrong("declare.out-of-range", typed)

    def _shown(self, limit: Fraction) -> str:
        return short_decimal(limit, 3)

    def _wrong(self, code: str, typed: str) -> Refused:
        found = typed if len(typed) <= 40 else typed[:39] + "\u2026"
        return Refused([Problem(self.name, code, say(code, found=found), say("declare.way-out", allowed=self.range_text))])


def _lines(typed: str) -> str:
    """Each line tidied, empty ones left out; a semicolon ends a line too, so that a list can stand in one."""
    lines = (" ".join(line.split()) for line in typed.replace(";", "\n").split("\n"))
    return "\n".join(line for line in lines if line)


def whole(
    name: str, default: str, least: int, most: int, unit: str = "", *, optional: bool = False, only: Only | None = None
) -> Field:
    """A whole number."""
    return Field(name, "whole", default, Fraction(least), Fraction(most), unit, optional=optional, only=only)


def decimal(
    name: str,
    default: str,
    least: Fraction | int,
    most: Fraction | int,
    unit: str = "",
    *,
    optional: bool = False,
    only: Only | None = None,
) -> Field:
    """A number, kept exactly as typed."""
    return Field(name, "decimal", default, Fraction(least), Fraction(most), unit, optional=optional, only=only)


def length(
    name: str,
    default: str,
    least: Fraction | int,
    most: Fraction | int,
    own: str,
    *,
    optional: bool = False,
    only: Only | None = None,
) -> Field:
    """A length; `own` is the unit of a number typed alone and of the range. The value is in mm."""
    if own not in LENGTH_UNITS:
        raise ValueError(own)
    return Field(name, "length", default, Fraction(least), Fraction(most), own, optional=optional, only=only)


def lengths(
    name: str,
    default: str,
    least: Fraction | int,
    most: Fraction | int,
    own: str,
    *,
    optional: bool = False,
    only: Only | None = None,
    most_values: int = MOST_MEASUREMENTS,
) -> Field:
    """Several measurements of one length, separated by semicolons. The value is a tuple of mm."""
    return replace(length(name, default, least, most, own, optional=optional, only=only), kind="lengths", most_values=most_values)


def choice(
    name: str,
    default: str,
    choices: tuple[str, ...],
    *,
    words: Callable[[str], str] | None = None,
    optional: bool = False,
    only: Only | None = None,
) -> Field:
    """One of `choices`, by its key."""
    return Field(name, "choice", default, choices=choices, choice_words=words, optional=optional, only=only)


def mass(
    name: str,
    default: str,
    least: Fraction | int,
    most: Fraction | int,
    own: str,
    *,
    optional: bool = False,
    only: Only | None = None,
) -> Field:
    """A mass; `own` is the unit of a number typed alone and of the range. The value is in g."""
    if own not in MASS_UNITS:
        raise ValueError(own)
    return Field(name, "mass", default, Fraction(least), Fraction(most), own, optional=optional, only=only)


def yes_no(name: str, default: Literal["yes", "no"], *, only: Only | None = None) -> Field:
    return Field(name, "yes-no", default, choices=("yes", "no"), only=only)


def colour(name: str, default: str, *, only: Only | None = None) -> Field:
    """``#rrggbb``"""
    return Field(name, "colour", default, only=only)


def text(name: str, default: str, *, longest: int = 80, optional: bool = False, only: Only | None = None) -> Field:
    """A person's own words; kept as they are, shown as text only."""
    return Field(name, "text", default, longest=longest, optional=optional, only=only)


def lines(name: str, default: str, *, longest: int = 2000, optional: bool = False, only: Only | None = None) -> Field:
    """A list in a person's own words, one thing a line; the value is its tidied lines."""
    return Field(name, "lines", default, longest=longest, optional=optional, only=only)
