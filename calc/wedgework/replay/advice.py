"""What the knitter should know before she begins: warnings, each with a way out. None of them makes a plan wrong."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction

from wedgework.bed import name, neighbour
from wedgework.formats.plan import Plan, Slit, Summary
from wedgework.layout.sizes import Sizes
from wedgework.problems import Problem
from wedgework.say import say, say_n

__all__ = ["advice", "runs_of_slits"]

CRUMB = 20
"""A block of fewer stitches is a crumb; so is more than one end per 100 stitches. Common practice, no source."""
DEEP_FOLD = 60
"""Rows by which a neighbour may wait before the fold is worth a sentence. Our own choice."""


def runs_of_slits(slits: Sequence[Slit]) -> list[list[Slit]]:
    """Slits that follow each other along one border, each on the next needle and where the one before ended."""
    runs: list[list[Slit]] = []
    for slit in sorted(slits, key=lambda s: (s.needle, s.from_row)):
        for run in runs:
            last = run[-1]
            beside = neighbour(last.needle, 1) == slit.needle
            follows = slit.from_row <= last.from_row + last.rows + 2 and last.from_row <= slit.from_row + slit.rows + 2
            if beside and follows:
                run.append(slit)
                break
        else:
            runs.append([slit])
    return runs


def advice(plan: Plan, found: Summary, stitches: Mapping[str, int], sizes: Sizes) -> list[Problem]:
    """Slits, holes, needles that end off, deep folds, crumbs, a gauge that looks unlike stocking stitch."""
    warnings: list[Problem] = []
    row_mm = sizes.row_mm
    for run in runs_of_slits(found.slits):
        low = min(s.from_row for s in run)
        high = max(s.from_row + s.rows for s in run)
        length = sum(s.rows for s in run) * row_mm
        first, last = run[0].needle, neighbour(run[-1].needle, 1)
        warnings.append(
            Problem(
                "",
                "piece.slit",
                say("replay.slit", first=name(first), last=name(last), low=low, high=high - 1, mm=int(length + Fraction(1, 2))),
                say("replay.slit.way-out"),
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
    crumbs = [block for block in plan.blocks if 0 < stitches.get(block.id, 0) < CRUMB]
    if crumbs:
        names = ", ".join(block.name for block in crumbs[:6]) + (" ..." if len(crumbs) > 6 else "")
        warnings.append(
            Problem("", "piece.crumbs", say_n("replay.crumbs", len(crumbs), names=names), say("replay.crumbs.way-out"))
        )
    if found.ends * 100 > sum(found.stitches.values()):
        warnings.append(Problem("", "piece.many-ends", say("replay.many-ends", ends=found.ends), say("replay.crumbs.way-out")))
    return warnings
