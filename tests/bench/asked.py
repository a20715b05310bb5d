"""What each calculator's answer costs, timed on the Python that runs this: CPython, or Pyodide through in_worker.py."""

from __future__ import annotations

from large import forget, plain_loop, seconds

import wedgework.calculators.planning as planning
from wedgework.catalogue import CALCULATORS
from wedgework.faces.wire import default_answer

__all__ = ["times"]


def _anew(slug: str) -> None:
    forget()
    planning._last.forget()
    default_answer(slug)


def times() -> dict[str, float]:
    """Seconds: of a plain loop, and by slug of the answer for the defaults as if it were the first question."""
    found = {"loop": seconds(plain_loop, 3)}
    for calculator in CALCULATORS:
        default_answer(calculator.slug)  # the first one warms the Python
        found[calculator.slug] = seconds(lambda slug=calculator.slug: _anew(slug), 5)
    return found
