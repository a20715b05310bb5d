"""Tension: a line through swatches at several tensions, and the tension for a wanted gauge."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from wedgework.declare import (
    Calculator,
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
from wedgework.units import decimal_text, mixed_text, number, short_decimal, signed_text

__all__ = ["CALCULATOR"]

MOST_SWATCHES = 10
# How far beyond the swatches a tension may lie: half of what they span, one number at most. Our own choice.
BEYOND_SPAN, BEYOND_MOST = Fraction(1, 2), Fraction(1)
# Limits of what is taken for a tension and for a gauge.
TENSIONS, STITCHES, ROWS = (Fraction(0), Fraction(30)), (Fraction(2), Fraction(80)), (Fraction(2), Fraction(120))
PARTS = ("1", "2", "3", "4", "10")


def _say(key: str, **values: object) -> str:
    return say(f"calculators.tension.{key}", **values)


@dataclass(frozen=True, slots=True)
class _Swatch:
    tension: Fraction
    stitches: Fraction
    rows: Fraction | None


def _wrong(key: str, **values: object) -> Problem:
    return Problem("swatches", f"tension.{key}", _say(key, **values), _say(f"{key}.way-out", **values))


def _read(typed: str) -> list[_Swatch]:
    """Each part as tension, stitches and perhaps rows. Raises Refused for every part that is none."""
    problems, found = [], []
    for part in (one.strip() for one in typed.split(";")):
        if not part:
            continue
        try:
            found.append(_swatch(part))
        except (Refused, ValueError):
            problems.append(_wrong("not-a-swatch", found=part))
    if problems:
        raise Refused(problems)
    return found


def _swatch(part: str) -> _Swatch:
    head, colon, tail = part.partition(":")
    words = [head, *tail.split()] if colon else part.split()
    if len(words) not in (2, 3):
        raise ValueError(part)
    values = [number(word) for word in words]
    for value, (least, most) in zip(values, (TENSIONS, STITCHES, ROWS), strict=False):
        if not least <= value <= most:
            raise ValueError(part)
    return _Swatch(values[0], values[1], values[2] if len(values) == 3 else None)


def check(inputs: Inputs) -> Iterable[Problem]:
    """Every part is a swatch, and there are two tensions at least."""
    if not inputs.has("swatches"):
        return ()
    try:
        swatches = _read(inputs.text("swatches"))
    except Refused as refused:
        return refused.problems
    if len({swatch.tension for swatch in swatches}) < 2 or len(swatches) > MOST_SWATCHES:
        return (_wrong("how-many", found=len(swatches), most=MOST_SWATCHES),)
    return ()


def compute(inputs: Inputs) -> Result:
    swatches, wanted = _read(inputs.text("swatches")), inputs.number("wanted_stitches_per_10cm")
    line = line_through([(swatch.tension, swatch.stitches) for swatch in swatches])
    if line.slope >= 0:
        raise Refused([_wrong("rising")])
    tension = line.where(wanted)
    _refuse_far(swatches, line, tension)
    reading = inputs.number("stitches_off_percent") / 100 * wanted
    scatter, own = line.off_by_scatter(wanted), line.off_by_reading(wanted, reading)
    off = max(own, scatter) if scatter is not None else own
    parts = int(inputs.text("dial_parts"))
    dial = nearest_part(tension, parts)
    rows = _rows_at(swatches, dial)
    values: dict[str, Plain] = {
        "tension": tension,
        "tension_off": off,
        "dial": dial,
        "stitches_per_10cm_at_dial": line.at(dial),
        "rows_per_10cm_at_dial": rows,
        "stitches_per_number": line.slope,
        "swatches": len(swatches),
        "scatter_known": scatter is not None,
    }
    ends = [min(*(one.tension for one in swatches), tension, dial), max(*(one.tension for one in swatches), tension, dial)]
    points = [(one.tension, one.stitches) for one in swatches]
    drawn = line_svg(points, ((ends[0], line.at(ends[0])), (ends[1], line.at(ends[1]))), (tension, wanted), off)
    view: tuple[Shown, ...] = (
        _main(values, line, wanted, tension, off, dial, rows, scatter is not None),
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
        yield _wrong("loose", off=decimal_text(off, 1))


def _rows_at(swatches: Sequence[_Swatch], dial: Fraction) -> Fraction | None:
    """From a line of its own, where enough swatches have rows."""
    known = [(one.tension, one.rows) for one in swatches if one.rows is not None]
    return line_through(known).at(dial) if len({tension for tension, _ in known}) > 1 else None


def _main(
    values: dict[str, Plain],
    line: Line,
    wanted: Fraction,
    tension: Fraction,
    off: Fraction,
    dial: Fraction,
    rows: Fraction | None,
    scatter: bool,
) -> Figures:
    figures = [
        Figure(_say("dial"), mixed_text(dial), _say("dial-note", wanted=short_decimal(wanted, 2)), "dial"),
        Figure(
            _say("tension"), decimal_text(tension, 2), _say("off" if scatter else "off-two", off=decimal_text(off, 2)), "tension"
        ),
        Figure(_say("stitches-there"), decimal_text(line.at(dial), 2), _say("stitches-note"), "stitches_per_10cm_at_dial"),
    ]
    if rows is not None:
        figures.append(Figure(_say("rows-there"), decimal_text(rows, 2), "", "rows_per_10cm_at_dial"))
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


CALCULATOR = Calculator(
    "tension",
    (
        Group("swatches", (text("swatches", "5 31.2 44; 6 29.6 41.5; 7 28.3 39; 8 26.8 37", longest=300),)),
        Group("wanted", (decimal("wanted_stitches_per_10cm", "29", STITCHES[0], STITCHES[1], "stitches-per-10cm"),)),
        Group(
            "details",
            (decimal("stitches_off_percent", "1.5", 0, 20, "percent"), choice("dial_parts", "3", PARTS)),
        ),
    ),
    compute,
    check,
)
