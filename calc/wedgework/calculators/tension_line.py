"""A line through swatches at several tensions: what it says for a wanted gauge, and how far it can be trusted."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from wedgework.declare import Figure, Figures, Inputs, Picture, Plain, Result, Shown, Table
from wedgework.draw.line import line_svg
from wedgework.exact import nearest_part
from wedgework.lines import Line, line_through
from wedgework.problems import Problem, Refused
from wedgework.say import say
from wedgework.units import decimal_text, mixed_text, number, per_10cm, per_inch_too, short_decimal, signed_text

__all__ = ["LIMITS", "MOST_SWATCHES", "Swatch", "line_result", "numbers_in", "wrong"]

MOST_SWATCHES = 10
# How far beyond the swatches a tension may lie: half of what they span, one number at most. Our own choice.
BEYOND_SPAN, BEYOND_MOST = Fraction(1, 2), Fraction(1)
# What a list holds, and the least and the most of each number in it.
LIMITS = {"tensions": (0, 30), "stitches": (2, 80), "rows": (2, 120)}


def _say(key: str, **values: object) -> str:
    return say(f"calculators.tension.{key}", **values)


@dataclass(frozen=True, slots=True)
class Swatch:
    tension: Fraction
    stitches: Fraction
    """Per 10 cm."""
    rows: Fraction | None = None


def wrong(where: str, key: str, **values: object) -> Problem:
    return Problem(where, f"tension.{key}", _say(key, **values), _say(f"{key}.way-out", **values))


def numbers_in(inputs: Inputs, name: str, kind: str) -> list[Fraction]:
    """The numbers of one list, of a `kind` of `LIMITS`. Raises Refused for every part that is none or out of range."""
    if not inputs.has(name):
        return []
    least, most = LIMITS[kind]
    problems, found = [], []
    for part in filter(None, (one.strip() for one in inputs.text(name).split(";"))):
        try:
            value = number(part) if kind == "tensions" else per_10cm(part)
        except Refused as refused:
            problems += [replace(problem, where=name) for problem in refused.problems]
            continue
        if not least <= value <= most:
            problems.append(wrong(name, "out-of-range", found=part, least=least, most=most))
        found.append(value)
    if problems:
        raise Refused(problems)
    return found


def line_result(swatches: Sequence[Swatch], wanted: Fraction, off_percent: Fraction, parts: int) -> Result:
    """The tension for `wanted` stitches per 10 cm, with the names of the tension calculator in its problems.

    `off_percent`: what each swatch can be off by; `parts`: marks of the dial to a number. Raises Refused for a line that rises
    and for a tension far from every swatch.
    """
    line = line_through([(swatch.tension, swatch.stitches) for swatch in swatches])
    if line.slope >= 0:
        raise Refused([wrong("stitches", "rising")])
    tension = line.where(wanted)
    _refuse_far(swatches, line, tension)
    reading = off_percent / 100 * wanted
    scatter, own = line.off_by_scatter(wanted), line.off_by_reading(wanted, reading)
    off = max(own, scatter) if scatter is not None else own
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


def _limits(swatches: Sequence[Swatch]) -> tuple[Fraction, Fraction, Fraction]:
    low, high = min(one.tension for one in swatches), max(one.tension for one in swatches)
    return low, high, min((high - low) * BEYOND_SPAN, BEYOND_MOST)


def _refuse_far(swatches: Sequence[Swatch], line: Line, tension: Fraction) -> None:
    """A line says nothing about tensions far from every swatch."""
    low, high, beyond = _limits(swatches)
    if low - beyond <= tension <= high + beyond:
        return
    least, most = line.at(high + beyond), line.at(low - beyond)
    sentence = _say("far", tension=decimal_text(tension, 1), low=short_decimal(low, 2), high=short_decimal(high, 2))
    values = {"tension": decimal_text(tension, 0), "least": decimal_text(least, 1), "most": decimal_text(most, 1)}
    raise Refused([Problem("wanted_stitches_per_10cm", "tension.far", sentence, _say("far.way-out", **values))])


def _warnings(swatches: Sequence[Swatch], tension: Fraction, off: Fraction) -> Iterable[Problem]:
    low, high, _ = _limits(swatches)
    if not low <= tension <= high:
        yield Problem("wanted_stitches_per_10cm", "tension.outside", _say("outside"), _say("outside.way-out"))
    if off > BEYOND_MOST:
        yield wrong("stitches", "loose", off=decimal_text(off, 1))


def _rows_at(swatches: Sequence[Swatch], mark: Fraction) -> Fraction | None:
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


def _each(swatches: Sequence[Swatch], line: Line) -> Table:
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
