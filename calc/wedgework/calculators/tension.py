"""Tension: a line through swatches at several tensions, and the tension for a wanted gauge."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from fractions import Fraction

from wedgework.calculators.tension_line import LIMITS, MOST_SWATCHES, Swatch, line_result, numbers_in, wrong
from wedgework.declare import Calculator, Field, Group, Inputs, Result, choice, decimal, text
from wedgework.problems import Problem, Refused
from wedgework.say import say

__all__ = ["CALCULATOR", "PARTS"]

PARTS = ("1", "2", "3", "4", "10")


def _say(key: str, **values: object) -> str:
    return say(f"calculators.tension.{key}", **values)


def check(inputs: Inputs) -> Iterable[Problem]:
    """Every list is one of numbers, all are equally long, and there are two tensions at least."""
    problems: list[Problem] = []
    lists: dict[str, list[Fraction]] = {}
    for name in LIMITS:
        try:
            lists[name] = numbers_in(inputs, name, name)
        except Refused as refused:
            problems += refused.problems
    tensions = lists.get("tensions") if inputs.has("tensions") else None
    if tensions is not None and (len(set(tensions)) < 2 or len(tensions) > MOST_SWATCHES):
        problems.append(wrong("tensions", "how-many", found=len(tensions), most=MOST_SWATCHES))
    for name in ("stitches", "rows"):
        given = lists.get(name)
        if tensions is not None and given is not None and inputs.has(name) and len(given) != len(tensions):
            problems.append(wrong(name, "not-alike", found=len(given), wanted=len(tensions)))
    return problems


def _swatches(inputs: Inputs) -> list[Swatch]:
    tensions, stitches, rows = (numbers_in(inputs, name, name) for name in LIMITS)
    several: Sequence[Fraction | None] = rows or [None] * len(tensions)
    return [Swatch(*one) for one in zip(tensions, stitches, several, strict=True)]


def compute(inputs: Inputs) -> Result:
    wanted, off = inputs.number("wanted_stitches_per_10cm"), inputs.number("stitches_off_percent")
    return line_result(_swatches(inputs), wanted, off, int(inputs.text("marks_per_number")))


def _list(name: str, default: str, *, optional: bool = False) -> Field:
    least, most = LIMITS[name]
    words = {"least": least, "most": most, "count": MOST_SWATCHES}
    return replace(text(name, default, longest=120, optional=optional), allowed_words=lambda: _say("list", **words))


CALCULATOR = Calculator(
    "tension",
    (
        Group(
            "swatches",
            (
                _list("tensions", "5; 6; 7; 8"),
                _list("stitches", "31.2; 29.6; 28.3; 26.8"),
                _list("rows", "44; 41.5; 39; 37", optional=True),
            ),
        ),
        Group("wanted", (decimal("wanted_stitches_per_10cm", "29", *LIMITS["stitches"], "stitches-per-10cm"),)),
        Group(
            "details",
            (decimal("stitches_off_percent", "1.5", 0, 20, "percent"), choice("marks_per_number", "3", PARTS)),
        ),
    ),
    compute,
    check,
)
