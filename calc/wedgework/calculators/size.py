"""Size: a wanted width and height in stitches, rows and turns, and what rounding, washing and the swatch do to it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from wedgework.blankets import BLANKETS
from wedgework.declare import (
    Calculator,
    Field,
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
    length,
    whole,
)
from wedgework.exact import rounded_with
from wedgework.problems import Problem
from wedgework.say import say, say_n
from wedgework.units import both_text, decimal_text, short_decimal, signed_text

__all__ = ["CALCULATOR"]

OWN = Only("size", ("own",))
PARITY = ("any", "even", "odd")
WAYS: dict[str, Literal["nearest", "up", "down"]] = {"nearest": "nearest", "up": "up", "down": "down"}
# Each direction with the names of its fields: length, gauge, uncertainty, washing, and the beginning of those of the rounding.
DIRECTIONS = (
    ("width", "stitches", "stitches_per_10cm", "stitches_off_percent", "washing_width_percent", "stitch"),
    ("height", "rows", "rows_per_10cm", "rows_off_percent", "washing_height_percent", "row"),
)


def _say(key: str, **values: object) -> str:
    return say(f"calculators.size.{key}", **values)


@dataclass(frozen=True, slots=True)
class _Sized:
    """One direction."""

    wanted_mm: Fraction
    exact: Fraction
    count: int
    repeats: int
    mm: Fraction
    """Finished: after washing."""
    knitted_mm: Fraction
    """Before washing."""
    off_percent: Fraction

    @property
    def off_mm(self) -> Fraction:
        """What rounding adds."""
        return self.mm - self.wanted_mm

    @property
    def either_way_mm(self) -> Fraction:
        """What the swatch leaves open."""
        return self.mm * self.off_percent / 100


def _repeat(inputs: Inputs, kind: str) -> tuple[int, int] | None:
    """Multiple and remainder, with even or odd worked in; None where no number is both."""
    multiple, extra, parity = inputs.whole(f"{kind}_multiple"), inputs.whole(f"{kind}_extra"), inputs.text(f"{kind}_parity")
    if parity == "any":
        return multiple, extra
    odd = parity == "odd"
    if multiple % 2 == 0:
        return (multiple, extra) if extra % 2 == odd else None
    return 2 * multiple, extra if extra % 2 == odd else extra + multiple


def check(inputs: Inputs) -> Iterable[Problem]:
    """A repeat that can never be even, or never odd."""
    problems = []
    for kind in ("stitch", "row"):
        if all(inputs.has(f"{kind}_{name}") for name in ("multiple", "extra", "parity")) and _repeat(inputs, kind) is None:
            values = {key: inputs.whole(f"{kind}_{key}") for key in ("multiple", "extra")}
            key = f"never-{inputs.text(f'{kind}_parity')}"
            problems.append(Problem(f"{kind}_parity", f"size.{key}", _say(key, **values), _say(f"{key}.way-out", **values)))
    return problems


def _wanted(inputs: Inputs) -> tuple[Fraction, Fraction]:
    chosen = inputs.text("size")
    if chosen == "own":
        return inputs.mm("width"), inputs.mm("height")
    return BLANKETS[chosen].width_mm, BLANKETS[chosen].height_mm


def _sized(inputs: Inputs, wanted: Fraction, gauge: str, off: str, washing: str, kind: str) -> _Sized:
    per_10cm, change = inputs.number(gauge), 1 + inputs.number(washing) / 100
    repeat = _repeat(inputs, kind)
    if repeat is None:
        raise AssertionError("check has refused it")
    multiple, remainder = repeat
    exact = wanted / change * per_10cm / 100
    count = rounded_with(exact, WAYS[inputs.text("rounding")], multiple, remainder)
    if count < max(1, remainder):
        count = remainder or multiple
    knitted = count * 100 / per_10cm
    repeats = max(0, count - inputs.whole(f"{kind}_extra")) // inputs.whole(f"{kind}_multiple")
    return _Sized(wanted, exact, count, repeats, knitted * change, knitted, inputs.number(off))


def compute(inputs: Inputs) -> Result:
    """Stitches and rows from the size before washing; sizes after it."""
    found = [_sized(inputs, wanted, *names[2:]) for wanted, names in zip(_wanted(inputs), DIRECTIONS, strict=True)]
    across, up = found
    values: dict[str, Plain] = {"stitches": across.count, "rows": up.count, "turns": Fraction(up.count, 2)}
    for one, (direction, unit, *_) in zip(found, DIRECTIONS, strict=True):
        values |= {
            f"{direction}_mm": one.mm,
            f"{direction}_wanted_mm": one.wanted_mm,
            f"{direction}_off_mm": one.off_mm,
            f"{direction}_off_percent": one.off_mm * 100 / one.wanted_mm,
            f"{direction}_least_mm": one.mm - one.either_way_mm,
            f"{direction}_most_mm": one.mm + one.either_way_mm,
            f"{direction}_unwashed_mm": one.knitted_mm,
            f"{unit}_exact": one.exact,
        }
    view: list[Shown] = [_main(inputs, across, up), _rounding(across, up), _open(across, up)]
    if across.knitted_mm != across.mm or up.knitted_mm != up.mm:
        view.append(_unwashed(across, up))
    return Result(values, tuple(view), tuple(_warnings(inputs, across)))


def _warnings(inputs: Inputs, across: _Sized) -> list[Problem]:
    if not inputs.has("bed_needles") or across.count <= inputs.whole("bed_needles"):
        return []
    sentence = _say("too-wide", stitches=say_n("common.stitches", across.count), needles=inputs.whole("bed_needles"))
    return [Problem("bed_needles", "size.too-wide", sentence, _say("too-wide.way-out"))]


def _main(inputs: Inputs, across: _Sized, up: _Sized) -> Figures:
    chosen = inputs.text("size")
    title = _say("figures") if chosen == "own" else _say("figures-for", name=say(f"blankets.{chosen}"))
    turns = short_decimal(Fraction(up.count, 2), 1)
    rows = [
        Figure(_say("stitches"), f"{across.count}", _repeats(inputs, "stitch", across), "stitches"),
        Figure(_say("rows"), f"{up.count}", _say("turns", turns=turns) + _repeats(inputs, "row", up), "rows"),
        Figure(_say("width"), both_text(across.mm), "", "width_mm"),
        Figure(_say("height"), both_text(up.mm), "", "height_mm"),
    ]
    if chosen != "own":
        rows.append(Figure(_say("source"), say(f"blankets.source-{BLANKETS[chosen].source}")))
    return Figures(title, tuple(rows))


def _repeats(inputs: Inputs, kind: str, sized: _Sized) -> str:
    multiple, extra = inputs.whole(f"{kind}_multiple"), inputs.whole(f"{kind}_extra")
    if multiple == 1:
        return ""
    words = _say("repeats", times=sized.repeats, multiple=multiple, extra=f" + {extra}" if extra else "")
    return words if kind == "stitch" else f"; {words}"


def _rounding(across: _Sized, up: _Sized) -> Table:
    rows = tuple(
        (
            _say(direction),
            both_text(one.wanted_mm),
            decimal_text(one.exact, 1),
            _say("difference", mm=signed_text(one.off_mm, 0), percent=signed_text(one.off_mm * 100 / one.wanted_mm, 1)),
        )
        for direction, one in (("width", across), ("height", up))
    )
    heads = tuple(_say(f"rounding-{key}") for key in ("direction", "wanted", "exact", "difference"))
    return Table(_say("rounding-title"), heads, rows)


def _open(across: _Sized, up: _Sized) -> Table:
    """What the swatch leaves open is mostly more than what rounding does: both stand there to be compared."""
    rows = tuple(
        (
            _say(direction),
            _say("either-way", length=both_text(one.either_way_mm), percent=short_decimal(one.off_percent, 2)),
            both_text(one.mm - one.either_way_mm),
            both_text(one.mm + one.either_way_mm),
        )
        for direction, one in (("width", across), ("height", up))
    )
    return Table(_say("open-title"), tuple(_say(f"open-{key}") for key in ("direction", "either", "least", "most")), rows)


def _unwashed(across: _Sized, up: _Sized) -> Figures:
    return Figures(
        _say("unwashed"),
        (
            Figure(_say("width"), both_text(across.knitted_mm), "", "width_unwashed_mm"),
            Figure(_say("height"), both_text(up.knitted_mm), "", "height_unwashed_mm"),
        ),
    )


def _sizes() -> Field:
    def words(key: str) -> str:
        return _say("size.own") if key == "own" else _say("size-usual", name=say(f"blankets.{key}"), size=_inches(key))

    return choice("size", "own", ("own", *BLANKETS), words=words)


def _inches(key: str) -> str:
    size = BLANKETS[key]
    return _say(
        "size-inches", width=short_decimal(size.width_mm / 254 * 10, 1), height=short_decimal(size.height_mm / 254 * 10, 1)
    )


def _rounding_fields(kind: str, unit: str, parity: str) -> tuple[Field, ...]:
    return (
        whole(f"{kind}_multiple", "1", 1, 500, unit),
        whole(f"{kind}_extra", "0", 0, 500, unit),
        choice(f"{kind}_parity", parity, PARITY),
    )


CALCULATOR = Calculator(
    "size",
    (
        Group(
            "size", (_sizes(), length("width", "90", 1, 500, "cm", only=OWN), length("height", "120", 1, 1000, "cm", only=OWN))
        ),
        Group(
            "gauge",
            (
                decimal("stitches_per_10cm", "14.2", 2, 80, "stitches-per-10cm"),
                decimal("rows_per_10cm", "18.8", 2, 120, "rows-per-10cm"),
                decimal("stitches_off_percent", "1.6", 0, 20, "percent"),
                decimal("rows_off_percent", "1.2", 0, 20, "percent"),
            ),
        ),
        Group(
            "washing",
            (
                decimal("washing_width_percent", "0", -40, 40, "percent"),
                decimal("washing_height_percent", "0", -40, 40, "percent"),
            ),
        ),
        Group(
            "rounding",
            (
                choice("rounding", "nearest", tuple(WAYS)),
                *_rounding_fields("stitch", "stitches", "any"),
                *_rounding_fields("row", "rows", "even"),
            ),
        ),
        Group("bed", (whole("bed_needles", "", 10, 400, "needles", optional=True),)),
    ),
    compute,
    check,
)
