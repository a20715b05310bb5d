"""From a picture to steps that can be knitted.

    plan = plan_piece(design)
    rest = replan(design, state)      # from a bed as it really is

How a picture becomes steps, one file a stage: `regions` (cells to chains, each with one run of needles in every
turn), `edges` and `fit` (when each needle joins and leaves a block, by the rules of the carriage and by the real rows
on it), `parts` and `arrange` (what is knitted after what, and what only in part), `feed` (which yarn rests, which is
cut), `record` (steps), `tally` (what the plan claims of itself). `piece` reads like this table of contents.
"""

from __future__ import annotations

from wedgework.plan.piece import plan_piece
from wedgework.plan.replan import replan

__all__ = ["plan_piece", "replan"]
