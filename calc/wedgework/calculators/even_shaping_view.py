"""What even shaping answers: groups whose sum is shown, places in order, a drawing to scale."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from itertools import accumulate, pairwise

from wedgework.declare import Figure, Figures, Inputs, Picture, Plain, Prose, Result, Shown, Table
from wedgework.draw.shaping import edge_svg, row_svg
from wedgework.exact import Group
from wedgework.say import say, say_n
from wedgework.shaping import Spacing, Stage, runs
from wedgework.units import both_text

__all__ = ["points_result", "row_result", "spread_result"]

# How wide the rest of a piece is drawn when only its edge was asked about.
REST = 10


def _say(key: str, **values: object) -> str:
    return say(f"calculators.even-shaping.{key}", **values)


def _n(key: str, n: int, **values: object) -> str:
    return say_n(f"calculators.even-shaping.{key}", n, **values)


def _plain(groups: Iterable[Group]) -> list[Plain]:
    return [{"every": group.size, "times": group.times} for group in groups]


def _groups_text(groups: Sequence[Group], unit: str) -> str:
    """every 8 rows 2 times, every 9 rows 12 times"""
    return ", ".join(_say("group", every=_n(f"every-{unit}", g.size), times=_n("times", g.times)) for g in groups)


def _sum_text(groups: Sequence[Group], rest: int, total: int) -> str:
    """2 x 8 + 12 x 9 + 1 = 125"""
    parts = [f"{group.times} \u00d7 {group.size}" for group in groups] + ([f"{rest}"] if rest else [])
    return f"{' + '.join(parts)} = {total}"


def _numbers(numbers: Sequence[int]) -> str:
    return ", ".join(map(str, numbers))


def spread_result(inputs: Inputs, found: Spacing) -> Result:
    """Changes up an edge. With both edges and even rows only, the other edge has its turn a row earlier, at its own side."""
    both, even, more = inputs.text("edges") == "both", inputs.yes("even_rows_only"), inputs.text("change") == "more"
    changes, height_mm = len(found.gaps), found.over * 100 / inputs.number("rows_per_10cm")
    other = [row - 1 if even and row else row for row in found.positions] if both else []
    values: dict[str, Plain] = {
        "groups": _plain(found.groups),
        "positions": found.positions,
        "positions_other_edge": other,
        "sum": _sum_text(found.groups, found.left_over, found.over),
        "left_over": found.left_over,
        "first_after": found.positions[0],
        "last_after": found.positions[-1],
        "rows_after_last": found.over - found.positions[-1],
        "stitches_changed": changes * (2 if both else 1),
        "height_mm": height_mm,
    }
    sign = 1 if more else -1
    body = REST if more else REST + changes * (2 if both else 1)
    drawn = edge_svg(
        [(row, sign) for row in found.positions],
        found.over,
        body,
        100 / inputs.number("stitches_per_10cm"),
        100 / inputs.number("rows_per_10cm"),
        both=both,
        cut=not both,
        earlier=int(both and even),
    )
    view: list[Shown] = [
        _main(
            found,
            found.groups,
            "rows",
            (Figure(_say("height"), both_text(height_mm), say_n("common.rows", found.over), "height_mm"),),
        ),
        Picture(_say("picture"), drawn, _say("picture-edge")),
        _order(found.gaps, "rows"),
        Prose(_say("positions-rows"), (_numbers(found.positions), *_other_edge(both, even, other))),
    ]
    return Result(values, tuple(view))


def _other_edge(both: bool, even: bool, other: Sequence[int]) -> tuple[str, ...]:
    if not both:
        return ()
    return (_say("other-edge-earlier", rows=_numbers(other)),) if even else (_say("other-edge-same"),)


def _main(found: Spacing, groups: Sequence[Group], unit: str, more: tuple[Figure, ...]) -> Figures:
    total = sum(group.size * group.times for group in groups) + found.left_over
    rest = found.over - found.positions[-1]
    return Figures(
        _say(f"figures-{unit}"),
        (
            Figure(_say("groups"), _groups_text(groups, unit), _say("closing" if found.closing else "no-closing"), ""),
            Figure(_say("sum"), _sum_text(groups, found.left_over, total), _say("left-over") if found.left_over else "", "sum"),
            Figure(_say(f"first-{unit}"), f"{found.positions[0]}", "", "first_after"),
            Figure(_say(f"last-{unit}"), f"{found.positions[-1]}", _n(f"then-{unit}", rest) if rest else "", "last_after"),
            *more,
        ),
    )


def _order(gaps: Sequence[int], unit: str) -> Table:
    """The gaps in the order in which they come, equal neighbours together."""
    rows, at, done = [], 0, 0
    for group in runs(gaps):
        at, done = at + group.size * group.times, done + group.times
        rows.append((_n(f"every-{unit}", group.size), f"{group.times}", f"{at}", f"{done}"))
    heads = tuple(_say(f"order-{key}") for key in ("every", "times", f"at-{unit}", "done"))
    return Table(_say("order"), heads, tuple(rows))


def row_result(inputs: Inputs, found: Spacing) -> Result:
    """Changes along a row. Counted after the change, a part has its new stitch in it, or the lost one not."""
    more, after = inputs.text("change") == "more", inputs.text("counted") == "after"
    changes, width_mm = len(found.gaps), found.over * 100 / inputs.number("stitches_per_10cm")
    one = (1 if more else -1) if after else 0
    gaps = tuple(gap + one for gap in found.gaps)
    shown = Spacing(gaps, found.closing, found.left_over)
    values: dict[str, Plain] = {
        "groups": _plain(shown.groups),
        "positions": shown.positions,
        "sum": _sum_text(shown.groups, shown.left_over, shown.over),
        "left_over": found.left_over,
        "first_after": shown.positions[0],
        "last_after": shown.positions[-1],
        "stitches_before": found.over,
        "stitches_after": found.over + (changes if more else -changes),
        "width_mm": width_mm,
    }
    stitches = Figure(
        _say("stitches-after"), f"{values['stitches_after']}", _say("stitches-before", n=found.over), "stitches_after"
    )
    view: list[Shown] = [
        _main(shown, shown.groups, "stitches", (stitches,)),
        Picture(
            _say("picture"),
            row_svg(found.positions, found.over, 100 / inputs.number("stitches_per_10cm"), more),
            _say("picture-row"),
        ),
        _order(shown.gaps, "stitches"),
        Prose(_say("positions-stitches"), (_numbers(shown.positions), _say("how-more" if more else "how-fewer"))),
    ]
    return Result(values, tuple(view))


def points_result(inputs: Inputs, points: Sequence[tuple[int, int]], found: Sequence[Stage]) -> Result:
    """An edge by points: each stage with its groups, and every place where something changes."""
    both = inputs.text("edges") == "both"
    places = [place for stage in found for place in stage.places]
    rows = points[-1][0]
    values: dict[str, Plain] = {
        "stages": [
            _stage_values(stage, before, after) for stage, (_, before), (_, after) in zip(found, points, points[1:], strict=False)
        ],
        "places": [{"row": row, "stitches": stitches} for row, stitches in places],
        "rows": rows,
        "stitches_start": points[0][1],
        "stitches_end": points[-1][1],
        "height_mm": rows * 100 / inputs.number("rows_per_10cm"),
    }
    drawn = edge_svg(
        places,
        rows,
        points[0][1],
        100 / inputs.number("stitches_per_10cm"),
        100 / inputs.number("rows_per_10cm"),
        both=both,
    )
    view: list[Shown] = [
        _stages(points, found),
        Picture(_say("picture"), drawn, _say("picture-points")),
        _places(points[0][1], places, both),
    ]
    if both:
        view.append(Prose("", (_say("points-both"),)))
    return Result(values, tuple(view))


def _gaps(stage: Stage) -> list[int]:
    rows = [stage.start, *(row for row, _ in stage.places)]
    return [after - before for before, after in pairwise(rows)]


def _stage_groups(stage: Stage) -> tuple[Group, ...]:
    return tuple(Group(size, times) for size, times in sorted(Counter(_gaps(stage)).items()) if size)


def _stage_values(stage: Stage, before: int, after: int) -> dict[str, Plain]:
    last = stage.places[-1][0] if stage.places else stage.start
    return {
        "start_row": stage.start,
        "end_row": stage.end,
        "start_stitches": before,
        "end_stitches": after,
        "change": stage.change,
        "groups": _plain(_stage_groups(stage)),
        "left_over": stage.end - last,
    }


def _stages(points: Sequence[tuple[int, int]], found: Sequence[Stage]) -> Table:
    rows = []
    for stage, (_, before), (_, after) in zip(found, points, points[1:], strict=False):
        span = _say("span", first=stage.start, last=stage.end) if stage.end > stage.start else f"{stage.end}"
        rows.append((span, _say("span", first=before, last=after), _change(stage.change), _how(stage), _stage_sum(stage)))
    heads = tuple(_say(f"stage-{key}") for key in ("rows", "stitches", "change", "how", "sum"))
    return Table(_say("stages"), heads, tuple(rows))


def _change(change: int) -> str:
    return f"+{change}" if change > 0 else f"\u2212{-change}" if change else "0"


def _how(stage: Stage) -> str:
    if not stage.places:
        return _say("plain")
    if stage.end == stage.start:
        return _say("at-once", n=abs(stage.change))
    if stage.at_once:
        sizes = _numbers([abs(stitches) for _, stitches in stage.places])
        return _say("steps", sizes=sizes)
    return _groups_text(_stage_groups(stage), "rows")


def _stage_sum(stage: Stage) -> str:
    if not stage.places or stage.end == stage.start:
        return ""
    return _sum_text(_stage_groups(stage), stage.end - stage.places[-1][0], stage.end - stage.start)


def _places(start: int, places: Sequence[tuple[int, int]], both: bool) -> Table:
    """Row by row, with the stitches that are there then."""
    widths = accumulate((stitches * (2 if both else 1) for _, stitches in places), initial=start)
    next(widths)
    rows = tuple((f"{row}", _change(stitches), f"{width}") for (row, stitches), width in zip(places, widths, strict=True))
    return Table(_say("places"), tuple(_say(f"places-{key}") for key in ("row", "change", "stitches")), rows)
