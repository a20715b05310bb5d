"""Rows on each needle when the picture is finished: a flat piece shows a nearly straight line."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

from wedgework.bed import across, name
from wedgework.draw.marks import ruler
from wedgework.draw.sheet import TEXT
from wedgework.draw.svg import Element, document, group, label, line, number, path
from wedgework.formats.plan import Plan
from wedgework.layout import grid_of, resolve, shaping_of
from wedgework.replay.result import Replay
from wedgework.say import say, say_n

__all__ = ["levels_svg"]

WIDTH, LEFT, TOP, HIGH = 180, 12, 10, 36


def levels_svg(plan: Plan, judged: Replay, *, prefix: str = "levels") -> str:
    """A stepped line over the needles, L on the left, with the wanted rows dashed and the extremes said."""
    piece, sizes = judged.piece, resolve(plan.design)
    wanted = shaping_of(grid_of(plan.design, sizes).mirrored(), sizes.rows).wanted
    needles = across(piece.first_needle, piece.last_needle)
    rows = [column[-1].level + column[-1].rows if column else 0 for column in piece.columns]
    low, high = min(*rows, *wanted) - 1, max(*rows, *wanted) + 1
    stitch = Fraction(WIDTH - LEFT - 6, len(needles))
    step = Fraction(HIGH, high - low)
    floor = Fraction(TOP + HIGH)

    def y(value: int) -> Fraction:
        return floor - (value - low) * step

    children: list[Element] = [label(0, 4, say("draw.levels-caption"), TEXT, font_weight="600")]
    children.append(_scale(low, high, step, floor))
    children.append(_dashed([y(value) for value in wanted], stitch))
    children.append(_area(rows, stitch, y(low), [y(value) for value in rows]))
    children.append(ruler(needles, Fraction(LEFT), stitch, floor))
    said = _said(needles, rows, wanted)
    children.append(label(LEFT, floor + 14, said, TEXT))
    return document(
        WIDTH,
        floor + 17,
        say("draw.levels-title", title=plan.design.title),
        f"{say('draw.levels-desc')} {said}",
        children,
        prefix=prefix,
        kind="levels",
    )


def _dashed(heights: Sequence[Fraction], stitch: Fraction) -> Element:
    """The wanted rows: a line, or steps where the piece is shaped."""
    if len(set(heights)) == 1:
        at = heights[0]
        return line(LEFT, at, WIDTH - 6, at, stroke_width=Fraction(1, 4), stroke_dasharray="2 1.5")
    d = [f"M{LEFT} {number(heights[0])}"]
    for i, (before, height) in enumerate(pairwise(heights), 1):
        if height != before:
            d.append(f"H{number(LEFT + i * stitch)}V{number(height)}")
    d.append(f"H{number(LEFT + len(heights) * stitch)}")
    return path("".join(d), fill="none", stroke="currentColor", stroke_width=Fraction(1, 4), stroke_dasharray="2 1.5")


def _said(needles: Sequence[int], rows: Sequence[int], wanted: Sequence[int]) -> str:
    least, most = min(rows), max(rows)
    if len(set(wanted)) > 1:
        off = [abs(own - other) for own, other in zip(rows, wanted, strict=True)]
        worst = say_n("common.rows", max(off))
        return say("draw.levels-shaped", least=least, most=most, exact=off.count(0), needles=len(rows), off=worst)
    if least == most:
        return say("draw.levels-even", rows=say_n("common.rows", least))
    return say(
        "draw.levels-between",
        least=least,
        on_least=name(needles[rows.index(least)]),
        most=most,
        on_most=name(needles[rows.index(most)]),
        wanted=wanted[0],
    )


def _scale(low: int, high: int, step: Fraction, floor: Fraction) -> Element:
    """Row numbers at the left, as many as have room."""
    every = 1
    while every * step < 4:
        every = every * 2 if str(every)[0] != "2" else every * 5 // 2
    marks: list[Element] = []
    for value in range(low, high + 1):
        if value % every == 0:
            at = floor - (value - low) * step
            marks.append(line(LEFT - 1, at, WIDTH - 6, at, stroke_width=Fraction(1, 10), stroke_opacity="0.4"))
            marks.append(label(LEFT - 2, at + 1, str(value), TEXT, text_anchor="end"))
    return group(marks)


def _area(rows: Sequence[int], stitch: Fraction, floor: Fraction, tops: Sequence[Fraction]) -> Element:
    """The needles as one stepped line, lightly filled down to the axis."""
    d = [f"M{LEFT} {number(floor)}"]
    for i, top in enumerate(tops):
        if i == 0 or rows[i] != rows[i - 1]:
            d.append(f"H{number(LEFT + i * stitch)}V{number(top)}")
    d.append(f"H{number(LEFT + len(rows) * stitch)}V{number(floor)}Z")
    return path("".join(d), fill="currentColor", fill_opacity="0.15", stroke="currentColor", stroke_width=Fraction(2, 5))
