"""The figures of the short-row shape: flat ones with what lies beside them, and pieces that are shaped on purpose."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from wedgework.angles import PI
from wedgework.calculators.short_row_steps import Slope
from wedgework.declare import Inputs
from wedgework.exact import nearest, up
from wedgework.formats import nearest_decimal
from wedgework.formats.design import DrawnLayout, Extent, Panel, Point, Shape, Yarn
from wedgework.say import say
from wedgework.slopes import degrees, rise_for

__all__ = [
    "AROUND",
    "DART",
    "DIAMOND",
    "HEEL",
    "RUFFLE",
    "SHAPE",
    "SHAPED",
    "SHOULDER",
    "TRAPEZOID",
    "TRIANGLE",
    "WEDGE",
    "Drawn",
    "drawn",
    "named",
]

TRIANGLE, TRAPEZOID, DIAMOND = "triangle", "trapezoid", "diamond"
DART, SHOULDER, WEDGE, RUFFLE, HEEL = SHAPED = ("dart", "shoulder", "wedge", "ruffle", "heel")
# The two yarns of the drawing; `named` says what they are called.
AROUND, SHAPE = Yarn("around", "", "#efe8d8"), Yarn("shape", "", "#3f5566")
ZERO, HALF, ONE = Fraction(0), Fraction(1, 2), Fraction(1)

Stair = Callable[[int], tuple[int, int]]
"""For a needle, counted from the open side, the turns from and to which nothing is knitted."""


def named(yarn: Yarn) -> Yarn:
    """One of the two with its name in the language that is spoken."""
    return replace(yarn, name=say(f"calculators.short-row-shape.yarn-{yarn.id}"))


@dataclass(frozen=True, slots=True)
class Drawn:
    """A figure ready to be planned."""

    panel: Panel
    layout: DrawnLayout
    slopes: tuple[Slope, ...]
    turned: Fraction | None = None
    """Degrees that a wedge is meant to turn by."""


def drawn(inputs: Inputs) -> Drawn:
    """What was asked for, as a layout with its slanted edges."""
    kind = inputs.text("shape")
    return _shaped(inputs, kind) if kind in SHAPED else _flat(inputs)


# --- flat ---------------------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Flat:
    """In mm; the narrow side of a triangle is a point."""

    kind: str
    width: Fraction
    narrow: Fraction
    lean: str
    above: bool
    """Whether the wide side lies above."""

    @property
    def offset(self) -> Fraction:
        """Where the narrow side begins, in parts of the width from the left of the front."""
        free = 1 - self.narrow / self.width
        return {"left": ZERO, "middle": free / 2, "right": free}[self.lean]

    @property
    def runs(self) -> tuple[Fraction, Fraction]:
        """How far the left and the right edge lean, in mm."""
        if self.kind == DIAMOND:
            return self.width / 2, self.width / 2
        left = self.offset * self.width
        return left, self.width - self.narrow - left

    def height(self, angle: Fraction) -> Fraction:
        """The height at which its slanted edges have this angle; both have the same run, or one of them is upright."""
        rise = rise_for(angle, max(self.runs))
        return 2 * rise if self.kind == DIAMOND else rise

    @property
    def points(self) -> tuple[Point, ...]:
        """In fractions of its own box, seen from the front."""
        if self.kind == DIAMOND:
            return ((HALF, ZERO), (ONE, HALF), (HALF, ONE), (ZERO, HALF))
        first, last = self.offset, self.offset + self.narrow / self.width
        foot, top = (ONE, ZERO) if self.above else (ZERO, ONE)
        tip = ((last, top),) if first == last else ((last, top), (first, top))
        return ((ZERO, foot), (ONE, foot), *tip)

    def slopes(self, height: Fraction) -> tuple[Slope, ...]:
        """Its slanted edges, with the angles that are wanted."""
        left, right = self.runs
        if self.kind == DIAMOND:
            angle = degrees(height / 2, left)
            return tuple(
                Slope(f"{part}-{side}", x, x + HALF, part == "upper", angle)
                for part in ("lower", "upper")
                for side, x in (("left", ZERO), ("right", HALF))
            )
        found = []
        if left:
            found.append(Slope("left", ZERO, self.offset, not self.above, degrees(height, left)))
        if right:
            found.append(Slope("right", self.offset + self.narrow / self.width, ONE, not self.above, degrees(height, right)))
        return tuple(found)


def _flat(inputs: Inputs) -> Drawn:
    """The shape in a panel of its own size, so that what lies beside it is knitted too and the piece is flat."""
    kind, width = inputs.text("shape"), inputs.mm("width")
    if kind == DIAMOND:
        figure = _Flat(kind, width, ZERO, "middle", above=False)
    else:
        narrow = inputs.mm("narrow_width") if kind == TRAPEZOID else ZERO
        figure = _Flat(kind, width, narrow, inputs.text("lean"), inputs.text("wide_side") == "above")
    height = inputs.mm("height") if inputs.text("size_by") == "height" else figure.height(inputs.number("angle"))
    panel = Panel(Extent(mm=nearest_decimal(width)), Extent(mm=nearest_decimal(height)))
    return Drawn(panel, DrawnLayout(AROUND.id, (Shape(SHAPE.id, figure.points),)), figure.slopes(height))


# --- shaped -------------------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Counts:
    """Needles and turns at the gauge, at least one of each."""

    stitch_mm: Fraction
    row_mm: Fraction

    def needles(self, mm: Fraction) -> int:
        return max(nearest(mm / self.stitch_mm), 1)

    def turns(self, mm: Fraction) -> int:
        return max(nearest(mm / (2 * self.row_mm)), 1)

    def angle(self, turns: int, needles: int) -> Fraction:
        """Of an edge that rises by so many turns over so many needles."""
        return degrees(2 * turns * self.row_mm, needles * self.stitch_mm)


def _shaped(inputs: Inputs, kind: str) -> Drawn:
    """One piece in one yarn, with gaps where the fabric closes."""
    counts = _Counts(100 / inputs.number("stitches_per_10cm"), 100 / inputs.number("rows_per_10cm"))
    needles = counts.needles(inputs.mm("width"))
    leaning = _leaning(inputs, kind, counts, needles)
    turns = counts.turns(_height(inputs, kind, leaning * counts.stitch_mm))
    right = inputs.has("open_side") and inputs.text("open_side") == "right"
    stairs: list[Stair]
    turned = None
    if kind == HEEL:
        turns = max(turns // 2, 1)
        stairs, high = [_opening(leaning, turns, turns)], 2 * turns
        spans = [(ZERO, ONE * leaning / needles), (1 - ONE * leaning / needles, ONE)]
        slopes = tuple(
            Slope(f"{part}-{side}", *span, part == "lower", counts.angle(turns, leaning), (low, low + 2 * turns))
            for part, low in (("lower", 0), ("upper", 2 * turns))
            for side, span in zip(("left", "right"), spans, strict=True)
        )
        layout = _with_gaps(needles, high, leaning, stairs, both=True, right=False)
        return Drawn(Panel(Extent(count=needles), Extent(count=2 * high)), layout, slopes)
    if kind == DART:
        deep, plain = max(turns // 2, 1), counts.turns(inputs.mm("plain_rows"))
        middle, high = plain + deep, 2 * (plain + deep)
        stairs = [_opening(leaning, deep, middle, closed=True)]
        angle = counts.angle(deep, leaning)
        edges = [("dart-lower", True, (2 * plain, 2 * middle)), ("dart-upper", False, (2 * middle, 2 * high))]
    else:
        plain = counts.turns(inputs.mm("plain_rows")) if kind == RUFFLE else 0
        times = inputs.whole("times") if kind in (WEDGE, RUFFLE) else 1
        each, high = plain + turns, times * (plain + turns)
        stairs = [_rising(needles, turns, k * each + plain, (k + 1) * each) for k in range(times)]
        angle = counts.angle(turns, needles)
        edges = [(kind, True, (2 * plain, 2 * each))]
        turned = _fan(times * turns * 2 * counts.row_mm, needles * counts.stitch_mm) if kind == WEDGE else None
    span = (1 - ONE * leaning / needles, ONE) if right else (ZERO, ONE * leaning / needles)
    slopes = tuple(Slope(key, *span, upper, angle, band) for key, upper, band in edges)
    layout = _with_gaps(needles, high, leaning, stairs, both=False, right=right)
    return Drawn(Panel(Extent(count=needles), Extent(count=2 * high)), layout, slopes, turned)


def _leaning(inputs: Inputs, kind: str, counts: _Counts, needles: int) -> int:
    """Over how many needles the short rows of one edge reach."""
    if kind == DART:
        return min(counts.needles(inputs.mm("dart_length")), needles)
    if kind == HEEL:
        return max((needles - counts.needles(inputs.mm("narrow_width"))) // 2, 1)
    return needles


def _height(inputs: Inputs, kind: str, run: Fraction) -> Fraction:
    """In mm: as typed, or from the angle of an edge with this run; the angle of a wedge is what it turns by."""
    if inputs.text("size_by") == "height":
        return inputs.mm("height")
    angle = inputs.number("angle")
    if kind == WEDGE:
        return 2 * PI * run * angle / 360
    return rise_for(angle, run) * (2 if kind in (DART, HEEL) else 1)


def _fan(rim: Fraction, radius: Fraction) -> Fraction:
    """Degrees of a wedge with this length at its rim: length over radius, in the turns of a circle."""
    return 360 * rim / (2 * PI * radius)


def _rising(needles: int, turns: int, low: int, high: int) -> Stair:
    """Needles that knit evenly more turns, `turns` on the last; from the gap to where all needles knit again."""
    return lambda i: (low + up(Fraction((i + 1) * turns, needles)), high)


def _opening(needles: int, turns: int, middle: int, *, closed: bool = False) -> Stair:
    """A gap that is widest at the edge and has closed after so many needles, `turns` to either side of its middle."""

    def gap(i: int) -> tuple[int, int]:
        gone = i * turns // needles if closed else up(Fraction((i + 1) * turns, needles))
        return middle - turns + gone, middle + turns - gone

    return gap


def _with_gaps(needles: int, turns: int, leaning: int, stairs: Sequence[Stair], *, both: bool, right: bool) -> DrawnLayout:
    """A layout in one yarn with a gap for each stair, at the left, at the right, or at both sides."""
    rings = []
    for stair in stairs:
        spans = [stair(i) for i in range(leaning)]
        spans = spans[: next((i for i, (low, high) in enumerate(spans) if low >= high), leaning)]
        if not spans:
            continue
        ring = _ring(spans, needles, turns)
        mirrored = tuple((1 - x, y) for x, y in ring)
        rings += [ring, mirrored] if both else [mirrored if right else ring]
    return DrawnLayout(SHAPE.id, gaps=tuple(rings))


def _ring(spans: Sequence[tuple[int, int]], needles: int, turns: int) -> tuple[Point, ...]:
    """The steps of a gap as corners: out along its lower edge, back along its upper one."""
    under, over = ([(i, span[k]) for i, span in enumerate(spans)] for k in (0, 1))
    corners: list[tuple[int, int]] = []
    for steps, way in ((under, 1), (over[::-1], -1)):
        for i, turn in steps:
            first, last = (i, i + 1) if way == 1 else (i + 1, i)
            if corners[-1:] != [(first, turn)]:
                corners.append((first, turn))
            corners.append((last, turn))
    kept = [
        corner
        for before, corner, after in zip([corners[-1], *corners], corners, [*corners[1:], corners[0]], strict=False)
        if not (before[1] == corner[1] == after[1] or before[0] == corner[0] == after[0])
    ]
    return tuple((Fraction(x, needles), Fraction(turn, turns)) for x, turn in kept)
