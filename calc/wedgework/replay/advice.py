"""What the knitter should know before she begins: warnings, each with a way out. None of them makes a plan wrong."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from wedgework.bed import name, neighbour, place
from wedgework.formats.design import Design, DrawnLayout
from wedgework.formats.plan import Plan, Slit, Summary, is_edge
from wedgework.layout.grid import Grid
from wedgework.layout.sizes import Sizes
from wedgework.problems import Problem
from wedgework.say import say, say_n

__all__ = ["CRUMB", "DEEP_FOLD", "advice", "unseen_shapes"]

CRUMB = 20
"""A block of fewer stitches is a crumb; so is more than one end per 100 stitches. Common practice, no source."""
DEEP_FOLD = 60
"""Rows by which a neighbour may wait before the fold is worth a sentence. Our own choice."""


def unseen_shapes(design: Design, grid: Grid) -> list[Problem]:
    """Shapes of a drawing of which no cell is seen: too small, outside the picture, or under later ones."""
    layout = design.layout
    if not isinstance(layout, DrawnLayout) or design.options.merge_below or design.panel.part is not None:
        return []
    seen = {cells.shape for turn in grid.turns for cells in turn}
    return [
        Problem(f"design.layout.shapes[{i}]", "layout.unseen", say("replay.unseen"), say("replay.unseen.way-out"))
        for i in range(len(layout.shapes))
        if i not in seen
    ]


def _outermost(slit: Slit) -> tuple[int, int]:
    """The needles beside its lowest and its highest step, from the left."""
    other = slit.to_needle or slit.needle
    return (slit.needle, other) if place(slit.needle) <= place(other) else (other, slit.needle)


def advice(plan: Plan, found: Summary, stitches: Mapping[str, int], passes: Mapping[str, int], sizes: Sizes) -> list[Problem]:
    """Slits, stairs, holes, needles that end off, deep folds, crumbs and slivers."""
    warnings: list[Problem] = []
    row_mm = sizes.row_mm
    for slit in found.slits:
        mm = int(slit.rows * row_mm + Fraction(1, 2))
        first, last = (neighbour(p, 1) if k else p for k, p in enumerate(_outermost(slit)))
        values = {"first": name(first), "last": name(last), "low": slit.from_row, "mm": mm}
        sentence = (
            say("replay.slit", high=slit.from_row + slit.rows - 1, **values)
            if slit.steps == 1
            else say("replay.slit-in-steps", steps=slit.steps, **values)
        )
        warnings.append(Problem("", "piece.slit", sentence, say("replay.slit.way-out")))
    for stair in found.stairs:
        warnings.append(
            Problem(
                "",
                "piece.stair",
                say(
                    "replay.stair",
                    first=name(stair.needle),
                    last=name(stair.to_needle),
                    widest=stair.widest,
                    mm=int(stair.widest * sizes.stitch_mm + Fraction(1, 2)),
                ),
                say("replay.stair.way-out"),
            )
        )
    for hole in found.holes:
        warnings.append(
            Problem("", "piece.hole", say("replay.hole", needle=name(hole.needle), row=hole.row), say("replay.hole.way-out"))
        )
    if found.uneven:
        warnings.append(
            Problem("", "piece.uneven", say_n("replay.uneven-needles", len(found.uneven)), say("replay.uneven-needles.way-out"))
        )
    if found.steepest_fold > DEEP_FOLD:
        mm = int(found.steepest_fold * row_mm + Fraction(1, 2))
        warnings.append(
            Problem("", "piece.fold", say("replay.fold", rows=found.steepest_fold, mm=mm), say("replay.fold.way-out"))
        )
    warnings += _crumbs(plan, found, stitches, passes)
    return warnings


def _crumbs(plan: Plan, found: Summary, stitches: Mapping[str, int], passes: Mapping[str, int]) -> list[Problem]:
    """Blocks too small or too thin to be worth their ends, each with the offer to give them to a neighbour."""
    blocks = [block for block in plan.blocks if not is_edge(block.id) and stitches.get(block.id, 0)]
    small = [block for block in blocks if stitches[block.id] < CRUMB]
    thin = [block for block in blocks if block not in small and 2 * stitches[block.id] <= 3 * passes.get(block.id, 0)]
    warnings = []
    for code, those in (("crumbs", small), ("slivers", thin)):
        if those:
            names = ", ".join(block.name for block in those[:6]) + (" ..." if len(those) > 6 else "")
            least = max(CRUMB, 1 + max(stitches[block.id] for block in those))
            way_out = say(f"replay.{code}.way-out", least=least)
            warnings.append(Problem("", f"piece.{code}", say_n(f"replay.{code}", len(those), names=names), way_out))
    if found.ends * 100 > sum(found.stitches.values()):
        warnings.append(Problem("", "piece.many-ends", say("replay.many-ends", ends=found.ends), say("replay.many-ends.way-out")))
    return warnings
