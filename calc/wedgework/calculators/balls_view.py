"""Where a plan joins new balls, in sentences: read from its steps."""

from __future__ import annotations

from wedgework.declare import Bullets, Shown
from wedgework.formats.plan import Join, Knit, Plan
from wedgework.say import say, say_n
from wedgework.units import short_decimal
from wedgework.words.walk import Bed, step_over

__all__ = ["balls_view"]


def _say(key: str, **values: object) -> str:
    return say(f"calculators.panel-plan.{key}", **values)


def balls_view(plan: Plan) -> tuple[Shown, ...]:
    """One line for each join; nothing where there is none."""
    lines = _lines(plan)
    if not lines:
        return ()
    note = _say("balls-note", margin=short_decimal(plan.design.options.margin_percent, 1))
    return (Bullets(_say("balls"), (*lines, note)),)


def _lines(plan: Plan) -> list[str]:
    names = {yarn.id: yarn.name for yarn in plan.design.yarns}
    blocks = {block.id: block.name for block in plan.blocks}
    bed = Bed.at_start(plan)
    balls: dict[str, int] = {}
    found: list[str] = []
    edge = ""
    for step in plan.steps:
        if isinstance(step, Knit):
            working = bed.working
            end = working[-1] if step.to == "R" else working[0]
            at_selvedge = end == (plan.last_needle if step.to == "R" else plan.first_needle)
            edge = ("right" if step.to == "R" else "left") if at_selvedge else "inside"
        elif isinstance(step, Join):
            balls[bed.yarn] = balls.get(bed.yarn, 1) + 1
            rows = say_n("common.rows", bed.block_row)
            values = {"ball": balls[bed.yarn], "yarn": names[bed.yarn], "block": blocks[bed.block], "rows": rows}
            found.append(_say("balls-line", where=_say(f"balls-{edge}"), **values))
        bed = step_over(bed, step)
    return found
