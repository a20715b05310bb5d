"""What the circle calculator answers: wedges with their steps, or rows with their decreases, what it measures, drawings."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from fractions import Fraction

from wedgework.angles import PI
from wedgework.circles import RoundThing, corner_mm, middle_mm, wedge_steps, wedge_stitches
from wedgework.declare import Figure, Figures, Inputs, Picture, Plain, Prose, Result, Shown, Table
from wedgework.draw.circle import disc_svg, wedge_svg
from wedgework.problems import Problem
from wedgework.say import say, say_n
from wedgework.shaping import runs
from wedgework.units import both_text, decimal_text, short_decimal, signed_text

__all__ = ["inward_result", "wedges_result"]

# Compared with what was asked for. Our own choice.
USUAL_WEDGES = (4, 6, 8, 10, 12, 16)
# A list of runs longer than this is no rhythm any more.
MOST_RUNS = 8


def _say(key: str, **values: object) -> str:
    return say(f"calculators.circle.{key}", **values)


def _n(key: str, n: int, **values: object) -> str:
    return say_n(f"calculators.circle.{key}", n, **values)


def wedges_result(
    inputs: Inputs, thing: RoundThing, stitches: int, turns: Sequence[int], natural: Fraction, per_step: int
) -> Result:
    """`turns`: of each wedge, in their order. `natural`: wedges if each held exactly so many stitches every two rows."""
    wedges, row_mm = len(turns), 100 / inputs.number("rows_per_10cm")
    stitch_mm = 100 / inputs.number("stitches_per_10cm")
    plain = thing.inner.count(1 / (2 * row_mm))
    steps = {t: wedge_steps(thing, stitches, t) for t in sorted(set(turns))}
    counts = Counter(turns)
    outer_rows = 2 * (sum(turns) + plain)
    values: dict[str, Plain] = {
        "stitches": stitches,
        "wedges": wedges,
        "natural_wedges": natural,
        "per_step": per_step,
        "turns": list(turns),
        "outer_rows": outer_rows,
        "plain_rows": 2 * plain,
        "outer_mm": outer_rows * row_mm,
        "outer_wanted_mm": thing.outer.mm,
        "across_mm": stitches * stitch_mm,
        "seam_mm": stitches * stitch_mm,
        "stitches_knitted": sum(counts[t] * wedge_stitches(held) for t, held in steps.items()) + 2 * plain * stitches,
        "wedge_steps": [{"turns": t, "wedges": counts[t], "hold": list(held)} for t, held in steps.items()],
    }
    flat = inputs.text("shape") in ("disc", "cone", "ruffle")
    if flat:
        each = thing.turn * 360 / natural
        values |= {"angle": thing.turn * 360, "natural_wedge_angle": each, "leftover_angle": thing.turn * 360 - wedges * each}
    view: list[Shown] = [_main(values, stitches, wedges, turns)]
    if flat:
        view.append(_angles(thing, natural, wedges, per_step))
    if inputs.text("shape") == "disc" and wedges >= 3:
        corners, drawn = _corners(thing, wedges)
        values |= {row.name: value for row, value in corners}
        view.append(Figures(_say("corners"), tuple(row for row, _ in corners)))
        view.append(Picture(_say("picture-disc"), drawn, _say("picture-disc-caption")))
        view.append(_more_wedges(thing, stitches, sum(turns), wedges))
    view.append(_steps(steps, counts))
    widest = max(counts, key=lambda t: (counts[t], t))
    view.append(Picture(_say("picture-wedge"), wedge_svg(steps[widest], stitch_mm, row_mm), _say("picture-wedge-caption")))
    view.append(
        Prose(
            _say("how"),
            (
                _say("how-wedge"),
                *((_plain_words(plain, wedges),) if plain else ()),
                _say("how-seam-open" if plain else "how-seam"),
            ),
        )
    )
    return Result(values, tuple(view), _too_wide(inputs, stitches))


def _plain_words(plain: int, wedges: int) -> str:
    return _say("how-plain", rows=say_n("common.rows", 2 * plain), wedges=_n("wedges-count", wedges))


def _too_wide(inputs: Inputs, stitches: int) -> tuple[Problem, ...]:
    if not inputs.has("bed_needles") or stitches <= inputs.whole("bed_needles"):
        return ()
    sentence = _say("too-wide", stitches=say_n("common.stitches", stitches), needles=inputs.whole("bed_needles"))
    return (Problem("bed_needles", "circle.too-wide", sentence, _say("too-wide.way-out")),)


def _main(values: dict[str, Plain], stitches: int, wedges: int, turns: Sequence[int]) -> Figures:
    least, most = 2 * min(turns), 2 * max(turns)
    rows = _n("rows-each", least) if least == most else _say("rows-between", least=least, most=most)
    outer, wanted, seam = (Fraction(str(values[key])) for key in ("outer_mm", "outer_wanted_mm", "seam_mm"))
    return Figures(
        _say("figures"),
        (
            Figure(_say("stitches"), f"{stitches}", _say("stitches-note"), "stitches"),
            Figure(_say("wedges-label"), f"{wedges}", rows, "wedges"),
            Figure(
                _say("outer-rows"),
                f"{values['outer_rows']}",
                _say("outer-note", got=both_text(outer), wanted=both_text(wanted)),
                "outer_rows",
            ),
            Figure(_say("seam"), both_text(seam), _say("seam-note"), "seam_mm"),
            Figure(_say("knitted"), f"{values['stitches_knitted']}", "", "stitches_knitted"),
        ),
    )


def _angles(thing: RoundThing, natural: Fraction, wedges: int, per_step: int) -> Figures:
    whole, each = thing.turn * 360, thing.turn * 360 / natural
    left = whole - wedges * each
    held = _n("held-each", per_step, wedges=decimal_text(natural, 2))
    return Figures(
        _say("angles"),
        (
            Figure(_say("angle"), _degrees(whole), _say("angle-note"), "angle"),
            Figure(_say("natural-angle"), _degrees(each), held, "natural_wedge_angle"),
            Figure(_say("leftover"), _degrees(left), _n("leftover-note", wedges, each=_degrees(left / wedges)), "leftover_angle"),
        ),
    )


def _degrees(value: Fraction) -> str:
    return f"{decimal_text(value, 1)}\u00b0" if value > 0 else f"{signed_text(value, 1)}\u00b0"


def _corners(thing: RoundThing, wedges: int) -> tuple[list[tuple[Figure, Fraction]], str]:
    radius = thing.outer.mm / (2 * PI)
    corner, middle = corner_mm(thing.outer.mm, wedges), middle_mm(thing.outer.mm, wedges)
    out, inside = corner - radius, radius - middle
    rows = [
        (
            Figure(_say("corner"), both_text(out), _say("percent", percent=decimal_text(out * 100 / radius, 1)), "corner_out_mm"),
            out,
        ),
        (
            Figure(
                _say("middle"), both_text(inside), _say("percent", percent=decimal_text(inside * 100 / radius, 1)), "middle_in_mm"
            ),
            inside,
        ),
    ]
    return rows, disc_svg(radius, corner, wedges)


def _more_wedges(thing: RoundThing, stitches: int, turns: int, wedges: int) -> Table:
    """What other numbers of wedges would do to the corners."""
    radius, rows = thing.outer.mm / (2 * PI), []
    for n in sorted({wedges, *USUAL_WEDGES}):
        if n <= turns:
            out = corner_mm(thing.outer.mm, n) - radius
            held, each = decimal_text(Fraction(stitches * n, turns), 1), decimal_text(Fraction(2 * turns, n), 1)
            corner = _say("more-corner", length=both_text(out), percent=decimal_text(out * 100 / radius, 1))
            rows.append((f"{n}", each, held, corner))
    return Table(_say("more"), tuple(_say(f"more-{key}") for key in ("wedges", "rows", "held", "corners")), tuple(rows))


def _held(steps: Sequence[int]) -> str:
    """In words where it is a rhythm, else the plain numbers."""
    found = runs(steps)
    if len(found) > MOST_RUNS:
        return ", ".join(map(str, steps))
    words = (
        _n("held", group.size, turns=_n("turns-of", group.times))
        if group.size
        else _say("held-nothing", turns=_n("turns-of", group.times))
        for group in found
    )
    return ", ".join(words)


def _steps(steps: dict[int, tuple[int, ...]], counts: Counter[int]) -> Table:
    rows = []
    for turns, held in steps.items():
        words = _n("held-last", held[-1], held=_held(held[:-1]) or _say("held-none"))
        rows.append((_n("wedges-count", counts[turns]), f"{2 * turns}", words))
    return Table(_say("steps"), tuple(_say(f"steps-{key}") for key in ("wedges", "rows", "hold")), tuple(rows))


def inward_result(
    inputs: Inputs, thing: RoundThing, sections: int, stitches: int, rows: int, places: Sequence[tuple[int, int]]
) -> Result:
    """`places`: after which rows every section loses a stitch."""
    stitch_mm, row_mm = 100 / inputs.number("stitches_per_10cm"), 100 / inputs.number("rows_per_10cm")
    left = stitches - sections * len(places)
    per_row = thing.gain_mm.mm / stitch_mm / (thing.across.mm / row_mm)
    values: dict[str, Plain] = {
        "stitches": stitches,
        "sections": sections,
        "rows": rows,
        "decrease_rows": [row for row, _ in places],
        "stitches_left": left,
        "decreases_per_row": per_row,
        "outer_mm": stitches * stitch_mm,
        "outer_wanted_mm": thing.outer.mm,
        "across_mm": rows * row_mm,
        "seam_mm": rows * row_mm,
    }
    outer, wanted = stitches * stitch_mm, thing.outer.mm
    main = Figures(
        _say("figures"),
        (
            Figure(_say("rim"), f"{stitches}", _say("outer-note", got=both_text(outer), wanted=both_text(wanted)), "stitches"),
            Figure(_say("rows"), f"{rows}", both_text(rows * row_mm), "rows"),
            Figure(_say("per-row"), decimal_text(per_row, 2), _say("per-row-note", sections=sections), "decreases_per_row"),
            Figure(_say("left"), f"{left}", _say("left-gather" if not thing.inner.mm else "left-edge"), "stitches_left"),
            Figure(_say("seam"), both_text(rows * row_mm), _say("seam-rows"), "seam_mm"),
        ),
    )
    gaps = [after - before for before, after in zip((0, *(row for row, _ in places)), (row for row, _ in places), strict=False)]
    table, at, now = [], 0, stitches
    for group in runs(gaps):
        at, now = at + group.size * group.times, now - sections * group.times
        table.append((_n("every-rows", group.size), short_decimal(group.times, 0), f"{at}", f"{now}"))
    heads = tuple(_say(f"inward-{key}") for key in ("every", "times", "row", "stitches"))
    view: tuple[Shown, ...] = (
        main,
        Table(_say("inward", n=sections), heads, tuple(table)),
        Prose(_say("how"), (_say("how-inward", n=sections), _say("how-inward-seam"))),
    )
    return Result(values, view, _too_wide(inputs, stitches))
