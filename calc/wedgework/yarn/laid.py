"""The yarn laid along its path: where on the yarn each pass begins, in whole thousandths of a millimetre.

    laid = lay(way, {"a": Measures(loop=7_900, tail=180_000, pitch=4_500, row=2_500)})
    laid.start[t]          # how much of its yarn (of its ball, where two are used) had run before the first stitch of pass t
    laid.used["a"]         # and in the end, tails and all

Whole numbers throughout: a million passes add up to the last micrometre, on every Python.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from wedgework.yarn.path import Stretch, YarnPath
from wedgework.yarn.stripes import Striped

__all__ = ["EDGE_LOOPS", "Laid", "Measures", "lay"]

EDGE_LOOPS = 1
"""Loops of yarn in one stitch of a closed cast-on or a chain of binding off: with a loop about four times as long as a
stitch is wide, a little more than the "three times the width" of the trade. Common practice, no source."""
TURN = 2
"""Rows that the second ball climbs each time it is taken up again."""


@dataclass(frozen=True, slots=True)
class Measures:
    """Lengths of one yarn as it is knitted, in micrometres: of one stitch, of a tail, over one held needle, up one row."""

    loop: int
    tail: int
    pitch: int
    row: int


@dataclass(slots=True)
class Laid:
    """`start` for each pass; the rest by yarn or by stretch of the path, in micrometres."""

    path: YarnPath
    measures: Mapping[str, Measures]
    start: list[int]
    used: dict[str, int]
    """All that runs off the balls of a yarn, what is wound off too."""
    strands: list[int]
    """Of each stretch: over held needles, round them, and up to where it begins."""
    tails: list[int]
    """Of each stretch: how many tails it has."""
    edges: list[int]
    """Of each stretch: cast-on and binding off."""
    skipped: list[int]
    """Of each stretch: what was wound off so that it begins with its colour."""
    more_tails: list[int]
    """Of each stretch: tails that it has only because it shall begin with its colour."""

    def knitted(self, stretch: Stretch) -> int:
        """Yarn in the stitches of a stretch."""
        return sum(self.path.stitches[stretch.begin : stretch.end]) * self.measures[stretch.yarn].loop


def lay(path: YarnPath, measures: Mapping[str, Measures], striped: Striped | None = None) -> Laid:
    """`measures` for every yarn of the path; `striped` says of one of them where its colours shall begin."""
    stretches = len(path.stretches)
    laid = Laid(path, measures, [], dict.fromkeys(measures, 0), *([0] * stretches for _ in range(5)))
    run = dict.fromkeys(measures, 0)
    balls = [0, 0]
    for number, stretch in enumerate(path.stretches):
        if striped is None or stretch.yarn != striped.yarn:
            run[stretch.yarn] = _plain(laid, number, run[stretch.yarn])
        elif len(striped.offsets) == 1:
            run[stretch.yarn] = _plain(laid, number, run[stretch.yarn] + _wound_off(laid, number, run[stretch.yarn], 0, striped))
        else:
            _two_balls(laid, number, balls, striped)
            run[stretch.yarn] = sum(balls)
    laid.used = run
    return laid


def _plain(laid: Laid, number: int, at: int) -> int:
    """Lays one stretch from `at` on; where its yarn has run to then."""
    path = laid.path
    stretch = path.stretches[number]
    of = laid.measures[stretch.yarn]
    loop, pitch, strand = of.loop, of.pitch, 0
    stitches, crossed, start = path.stitches, path.crossed, laid.start
    anew, cut, climbed, cast_on, bound_off = path.anew, path.cut, path.climbed, path.cast_on, path.bound_off
    for t in range(stretch.begin, stretch.end):
        over = crossed[t] * pitch
        if t in anew or t in climbed or t in cast_on:
            over += climbed.get(t, 0) * of.row
            edge, tails = EDGE_LOOPS * loop * cast_on.get(t, 0), anew.get(t, 0)
            laid.edges[number] += edge
            laid.tails[number] += tails
            at += edge + tails * of.tail
        at += over
        start.append(at)
        at += stitches[t] * loop
        if t in cut or t in bound_off:
            edge, tails = EDGE_LOOPS * loop * bound_off.get(t, 0), cut.get(t, 0)
            laid.edges[number] += edge
            laid.tails[number] += tails
            at += edge + tails * of.tail
        strand += over
    laid.strands[number] += strand
    return at


def _wound_off(laid: Laid, number: int, at: int, ball: int, striped: Striped) -> int:
    """What runs off the ball before a stretch begins with the colour that it shall begin with; nothing if it need not."""
    wanted = striped.begins.get(number)
    if wanted is None:
        return 0
    path, stretch = laid.path, laid.path.stretches[number]
    of, t = laid.measures[stretch.yarn], stretch.begin
    carried = t not in path.anew
    before = 0 if carried else path.anew[t] * of.tail
    before += EDGE_LOOPS * of.loop * path.cast_on.get(t, 0) + path.crossed[t] * of.pitch + path.climbed.get(t, 0) * of.row
    # A yarn that hangs there uncut is cut, so there are two tails more.
    more = 2 if carried else 0
    skipped = striped.repeat.until(at + more * of.tail + before + striped.offsets[ball], wanted)
    laid.skipped[number] += skipped
    laid.more_tails[number] += more
    laid.tails[number] += more
    return skipped + more * of.tail


def _two_balls(laid: Laid, number: int, balls: list[int], striped: Striped) -> None:
    """Lays one stretch from two balls, two rows of each in turn; both are threaded and cut where the one would be."""
    path = laid.path
    stretch = path.stretches[number]
    of = laid.measures[stretch.yarn]
    balls[0] += _wound_off(laid, number, balls[0], 0, striped)
    anew, second = path.anew.get(stretch.begin, 0), False
    for t in range(stretch.begin, stretch.end):
        nth = t - stretch.begin
        ball = striped.ball(nth)
        over = path.crossed[t] * of.pitch + path.climbed.get(t, 0) * of.row
        tails = path.anew.get(t, 0)
        if ball == 1 and not second:
            second, tails = True, anew
        elif nth and nth % 2 == 0:
            over += TURN * of.row
        edge = EDGE_LOOPS * of.loop * path.cast_on.get(t, 0)
        balls[ball] += tails * of.tail + edge + over
        laid.start.append(balls[ball])
        balls[ball] += path.stitches[t] * of.loop
        laid.edges[number] += edge
        laid.tails[number] += tails
        laid.strands[number] += over
    end = stretch.end - 1
    edge, tails = EDGE_LOOPS * of.loop * path.bound_off.get(end, 0), path.cut.get(end, 0)
    last = striped.ball(end - stretch.begin)
    balls[last] += edge + tails * of.tail
    if second:
        balls[1 - last] += tails * of.tail
    laid.edges[number] += edge
    laid.tails[number] += tails * (2 if second else 1)
