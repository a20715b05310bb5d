"""What was read, field by field: each value is asked for by its kind."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction
from typing import TypeVar

__all__ = ["Inputs", "Value"]

Value = int | Fraction | str | bool | tuple[Fraction, ...] | None
T = TypeVar("T")


class Inputs:
    """Asking for a value by another kind than its field's, or for an empty one as if it were there, is a programmer's mistake.

    Fields that are not in use, because the choice they hang on is another, count as empty.
    """

    def __init__(self, values: Mapping[str, Value], unread: Iterable[str] = ()) -> None:
        self._values = dict(values)
        self._unread = frozenset(unread)

    def given(self, name: str) -> bool:
        """Whether anything was typed there; only a check before computing meets what was typed but could not be read."""
        return self.has(name) or name in self._unread

    def has(self, name: str) -> bool:
        """Whether there is a value to ask for."""
        return self._values.get(name) is not None

    def whole(self, name: str) -> int:
        value = self._values[name]
        if isinstance(value, bool) or not isinstance(value, int):
            raise TypeError(name)
        return value

    def number(self, name: str) -> Fraction:
        """A whole number or a decimal, as a fraction."""
        value = self._values[name]
        if isinstance(value, bool) or not isinstance(value, (int, Fraction)):
            raise TypeError(name)
        return Fraction(value)

    def mm(self, name: str) -> Fraction:
        return self._as(name, Fraction)

    def g(self, name: str) -> Fraction:
        return self._as(name, Fraction)

    def several_mm(self, name: str) -> tuple[Fraction, ...]:
        value = self._values[name]
        if not isinstance(value, tuple):
            raise TypeError(name)
        return value

    def text(self, name: str) -> str:
        """Text, a colour, or the key of a choice."""
        return self._as(name, str)

    def yes(self, name: str) -> bool:
        return self._as(name, bool)

    def _as(self, name: str, kind: type[T]) -> T:
        value = self._values[name]
        if not isinstance(value, kind):
            raise TypeError(name)
        return value
