"""Where a new ball of the same yarn is joined: at an edge, never in the middle of a row.

    plan, judged = with_new_balls(plan, judged)      # as they were, where no yarn knows what is on a ball

The planner knows needles and rows, but not how far a ball reaches. This reader lays the yarn along the passes, puts a `Join`
into the plan before the pass for which the ball might not do, and has the model bed knit it once more. A selvedge that lies a
little earlier is taken instead of an edge inside the piece, for the two ends disappear in its hem. Where a yarn is threaded
anew a new ball simply begins.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

from wedgework.exact import down
from wedgework.formats.design import Design, Yarn
from wedgework.formats.plan import Join, Knit, Plan, Step, Wrap
from wedgework.replay import replay_plan
from wedgework.replay.result import Replay
from wedgework.yarn.laid import Laid, Measures, lay
from wedgework.yarn.needs import planned_measures
from wedgework.yarn.path import YarnPath, path_of

__all__ = ["EARLIER_PERCENT", "ball_mm", "joined_plan", "with_new_balls"]

EARLIER_PERCENT = 10
"""So much of a ball is left over rather than join inside the piece. Common practice, no source."""
ENDS = 2
"""Of a join: that of the old ball and that of the new one."""


def metres_per_gram(yarn: Yarn) -> Fraction | None:
    """By the put-up or the count, whichever the design says; None where it says neither. 1 tex is 1 g in 1,000 m (ISO 1144)."""
    return yarn.metres_per_gram or (1000 / yarn.tex if yarn.tex else None)


def ball_mm(yarn: Yarn) -> Fraction | None:
    """What is on a ball; None where the design does not say."""
    rate = metres_per_gram(yarn)
    return yarn.ball_g * rate * 1000 if yarn.ball_g and rate else None


def with_new_balls(plan: Plan, judged: Replay, measures: Mapping[str, Measures] | None = None) -> tuple[Plan, Replay]:
    """The plan with its joins, and the replay of it. `measures`: what was measured, else what follows from the gauge.

    A plan of the rest of a piece is left as it is: what is still on the ball nobody knows. So is one with problems.
    """
    if not _balls(plan.design) or plan.state is not None or judged.problems:
        return plan, judged
    joined = joined_plan(plan, path_of(plan, judged), measures or planned_measures(plan.design))
    return (plan, judged) if joined is plan else (joined, replay_plan(joined))


def joined_plan(plan: Plan, path: YarnPath, measures: Mapping[str, Measures]) -> Plan:
    """The plan with its joins, by the way of its yarn; the same plan where there are none.

    A join moves no needle and knits no row, so what the model bed found out about the plan holds of it too, but for its ends.
    """
    balls = _balls(plan.design)
    laid = lay(path, measures)
    passes = _places(laid, balls) if balls else []
    return _joined(plan, laid, passes) if passes else plan


def _balls(design: Design) -> dict[str, int]:
    """Micrometres that can be counted on, by yarn: the margin of the design stays on the ball."""
    surely = 100 / (100 + design.options.margin_percent)
    lengths = {yarn.id: ball_mm(yarn) for yarn in design.yarns}
    return {yarn: down(mm * 1000 * surely) for yarn, mm in lengths.items() if mm}


def _places(laid: Laid, balls: Mapping[str, int]) -> list[int]:
    """The passes before which a new ball is joined."""
    found: list[int] = []
    path = laid.path
    begun = dict.fromkeys(balls, 0)  # where on the yarn its ball began
    for stretch in path.stretches:
        if stretch.yarn not in balls:
            continue
        ball, of = balls[stretch.yarn], laid.measures[stretch.yarn]
        least = stretch.begin  # no earlier than where this ball began
        t = stretch.begin
        while t < stretch.end:
            if _run(laid, t, of) + of.tail - begun[stretch.yarn] <= ball:
                t += 1
                continue
            at = _edge(laid, stretch.begin, least, t, ball)
            if at == least and at > stretch.begin:
                break  # a row that is longer than a ball
            threaded = at == stretch.begin and at in path.anew
            if not threaded:
                found.append(at)
            begun[stretch.yarn] = laid.start[at] - path.crossed[at] * of.pitch - of.tail
            least, t = at, at
            if at == stretch.begin and _run(laid, t, of) + of.tail - begun[stretch.yarn] > ball:
                break
    return found


def _run(laid: Laid, t: int, of: Measures) -> int:
    """Where the yarn of pass t has run to when it is knitted."""
    return laid.start[t] + laid.path.stitches[t] * of.loop


def _edge(laid: Laid, begin: int, least: int, t: int, ball: int) -> int:
    """Before which pass: at a selvedge that is near enough, else where it must be."""
    for at in range(t, max(begin, least), -1):
        if (laid.start[t] - laid.start[at]) * 100 > ball * EARLIER_PERCENT:
            break
        if _at_selvedge(laid.path, at):
            return at
    return t


def _at_selvedge(path: YarnPath, at: int) -> bool:
    """Whether the pass before it ended at an end of the piece."""
    return at > 0 and path.selvedge(at - 1) is not None


def _joined(plan: Plan, laid: Laid, passes: list[int]) -> Plan:
    """The steps with the joins among them; blocks and summary as they are then."""
    knits = [i for i, step in enumerate(plan.steps) if isinstance(step, Knit)]
    places: list[int] = []
    for at in passes:
        index, before = knits[at], knits[at - 1] if at else None
        first, last = plan.steps[index], plan.steps[before] if before is not None else None
        if before is not None and isinstance(first, Knit) and isinstance(last, Knit) and first.block == last.block:
            index = before + 1  # at once, before the needles are moved for the next row
            while isinstance(plan.steps[index], Wrap):
                index += 1
        places.append(index)
    steps: list[Step] = []
    for i, step in enumerate(plan.steps):
        if i in places:
            steps.append(Join())
        steps.append(step)
    blocks = tuple(
        replace(
            block,
            first_step=block.first_step + sum(i < block.first_step for i in places),
            last_step=block.last_step + sum(i <= block.last_step for i in places),
        )
        for block in plan.blocks
    )
    inside = sum(not _at_selvedge(laid.path, at) for at in passes)
    summary = replace(
        plan.summary,
        ends=plan.summary.ends + ENDS * len(passes),
        ends_inside=plan.summary.ends_inside + ENDS * inside,
    )
    return replace(plan, steps=tuple(steps), blocks=blocks, summary=summary)
