"""A design planned and carried out on the model bed, for calculators that show a plan."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from wedgework.formats.design import Design
from wedgework.formats.plan import Plan
from wedgework.plan import plan_piece
from wedgework.problems import Problem, Refused
from wedgework.replay import Replay, replay_plan
from wedgework.yarn.balls import with_new_balls

__all__ = ["planned"]


def planned(design: Design, in_fields: Callable[[Iterable[Problem]], Iterable[Problem]] = list) -> tuple[Plan, Replay]:
    """The plan, with its new balls where the design knows them, and its judgement.

    Raises Refused: `in_fields` gives what is wrong with the design under the names of fields.
    """
    try:
        plan = plan_piece(design)
    except Refused as refused:
        raise Refused(in_fields(refused.problems)) from None
    judged = replay_plan(plan)
    if judged.problems:
        raise Refused(judged.problems)
    return with_new_balls(plan, judged)
