"""The replay: hands over the model bed, then the judgement."""

from __future__ import annotations

from wedgework.bed import place
from wedgework.formats.plan import Plan, Summary
from wedgework.layout import grid_of, layout_problems, resolve, size_problems
from wedgework.problems import Problem
from wedgework.replay.advice import advice
from wedgework.replay.hands import Hands
from wedgework.replay.judge import find_holes, find_slits, find_uneven, heights, level_problems, picture_problems
from wedgework.replay.result import Piece, Replay, Run
from wedgework.replay.truth import frame_problems, summary_problems
from wedgework.say import say

__all__ = ["replay_plan"]

MOST_PROBLEMS = 40
"""So many are shown; a plan that is wrong in more places is wrong in one way."""


def replay_plan(plan: Plan) -> Replay:
    """Carries out every step of `plan` on a model bed and judges what came out. Never raises for a plan that was read."""
    design_wrong = layout_problems(plan.design) + size_problems(plan.design)
    hands = Hands(plan)
    hands.run(plan.steps)
    columns = tuple(tuple(runs) for runs in hands.bed.runs)
    found = _summary(plan, hands, columns)
    problems = [*(Problem(f"design.{p.where}", p.code, p.sentence, p.way_out) for p in design_wrong), *hands.problems]
    if not design_wrong:
        sizes = resolve(plan.design)
        problems = frame_problems(plan, sizes) + problems
        origin = place(plan.first_needle)
        if len(columns) == sizes.needles:
            problems += level_problems(columns, sizes.rows)
            problems += picture_problems(columns, grid_of(plan.design, sizes).mirrored(), sizes.rows, origin)
    problems += summary_problems(plan.summary, found)
    piece = Piece(
        plan.first_needle, plan.last_needle, columns, tuple(hands.bed.edge_rows[0]), tuple(hands.bed.edge_rows[1])
    )
    stitches = _block_stitches(columns)
    warnings = [*hands.warnings, *(advice(plan, found, stitches, resolve(plan.design)) if not design_wrong else ())]
    return Replay(_few(problems), tuple(warnings), found, piece, hands.block_rows, stitches)


def _summary(plan: Plan, hands: Hands, columns: tuple[tuple[Run, ...], ...]) -> Summary:
    bed, origin = hands.bed, place(plan.first_needle)
    rows = heights(columns)
    stitches: dict[str, int] = {}
    for column in columns:
        for run in column:
            stitches[run.yarn] = stitches.get(run.yarn, 0) + run.rows
    if layout_problems(plan.design) or size_problems(plan.design):
        uneven = ()
    else:
        uneven = find_uneven(columns, resolve(plan.design).rows, origin)
    return Summary(
        rows_min=min(rows),
        rows_max=max(rows),
        steepest_fold=bed.deepest,
        ends=hands.ends,
        ends_inside=hands.ends_inside,
        free_passes=hands.free_passes,
        inside_starts=hands.inside_starts,
        slits=find_slits(columns, origin),
        holes=find_holes(columns, hands.turns_unwrapped, origin),
        floats=hands.floats,
        dropped=bed.dropped,
        uneven=uneven,
        stitches=stitches,
        edge_stitches=dict(bed.edge_stitches),
    )


def _block_stitches(columns: tuple[tuple[Run, ...], ...]) -> dict[str, int]:
    stitches: dict[str, int] = {}
    for column in columns:
        for run in column:
            stitches[run.block] = stitches.get(run.block, 0) + run.rows
    return stitches


def _few(problems: list[Problem]) -> tuple[Problem, ...]:
    if len(problems) <= MOST_PROBLEMS:
        return tuple(problems)
    more = len(problems) - MOST_PROBLEMS
    return (*problems[:MOST_PROBLEMS], Problem("", "replay.more", say("replay.more", more=more)))
