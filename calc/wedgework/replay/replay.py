"""The replay: hands over the model bed, then the judgement."""

from __future__ import annotations

from dataclasses import dataclass

from wedgework.bed import place
from wedgework.formats.design import Design
from wedgework.formats.plan import Plan, Summary
from wedgework.formats.state import State
from wedgework.layout import Shaping, Sizes, grid_of, layout_problems, resolve, shaping_of, size_problems
from wedgework.layout.grid import Grid
from wedgework.problems import Problem
from wedgework.replay.advice import advice, unseen_shapes
from wedgework.replay.borders import find_slits, find_stairs
from wedgework.replay.hands import Hands
from wedgework.replay.hems import hem_problems
from wedgework.replay.judge import (
    Stretches,
    find_holes,
    find_uneven,
    heights,
    level_problems,
    picture_problems,
    placed,
    stretches,
)
from wedgework.replay.result import Piece, Replay, Run
from wedgework.replay.truth import frame_problems, summary_problems
from wedgework.say import say

__all__ = ["replay_plan"]

MOST_ALIKE = 5
"""So many problems of one kind are shown: one lost hold makes every later pass wrong in the same way."""


@dataclass(frozen=True, slots=True)
class _Wanted:
    """What the design asks for."""

    front: Grid
    shaping: Shaping
    picture: Stretches
    """As it hangs on the bed."""

    @classmethod
    def of(cls, design: Design, sizes: Sizes) -> _Wanted:
        front = grid_of(design, sizes)
        on_bed = front.mirrored()
        return cls(front, shaping_of(on_bed, sizes.rows), stretches(on_bed, sizes.rows))


def replay_plan(plan: Plan) -> Replay:
    """Carries out every step of `plan` on a model bed and judges what came out. Never raises for a plan that was read."""
    design_wrong = layout_problems(plan.design) + size_problems(plan.design)
    sizes = None if design_wrong else resolve(plan.design)
    unseen: list[Problem] = []
    hands = Hands(plan)
    wanted: _Wanted | None = None
    if sizes is not None and sizes.needles == hands.bed.needles:  # else the frame's problems say so
        wanted = _Wanted.of(plan.design, sizes)
    if plan.state is not None and len(plan.state.rows) == hands.bed.needles:
        hands.begin_with(plan.state, _earlier(plan.state, wanted))
    hands.run(plan.steps)
    columns = tuple(tuple(runs) for runs in hands.bed.runs)
    if wanted is not None:
        columns = placed(columns, wanted.picture, wanted.shaping)
    found = _summary(plan, hands, columns, wanted)
    problems = [*(Problem(f"design.{p.where}", p.code, p.sentence, p.way_out) for p in design_wrong), *hands.problems]
    warnings: list[Problem] = []
    stitches = dict(hands.bed.edge_block_stitches)
    for column in columns:
        for run in column:
            if run.block != EARLIER:
                stitches[run.block] = stitches.get(run.block, 0) + run.rows
    if sizes is not None:
        problems = frame_problems(plan, sizes) + problems
    if sizes is not None and wanted is not None:
        origin = place(plan.first_needle)
        problems += level_problems(columns, wanted.shaping.wanted, origin)
        problems += hem_problems(plan.design, sizes, hands.hems, carried_on=plan.state is not None)
        problems += picture_problems(columns, wanted.picture, wanted.shaping, origin)
        unseen = unseen_shapes(plan.design, wanted.front)
        warnings = advice(plan, found, stitches, hands.block_rows, sizes)
    problems += summary_problems(plan.summary, found)
    base, hems = (tuple(tuple(rows) for rows in ends) for ends in (hands.bed.edge_rows, hands.bed.hem_rows))
    piece = Piece(plan.first_needle, plan.last_needle, columns, *base, *hems)
    return Replay(_few(problems), (*unseen, *hands.warnings, *warnings), found, piece, hands.block_rows, stitches)


EARLIER = "earlier"
"""The name of whatever was knitted before the plan began."""


def _earlier(state: State, wanted: _Wanted | None) -> list[list[Run]]:
    """What the picture has below the rows that are there already; nobody saw how it was knitted."""
    if wanted is None:
        return [[Run(EARLIER, "", 0, count, 0, 0)] if count else [] for count in state.rows]
    found: list[list[Run]] = []
    for count, colours in zip(state.rows, wanted.picture, strict=True):
        column: list[Run] = []
        spans = sorted((low, high, yarn) for yarn, each in colours.items() for low, high in each)
        level = 0
        for i, (low, high, yarn) in enumerate(spans, 1):
            rows = count - level if i == len(spans) else min(high - low, count - level)
            if rows > 0:
                column.append(Run(EARLIER, yarn, level, rows, 0, 0, low - level))
                level += rows
        found.append(column)
    return found


def _summary(plan: Plan, hands: Hands, columns: tuple[tuple[Run, ...], ...], wanted: _Wanted | None) -> Summary:
    bed, origin = hands.bed, place(plan.first_needle)
    rows = heights(columns)
    stitches: dict[str, int] = {}
    for column in columns:
        for run in column:
            if run.block != EARLIER:
                stitches[run.yarn] = stitches.get(run.yarn, 0) + run.rows
    uneven = () if wanted is None else find_uneven(columns, wanted.shaping.wanted, origin)
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
