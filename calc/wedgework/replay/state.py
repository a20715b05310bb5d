"""The state of the bed in the middle of a plan, as it should be: what a person who carries on compares with what she sees."""

from __future__ import annotations

from wedgework.formats.plan import Plan
from wedgework.formats.state import State
from wedgework.replay.hands import Hands

__all__ = ["state_at"]


def state_at(plan: Plan, steps: int) -> State:
    """The bed after the first `steps` steps of a plan that is legal."""
    hands = Hands(plan)
    hands.carry_out(plan.steps[:steps])
    return hands.state()
