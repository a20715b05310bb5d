"""Calculators at work in tests: what was typed in, a result without problems out.

result = partial(working.result, CALCULATOR)            result(width="90").view
values = partial(working.values, CALCULATOR, **SMALL)   values(rows="40")["rows"]
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from wedgework.declare import Calculator, Result, work_out

__all__ = ["numbers", "result", "values", "wrong"]


def result(calculator: Calculator, **typed: str) -> Result:
    """The result; there must be one, and no problem."""
    answer = work_out(calculator, typed)
    assert answer.problems == ()
    assert answer.result is not None
    return answer.result


def values(calculator: Calculator, **typed: str) -> dict[str, Any]:
    """The values of the result."""
    return dict(result(calculator, **typed).values)


def numbers(calculator: Calculator, **typed: str) -> dict[str, Fraction]:
    """Those of the values that are numbers."""
    return {key: Fraction(value) for key, value in values(calculator, **typed).items() if isinstance(value, (int, Fraction))}


def wrong(calculator: Calculator, **typed: str) -> list[tuple[str, str]]:
    """Field and code of every problem; each has a way out."""
    problems = work_out(calculator, typed).problems
    assert all(problem.way_out for problem in problems)
    return [(problem.where, problem.code) for problem in problems]
