"""The replay: hands over the model bed, then the judgement."""

from __future__ import annotations

from wedgework.bed import place
from wedgework.formats.plan import Plan, Summary
from wedgework.layout import Sizes, grid_of, layout_problems, resolve, size_problems
from wedgework.problems import Problem
from wedgework.replay.advice import advice, unseen_shapes
from wedgework.replay.borders import find_slits, find_stairs
from wedgework.replay.hands import Hands
from wedgework.replay.hems import hem_problems
from wedgework.replay.judge import find_holes, find_uneven, heights, level_problems, picture_problems, stretches
from wedgework.replay.result import Piece, Replay, Run
from wedgework.replay.truth import frame_problems, summary_problems
from wedgework.say import say

__all__ = ["replay_plan"]

MOST_ALIKE = 5
"""So many problems of one kind are shown: one lost hold makes every later pass wrong in the same way."""


def replay_plan(plan: Plan) -> Replay:
    """Carries out every step of `plan` on a model bed and judges what came out. Never raises for a plan that was read."""
    design_wrong = layout_problems(plan.design) + size_problems(plan.design)
    sizes = None if design_wrong else resolve(plan.design)
    unseen: list[Problem] = []
    hands = Hands(plan)
    if plan.state is not None and len(plan.state.rows) == hands.bed.needles:
        hands.begin_with(plan.state, _earlier(plan, sizes))
    hands.run(plan.steps)
    columns = tuple(tuple(runs) for runs in hands.bed.runs)
    found = _summary(plan, hands, columns, sizes)
    problems = [*(Problem(f"design.{p.where}", p.code, p.sentence, p.way_out) for p in design_wrong), *hands.problems]
    if sizes is not None:
        problems = frame_problems(plan, sizes) + problems
        origin = place(plan.first_needle)
        if len(columns) == sizes.needles:
            problems += level_problems(columns, sizes.rows)
            problems += hem_problems(plan.design, sizes, hands.hems, carried_on=plan.state is not None)
            grid = grid_of(plan.design, sizes)
            problems += picture_problems(columns, grid.mirrored(), sizes.rows, origin)
            unseen = unseen_shapes(plan.design, grid)
    problems += summary_problems(plan.summary, found)
    base, hems = (tuple(tuple(rows) for rows in ends) for ends in (hands.bed.edge_rows, hands.bed.hem_rows))
    piece = Piece(plan.first_needle, plan.last_needle, columns, *base, *hems)
    stitches = dict(hands.bed.edge_block_stitches)
    for column in columns:
        for run in column:
            if run.block != EARLIER:
                stitches[run.block] = stitches.get(run.block, 0) + run.rows
    warnings = [*unseen, *hands.warnings, *(advice(plan, found, stitches, hands.block_rows, sizes) if sizes is not None else ())]
    return Replay(_few(problems), tuple(warnings), found, piece, hands.block_rows, stitches)


EARLIER = "earlier"
"""The name of whatever was knitted before the plan began."""


def _earlier(plan: Plan, sizes: Sizes | None) -> list[list[Run]]:
    """What the picture has below the rows that are there already; nobody saw how it was knitted."""
    rows = plan.state.rows if plan.state else ()
    if sizes is None or len(rows) != sizes.needles:
        return [[Run(EARLIER, "", 0, count, 0, 0)] if count else [] for count in rows]
    found: list[list[Run]] = []
    for count, wanted in zip(rows, stretches(grid_of(plan.design, sizes).mirrored(), sizes.rows), strict=True):
        column: list[Run] = []
        for low, high, yarn in sorted((low, high, yarn) for yarn, spans in wanted.items() for low, high in spans):
            top = count if high >= sizes.rows else min(high, count)
            if low < top:
                column.append(Run(EARLIER, yarn, low, top - low, 0, 0))
        found.append(column)
    return found


def _summary(plan: Plan, hands: Hands, columns: tuple[tuple[Run, ...], ...], sizes: Sizes | None) -> Summary:
    bed, origin = hands.bed, place(plan.first_needle)
    rows = heights(columns)
    stitches: dict[str, int] = {}
    for column in columns:
        for run in column:
            if run.block != EARLIER:
                stitches[run.yarn] = stitches.get(run.yarn, 0) + run.rows
    uneven = () if sizes is None else find_uneven(columns, sizes.rows, origin)
    return Summary(
        rows_min=min(rows),
        rows_max=max(rows),
        steepest_fold=bed.deepest,
        ends=hands.ends,
        ends_inside=hands.ends_inside,
        free_passes=hands.free_passes,
        inside_starts=hands.inside_starts,
        slits=find_slits(columns, origin),
        stairs=find_stairs(columns, origin),
        holes=find_holes(columns, hands.turns_unwrapped, origin),
        floats=hands.floats,
        dropped=bed.dropped,
        uneven=uneven,
        stitches=stitches,
        edge_stitches=dict(bed.edge_stitches),
    )


def _few(problems: list[Problem]) -> tuple[Problem, ...]:
    """The first of every kind, in order, and how many more there are."""
    shown: list[Problem] = []
    counts: dict[str, int] = {}
    for problem in problems:
        counts[problem.code] = counts.get(problem.code, 0) + 1
        if counts[problem.code] <= MOST_ALIKE:
            shown.append(problem)
    more = len(problems) - len(shown)
    return (*shown, Problem("", "replay.more", say("replay.more", more=more))) if more else tuple(shown)
