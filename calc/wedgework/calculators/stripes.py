"""Stripes: where the colours of a self-striping or hand-tied yarn fall on the finished front, stitch by stitch."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from wedgework.calculators import panel_plan
from wedgework.calculators.layout_fields import NUMBERS, yarn_id, yarn_problems
from wedgework.calculators.plan_groups import PLAN_GROUPS
from wedgework.calculators.stripes_view import stripes_values, stripes_view
from wedgework.calculators.striping import Colours, read_begins, read_repeat
from wedgework.declare import Calculator, Group, Inputs, Only, Result, choice, length, lines
from wedgework.exact import nearest
from wedgework.formats.plan import Plan
from wedgework.layout.sizes import figures
from wedgework.problems import Problem, Refused
from wedgework.replay.result import Replay
from wedgework.say import say
from wedgework.yarn.fabric import UNIT
from wedgework.yarn.laid import Laid, lay
from wedgework.yarn.loops import from_gauge
from wedgework.yarn.needs import loop_of, measures_of
from wedgework.yarn.path import path_of
from wedgework.yarn.stripes import Striped

__all__ = ["CALCULATOR", "Striping", "striping"]

ONE, TWO = "one", "two"


@dataclass(frozen=True, slots=True)
class Striping:
    """A piece with its striped yarn laid out."""

    plan: Plan
    judged: Replay
    colours: Colours
    striped: Striped
    laid: Laid


def _say(key: str, **values: object) -> str:
    return say(f"calculators.stripes.{key}", **values)


def compute(inputs: Inputs) -> Result:
    """The plan is replayed, the yarn laid along its path, and each stitch gets the colour that lies there."""
    found = striping(inputs)
    return Result(
        stripes_values(found.plan, found.colours, found.striped, found.laid),
        stripes_view(found.plan, found.colours, found.striped, found.laid),
        found.judged.warnings,
    )


def striping(inputs: Inputs) -> Striping:
    """Raises Refused with the names of fields."""
    colours = read_repeat("repeat", inputs.text("repeat"))
    plan, judged = panel_plan.planned(inputs)
    yarn = yarn_id(inputs.text("stripe_yarn"))
    path = path_of(plan, judged)
    if not any(stretch.yarn == yarn for stretch in path.stretches):
        raise Refused([Problem("stripe_yarn", "stripes.not-used", _say("not-used"), _say("not-used.way-out"))])
    blocks = [stretch.block for stretch in path.stretches if not stretch.outside]
    own = {s.block: i for i, s in enumerate(path.stretches) if s.yarn == yarn and not s.outside}
    begins = read_begins("begins", inputs.text("begins"), colours, blocks, own) if inputs.has("begins") else {}
    offsets = [_hundredths(inputs.mm("offset"))]
    if inputs.text("balls") == TWO:
        offsets.append(_hundredths(inputs.mm("second_offset")))
    striped = Striped(yarn, colours.repeat, tuple(offsets), begins)
    design, tail = plan.design, inputs.mm("tail")
    measures = {one.id: measures_of(loop_of(one, design).mm, design, tail) for one in design.yarns}
    loop = inputs.mm("loop") if inputs.has("loop") else from_gauge(*figures(design.gauge)).mm
    measures[yarn] = measures_of(loop, design, tail)
    return Striping(plan, judged, colours, striped, lay(path, measures, striped))


def _hundredths(mm: Fraction) -> int:
    """In micrometres, to whole hundredths of a millimetre, as the page counts."""
    return UNIT * nearest(mm * 1000 / UNIT)


def check(inputs: Inputs) -> Iterable[Problem]:
    """The yarn that is striped has to be there."""
    found = yarn_problems(inputs)
    if inputs.has("stripe_yarn") and not inputs.given(f"yarn_{inputs.text('stripe_yarn')}_name"):
        found.append(Problem("stripe_yarn", "stripes.no-yarn", _say("no-yarn"), _say("no-yarn.way-out")))
    return found


def _yarn_words(number: str) -> str:
    return say("calculators.panel-plan.yarn-number", number=number)


# Of our own invention.
_REPEAT = "#7d5a7c Plum 9 m\n#9bb39a Sage 5 m\n#ecd9a0 Straw 3 m\n#c98a6b Clay 7 m"

CALCULATOR = Calculator(
    "stripes",
    (
        Group(
            "yarn",
            (
                choice("stripe_yarn", "1", NUMBERS, words=_yarn_words),
                lines("repeat", _REPEAT, longest=2000),
                length("offset", "0 m", 0, 100_000, "m"),
                choice("balls", ONE, (ONE, TWO)),
                length("second_offset", "6 m", 0, 100_000, "m", only=Only("balls", (TWO,))),
            ),
        ),
        Group("begins", (lines("begins", "", longest=1000, optional=True),)),
        Group("stitch", (length("loop", "", 1, 300, "mm", optional=True), length("tail", "18 cm", 5, 60, "cm"))),
        *PLAN_GROUPS,
    ),
    compute,
    check,
)
