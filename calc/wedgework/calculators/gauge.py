"""Gauge: from a measured swatch to stitches and rows per 10 cm, with how far they can be off."""

from __future__ import annotations

import re
from collections.abc import Iterable
from fractions import Fraction

from wedgework.bed import place
from wedgework.calculators.gauge_states import States, state_values, state_view, state_warnings
from wedgework.calculators.gauge_tension import TENSION_FIELDS, tension_problems, tension_result
from wedgework.declare import (
    Calculator,
    Figure,
    Figures,
    Group,
    Inputs,
    Only,
    Plain,
    Result,
    Shown,
    Table,
    choice,
    decimal,
    lengths,
    text,
)
from wedgework.gauge import (
    RATIO_EXPECTED,
    MeasuredGauge,
    Reading,
    gauge_warnings,
    measure,
    needles_for,
    rows_for,
    washing_change,
    washing_warnings,
)
from wedgework.problems import Problem
from wedgework.say import say
from wedgework.units import both_text, decimal_text, inches_text

__all__ = ["CALCULATOR", "stitches_of"]

# What a swatch can measure: from a single stitch of a fine machine to a whole blanket.
LEAST_CM = Fraction(1)
MOST_CM = Fraction(300)
# Sizes for the table "what that makes": a cushion, a lap, a bed's width.
EXAMPLES_MM = (Fraction(100), Fraction(500), Fraction(1000))


WASHED = ("washed_width", "washed_height")


MACHINE = ("machine_width", "machine_height")
MARKS = ("first_mark", "last_mark")
_NEEDLE = re.compile(r"([LR]) ?([1-9][0-9]{0,2})", re.IGNORECASE)


def check(inputs: Inputs) -> Iterable[Problem]:
    """After washing both directions or none: washing changes each in its own way. Marks are needles, with stitches between."""
    missing = [name for name in WASHED if not inputs.given(name)]
    if len(missing) == 1:
        sentence = say("calculators.gauge.half-washed", field=say(f"calculators.gauge.{missing[0]}.label"))
        yield Problem(missing[0], "gauge.half-washed", sentence, say("calculators.gauge.half-washed.way-out"))
    for name in MARKS:
        if inputs.has(name) and _needle(inputs.text(name)) is None:
            sentence = say("calculators.gauge.not-a-needle", found=inputs.text(name))
            yield Problem(name, "gauge.not-a-needle", sentence, say("calculators.gauge.not-a-needle.way-out"))
    first, last = (_needle(inputs.text(name)) if inputs.has(name) else None for name in MARKS)
    if first is not None and last is not None and _between(first, last) < 1:
        sentence = say("calculators.gauge.nothing-between", first=inputs.text(MARKS[0]), last=inputs.text(MARKS[1]))
        yield Problem(MARKS[1], "gauge.nothing-between", sentence, say("calculators.gauge.nothing-between.way-out"))
    yield from tension_problems(inputs)


def _needle(typed: str) -> int | None:
    """L21 is -21; None where it is no needle."""
    match = _NEEDLE.fullmatch(typed)
    if match is None:
        return None
    return int(match[2]) if match[1].upper() == "R" else -int(match[2])


def _between(first: int, last: int) -> int:
    """Stitches between two marked needles, neither of them counted."""
    return place(last) - place(first) - 1


def stitches_of(inputs: Inputs) -> Fraction:
    """Of the swatch: as typed, or counted between the marks."""
    if inputs.text("counted") == "typed":
        return inputs.number("stitches")
    first, last = (_needle(inputs.text(name)) for name in MARKS)
    if first is None or last is None:
        raise AssertionError("check has refused it")
    return Fraction(_between(first, last))


def compute(inputs: Inputs) -> Result:
    """The main figures are those of the washed swatch where it was measured after washing."""
    stitches, rows = stitches_of(inputs), inputs.number("rows")
    unwashed = measure(stitches, inputs.several_mm("width"), rows, inputs.several_mm("height"))
    washed = _washed(inputs, stitches, rows)
    main = washed or unwashed
    values: dict[str, Plain] = {**_values(main)}
    if inputs.text("counted") == "needles":
        values["stitches_between_marks"] = stitches
    view: list[Shown] = [_main(main, washed is not None), _sizes(main)]
    if washed:
        across, up = washing_change(unwashed, washed)
        values |= {
            "unwashed_stitches_per_10cm": unwashed.stitches_per_10cm,
            "unwashed_rows_per_10cm": unwashed.rows_per_10cm,
            "washing_width_percent": across,
            "washing_height_percent": up,
        }
        view.insert(1, _washing(unwashed, across, up))
    on_machine = [inputs.several_mm(name) if inputs.has(name) else () for name in MACHINE]
    states = States(stitches, rows, on_machine[0], on_machine[1], unwashed, washed)
    values |= state_values(states)
    view += state_view(states)
    warnings = [*_warnings(unwashed, washed), *state_warnings(states)]
    line = tension_result(inputs, main)
    if line is not None:
        values |= line.values
        view += line.view
        warnings += line.warnings
    return Result(values, tuple(view), tuple(warnings))


def _washed(inputs: Inputs, stitches: Fraction, rows: Fraction) -> MeasuredGauge | None:
    if not inputs.has(WASHED[0]):
        return None
    return measure(stitches, inputs.several_mm(WASHED[0]), rows, inputs.several_mm(WASHED[1]))


def _values(main: MeasuredGauge) -> dict[str, Fraction]:
    return {
        "stitches_per_10cm": main.across.per_10cm,
        "rows_per_10cm": main.up.per_10cm,
        "ratio": main.ratio,
        "stitches_per_inch": main.across.per_inch,
        "rows_per_inch": main.up.per_inch,
        "stitches_off_percent": main.across.off_percent,
        "rows_off_percent": main.up.off_percent,
        "stitches_per_10cm_off": main.across.off_per_10cm,
        "rows_per_10cm_off": main.up.off_per_10cm,
        "width_mm": main.across.mean_mm,
        "height_mm": main.up.mean_mm,
    }


def _warnings(unwashed: MeasuredGauge, washed: MeasuredGauge | None) -> list[Problem]:
    """Those of the state that counts, named after the fields it was typed in."""
    if washed is None:
        return gauge_warnings(unwashed)
    names = {"width": "washed_width", "height": "washed_height"}
    found = [Problem(names.get(w.where, w.where), w.code, w.sentence, w.way_out) for w in gauge_warnings(washed)]
    return found + washing_warnings(unwashed, washed)


def _main(main: MeasuredGauge, washed: bool) -> Figures:
    title = say("calculators.gauge.washed-figures" if washed else "calculators.gauge.figures")
    low, high = (decimal_text(limit, 1) for limit in RATIO_EXPECTED)
    return Figures(
        title,
        (
            _per_10cm("stitches_per_10cm", main.across),
            _per_10cm("rows_per_10cm", main.up),
            Figure(
                say("calculators.gauge.ratio"),
                decimal_text(main.ratio, 2),
                say("calculators.gauge.ratio-note", least=low, most=high),
                "ratio",
            ),
            Figure(say("calculators.gauge.stitches-per-inch"), decimal_text(main.across.per_inch, 2), "", "stitches_per_inch"),
            Figure(say("calculators.gauge.rows-per-inch"), decimal_text(main.up.per_inch, 2), "", "rows_per_inch"),
        ),
    )


def _per_10cm(name: str, reading: Reading) -> Figure:
    note = say(
        "calculators.gauge.off",
        off=decimal_text(reading.off_per_10cm, 2),
        percent=decimal_text(reading.off_percent, 1),
        length=both_text(reading.mean_mm),
    )
    return Figure(say(f"calculators.gauge.{name}"), decimal_text(reading.per_10cm, 2), note, name)


def _washing(unwashed: MeasuredGauge, across: Fraction, up: Fraction) -> Figures:
    def change(percent: Fraction) -> str:
        key = "grows" if percent > 0 else "shrinks" if percent < 0 else "stays"
        return say(f"calculators.gauge.{key}", percent=decimal_text(abs(percent), 1))

    return Figures(
        say("calculators.gauge.washing"),
        (
            Figure(say("calculators.gauge.across"), change(across), "", "washing_width_percent"),
            Figure(say("calculators.gauge.up"), change(up), "", "washing_height_percent"),
            Figure(
                say("calculators.gauge.unwashed-stitches"),
                decimal_text(unwashed.across.per_10cm, 2),
                "",
                "unwashed_stitches_per_10cm",
            ),
            Figure(say("calculators.gauge.unwashed-rows"), decimal_text(unwashed.up.per_10cm, 2), "", "unwashed_rows_per_10cm"),
        ),
    )


def _sizes(main: MeasuredGauge) -> Table:
    """What that makes: stitches and rows of some lengths, and what the uncertainty means there."""
    rows = []
    for mm in EXAMPLES_MM:
        needles, up = needles_for(mm, main.across.per_10cm), rows_for(mm, main.up.per_10cm)
        off = max(main.across.off_percent, main.up.off_percent) * mm / 100
        rows.append(
            (
                say("units.both", metric=f"{decimal_text(mm / 10, 0)} cm", inches=inches_text(mm)),
                f"{needles.count}",
                f"{up.count}",
                say("calculators.gauge.give-or-take", length=both_text(off)),
            )
        )
    heads = tuple(say(f"calculators.gauge.sizes-{key}") for key in ("length", "stitches", "rows", "off"))
    return Table(say("calculators.gauge.sizes"), heads, tuple(rows))


CALCULATOR = Calculator(
    "gauge",
    (
        Group(
            "across",
            (
                choice("counted", "typed", ("typed", "needles")),
                decimal("stitches", "40", 1, 1000, "stitches", only=Only("counted", ("typed",))),
                text("first_mark", "L21", longest=5, only=Only("counted", ("needles",))),
                text("last_mark", "R21", longest=5, only=Only("counted", ("needles",))),
                lengths("width", "28.4 cm; 28.6 cm; 28.5 cm", LEAST_CM, MOST_CM, "cm"),
            ),
        ),
        Group(
            "up",
            (
                decimal("rows", "60", 1, 2000, "rows"),
                lengths("height", "31.4 cm; 31.7 cm; 31.6 cm", LEAST_CM, MOST_CM, "cm"),
            ),
        ),
        Group(
            "machine",
            (
                lengths("machine_width", "", LEAST_CM, MOST_CM, "cm", optional=True),
                lengths("machine_height", "", LEAST_CM, MOST_CM, "cm", optional=True),
            ),
        ),
        Group(
            "washed",
            (
                lengths("washed_width", "", LEAST_CM, MOST_CM, "cm", optional=True),
                lengths("washed_height", "", LEAST_CM, MOST_CM, "cm", optional=True),
            ),
        ),
        Group("tension", TENSION_FIELDS, folded="alone"),
    ),
    compute,
    check,
)
