"""The stripe colours of a large piece, timed on the Python that runs this: CPython, or Pyodide through in_worker.py."""

from __future__ import annotations

import json
import sys
from dataclasses import replace
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent))

from large import large_piece, plain_loop, seconds

from wedgework.formats import read_design
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan
from wedgework.yarn.fabric import colours_of
from wedgework.yarn.laid import Measures, lay
from wedgework.yarn.path import path_of
from wedgework.yarn.stripes import Repeat, Striped


def times() -> dict[str, float]:
    """All yarns are one striped yarn: every stitch of 200 needles by 1,200 rows is looked up."""
    plan = plan_piece(read_design(large_piece(1200)))
    judged = replay_plan(plan)
    measures = {yarn.id: Measures(7_900, 180_000, 4_500, 2_500) for yarn in plan.design.yarns}
    path = path_of(plan, judged)
    path.stretches = tuple(replace(stretch, yarn="a") for stretch in path.stretches)
    striped = Striped("a", Repeat(("#7d5a7c", "#9bb39a", "#ecd9a0"), (3_000_000, 5_000_000, 9_000_000)))
    laid = lay(path, measures, striped)
    inks = {yarn.id: i for i, yarn in enumerate(plan.design.yarns, 1)}
    return {
        "loop": seconds(plain_loop),
        "colours": seconds(lambda: colours_of(laid, inks, striped, (4, 5, 6))),
        "path": seconds(lambda: lay(path_of(plan, judged), measures, striped)),
    }


if __name__ == "__main__":
    print(json.dumps(times()))
