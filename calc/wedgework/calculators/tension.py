"""Tension: a line through swatches at several tensions, and the tension for a wanted gauge."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from wedgework.declare import (
    Calculator,
    Field,
    Figure,
    Figures,
    Group,
    Inputs,
    Picture,
    Plain,
    Result,
    Shown,
    Table,
    choice,
    decimal,
    text,
)
from wedgework.draw.line import line_svg
from wedgework.exact import nearest_part
from wedgework.lines import Line, line_through
from wedgework.problems import Problem, Refused
from wedgework.say import say
from wedgework.units import decimal_text, mixed_text, number, per_10cm, per_inch_too, short_decimal, signed_text

__all__ = ["CALCULATOR"]

MOST_SWATCHES = 10
# How far beyond the swatches a tension may lie: half of what they span, one number at most. Our own choice.
BEYOND_SPAN, BEYOND_MOST = Fraction(1, 2), Fraction(1)
# The lists, and the least and the most of each number in them.
LIMITS = {"tensions": (0, 30), "stitches": (2, 80), "rows": (2, 120)}
PARTS = ("1", "2", "3", "4", "10")


def _say(key: str, **values: object) -> str:
    return say(f"calculators.tension.{key}", **values)


@dataclass(frozen=True, slots=True)
class _Swatch:
    tension: Fraction
    stitches: Fraction
    rows: Fraction | None


def _wrong(where: str, key: str, **values: object) -> Problem:
    return Problem(where, f"tension.{key}", _say(key, **values), _say(f"{key}.way-out", **values))


def _numbers(inputs: Inputs, name: str) -> list[Fraction]:
    """The numbers of one list. Raises Refused for every part that is none or out of range."""
    if not inputs.has(name):
        return []
    least, most = LIMITS[name]
    problems, found = [], []
    for part in filter(None, (one.strip() for one in inputs.text(name).split(";"))):
        try:
            value = number(part) if name == "tensions" else per_10cm(part)
        except Refused as refused:
            problems += [replace(problem, where=name) for problem in refused.problems]
            continue
        if not least <= value <= most:
            problems.append(_wrong(name, "out-of-range", found=part, least=least, most=most))
        found.append(value)
    if problems:
        raise Refused(problems)
    return found


def check(inputs: Inputs) -> Iterable[Problem]:
    """Every list is one of numbers, all are equally long, and there are two tensions at least."""
    problems: list[Problem] = []
    lists: dict[str, list[Fraction]] = {}
    for name in LIMITS:
        try:
            lists[name] = _numbers(inputs, name)
        except Refused as refused:
            problems += refused.problems
    tensions = lists.get("tensions") if inputs.has("tensions") else None
    if tensions is not None and (len(set(tensions)) < 2 or len(tensions) > MOST_SWATCHES):
        problems.append(_wrong("tensions", "how-many", found=len(tensions), most=MOST_SWATCHES))
    for name in ("stitches", "rows"):
        given = lists.get(name)
        if tensions is not None and given is not None and inputs.has(name) and len(given) != len(tensions):
            problems.append(_wrong(name, "not-alike", found=len(given), wanted=len(tensions)))
    return problems


def _swatches(inputs: Inputs) -> list[_Swatch]:
    tensions, stitches, rows = (_numbers(inputs, name) for name in LIMITS)
    several: Sequence[Fraction | None] = rows or [None] * len(tensions)
    return [_Swatch(*one) for one in zip(tensions, stitches, several, strict=True)]


def compute(inputs: Inputs) -> Result:
    swatches, wanted = _swatches(inputs), inputs.number("wanted_stitches_per_10cm")
    line = line_through([(swatch.tension, swatch.stitches) for swatch in swatches])
    if line.slope >= 0:
        raise Refused([_wrong("stitches", "rising")])
    tension = line.where(wanted)
    _refuse_far(swatches, line, tension)
    reading = inputs.number("stitches_off_percent") / 100 * wanted
    scatter, own = line.off_by_scatter(wanted), line.off_by_reading(wanted, reading)
    off = max(own, scatter) if scatter is not None else own
    parts = int(inputs.text("marks_per_number"))
    mark = nearest_part(tension, parts)
    rows = _rows_at(swatches, mark)
    values: dict[str, Plain] = {
        "tension": tension,
        "tension_off": off,
        "nearest_mark": mark,
        "stitches_per_10cm_at_mark": line.at(mark),
        "rows_per_10cm_at_mark": rows,
        "stitches_per_number": line.slope,
        "swatches": len(swatches),
        "scatter_known": scatter is not None,
    }
    ends = [min(*(one.tension for one in swatches), tension, mark), max(*(one.tension for one in swatches), tension, mark)]
    points = [(one.tension, one.stitches) for one in swatches]
    drawn = line_svg(points, ((ends[0], line.at(ends[0])), (ends[1], line.at(ends[1]))), (tension, wanted), off)
    view: tuple[Shown, ...] = (
        _main(values, line, wanted, tension, off, mark, rows, scatter is not None),
        Picture(_say("picture"), drawn, _say("picture-caption")),
        _each(swatches, line),
    )
    return Result(values, view, tuple(_warnings(swatches, tension, off)))


def _limits(swatches: Sequence[_Swatch]) -> tuple[Fraction, Fraction, Fraction]:
    low, high = min(one.tension for one in swatches), max(one.tension for one in swatches)
    return low, high, min((high - low) * BEYOND_SPAN, BEYOND_MOST)


def _refuse_far(swatches: Sequence[_Swatch], line: Line, tension: Fraction) -> None:
    """A line says nothing about tensions far from every swatch."""
    low, high, beyond = _limits(swatches)
    if low - beyond <= tension <= high + beyond:
        return
    least, most = line.at(high + beyond), line.at(low - beyond)
    sentence = _say("far", tension=decimal_text(tension, 1), low=short_decimal(low, 2), high=short_decimal(high, 2))
    values = {"tension": decimal_text(tension, 0), "least": decimal_text(least, 1), "most": decimal_text(most, 1)}
    raise Refused([Problem("wanted_stitches_per_10cm", "tension.far", sentence, _say("far.way-out", **values))])


def _warnings(swatches: Sequence[_Swatch], tension: Fraction, off: Fraction) -> Iterable[Problem]:
    low, high, _ = _limits(swatches)
    if not low <= tension <= high:
        yield Problem("wanted_stitches_per_10cm", "tension.outside", _say("outside"), _say("outside.way-out"))
    if off > BEYOND_MOST:
        yield _wrong("stitches", "loose", off=decimal_text(off, 1))


def _rows_at(swatches: Sequence[_Swatch], mark: Fraction) -> Fraction | None:
    """From a line of its own, where enough swatches have rows."""
    known = [(one.tension, one.rows) for one in swatches if one.rows is not None]
    return line_through(known).at(mark) if len({tension for tension, _ in known}) > 1 else None


def _main(
    values: dict[str, Plain],
    line: Line,
    wanted: Fraction,
    tension: Fraction,
    off: Fraction,
    mark: Fraction,
    rows: Fraction | None,
    scatter: bool,
) -> Figures:
    figures = [
        Figure(
            _say("nearest_mark"), mixed_text(mark), _say("nearest-mark-note", wanted=short_decimal(wanted, 2)), "nearest_mark"
        ),
        Figure(
            _say("tension"), decimal_text(tension, 2), _say("off" if scatter else "off-two", off=decimal_text(off, 2)), "tension"
        ),
        Figure(_say("stitches-there"), per_inch_too(line.at(mark)), _say("stitches-note"), "stitches_per_10cm_at_mark"),
    ]
    if rows is not None:
        figures.append(Figure(_say("rows-there"), per_inch_too(rows), "", "rows_per_10cm_at_mark"))
    figures.append(Figure(_say("slope"), signed_text(line.slope, 2), _say("slope-note"), "stitches_per_number"))
    return Figures(_say("figures"), tuple(figures))


def _each(swatches: Sequence[_Swatch], line: Line) -> Table:
    rows = tuple(
        (
            mixed_text(one.tension) if one.tension.denominator <= 4 else short_decimal(one.tension, 2),
            short_decimal(one.stitches, 2),
            decimal_text(line.at(one.tension), 2),
            signed_text(one.stitches - line.at(one.tension), 2),
        )
        for one in sorted(swatches, key=lambda swatch: swatch.tension)
    )
    return Table(_say("each"), tuple(_say(f"each-{key}") for key in ("tension", "stitches", "line", "apart")), rows)


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
