"""How quick Lighthouse finds the pages, as a telephone on a weak line: mobile performance.

make bench
"""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

from told import line

from builder.build import build
from builder.environment import find_chromium
from builder.serve import serving
from lighthouse import reports

PAGES = {"Home": "", "Gauge": "calculators/gauge/", "Planner": "plan/", "At the machine": "machine/"}


def main() -> int:
    if find_chromium() is None:
        print("lighthouse: no Chromium here")
        return 0
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made) / "site"
        build(folder)
        with serving(folder) as served:
            found = reports([served + address for address in PAGES.values()], ["performance"])
    for title, one in zip(PAGES, found, strict=True):
        what = f"{title}: Lighthouse, performance on a telephone, from a server that compresses nothing"
        line("start", what, f"{one.scores['performance']:.2f}", "0.95")
    return 0


if __name__ == "__main__":
    sys.exit(main())
