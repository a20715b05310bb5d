"""A model bed that carries out the steps of a plan and judges them. It knows no planner.

    judged = replay_plan(plan)
    judged.problems, judged.rows_min, judged.rows_max, judged.stitches

`model_bed` moves needles, carriage and yarn; `hands` carries out the steps and notes what is not allowed, `hems` the part of
it that lies outside the picture; `judge` and `borders` look at the finished piece; `truth` compares the plan's own summary;
`advice` warns; `state` tells how the bed stands in the middle of a plan. The figures that the product shows are always those
found here.
"""

from __future__ import annotations

from wedgework.replay.replay import replay_plan
from wedgework.replay.result import Piece, Replay, Run
from wedgework.replay.state import state_at

__all__ = ["Piece", "Replay", "Run", "replay_plan", "state_at"]
