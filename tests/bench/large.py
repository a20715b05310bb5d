"""A large piece planned and replayed, timed on the Python that runs this: CPython, or Pyodide through in_worker.py.

Every judgement is included, and no cache of an earlier run helps: each plan is made from the design as it was read.
"""

from __future__ import annotations

import json
import statistics
import time
from collections.abc import Callable
from dataclasses import replace

import wedgework.plan.edges as edges
import wedgework.plan.piece as planner
from wedgework.formats import read_design
from wedgework.formats.design import Design
from wedgework.formats.plan import Plan, is_edge
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan

__all__ = ["forget", "large_piece", "plain_loop", "planned_anew", "seconds", "times", "vast_piece"]


def piece(needles: int, rows: int, pitch: float, layout: dict[str, object]) -> str:
    return json.dumps(
        {
            "format": "wedgework-design",
            "version": 1,
            "title": f"{needles} x {rows}",
            "bed": {"pitch_mm": pitch, "needles": needles},
            "gauge": {"stitches_per_10cm": 28, "rows_per_10cm": 40},
            "panel": {"width": {"needles": needles}, "height": {"rows": rows}},
            "yarns": [
                {"id": "a", "name": "Chalk", "colour": "#f2efe6"},
                {"id": "b", "name": "Slate", "colour": "#3f5566"},
                {"id": "c", "name": "Rust", "colour": "#a0522d"},
            ],
            "layout": layout,
        }
    )


def large_piece(rows: int) -> str:
    """Twelve diamonds inside each other on a whole standard bed: more than sixty blocks."""
    return piece(200, rows, 4.5, {"name": "nested-diamonds", "parameters": {"bands": 12}})


def vast_piece() -> str:
    """Eight by twelve diamonds on a whole fine bed: about three hundred blocks."""
    return piece(250, 4000, 3.6, {"name": "diamond-lattice", "parameters": {"across": 8, "up": 12}})


def plain_loop() -> int:
    """The measure of an interpreter: a million small sums."""
    s = 0
    for i in range(1_000_000):
        s += i * i % 7
    return s


def seconds(work: Callable[[], object], times: int = 5) -> float:
    """The median of a few runs, in time of this process: other work on the machine counts little."""
    runs = []
    for _ in range(times):
        begin = time.process_time()
        work()
        runs.append(time.process_time() - begin)
    return statistics.median(runs)


def blocks_of(plan: Plan) -> int:
    return sum(not is_edge(block.id) for block in plan.blocks)


def forget() -> None:
    """Nothing that the planner keeps helps any more."""
    planner._searched.forget()
    edges._joining.cache_clear()
    edges._leaving.cache_clear()


def planned_anew(design: Design) -> Plan:
    """The plan of a piece as if it were the first one."""
    forget()
    return plan_piece(design)


def times() -> dict[str, float]:
    """A plain loop; planning and replaying the large piece; planning one of twice the rows; planning the large one under another
    title, right after. Seconds."""
    large, twice = read_design(large_piece(1200)), read_design(large_piece(2400))
    plan = plan_piece(large)
    return {
        "loop": seconds(plain_loop, 3),
        "again": seconds(lambda: plan_piece(replace(large, title="Another")), 3),
        "plan": seconds(lambda: planned_anew(large), 3),
        "replay": seconds(lambda: replay_plan(plan), 3),
        "twice": seconds(lambda: planned_anew(twice), 3),
        "blocks": blocks_of(plan),
    }
