"""Where a plan joins new balls, in sentences: read from its steps."""

from __future__ import annotations

from wedgework.declare import Bullets, Shown
from wedgework.formats.plan import Join, Knit, Plan, Thread
from wedgework.say import say, say_n
from wedgework.units import short_decimal
from wedgework.yarn.path import YarnPath

__all__ = ["balls_view"]


def _say(key: str, **values: object) -> str:
    return say(f"calculators.panel-plan.{key}", **values)


def balls_view(plan: Plan, path: YarnPath) -> tuple[Shown, ...]:
    """One line for each join of the plan, by the way of its yarn; nothing where there is none."""
    lines = _lines(plan, path)
    if not lines:
        return ()
    note = _say("balls-note", margin=short_decimal(plan.design.options.margin_percent, 1))
    return (Bullets(_say("balls"), (*lines, note)),)


def _lines(plan: Plan, path: YarnPath) -> list[str]:
    names = {yarn.id: yarn.name for yarn in plan.design.yarns}
    blocks = {block.id: block.name for block in plan.blocks}
    balls: dict[str, int] = {}
    found: list[str] = []
    yarn, passes, before = "", 0, None
    for step in plan.steps:
        if isinstance(step, Knit):
            passes, before = passes + 1, step
        elif isinstance(step, Thread):
            yarn = step.yarn
        elif isinstance(step, Join) and before is not None:
            balls[yarn] = balls.get(yarn, 1) + 1
            edge = {"R": "right", "L": "left", None: "inside"}[path.selvedge(passes - 1)]
            rows = say_n("common.rows", before.block_row)
            values = {"ball": balls[yarn], "yarn": names[yarn], "block": blocks[before.block], "rows": rows}
            found.append(_say("balls-line", where=_say(f"balls-{edge}"), **values))
    return found
