"""The tables of the last benchmark as a page of the site.

make bench-page      # after make bench
"""

from __future__ import annotations

import json
import platform
from pathlib import Path

from told import KEPT, PART

PAGE = Path(__file__).resolve().parents[2] / "site" / "pages" / "reference" / "speed.md"

TITLES = {
    "planning": "Planning and judging",
    "reading and drawing": "Reading and drawing",
    "random pictures": "Random pictures",
    "stripes": "Stripes",
    "start": "Starting in the browser",
    "keys": "From a key to its answer",
    "answers": "Answering",
    "the layout board": "The layout board",
}

HEAD = """# Speed and memory

How much work the parts are, measured by `make bench` on one computer. Times of one computer mean nothing on another, so
most figures are ratios, each within one run: the work itself against a plain loop of a million small sums in the same
Python. What has to be kept is written beside each figure. The last run was on {machine}, with Python {python}.
"""


def main() -> None:
    lines = [json.loads(line) for line in KEPT.read_text(encoding="utf-8").splitlines()]
    parts = [HEAD.format(machine=platform.machine(), python=platform.python_version())]
    found: dict[str, list[dict[str, str]]] = {}
    for line in lines:
        found.setdefault(str(line[PART]), []).append(line)
    for part, rows in found.items():
        parts.append(f"## {TITLES.get(part, part)}\n")
        table = ["| What | Measured | Wanted |", "|---|---|---|"]
        table += [f"| {row['what']} | {row['figure']} | {row['expected'] or ' '} |" for row in rows]
        parts.append("\n".join(table) + "\n")
    PAGE.write_text("\n".join(parts), encoding="utf-8")


if __name__ == "__main__":
    main()
