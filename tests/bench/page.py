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

NOTES = {
    "answers": """A tablet whose processor is a quarter as fast takes four times as long for both.
A browser's brake slows the page's own thread only: how the core feels on a weak tablet is told by these ratios.
""",
    "start": """What the limit is: in Chromium, of the time to the first answer, the worker is there after a tenth, everything is
read from the store after two fifths, and the program is compiled after two thirds; the runtime has set itself up and has its
memory back after four fifths, the parts are checked after nine tenths, and the rest is two questions and the page (timed once
by hand, November 2026). Reading and compiling are the browser's, begin with the head of the page and go on side by side: a
page cannot hasten them, only a smaller program could, which would be a Python of our own making. What is left to us is less
than a tenth.
""",
    "keys": """The browser's brake stops the thread three quarters of the time while the rest of the machine goes on; while the
engine starts beside the page, it counts in what the thread waits for. When a page has been read, the browser looks for names
and passwords in every field, three times: the fields that are not seen at first come in after that. The longest task is the
first picture now.
""",
}
"""Under the tables."""

HEAD = """# Speed and memory

How much work the parts are, measured by `make bench` on one computer. Times of one computer mean nothing on another, so
most figures are ratios, each within one run: the work itself against a plain loop of a million small sums in the same
Python. What has to be kept is written beside each figure. The last run was on {machine}, with Python {python}.
"""


def main() -> None:
    lines = [json.loads(line) for line in KEPT.read_text(encoding="utf-8").splitlines()]
    parts = [HEAD.format(machine=platform.machine(), python=platform.python_version())]
    found: dict[str, dict[str, dict[str, str]]] = {}
    for line in lines:
        found.setdefault(line[PART], {})[line["what"]] = line  # one script may have run again alone: its last figures count
    for part, rows in found.items():
        parts.append(f"## {TITLES.get(part, part)}\n")
        table = ["| What | Measured | Wanted |", "|---|---|---|"]
        table += [f"| {row['what']} | {row['figure']} | {row['expected'] or ' '} |" for row in rows.values()]
        parts.append("\n".join(table) + "\n")
        if part in NOTES:
            parts.append(NOTES[part])
    PAGE.write_text("\n".join(parts), encoding="utf-8")


if __name__ == "__main__":
    main()
