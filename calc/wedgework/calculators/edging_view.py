"""What the edging calculator shows: rows and joins of each edge, the corners, a drawing to scale, the order of work."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction

from wedgework.declare import Bullets, Figure, Figures, Picture, Plain, Prose, Shown, Table
from wedgework.draw.edging import edging_svg
from wedgework.finish.edging import Run, Strip
from wedgework.say import say, say_n
from wedgework.units import both_text, decimal_text, short_decimal, signed_text

__all__ = ["edging_view"]

MOST_STRETCHES = 30


def _say(key: str, **values: object) -> str:
    return say(f"calculators.edging.{key}", **values)


def _n(key: str, n: int, **values: object) -> str:
    return say_n(f"calculators.edging.{key}", n, **values)


def edging_view(edging: Strip, values: Mapping[str, Plain]) -> tuple[Shown, ...]:
    view: list[Shown] = [_main(edging), Picture(_say("picture"), _drawn(edging), _say("picture-caption")), _edges(edging)]
    view += [_rhythm(run) for run in edging.runs]
    view.append(Bullets(_say("steps"), tuple(_steps(edging)), ordered=True))
    if edging.round:
        view.append(Prose(_say("corners"), (_say(f"corners-{edging.corner}"),)))
    return tuple(view)


def _drawn(edging: Strip) -> str:
    lengths = [run.length_mm for run in edging.runs]
    joined = edging.runs[-1]
    kind = _say(f"places-{joined.key}")
    return edging_svg(
        lengths, edging.width_mm, edging.corner, joined.hung.positions, joined.places, kind, edging.rows, edging.joins
    )


def _main(edging: Strip) -> Figures:
    repeats = short_decimal(Fraction(edging.rows, edging.repeat), 2)
    rows = [
        Figure(_say("rows"), f"{edging.rows}", _say("repeats", repeats=repeats, repeat=edging.repeat), "rows"),
        Figure(_say("joins"), f"{edging.joins}", _n("every", edging.join_every), "joins"),
        Figure(_say("width"), both_text(edging.width_mm), say_n("common.stitches", edging.stitches), "edging_mm"),
        Figure(_say("knitted"), f"{edging.rows * edging.stitches}", "", "stitches_knitted"),
    ]
    if edging.round:
        rows.insert(2, Figure(_say("corner-rows"), f"{edging.corner_rows}", _say("corner-note"), "corner_rows"))
    return Figures(_say("figures"), tuple(rows))


def _edges(edging: Strip) -> Table:
    rows = []
    for name, run in edging.edges:
        off = _say("off", mm=signed_text(run.off_mm(edging.row_mm), 0), percent=signed_text(run.off_percent, 1))
        places = _n(f"count-{run.key}", run.places)
        rows.append((_say(f"edge-{name}"), places, both_text(run.length_mm), decimal_text(run.exact, 1), f"{run.rows}", off))
    heads = tuple(_say(f"edges-{key}") for key in ("edge", "places", "length", "exact", "rows", "off"))
    return Table(_say("edges"), heads, tuple(rows))


def _rhythm(run: Run) -> Shown:
    """Which places of the edge are joined, one after the other."""
    title = _say(f"rhythm-{run.key}")
    if run.joins > run.places:
        return Prose(title, (_n("doubled", len(run.hung.doubled), places=_say(f"places-{run.key}")),))
    if not run.hung.left_out:
        return Prose(title, (_say(f"every-{run.key}"),))
    rows, at = [], 0
    for one in run.hung.stretches()[:MOST_STRETCHES]:
        last = at + (one.hung + one.left_out) * one.times
        rows.append(
            (_say("from-to", first=at + 1, last=last), f"{one.hung}", f"{one.left_out}", say_n("common.times", one.times))
        )
        at = last
    heads = (_say(f"rhythm-places-{run.key}"), *(_say(f"rhythm-{key}") for key in ("join", "leave", "times")))
    return Table(title, heads, tuple(rows))


def _steps(edging: Strip) -> Iterable[str]:
    yield _say("step-cast", stitches=say_n("common.stitches", edging.stitches))
    yield _n("step-join", edging.join_every)
    yield _say("step-order-round" if edging.round else "step-order-one")
    if edging.corner_rows:
        yield _say("step-corner", rows=say_n("common.rows", edging.corner_rows), joins=edging.corner_rows // edging.join_every)
    yield _say("step-end-round" if edging.round else "step-end-one")
