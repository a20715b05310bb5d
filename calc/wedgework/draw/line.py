"""Points with a straight line through them, and the place on it that was asked for."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from wedgework.draw.svg import Child, Element, document, label, line
from wedgework.exact import down, up
from wedgework.say import say
from wedgework.units import short_decimal

__all__ = ["line_svg"]

LEFT, TOP, WIDE, HIGH = 16, 10, 120, 70
TEXT = Fraction(3)


def line_svg(
    points: Sequence[tuple[Fraction, Fraction]],
    ends: tuple[tuple[Fraction, Fraction], tuple[Fraction, Fraction]],
    asked: tuple[Fraction, Fraction],
    off: Fraction,
) -> str:
    """Tension to the right, stitches upward. `ends` of the line, the point `asked` on it, and how far it can be off sideways."""
    xs = [x for x, _ in (*points, *ends)] + [asked[0]]
    ys = [y for _, y in (*points, *ends)] + [asked[1]]
    low_x, high_x = Fraction(down(min(xs))), Fraction(max(up(max(xs)), down(min(xs)) + 1))
    low_y, high_y = Fraction(down(min(ys))), Fraction(max(up(max(ys)), down(min(ys)) + 1))

    def x_at(x: Fraction) -> Fraction:
        return LEFT + (x - low_x) * WIDE / (high_x - low_x)

    def y_at(y: Fraction) -> Fraction:
        return TOP + HIGH - (y - low_y) * HIGH / (high_y - low_y)

    foot = TOP + HIGH
    thin = Fraction(1, 5)
    children: list[Child] = [label(LEFT - 10, 5, say("draw.line-stitches"), TEXT)]
    for mark in range(int(low_x), int(high_x) + 1):
        at = x_at(Fraction(mark))
        children.append(line(at, TOP, at, foot, stroke_width=thin, stroke_opacity="0.35"))
        children.append(label(at, foot + 5, str(mark), TEXT, text_anchor="middle"))
    every = max(1, up((high_y - low_y) / 8))
    for mark in range(int(low_y), int(high_y) + 1, every):
        at = y_at(Fraction(mark))
        children.append(line(LEFT, at, LEFT + WIDE, at, stroke_width=thin, stroke_opacity="0.35"))
        children.append(label(LEFT - 2, at + 1, str(mark), TEXT, text_anchor="end"))
    (x1, y1), (x2, y2) = ends
    children.append(line(x_at(x1), y_at(y1), x_at(x2), y_at(y2), stroke_width=Fraction(1, 2)))
    children += [
        Element("circle", {"cx": x_at(x), "cy": y_at(y), "r": Fraction(6, 5), "fill": "currentColor"}) for x, y in points
    ]
    x, y = x_at(asked[0]), y_at(asked[1])
    left, right = max(x_at(asked[0] - off), Fraction(LEFT)), min(x_at(asked[0] + off), Fraction(LEFT + WIDE))
    for to_x, to_y in ((Fraction(LEFT), y), (x, Fraction(foot))):
        children.append(line(x, y, to_x, to_y, stroke_width=Fraction(1, 3), stroke_dasharray="2 1.5"))
    children.append(line(left, foot, right, foot, stroke_width=Fraction(3, 2)))
    children.append(label(LEFT + Fraction(WIDE, 2), foot + 10, say("draw.line-tension"), TEXT, text_anchor="middle"))
    words = say("draw.line-desc", tension=short_decimal(asked[0], 2), stitches=short_decimal(asked[1], 2))
    return document(LEFT + WIDE + 8, foot + 13, say("draw.line-title"), words, children, prefix="tension", kind="line")
