"""Even shaping: changes spread evenly up an edge or along a row, and edges given by points."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from fractions import Fraction
from itertools import pairwise

from wedgework.calculators.even_shaping_view import points_result, row_result, spread_result
from wedgework.declare import Calculator, Group, Inputs, Only, Result, choice, decimal, text, whole, yes_no
from wedgework.problems import Problem, Refused
from wedgework.say import say, say_n
from wedgework.shaping import Mixing, Spacing, most_changes, spaced, stages

__all__ = ["CALCULATOR"]

SPREAD = Only("along", ("rows", "stitches"))
EDGE = Only("along", ("rows", "points"))
ROW = Only("along", ("stitches",))
POINTS = Only("along", ("points",))

MIXING: dict[str, Mixing] = {"spread": "spread", "smaller": "smaller-first", "larger": "larger-first"}

MOST_ROWS, MOST_STITCHES, MOST_POINTS = 5000, 1000, 24
_POINT = re.compile(r"(\d{1,4})[ :,]+(\d{1,4})", re.ASCII)


def _say(key: str, **values: object) -> str:
    return say(f"calculators.even-shaping.{key}", **values)


def compute(inputs: Inputs) -> Result:
    along = inputs.text("along")
    if along == "points":
        return _points(inputs)
    return row_result(inputs, _spacing(inputs)) if along == "stitches" else spread_result(inputs, _spacing(inputs))


def check(inputs: Inputs) -> Iterable[Problem]:
    """Room for the changes; everything that is wrong with the points."""
    if not inputs.has("along"):
        return ()
    if inputs.text("along") == "points":
        return _wrong_points(inputs) if inputs.has("points") else ()
    needed = ("changes", "over", "gaps", *(("even_rows_only",) if inputs.text("along") == "rows" else ("change",)))
    return _no_room(inputs) if all(inputs.has(name) for name in needed) else ()


def _step(inputs: Inputs) -> int:
    """Rows from one place where a change is possible to the next."""
    return 2 if inputs.has("even_rows_only") and inputs.yes("even_rows_only") else 1


def _least(inputs: Inputs) -> int:
    """Two stitches become one: a part of a row where a stitch goes has two at least."""
    return 2 if inputs.text("along") == "stitches" and inputs.text("change") == "fewer" else 1


def _first(inputs: Inputs) -> int | None:
    return inputs.whole("first_after") if inputs.has("first_after") else None


def _no_room(inputs: Inputs) -> list[Problem]:
    problems = []
    first, step, least = _first(inputs), _step(inputs), _least(inputs)
    changes, over, closing = inputs.whole("changes"), inputs.whole("over"), inputs.text("gaps") == "k+1"
    if first is not None and first % step:
        sentence = _say("odd-first", first=first)
        problems.append(
            Problem("first_after", "even-shaping.odd-first", sentence, _say("odd-first.way-out", least=first - 1, most=first + 1))
        )
    if first is not None and first < least and least > 1:
        problems.append(
            Problem("first_after", "even-shaping.first-too-small", _say("first-too-small"), _say("first-too-small.way-out"))
        )
    most = most_changes(over, closing=closing, step=step, first=first, least=least)
    if changes > most:
        key = "no-room-rows" if inputs.text("along") == "rows" else "no-room-stitches"
        room = say_n("calculators.even-shaping.at-most", most)
        problems.append(Problem("changes", "even-shaping.no-room", _say(key, over=over, room=room), _say(f"{key}.way-out")))
    return problems


def _spacing(inputs: Inputs) -> Spacing:
    return spaced(
        inputs.whole("changes"),
        inputs.whole("over"),
        closing=inputs.text("gaps") == "k+1",
        step=_step(inputs),
        first=_first(inputs),
        mixing=MIXING[inputs.text("mixed")],
    )


def _points(inputs: Inputs) -> Result:
    points = _read_points(inputs.text("points"))
    half = 2 if inputs.text("edges") == "both" else 1
    one_edge = [(row, stitches // half) for row, stitches in points]
    return points_result(inputs, points, stages(one_edge, _step(inputs)))


def _read_points(typed: str) -> list[tuple[int, int]]:
    """(row, stitches) of each part. Raises Refused for every part that is none."""
    parts = [part.strip() for part in typed.split(";") if part.strip()]
    found = [_POINT.fullmatch(part) for part in parts]
    wrong = [part for part, match in zip(parts, found, strict=True) if match is None]
    if wrong:
        raise Refused(_wrong("not-a-point", found=part) for part in wrong)
    return [(int(match[1]), int(match[2])) for match in found if match]


def _wrong(key: str, **values: object) -> Problem:
    return Problem("points", f"even-shaping.{key}", _say(key, **values), _say(f"{key}.way-out", **values))


def _wrong_points(inputs: Inputs) -> Sequence[Problem]:
    """Points that go down, that no row is left for, that two edges cannot share, or that leave no stitch."""
    try:
        points = _read_points(inputs.text("points"))
    except Refused as refused:
        return refused.problems
    if not 2 <= len(points) <= MOST_POINTS:
        return [_wrong("how-many-points", found=len(points), most=MOST_POINTS)]
    problems = []
    if points[0][0] != 0:
        problems.append(_wrong("first-point", row=points[0][0]))
    if min(stitches for _, stitches in points) < 1 or max(stitches for _, stitches in points) > MOST_STITCHES:
        problems.append(_wrong("stitches-range", most=MOST_STITCHES))
    if points[-1][0] == 0 or points[-1][0] > MOST_ROWS:
        problems.append(_wrong("last-point", row=points[-1][0], most=MOST_ROWS))
    even = inputs.has("even_rows_only") and inputs.yes("even_rows_only")
    both = inputs.has("edges") and inputs.text("edges") == "both"
    for (start, before), (end, after) in pairwise(points):
        if end < start:
            problems.append(_wrong("falling", row=start, next=end))
        elif both and (after - before) % 2:
            problems.append(_wrong("odd-change", row=end, change=abs(after - before)))
        elif even and end == start and end % 2:
            problems.append(_wrong("odd-row", row=end))
        elif end > start and after != before and not _has_row(start, end, abs(after - before) // (2 if both else 1), even):
            problems.append(_wrong("no-row", row=start, next=end))
    return problems


def _has_row(start: int, end: int, changes: int, even: bool) -> bool:
    """Single changes need a row each; several at once an even row."""
    return end // 2 > start // 2 or (not even and changes <= end - start)


CALCULATOR = Calculator(
    "even-shaping",
    (
        Group(
            "what",
            (
                choice("along", "rows", ("rows", "stitches", "points")),
                choice("change", "more", ("more", "fewer"), only=SPREAD),
                whole("changes", "14", 1, 500, only=SPREAD),
                whole("over", "124", 1, MOST_ROWS, only=SPREAD),
                text("points", "0 40; 90 62; 120 62; 120 56; 140 30", longest=300, only=POINTS),
            ),
        ),
        Group(
            "how",
            (
                choice("gaps", "k", ("k", "k+1"), only=SPREAD),
                yes_no("even_rows_only", "no", only=EDGE),
                whole("first_after", "", 0, MOST_ROWS, optional=True, only=SPREAD),
                choice("edges", "one", ("one", "both"), only=EDGE),
                choice("mixed", "spread", tuple(MIXING), only=SPREAD),
                choice("counted", "before", ("before", "after"), only=ROW),
            ),
        ),
        Group(
            "gauge",
            (
                decimal("stitches_per_10cm", "14", Fraction(2), 80, "stitches-per-10cm"),
                decimal("rows_per_10cm", "19", Fraction(2), 120, "rows-per-10cm"),
            ),
        ),
    ),
    compute,
    check,
)
