"""The answer of a calculator as JSON: plain numbers in named units, the same bytes on every Python."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping, Sequence
from fractions import Fraction
from typing import Any

from wedgework.declare import Answer, Plain
from wedgework.problems import Problem, Refused
from wedgework.units import plain

__all__ = ["Json", "Teller", "Told", "answer_object", "json_text", "problem_object", "refusing"]

Json = str | int | float | bool | None | list["Json"] | dict[str, "Json"]
Told = dict[str, Json]
Teller = Callable[[dict[str, Any]], Told | None]
"""Who answers a question: None where it is misshapen."""


def answer_object(answer: Answer) -> dict[str, Json]:
    """Exactly the keys calculator, inputs, result, problems, warnings; `result` is empty where there are problems.

    `inputs` are the texts as typed, each default filled in: typed again they give this answer again.
    """
    result = answer.result
    return {
        "calculator": answer.calculator.slug,
        "inputs": dict(answer.inputs),
        "result": {key: _plain(value) for key, value in result.values.items()} if result else {},
        "problems": [problem_object(problem) for problem in answer.problems],
        "warnings": [problem_object(warning) for warning in result.warnings] if result else [],
    }


def problem_object(problem: Problem) -> dict[str, Json]:
    return {"where": problem.where, "code": problem.code, "sentence": problem.sentence, "way_out": problem.way_out}


def refusing(nothing: Told, tell: Teller) -> Teller:
    """The answer, or `nothing` with what is in the way."""

    def told(asked: dict[str, Any]) -> Told | None:
        try:
            found = tell(asked)
        except Refused as refused:
            return nothing | {"problems": [problem_object(problem) for problem in refused.problems]}
        return found if found is None or "problems" in found else found | {"problems": []}

    return told


def json_text(value: Json, indent: int | None = None) -> str:
    """JSON in the order that was given; NaN is a programmer's mistake."""
    return json.dumps(value, ensure_ascii=False, allow_nan=False, indent=indent)


def _plain(value: Plain) -> Json:
    if isinstance(value, Fraction):
        return plain(value)
    if value is None or isinstance(value, (str, bool, int)):
        return value
    if isinstance(value, Mapping):
        return {key: _plain(one) for key, one in value.items()}
    if isinstance(value, Sequence):
        return [_plain(one) for one in value]
    raise TypeError(f"not a plain value: {value!r}")
