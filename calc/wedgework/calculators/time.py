"""Time: hours for a piece from what there is to do and the person's own seconds, with a range."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from wedgework.declare import Calculator, Figure, Figures, Group, Inputs, Plain, Result, Shown, Table, decimal, length, whole
from wedgework.exact import up
from wedgework.problems import Problem, Refused
from wedgework.say import say
from wedgework.units import both_text, decimal_text, short_decimal

__all__ = ["CALCULATOR"]

# How often, and the seconds or minutes for one of them; the names of both fields.
COUNTED = (
    ("passes", "seconds_per_pass"),
    ("needle_changes", "seconds_per_change"),
    ("block_changes", "seconds_per_block_change"),
    ("ends", "seconds_per_end"),
)
# Sewing is measured by its length.
SEWING_MM = 100
BREAK_EVERY = 30


@dataclass(frozen=True, slots=True)
class _Item:
    name: str
    count: str
    seconds: Fraction


def _say(key: str, **values: object) -> str:
    return say(f"calculators.time.{key}", **values)


def compute(inputs: Inputs) -> Result:
    """Everything in seconds, exactly; a break after each half hour of work, a part of it for a part."""
    items = _items(inputs)
    work = sum((item.seconds for item in items), Fraction(0))
    if not work:
        raise Refused([Problem("passes", "time.nothing", _say("nothing"), _say("nothing.way-out"))])
    breaks = work / BREAK_EVERY * inputs.number("break_minutes")
    whole_s, spread = work + breaks, inputs.number("range_percent") / 100
    least, most = whole_s * (1 - spread), whole_s * (1 + spread)
    session = inputs.number("session_hours") * 3600
    values: dict[str, Plain] = {
        "hours": whole_s / 3600,
        "hours_least": least / 3600,
        "hours_most": most / 3600,
        "work_hours": work / 3600,
        "break_hours": breaks / 3600,
        "sessions": up(whole_s / session),
        "sessions_least": up(least / session),
        "sessions_most": up(most / session),
        "minutes": {item.name: item.seconds / 60 for item in items},
    }
    sittings = _say("between", least=up(least / session), most=up(most / session))
    main = Figures(
        _say("figures"),
        (
            Figure(_say("hours"), _hours(whole_s), _say("between", least=_hours(least), most=_hours(most)), "hours"),
            Figure(_say("work"), _hours(work), "", "work_hours"),
            Figure(_say("breaks"), _hours(breaks), _say("breaks-note", every=BREAK_EVERY), "break_hours"),
            Figure(_say("sessions"), f"{values['sessions']}", sittings, "sessions"),
        ),
    )
    view: tuple[Shown, ...] = (main, _table(items, work))
    return Result(values, view)


def _items(inputs: Inputs) -> list[_Item]:
    items = [_Item("setting_up", "", inputs.number("setup_minutes") * 60)]
    items += [_Item(name, f"{inputs.whole(name)}", inputs.whole(name) * inputs.number(seconds)) for name, seconds in COUNTED]
    items.append(_Item("hems", f"{inputs.whole('hems')}", inputs.whole("hems") * inputs.number("minutes_per_hem") * 60))
    sewn = inputs.mm("sewing")
    items.append(_Item("sewing", both_text(sewn, 0), sewn / SEWING_MM * inputs.number("seconds_per_10cm")))
    items.append(_Item("finishing", "", inputs.number("finishing_minutes") * 60))
    return items


def _hours(seconds: Fraction) -> str:
    """To the nearest five minutes; more would be pretended."""
    minutes = 5 * up(seconds / 300 - Fraction(1, 2))
    hours, rest = divmod(minutes, 60)
    if not hours:
        return _say("minutes", minutes=rest)
    return _say("hours-minutes", hours=hours, minutes=f"{rest:02}")


def _table(items: list[_Item], work: Fraction) -> Table:
    rows = tuple(
        (
            _say(f"item-{item.name}"),
            item.count,
            decimal_text(item.seconds / 60, 0),
            _say("share", percent=short_decimal(item.seconds * 100 / work, 0)),
        )
        for item in items
    )
    return Table(_say("items"), tuple(_say(f"items-{key}") for key in ("what", "count", "minutes", "share")), rows)


CALCULATOR = Calculator(
    "time",
    (
        Group(
            "counts",
            (
                whole("passes", "960", 0, 100_000),
                whole("needle_changes", "700", 0, 100_000),
                whole("block_changes", "17", 0, 5000),
                whole("ends", "28", 0, 5000),
                whole("hems", "2", 0, 50),
                length("sewing", "0", 0, 20_000, "cm"),
            ),
        ),
        Group(
            "seconds",
            (
                decimal("seconds_per_pass", "4", 0, 600, "seconds"),
                decimal("seconds_per_change", "6", 0, 600, "seconds"),
                decimal("seconds_per_block_change", "60", 0, 3600, "seconds"),
                decimal("seconds_per_end", "90", 0, 3600, "seconds"),
                decimal("minutes_per_hem", "25", 0, 600, "minutes"),
                decimal("seconds_per_10cm", "60", 0, 3600, "seconds"),
                decimal("setup_minutes", "30", 0, 600, "minutes"),
                decimal("finishing_minutes", "45", 0, 2000, "minutes"),
            ),
        ),
        Group(
            "pauses",
            (
                decimal("break_minutes", "5", 0, 30, "minutes"),
                decimal("session_hours", "2", Fraction(1, 4), 12, "hours"),
                decimal("range_percent", "25", 0, 90, "percent"),
            ),
        ),
    ),
    compute,
)
