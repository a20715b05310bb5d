"""Practice piece: the smallest sample in which everything that the piece will ask for comes up once."""

from __future__ import annotations

from functools import lru_cache
from html import escape

from wedgework.calculators import panel_plan
from wedgework.calculators.layout_fields import yarn_problems
from wedgework.calculators.panel_view import panel_values, panel_view
from wedgework.calculators.plan_groups import PLAN_GROUPS
from wedgework.declare import Bullets, Calculator, Figure, Figures, Inputs, Plain, Result, Shown, Written
from wedgework.formats import read_design, write_design
from wedgework.formats.plan import Plan
from wedgework.layout.sizes import resolve
from wedgework.plan import plan_piece
from wedgework.practice import Practice, practice
from wedgework.replay import Replay, replay_plan
from wedgework.say import language, say, say_n
from wedgework.units import both_text

__all__ = ["CALCULATOR"]


def _say(key: str, **values: object) -> str:
    return say(f"calculators.practice-piece.{key}", **values)


def compute(inputs: Inputs) -> Result:
    """The whole is planned first, so that what is wrong with it is said under its fields; then the sample like any piece."""
    plan, _ = panel_plan.planned(inputs)
    # A file is a key that can be kept: the same piece is asked for more than once, and the search is long.
    found = _practice(write_design(plan.design), language())
    sample = plan_piece(found.design)
    bed = replay_plan(sample)
    return Result(_values(found, plan, sample, bed), _view(found, plan, sample, bed))


@lru_cache(maxsize=4)
def _practice(file: str, _language: str) -> Practice:
    return practice(read_design(file))


def _values(found: Practice, whole: Plan, sample: Plan, judged: Replay) -> dict[str, Plain]:
    """Figures of the sample, under the names that they have in a whole piece."""
    return {
        **panel_values(sample, judged),
        "stitches_in_all": sum(judged.summary.stitches.values()),
        "stitches_of_the_whole": sum(whole.summary.stitches.values()),
        "shows": found.shows,
        "lacks": found.lacks,
    }


def _view(found: Practice, whole: Plan, sample: Plan, judged: Replay) -> tuple[Shown, ...]:
    sizes = resolve(sample.design)
    stitches, all_stitches = sum(judged.summary.stitches.values()), sum(whole.summary.stitches.values())
    figures = Figures(
        found.design.title,
        (
            Figure(_say("figure-width"), both_text(sizes.width_mm), say_n("common.needles", sizes.needles), "width_mm"),
            Figure(_say("figure-height"), both_text(sizes.height_mm), say_n("common.rows", sizes.rows), "height_mm"),
            Figure(_say("figure-stitches"), f"{stitches}", _say("figure-stitches-note", whole=all_stitches), "stitches_in_all"),
            Figure(_say("figure-ends"), f"{judged.summary.ends}", "", "ends"),
        ),
    )
    shown: list[Shown] = [figures, Bullets(_say("shows"), tuple(say(f"practice.{kind}") for kind in found.shows))]
    if found.lacks:
        shown.append(Bullets(_say("lacks"), found.reasons))
    file = write_design(found.design)
    html = f"<details><summary>{escape(_say('file-open'))}</summary><pre><code>{escape(file)}</code></pre></details>"
    parts = panel_view(sample, judged)[1:]
    # The picture stands beside the figures; the file comes last.
    return (shown[0], parts[0], *shown[1:], *parts[1:], Written(_say("file"), html, file))


CALCULATOR = Calculator("practice-piece", PLAN_GROUPS, compute, yarn_problems)
