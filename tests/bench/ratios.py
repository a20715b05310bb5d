"""Ratios that should stay small, whatever the machine: how much work one part is, compared with another.

    make bench

Times of one machine mean nothing on another; ratios do. Each line: what is compared, the ratio, what is expected.
"""

from __future__ import annotations

import json
import statistics
import time
from collections.abc import Callable

from wedgework.draw import front_svg
from wedgework.formats import read_design, read_plan, write_plan
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan


def design(needles: int, rows: int) -> str:
    """A diamond between four corners, of any size."""
    return json.dumps(
        {
            "format": "wedgework-design",
            "version": 1,
            "title": f"{needles} x {rows}",
            "bed": {"pitch_mm": 4.5, "needles": 200},
            "gauge": {"stitches_per_10cm": 28, "rows_per_10cm": 40},
            "panel": {"width": {"needles": needles}, "height": {"rows": rows}},
            "yarns": [{"id": "a", "name": "Chalk", "colour": "#f2efe6"}, {"id": "b", "name": "Slate", "colour": "#3f5566"}],
            "layout": {
                "background": "a",
                "shapes": [{"yarn": "b", "points": [[0, 0.5], [0.5, 0], [1, 0.5], [0.5, 1]]}],
            },
        }
    )


def seconds(work: Callable[[], object], times: int = 5) -> float:
    """The median of a few runs."""
    runs = []
    for _ in range(times):
        begin = time.process_time()
        work()
        runs.append(time.process_time() - begin)
    return statistics.median(runs)


def large_piece(rows: int) -> str:
    """Twelve diamonds inside each other on a whole fine bed: more than sixty blocks."""
    return json.dumps(
        {
            "format": "wedgework-design",
            "version": 1,
            "title": f"200 x {rows}",
            "bed": {"pitch_mm": 4.5, "needles": 200},
            "gauge": {"stitches_per_10cm": 28, "rows_per_10cm": 40},
            "panel": {"width": {"needles": 200}, "height": {"rows": rows}},
            "yarns": [
                {"id": "a", "name": "Chalk", "colour": "#f2efe6"},
                {"id": "b", "name": "Slate", "colour": "#3f5566"},
                {"id": "c", "name": "Rust", "colour": "#a0522d"},
            ],
            "layout": {"name": "nested-diamonds", "parameters": {"bands": 12}},
        }
    )


def plain_loop() -> int:
    """The measure of an interpreter: a million small sums."""
    s = 0
    for i in range(1_000_000):
        s += i * i % 7
    return s


def line(what: str, over: float, under: float, expected: str) -> None:
    print(f"{what:<62} {over / under:8.2f}   {expected}")


def main() -> None:
    small, large = design(48, 96), design(192, 384)
    plan = plan_piece(read_design(large))
    text = write_plan(plan)
    judged = replay_plan(plan)

    planning_small = seconds(lambda: plan_piece(read_design(small)))
    planning = seconds(lambda: plan_piece(read_design(large)))
    replaying = seconds(lambda: replay_plan(plan))
    reading = seconds(lambda: read_plan(text))
    decoding = seconds(lambda: json.loads(text))
    drawing = seconds(lambda: front_svg(plan, judged))

    loop = seconds(plain_loop, 3)
    long_piece, twice = read_design(large_piece(1200)), read_design(large_piece(2400))
    long_plan = plan_piece(long_piece)
    long_planning, twice_planning = seconds(lambda: plan_piece(long_piece), 3), seconds(lambda: plan_piece(twice), 3)
    long_replaying = seconds(lambda: replay_plan(long_plan), 3)
    blocks = sum(block.id.startswith("b") and not block.id.startswith("base") for block in long_plan.blocks)
    line(f"planning 200 needles, 1,200 rows, {blocks} blocks : a plain loop", long_planning, loop, "with the replay at most 8")
    line("replaying it : the same loop", long_replaying, loop, "")
    line("planning twice the rows : planning it", twice_planning, long_planning, "at most 2.2")
    line("planning 16 times the stitches : planning the small piece", planning, planning_small, "16 or less")
    line("planning : replaying the same plan", planning, replaying, "under 10")
    line("reading a plan file : decoding its JSON alone", reading, decoding, "under 20")
    line("drawing the front : replaying", drawing, replaying, "under 10")


if __name__ == "__main__":
    main()
