"""A person's mistakes, as values: all of them at once, each with a place, a code and a way out.

    >>> from wedgework.problems import Problem, Refused
    >>> p = Problem("panel.width", "panel.too-wide", "120 needles are asked for, the bed has 110.",
    ...             "Ask for at most 110 needles, or split the piece into panels.")
    >>> str(p)
    'panel.width: 120 needles are asked for, the bed has 110. Ask for at most 110 needles, or split the piece into panels.'

Whoever finds mistakes collects them all and raises one `Refused`, which only the faces catch.
A programmer's mistakes are ordinary exceptions.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

__all__ = ["Problem", "Refused"]


@dataclass(frozen=True, slots=True)
class Problem:
    """One mistake (or one warning) that a person can mend."""

    where: str
    """Field name, or JSON path such as ``shapes[3].points[0]``; empty for the whole input."""
    code: str
    """Stable, for programs: ``room.what-is-wrong``."""
    sentence: str
    """What was found and what is allowed."""
    way_out: str = ""
    """What to do about it."""

    def __str__(self) -> str:
        words = f"{self.sentence} {self.way_out}".rstrip()
        return f"{self.where}: {words}" if self.where else words


class Refused(ValueError):
    """The input cannot be used; `problems` says everything that is wrong with it."""

    def __init__(self, problems: Iterable[Problem]) -> None:
        self.problems = tuple(problems)
        if not self.problems:
            raise AssertionError("a refusal needs at least one problem")
        super().__init__("\n".join(str(p) for p in self.problems))
