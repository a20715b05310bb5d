"""A calculator: its fields in groups, and the function from inputs to a result. And the one way to ask it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import Literal

from wedgework.declare.fields import Field
from wedgework.declare.inputs import Inputs, Value
from wedgework.declare.shown import Result
from wedgework.problems import Problem, Refused
from wedgework.say import say

__all__ = ["Answer", "Calculator", "Group", "read_all", "work_out"]


def _nothing(_inputs: Inputs) -> Iterable[Problem]:
    return ()


@dataclass(frozen=True, slots=True)
class Group:
    """Fields that belong together; the title is said under ``calculators.<slug>.group-<key>``."""

    key: str
    fields: tuple[Field, ...]
    folded: Literal["", "alone", "piece"] = ""
    """Shown folded: alone, or with its neighbours the whole piece, which the panel plan has already asked for."""


@dataclass(frozen=True, slots=True)
class Calculator:
    """`compute` may raise Refused, with the names of fields in its problems.

    `check` finds what is wrong between fields, so that it is told together with what is wrong in them: it meets inputs of
    which some could not be read.
    """

    slug: str
    groups: tuple[Group, ...]
    compute: Callable[[Inputs], Result]
    check: Callable[[Inputs], Iterable[Problem]] = _nothing

    def __post_init__(self) -> None:
        names = [field.name for field in self.fields]
        if len(set(names)) != len(names):
            raise ValueError(f"{self.slug} has two fields of one name")
        for field in self.fields:
            decider = self.field(field.only.field) if field.only else None
            if field.only and (decider is None or decider.kind != "choice" or decider.only):
                raise ValueError(f"{field.name} hangs on {field.only.field}, which is no choice of its own")
            if field.only and decider and not set(field.only.values) <= set(decider.choices):
                raise ValueError(f"{field.name} hangs on choices that {decider.name} does not have")

    @property
    def fields(self) -> tuple[Field, ...]:
        return tuple(field for group in self.groups for field in group.fields)

    def field(self, name: str) -> Field | None:
        return next((field for field in self.fields if field.name == name), None)

    @property
    def defaults(self) -> dict[str, str]:
        """What is typed where nobody has typed anything."""
        return {field.name: field.typed_default for field in self.fields}

    def with_marks(self, typed: Mapping[str, str]) -> dict[str, str]:
        """Texts that come from a link or another page, as somebody would type them in the language that is spoken."""
        return {name: field.with_mark(text) if (field := self.field(name)) else text for name, text in typed.items()}

    @property
    def title(self) -> str:
        return say(f"calculators.{self.slug}.title")

    @property
    def what(self) -> str:
        """What it is for, in one sentence."""
        return say(f"calculators.{self.slug}.what")

    def group_title(self, group: Group) -> str:
        return say(f"calculators.{self.slug}.group-{group.key}")


@dataclass(frozen=True, slots=True)
class Answer:
    """Either a result, or at least one problem."""

    calculator: Calculator
    inputs: Mapping[str, str]
    """As typed, each default filled in."""
    result: Result | None
    problems: tuple[Problem, ...] = ()


def work_out(calculator: Calculator, typed: Mapping[str, str]) -> Answer:
    """Ask `calculator` with `typed` in its fields; what is not there has its default. Raises nothing that a person caused."""
    inputs = calculator.defaults | {name: _writable(text) for name, text in typed.items() if calculator.field(name)}
    try:
        return Answer(calculator, inputs, calculator.compute(read_all(calculator, typed)))
    except Refused as refused:
        return Answer(calculator, inputs, None, refused.problems)


def read_all(calculator: Calculator, typed: Mapping[str, str]) -> Inputs:
    """Every field in use. Raises Refused with every problem of every field, in the order of the form."""
    problems = [_unknown(calculator, name) for name in typed if calculator.field(name) is None]
    values: dict[str, Value] = {}
    # Choices first: they say which of the other fields are in use.
    for field in sorted(calculator.fields, key=lambda f: f.only is not None):
        if field.only and not field.only.met(values):
            continue
        try:
            values[field.name] = field.read(typed.get(field.name, field.typed_default))
        except Refused as refused:
            problems += refused.problems
    problems += calculator.check(Inputs(values, {problem.where for problem in problems}))
    if problems:
        place = {field.name: i for i, field in enumerate(calculator.fields)}
        raise Refused(sorted(problems, key=lambda p: place.get(p.where, -1)))
    return Inputs(values)


def _writable(text: str) -> str:
    """Text that every output can carry: half of a pair, which is no character, becomes a question mark."""
    return text.encode("utf-8", "replace").decode("utf-8")


def _unknown(calculator: Calculator, name: str) -> Problem:
    found = _writable(name)
    names = ", ".join(field.name for field in calculator.fields)
    sentence = say("declare.unknown-field", slug=calculator.slug, found=found)
    return Problem(found, "declare.unknown-field", sentence, say("declare.unknown-field.way-out", names=names))
