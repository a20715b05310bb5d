"""Ratios that should stay small, whatever the machine: how much work one part is, compared with another.

make bench
"""

from __future__ import annotations

import json
import random
import sys
import time
import tracemalloc
from collections import Counter
from dataclasses import replace
from fractions import Fraction

from in_worker import WHERE, in_worker
from large import blocks_of, piece, plain_loop, planned_anew, seconds, times, vast_piece
from told import begin, line

from wedgework.draw import front_svg
from wedgework.formats import read_design, read_plan, write_plan
from wedgework.formats.design import DrawnLayout, Shape
from wedgework.layout import layout_problems
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan

PLANNING, READING, FUZZ = "planning", "reading and drawing", "random pictures"


def design(needles: int, rows: int) -> str:
    """A diamond between four corners, of any size."""
    shapes = [{"yarn": "b", "points": [[0, 0.5], [0.5, 0], [1, 0.5], [0.5, 1]]}]
    return piece(max(needles, 200), rows, 4.5, {"background": "a", "shapes": shapes}).replace(
        f'"width": {{"needles": {max(needles, 200)}}}', f'"width": {{"needles": {needles}}}'
    )


def planning(where: str, found: dict[str, float]) -> None:
    """The large piece against the plain loop of the same interpreter."""
    loop, blocks = found["loop"], int(found["blocks"])
    both = (found["plan"] + found["replay"]) / loop
    line(
        PLANNING,
        f"{where}: 200 needles, 1,200 rows, {blocks} blocks, planned and replayed : a plain loop",
        f"{both:.1f}",
        "at most 8",
    )
    line(PLANNING, f"{where}: planned alone : the same loop", f"{found['plan'] / loop:.1f}")
    line(PLANNING, f"{where}: replayed alone : the same loop", f"{found['replay'] / loop:.1f}")
    line(PLANNING, f"{where}: planning twice the rows : planning it", f"{found['twice'] / found['plan']:.2f}", "at most 2.2")
    line(PLANNING, f"{where}: planning it under another title : planning it", f"{found['again'] / found['plan']:.2f}")


def inside() -> None:
    """The same in Pyodide."""
    if found := in_worker("large"):
        planning(WHERE, found)


def vast() -> None:
    """Planning and replaying as large a piece as there is, with the memory that it takes."""
    read, loop = read_design(vast_piece()), seconds(plain_loop, 3)
    begun = time.process_time()
    plan = plan_piece(read)
    judged = replay_plan(plan)
    spent = time.process_time() - begun
    what = f"250 needles, 4,000 rows, {blocks_of(plan)} blocks, {len(plan.steps):,} steps"
    line(PLANNING, f"{what}, planned and replayed : a plain loop", f"{spent / loop:.0f}", "finishes")
    tracemalloc.start()
    replay_plan(planned_anew(read))
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    line(PLANNING, "memory of the core for it, at its highest", f"{peak / 1e6:.0f} MB")
    level = "level" if judged.problems == () else "not right"
    line(PLANNING, "what the model bed says of it", level, "level")


def reading_and_drawing() -> None:
    small, large = read_design(design(48, 96)), read_design(design(192, 384))
    plan = plan_piece(large)
    text = write_plan(plan)
    judged = replay_plan(plan)
    planned, replayed = seconds(lambda: planned_anew(large)), seconds(lambda: replay_plan(plan))
    read, decoded = seconds(lambda: read_plan(text)), seconds(lambda: json.loads(text))
    drawn, little = seconds(lambda: front_svg(plan, judged)), seconds(lambda: planned_anew(small))
    line(READING, "planning 16 times the stitches : planning the small piece", f"{planned / little:.1f}", "16 or less")
    line(READING, "reading a plan file : decoding its JSON alone", f"{read / decoded:.1f}", "under 20")
    line(READING, "drawing the front : replaying", f"{drawn / replayed:.1f}", "under 10")


def random_pictures(count: int) -> None:
    """More random pictures than the tests plan: how far apart their needles end."""
    rnd = random.Random(1)
    spread: Counter[int] = Counter()
    while spread.total() < count:
        shapes = tuple(
            Shape(
                rnd.choice("abc"), tuple((Fraction(rnd.randint(-3, 13), 10), Fraction(rnd.randint(-3, 13), 10)) for _ in range(4))
            )
            for _ in range(rnd.randint(1, 5))
        )
        picture = replace(read_design(design(rnd.randint(8, 100), rnd.randint(10, 240))), layout=DrawnLayout("a", shapes))
        if layout_problems(picture):
            continue
        judged = replay_plan(plan_piece(picture))
        top = int(picture.panel.height.count or 0)
        if any(problem.code != "level.uneven" for problem in judged.problems):
            raise AssertionError(judged.problems)
        spread[max(judged.rows_max - judged.rows_min, abs(judged.rows_max - top), abs(judged.rows_min - top))] += 1
    uneven = sum(pictures for rows, pictures in spread.items() if rows > 2)
    line(
        FUZZ,
        f"of {count:,} random pictures, those whose needles end more than two rows off",
        f"{100 * uneven / count:.2f} %",
        "at most 1 %",
    )
    for rows, pictures in sorted(spread.items()):
        line(FUZZ, f"needles end {rows} rows apart, or from the height of the panel", f"{100 * pictures / count:.1f} %")


def main() -> None:
    begin()
    planning("CPython", times())
    inside()
    vast()
    reading_and_drawing()
    random_pictures(200 if "--quick" in sys.argv else 5000)


if __name__ == "__main__":
    main()
