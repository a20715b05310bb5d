"""Short-row shape: one triangle, trapezoid or diamond by size and gauge, planned and knitted with what lies around."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from fractions import Fraction

from wedgework.bed import Side
from wedgework.calculators.short_row_steps import Slope, edges_of, shape_blocks, turns_of, wraps_of
from wedgework.calculators.short_row_view import Shown, shape_values, shape_view
from wedgework.declare import Calculator, Group, Inputs, Only, Result, choice, decimal, length, whole
from wedgework.formats import nearest_decimal
from wedgework.formats.design import Bed, Design, DrawnLayout, Extent, Gauge, Options, Panel, Point, Shape, StepStyle, Yarn
from wedgework.plan import plan_piece
from wedgework.problems import Problem, Refused
from wedgework.replay import replay_plan
from wedgework.say import say
from wedgework.slopes import degrees, rise_for
from wedgework.units import decimal_text

__all__ = ["CALCULATOR"]

TRIANGLE, TRAPEZOID, DIAMOND = "triangle", "trapezoid", "diamond"
SIDES: dict[str, Side] = {"right": "R", "left": "L"}
STYLES: dict[str, StepStyle] = {"split": "split", "carriage-side": "carriage-side", "by-hand": "by-hand"}
# The two yarns of the drawing. Of our own invention.
AROUND, SHAPE = Yarn("around", "Chalk", "#efe8d8"), Yarn("shape", "Slate", "#3f5566")
ZERO, HALF, ONE = Fraction(0), Fraction(1, 2), Fraction(1)


def _say(key: str, **values: object) -> str:
    return say(f"calculators.short-row-shape.{key}", **values)


@dataclass(frozen=True, slots=True)
class _Figure:
    """What was asked for, in mm; the narrow side of a triangle is a point."""

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


def _figure(inputs: Inputs) -> _Figure:
    kind = inputs.text("shape")
    narrow = inputs.mm("narrow_width") if kind == TRAPEZOID else ZERO
    if kind == DIAMOND:
        return _Figure(kind, inputs.mm("width"), ZERO, "middle", above=False)
    return _Figure(kind, inputs.mm("width"), narrow, inputs.text("lean"), inputs.text("wide_side") == "above")


def check(inputs: Inputs) -> Iterable[Problem]:
    """The narrow side is the narrower one."""
    if inputs.has("narrow_width") and inputs.has("width") and inputs.mm("narrow_width") >= inputs.mm("width"):
        yield Problem("narrow_width", "short-row-shape.not-narrower", _say("not-narrower"), _say("not-narrower.way-out"))


def compute(inputs: Inputs) -> Result:
    figure = _figure(inputs)
    height = inputs.mm("height") if inputs.text("size_by") == "height" else figure.height(inputs.number("angle"))
    design = _design(inputs, figure, height)
    try:
        plan = plan_piece(design)
    except Refused as refused:
        raise Refused(_in_fields(refused.problems, inputs)) from None
    judged = replay_plan(plan)
    if judged.problems:
        raise Refused(judged.problems)
    slopes = figure.slopes(height)
    stitch, row = 100 / inputs.number("stitches_per_10cm"), 100 / inputs.number("rows_per_10cm")
    blocks = shape_blocks(plan, SHAPE.id)
    shown = Shown(
        plan=plan,
        judged=judged,
        blocks=blocks,
        edges=edges_of(judged, SHAPE.id, slopes, stitch, row),
        turns=turns_of(plan, blocks),
        wraps=wraps_of(plan, blocks),
        steepest=degrees(2 * row, stitch),
        title=_say(f"shape.{figure.kind}"),
    )
    return Result(shape_values(shown), shape_view(shown), (*_warnings(shown), *judged.warnings))


def _design(inputs: Inputs, figure: _Figure, height: Fraction) -> Design:
    """The shape in a panel of its own size, so that what lies beside it is knitted too and the piece is flat."""
    return Design(
        title=_say(f"shape.{figure.kind}"),
        bed=Bed(nearest_decimal(inputs.mm("bed_pitch")), inputs.whole("bed_needles")),
        gauge=Gauge(nearest_decimal(inputs.number("stitches_per_10cm")), nearest_decimal(inputs.number("rows_per_10cm"))),
        panel=Panel(Extent(mm=nearest_decimal(figure.width)), Extent(mm=nearest_decimal(height))),
        yarns=(AROUND, SHAPE),
        layout=DrawnLayout(AROUND.id, (Shape(SHAPE.id, figure.points),)),
        options=Options(start_side=SIDES[inputs.text("start_side")], step_style=STYLES[inputs.text("step_style")]),
    )


def _in_fields(problems: Iterable[Problem], inputs: Inputs) -> list[Problem]:
    """The same problems under the names of the fields that they come from."""
    places = {"panel.width": "width", "panel.height": inputs.text("size_by")}
    return [replace(p, where=places.get(p.where, p.where)) for p in problems]


def _warnings(shown: Shown) -> Iterable[Problem]:
    """An edge steeper than one needle a turn leaves a slit where blocks meet."""
    steep = [edge for edge in shown.edges if edge.slope.wanted > shown.steepest]
    if steep and shown.judged.summary.slits:
        wanted, most = (decimal_text(angle, 1) for angle in (steep[0].slope.wanted, shown.steepest))
        sentence = _say("too-steep", wanted=wanted, most=most)
        yield Problem("angle", "short-row-shape.too-steep", sentence, _say("too-steep.way-out"))


TWO_SIDED, NARROW = Only("shape", (TRIANGLE, TRAPEZOID)), Only("shape", (TRAPEZOID,))
BY_HEIGHT, BY_ANGLE = Only("size_by", ("height",)), Only("size_by", ("angle",))

CALCULATOR = Calculator(
    "short-row-shape",
    (
        Group(
            "shape",
            (
                choice("shape", TRIANGLE, (TRIANGLE, TRAPEZOID, DIAMOND)),
                choice("wide_side", "below", ("below", "above"), only=TWO_SIDED),
                choice("lean", "middle", ("middle", "left", "right"), only=TWO_SIDED),
                length("width", "30", 2, 300, "cm"),
                length("narrow_width", "10", 1, 300, "cm", only=NARROW),
                choice("size_by", "height", ("height", "angle")),
                length("height", "15", 2, 300, "cm", only=BY_HEIGHT),
                decimal("angle", "45", 5, 85, "degrees", only=BY_ANGLE),
            ),
        ),
        Group(
            "gauge",
            (
                decimal("stitches_per_10cm", "14", 2, 80, "stitches-per-10cm"),
                decimal("rows_per_10cm", "19", 2, 120, "rows-per-10cm"),
            ),
        ),
        Group(
            "machine",
            (
                length("bed_pitch", "9 mm", 1, 30, "mm"),
                whole("bed_needles", "110", 4, 400, "needles"),
                choice("start_side", "right", tuple(SIDES)),
                choice("step_style", "split", tuple(STYLES)),
            ),
        ),
    ),
    compute,
    check,
)
