"""Lighthouse, asked about some pages: their scores, and what keeps them from the highest."""

from __future__ import annotations

import json
import os
import subprocess
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from builder.environment import find_chromium

__all__ = ["Report", "reports"]

HERE = Path(__file__).resolve().parent
SITE = HERE.parent / "site"
LONGEST = 120
"""Seconds for one page."""


@dataclass(frozen=True, slots=True)
class Report:
    scores: dict[str, float]
    """By the name of the category, 0 to 1."""
    wrong: list[str]
    """A line for each check that counts and was not passed."""


def reports(addresses: Sequence[str], categories: Sequence[str]) -> list[Report]:
    """One for each address, all from one browser of its own, as a telephone. Raises RuntimeError where it says nothing."""
    chromium = find_chromium()
    environment = {**os.environ, **({"CHROME_PATH": str(chromium)} if chromium else {})}
    command = ["node", str(HERE / "lighthouse.mjs"), str(SITE), ",".join(categories), *addresses]
    most = LONGEST * len(addresses)
    done = subprocess.run(command, capture_output=True, text=True, check=False, timeout=most, env=environment)
    if done.returncode:
        raise RuntimeError(done.stderr[-2000:])
    told = [json.loads(line) for line in done.stdout.splitlines()]
    for one in told:
        if one["failure"]:
            raise RuntimeError(str(one["failure"]))
    return [Report(one["scores"], one["wrong"]) for one in told]
