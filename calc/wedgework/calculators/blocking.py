"""Blocking: wanted against measured after washing, the gauge that was really knitted, panels to block again, next time."""

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
    Plain,
    Result,
    Shown,
    Table,
    decimal,
    length,
    lengths,
    whole,
)
from wedgework.exact import nearest, nearest_even
from wedgework.problems import Problem
from wedgework.say import say
from wedgework.units import both_text, decimal_text, short_decimal, signed_text

__all__ = ["CALCULATOR"]

MOST_PANELS = 12
LISTS = ("widths", "heights")


def _say(key: str, **values: object) -> str:
    return say(f"calculators.blocking.{key}", **values)


@dataclass(frozen=True, slots=True)
class _Panel:
    number: int
    width_mm: Fraction
    height_mm: Fraction
    off: tuple[Fraction, Fraction]
    """In per cent of what was wanted, across and up; positive where it is too large."""

    def verdict(self, fine: Fraction, reach: Fraction) -> str:
        """fine, block, or beyond what blocking holds."""
        worst = max(abs(one) for one in self.off)
        return "fine" if worst <= fine else "block" if worst <= reach else "beyond"


def check(inputs: Inputs) -> Iterable[Problem]:
    """A width and a height of every panel; what counts as fine lies below what blocking can hold."""
    if all(inputs.has(name) for name in LISTS):
        widths, heights = (len(inputs.several_mm(name)) for name in LISTS)
        if widths != heights:
            sentence = _say("not-alike", widths=widths, heights=heights)
            yield Problem("heights", "blocking.not-alike", sentence, _say("not-alike.way-out"))
    if inputs.has("fine_percent") and inputs.has("reach_percent"):
        fine, reach = inputs.number("fine_percent"), inputs.number("reach_percent")
        if reach < fine:
            sentence = _say("reach", fine=short_decimal(fine, 2), reach=short_decimal(reach, 2))
            yield Problem("reach_percent", "blocking.reach", sentence, _say("reach.way-out"))


def compute(inputs: Inputs) -> Result:
    wanted = inputs.mm("width"), inputs.mm("height")
    fine, reach = inputs.number("fine_percent"), inputs.number("reach_percent")
    panels = [
        _Panel(i, width, height, ((width / wanted[0] - 1) * 100, (height / wanted[1] - 1) * 100))
        for i, (width, height) in enumerate(zip(*(inputs.several_mm(name) for name in LISTS), strict=True), 1)
    ]
    verdicts = [panel.verdict(fine, reach) for panel in panels]
    across = inputs.whole("stitches") * 100 / _mean([panel.width_mm for panel in panels])
    up = inputs.whole("rows") * 100 / _mean([panel.height_mm for panel in panels])
    values: dict[str, Plain] = {
        "stitches_per_10cm": across,
        "rows_per_10cm": up,
        "planned_stitches_per_10cm": inputs.whole("stitches") * 100 / wanted[0],
        "planned_rows_per_10cm": inputs.whole("rows") * 100 / wanted[1],
        "panels": [
            {
                "panel": panel.number,
                "width_mm": panel.width_mm,
                "height_mm": panel.height_mm,
                "width_off_percent": panel.off[0],
                "height_off_percent": panel.off[1],
                "verdict": verdict,
            }
            for panel, verdict in zip(panels, verdicts, strict=True)
        ],
        "block_again": [panel.number for panel, verdict in zip(panels, verdicts, strict=True) if verdict == "block"],
        "beyond": [panel.number for panel, verdict in zip(panels, verdicts, strict=True) if verdict == "beyond"],
        "next_stitches": nearest(wanted[0] * across / 100),
        "next_rows": nearest_even(wanted[1] * up / 100),
    }
    view: list[Shown] = [_each(panels, verdicts), _gauge(values), _next(inputs, values)]
    return Result(values, tuple(view), tuple(_warnings(panels, fine)))


def _mean(lengths_mm: Sequence[Fraction]) -> Fraction:
    return sum(lengths_mm, Fraction(0)) / len(lengths_mm)


def _warnings(panels: Sequence[_Panel], fine: Fraction) -> Iterable[Problem]:
    """Panels that are sewn together have to be equally high, whatever was wanted."""
    heights = [panel.height_mm for panel in panels]
    apart = (max(heights) - min(heights)) * 100 / _mean(heights)
    if apart > 2 * fine:
        sentence = _say("apart", percent=decimal_text(apart, 1), mm=decimal_text(max(heights) - min(heights), 0))
        yield Problem("heights", "blocking.apart", sentence, _say("apart.way-out"))


def _each(panels: Sequence[_Panel], verdicts: Sequence[str]) -> Table:
    rows = tuple(
        (
            f"{panel.number}",
            both_text(panel.width_mm),
            _say("percent", percent=signed_text(panel.off[0], 1)),
            both_text(panel.height_mm),
            _say("percent", percent=signed_text(panel.off[1], 1)),
            _say(f"verdict-{verdict}"),
        )
        for panel, verdict in zip(panels, verdicts, strict=True)
    )
    heads = tuple(_say(f"each-{key}") for key in ("panel", "width", "width-off", "height", "height-off", "verdict"))
    return Table(_say("each"), heads, rows)


def _gauge(values: dict[str, Plain]) -> Figures:
    return Figures(
        _say("gauge"),
        tuple(
            Figure(
                _say(name),
                decimal_text(_fraction(values[name]), 2),
                _say("planned", planned=decimal_text(_fraction(values[f"planned_{name}"]), 2)),
                name,
            )
            for name in ("stitches_per_10cm", "rows_per_10cm")
        ),
    )


def _fraction(value: Plain) -> Fraction:
    if not isinstance(value, (int, Fraction)):
        raise TypeError(value)
    return Fraction(value)


def _next(inputs: Inputs, values: dict[str, Plain]) -> Figures:
    """For the same size with the same yarn at the same tension; and which way the tension would have to go instead."""
    change = _fraction(values["stitches_per_10cm"]) / _fraction(values["planned_stitches_per_10cm"])
    way = "looser" if change > 1 else "tighter" if change < 1 else "same"
    return Figures(
        _say("next"),
        (
            Figure(
                _say("next-stitches"), f"{values['next_stitches']}", _say("instead", n=inputs.whole("stitches")), "next_stitches"
            ),
            Figure(_say("next-rows"), f"{values['next_rows']}", _say("instead", n=inputs.whole("rows")), "next_rows"),
            Figure(_say("tension"), _say(f"tension-{way}"), _say("tension-note", percent=decimal_text(abs(change - 1) * 100, 1))),
        ),
    )


CALCULATOR = Calculator(
    "blocking",
    (
        Group(
            "plan",
            (
                whole("stitches", "95", 2, 1000, "stitches"),
                whole("rows", "418", 2, 5000, "rows"),
                length("width", "67.9", 1, 500, "cm"),
                length("height", "220", 1, 1000, "cm"),
            ),
        ),
        Group(
            "measured",
            (
                lengths("widths", "67.5 cm; 68.2 cm; 65.5 cm", 1, 500, "cm", most_values=MOST_PANELS),
                lengths("heights", "219 cm; 221 cm; 217 cm", 1, 1000, "cm", most_values=MOST_PANELS),
            ),
        ),
        Group("limits", (decimal("fine_percent", "2", 0, 20, "percent"), decimal("reach_percent", "5", 0, 30, "percent"))),
    ),
    compute,
    check,
)
