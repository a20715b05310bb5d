"""The last few answers to a kind of question, where a person's next question is often one of the last again."""

from __future__ import annotations

from collections import deque
from collections.abc import Callable
from typing import Generic, TypeVar

__all__ = ["Remembered"]

Asked = TypeVar("Asked")
Found = TypeVar("Found")


class Remembered(Generic[Asked, Found]):
    """At most `most` of them. Questions are compared, not hashed, so they need not be frozen; but nobody may change one later."""

    def __init__(self, most: int) -> None:
        self._last: deque[tuple[Asked, Found]] = deque(maxlen=most)

    def of(self, asked: Asked, work_out: Callable[[], Found]) -> Found:
        """What was found before, or what is found now. Where `work_out` raises, nothing is kept."""
        for before, found in self._last:
            if before == asked:
                return found
        found = work_out()
        self._last.append((asked, found))
        return found

    def forget(self) -> None:
        self._last.clear()
