"""The finished front as numbers, so that a page can fill in what is knitted so far without knowing how it is knitted.

    progress_value(plan, judged)
    {"box": [106, 198], "cell": [714, 526], "parts": [
        {"block": "b1", "number": 1, "yarn": "yarn-1", "at": [17, 40],
         "outline": [[[0, 2], [106, 2], [53, 99]]], "columns": [[0, 2, 97, 3, 99], ...]}, ...]}

Columns and rows are counted from the lower left corner as the front is seen, base rows and all; `cell` is a stitch's
width and a row's height in hundredths of a millimetre. `at` is a place for the block's number. Each of `columns` is a
column, the rows below its stitches, how many stitches there are, and the rows of the piece (first and last pass) that
knitted them. Where the plan is one of the rest of a piece, what was there before comes first, its block is ``earlier``,
its number and its passes 0.
"""

from __future__ import annotations

from fractions import Fraction

from wedgework.draw.outline import Interval, loops, spot, stack_on
from wedgework.exact import nearest
from wedgework.formats.plan import Knit, Plan, is_edge, is_facing
from wedgework.layout.sizes import resolve
from wedgework.replay.replay import EARLIER
from wedgework.replay.result import Replay

__all__ = ["progress_value"]

Value = int | str | list["Value"] | dict[str, "Value"]
Stack = tuple[int, int, int, int, int]
"""Column, rows below, rows, first pass, last pass."""


def progress_value(plan: Plan, judged: Replay) -> dict[str, Value]:
    """Box, cell and parts, in knitting order; only text, whole numbers, lists and objects."""
    sizes, piece = resolve(plan.design), judged.piece
    first = min((run.first_pass for runs in piece.columns for run in runs), default=0)
    below, above = _edges(plan, first)
    level = sum(last - start + 1 for _, start, last in below)
    stacks: dict[str, list[Stack]] = {}
    heights: list[int] = []
    for column, runs in enumerate(piece.columns[::-1]):
        for run in runs:
            block = f"{EARLIER} {run.yarn}" if run.block == EARLIER else run.block
            stacks.setdefault(block, []).append((column, level + run.low, run.rows, run.first_pass, run.last_pass))
        heights.append(level + max((run.high for run in runs), default=0))
    floor = [0] * len(heights)
    for edges, ground in ((below, floor), (above, heights)):
        for block, start, last in edges:
            rows = last - start + 1
            stacks[block] = [(column, at, rows, start, last) for column, at in enumerate(ground)]
            ground[:] = [at + rows for at in ground]
    numbers = {block.id: n for n, block in enumerate((b for b in plan.blocks if not is_edge(b.id)), 1)}
    parts: list[Value] = [
        {
            "block": EARLIER,
            "number": 0,
            "yarn": yarn.id,
            **_shape(stacks[f"{EARLIER} {yarn.id}"], sizes.stitch_mm, sizes.row_mm),
        }
        for yarn in plan.design.yarns
        if f"{EARLIER} {yarn.id}" in stacks
    ]
    parts += [
        {
            "block": block.id,
            "number": numbers.get(block.id, 0),
            "yarn": block.yarn,
            **_shape(stacks[block.id], sizes.stitch_mm, sizes.row_mm),
        }
        for block in plan.blocks
        if block.id in stacks
    ]
    return {
        "box": [sizes.needles, max(heights)],
        "cell": [nearest(100 * sizes.stitch_mm), nearest(100 * sizes.row_mm)],
        "parts": parts,
    }


def _edges(plan: Plan, first: int) -> tuple[list[tuple[str, int, int]], list[tuple[str, int, int]]]:
    """Base rows and the outsides of hems, which go over every needle: block, first and last pass; below the picture and above
    it. What lies behind a hem is not seen."""
    passes: dict[str, list[int]] = {}
    for step in plan.steps:
        if isinstance(step, Knit) and is_edge(step.block) and not is_facing(step.block):
            passes.setdefault(step.block, []).append(step.row)
    found = [(block, rows[0], rows[-1]) for block, rows in passes.items()]
    return [edge for edge in found if edge[1] < first], [edge for edge in found if edge[1] >= first]


def _shape(stacks: list[Stack], stitch: Fraction, row: Fraction) -> dict[str, Value]:
    whole: dict[int, tuple[Interval, ...]] = {}
    for column, low, rows, _, _ in stacks:
        stack_on(whole, column, low, low + rows)
    x, y, _, _ = spot(whole, stitch, row)
    return {
        "at": [nearest(x), nearest(y)],
        "outline": [[list[Value](corner) for corner in loop] for loop in loops(whole)],
        "columns": [list[Value](stack) for stack in stacks],
    }
