"""One line of a benchmark: printed, and kept for the page that shows them all.

Times of one machine mean nothing on another; ratios within one run do.
"""

from __future__ import annotations

import json
from pathlib import Path

__all__ = ["KEPT", "PART", "begin", "line"]

KEPT = Path(__file__).resolve().parents[2] / "build" / "bench.jsonl"
PART = "part"


def begin() -> None:
    """Forgets what an earlier run kept."""
    KEPT.parent.mkdir(exist_ok=True)
    KEPT.write_text("", encoding="utf-8")


def line(part: str, what: str, figure: str, expected: str = "") -> None:
    """`figure` is what was measured, `expected` what is wanted; `part` is the table that it belongs to."""
    print(f"{what:<84} {figure:>9}   {expected}", flush=True)
    KEPT.parent.mkdir(exist_ok=True)
    with KEPT.open("a", encoding="utf-8") as kept:
        kept.write(json.dumps({PART: part, "what": what, "figure": figure, "expected": expected}) + "\n")
