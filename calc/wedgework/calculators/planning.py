"""A design planned and carried out on the model bed, and a bed in words, for calculators that show a plan."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from fractions import Fraction

from wedgework.formats.design import Design
from wedgework.formats.plan import Plan
from wedgework.plan import plan_piece
from wedgework.problems import Problem, Refused
from wedgework.remembered import Remembered
from wedgework.replay import Replay, replay_plan
from wedgework.say import language, say
from wedgework.units import short_decimal
from wedgework.yarn.balls import with_new_balls

__all__ = ["bed_words", "planned"]

# The last pieces, with the language of their sentences: who types into the yarns of a piece does not wait for its plan each time.
# Two, since a shaped piece is planned in two ways, and no more, since a large one holds megabytes.
_last: Remembered[tuple[str, Design], tuple[Plan, Replay]] = Remembered(2)


def bed_words(pitch_mm: Fraction, needles: int) -> str:
    """A bed by its two numbers: 9 mm, 110 needles."""
    return say("calculators.panel-plan.bed-usual", pitch=short_decimal(pitch_mm, 2), needles=needles)


def planned(design: Design, in_fields: Callable[[Iterable[Problem]], Iterable[Problem]] = list) -> tuple[Plan, Replay]:
    """The plan, with its new balls where the design knows them, and its judgement; of the last designs what was found before.

    Raises Refused: `in_fields` gives what is wrong with the design under the names of fields.
    """

    def plan_and_judge() -> tuple[Plan, Replay]:
        try:
            plan = plan_piece(design)
        except Refused as refused:
            raise Refused(in_fields(refused.problems)) from None
        judged = replay_plan(plan)
        if judged.problems:
            raise Refused(judged.problems)
        return with_new_balls(plan, judged)

    return _last.of((language(), design), plan_and_judge)
