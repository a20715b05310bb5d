"""What the stripes show: the picture of the fabric, what it takes, and each block with its stripes in knitting order."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from wedgework.calculators.striping import Colours
from wedgework.declare import Figure, Figures, Picture, Plain, Shown, Table
from wedgework.draw.fabric import Ink, Mark, can_be_drawn, fabric_svg
from wedgework.draw.outline import Interval, spot, stack_on
from wedgework.formats.design import Design
from wedgework.formats.plan import Plan
from wedgework.layout.sizes import resolve
from wedgework.say import say
from wedgework.units import decimal_text, yards_too
from wedgework.yarn.fabric import colours_of, size_of
from wedgework.yarn.laid import Laid
from wedgework.yarn.path import Stretch, YarnPath
from wedgework.yarn.stripes import Striped

__all__ = ["begin_costs", "inks_of", "marks_of", "stripes_values", "stripes_view"]

MOST_SHOWN = 14
"""Stripes of a block in the table; all of them stand in the values."""


@dataclass(slots=True)
class _Stripe:
    colour: int
    um: int
    rows: Fraction


def _say(key: str, **values: object) -> str:
    return say(f"calculators.stripes.{key}", **values)


def inks_of(design: Design, colours: Colours | None = None) -> tuple[list[Ink], dict[str, int], tuple[int, ...]]:
    """The palette from 1 on; the entry of each yarn; the entries of the colours of the striped one."""
    inks = [Ink(yarn.colour, yarn.name) for yarn in design.yarns]
    by_yarn = {yarn.id: i for i, yarn in enumerate(design.yarns, 1)}
    if colours is None:
        return inks, by_yarn, ()
    first = len(inks) + 1
    inks += [Ink(colour, name) for colour, name in zip(colours.repeat.colours, colours.names, strict=True)]
    return inks, by_yarn, tuple(range(first, len(inks) + 1))


def marks_of(path: YarnPath, design: Design) -> list[Mark]:
    """A number for each block of the picture, in knitting order, at a good place inside it on the front."""
    sizes = resolve(design)
    _, height = size_of(path)
    below = sum(s.end - s.begin for s in path.stretches if s.outside and s.begin < _first_of_picture(path))
    marks: list[Mark] = []
    for number, stretch in enumerate((s for s in path.stretches if not s.outside), 1):
        columns: dict[int, tuple[Interval, ...]] = {}
        for place, run in path.runs.get(stretch.block, ()):
            stack_on(columns, path.needles - 1 - place, run.low, run.high)
        if columns:
            x, y, _, _ = spot(columns, sizes.stitch_mm, sizes.row_mm)
            marks.append(Mark(f"{number}", x, height - below - y))
    return marks


def _first_of_picture(path: YarnPath) -> int:
    return next((s.begin for s in path.stretches if not s.outside), 0)


def _own(laid: Laid, striped: Striped) -> list[tuple[int, int, Stretch]]:
    """Number of the block in knitting order (0 for base rows), number of the stretch, and the stretch."""
    found: list[tuple[int, int, Stretch]] = []
    number = 0
    for i, stretch in enumerate(laid.path.stretches):
        number += not stretch.outside
        if stretch.yarn == striped.yarn:
            found.append((0 if stretch.outside else number, i, stretch))
    return found


def _stripes(laid: Laid, striped: Striped, stretch: Stretch) -> list[list[_Stripe]]:
    """For each ball the stripes of one block one after the other: how much of each lies in stitches, over how many rows."""
    loop, repeat, path = laid.measures[striped.yarn].loop, striped.repeat, laid.path
    balls: list[list[_Stripe]] = [[] for _ in striped.offsets]
    for t in range(stretch.begin, stretch.end):
        ball = striped.ball(t - stretch.begin)
        found, count = balls[ball], path.stitches[t]
        for colour, many in repeat.stitches(laid.start[t] + striped.offsets[ball], count, loop) if count else ():
            if found and found[-1].colour == colour:
                found[-1].um += many * loop
                found[-1].rows += Fraction(many, count)
            else:
                found.append(_Stripe(colour, many * loop, Fraction(many, count)))
    return balls


def begin_costs(laid: Laid, striped: Striped) -> list[tuple[int, str, list[Fraction]]]:
    """Of each block of the striped yarn, number and id: metres that would be wound off to begin it with each colour."""
    found: list[tuple[int, str, list[Fraction]]] = []
    for number, _, stretch in _own(laid, striped):
        begins = laid.start[stretch.begin] + striped.offsets[0]
        costs = [Fraction(striped.repeat.until(begins, colour), 1_000_000) for colour in range(len(striped.repeat.colours))]
        found.append((number, stretch.block, costs))
    return found


def stripes_values(plan: Plan, colours: Colours, striped: Striped, laid: Laid) -> dict[str, Plain]:
    """Lengths in m, heights in rows and mm; `begin_costs_m` of a block is what it takes to begin it with each colour."""
    row_mm = resolve(plan.design).row_mm
    used, more = laid.used[striped.yarn], sum(laid.more_tails)
    blocks: list[Plain] = []
    for (number, i, stretch), (_, _, costs) in zip(_own(laid, striped), begin_costs(laid, striped), strict=True):
        balls = _stripes(laid, striped, stretch)
        begins = laid.start[stretch.begin] + striped.offsets[0]
        blocks.append(
            {
                "block": stretch.block,
                "number": number,
                "begins_with": colours.names[striped.repeat.at(begins)],
                "metres": Fraction(laid.knitted(stretch) + laid.strands[i], 1_000_000),
                "wound_off_m": Fraction(laid.skipped[i], 1_000_000),
                "begin_costs_m": costs,
                "stripes": [
                    [
                        {
                            "colour": colours.names[one.colour],
                            "metres": Fraction(one.um, 1_000_000),
                            "rows": one.rows,
                            "height_mm": one.rows * row_mm,
                        }
                        for one in ball
                    ]
                    for ball in balls
                ],
            }
        )
    return {
        "metres": Fraction(used, 1_000_000),
        "repeat_m": Fraction(striped.repeat.length, 1_000_000),
        "repeats": Fraction(used, striped.repeat.length),
        "wound_off_m": Fraction(sum(laid.skipped) + more * laid.measures[striped.yarn].tail, 1_000_000),
        "more_ends": more,
        "loop_mm": Fraction(laid.measures[striped.yarn].loop, 1000),
        "blocks": blocks,
    }


def stripes_view(plan: Plan, colours: Colours, striped: Striped, laid: Laid) -> tuple[Shown, ...]:
    """The picture comes first: it is what was asked for. A huge one with thousands of stripes is painted by the page alone."""
    shown: list[Shown] = [_figures(plan, striped, laid)]
    inks, by_yarn, own = inks_of(plan.design, colours)
    fabric = colours_of(laid, by_yarn, striped, own)
    if can_be_drawn(fabric):
        sizes = resolve(plan.design)
        svg = fabric_svg(
            fabric,
            inks,
            (sizes.stitch_mm, sizes.row_mm),
            title=_say("picture-title", title=plan.design.title),
            desc=_say("picture-desc", stitches=fabric.width, rows=fabric.height, colours=", ".join(colours.names)),
            prefix="fabric",
            marks=marks_of(laid.path, plan.design),
        )
        shown.append(Picture(_say("picture"), svg, _say("picture-caption")))
    return (*shown, _blocks(colours, striped, laid))


def _figures(plan: Plan, striped: Striped, laid: Laid) -> Figures:
    used, more = laid.used[striped.yarn], sum(laid.more_tails)
    lost = sum(laid.skipped) + more * laid.measures[striped.yarn].tail
    return Figures(
        _say("figures", yarn=next(yarn.name for yarn in plan.design.yarns if yarn.id == striped.yarn)),
        (
            Figure(_say("metres"), yards_too(Fraction(used, 1000), 1), _say("metres-note"), "metres"),
            Figure(_say("repeats"), decimal_text(Fraction(used, striped.repeat.length), 1), _m(striped.repeat.length), "repeats"),
            Figure(_say("wound-off"), _m(lost), _say("wound-off-note", ends=more), "wound_off_m"),
            Figure(
                _say("loop"),
                f"{decimal_text(Fraction(laid.measures[striped.yarn].loop, 1000), 1)} mm",
                _say("loop-note"),
                "loop_mm",
            ),
        ),
    )


def _blocks(colours: Colours, striped: Striped, laid: Laid) -> Table:
    rows = []
    for number, i, stretch in _own(laid, striped):
        begins = colours.names[striped.repeat.at(laid.start[stretch.begin] + striped.offsets[0])]
        metres = _m(laid.knitted(stretch) + laid.strands[i])
        if laid.skipped[i]:
            begins = _say("begins-after", colour=begins, metres=_m(laid.skipped[i]))
        heights = "; ".join(_heights(colours, ball) for ball in _stripes(laid, striped, stretch) if ball)
        rows.append((f"{number}" if number else stretch.name, begins, heights, metres))
    return Table(_say("blocks"), tuple(_say(f"blocks-{key}") for key in ("name", "begins", "rows", "metres")), tuple(rows))


def _heights(colours: Colours, stripes: list[_Stripe]) -> str:
    words = [f"{colours.names[one.colour]} {decimal_text(one.rows, 1)}" for one in stripes[:MOST_SHOWN]]
    return ", ".join(words) + (" \u2026" if len(stripes) > MOST_SHOWN else "")


def _m(um: int) -> str:
    return _say("m", metres=decimal_text(Fraction(um, 1_000_000), 1))
