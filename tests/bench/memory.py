"""How much memory the process of a page holds for itself, its worker with the Python in it; in Chromium, which tells.

make bench
"""

from __future__ import annotations

import sys

from looked_at import looked_at
from told import line

from memory_of_a_page import at_rest_mib, highest_mib, private_mib
from visiting import LIVE, STORED

GOAL = "at most 170 MB"
PAGES = {"Gauge": "calculators/gauge/", "Planner": "plan/"}


def megabytes(mib: float) -> str:
    return f"{mib * 1024**2 / 1e6:.0f} MB"


def main() -> int:
    with looked_at("memory") as found:
        if found is None:
            return 0
        browser, here = found
        for title, address in PAGES.items():
            context = browser.new_context(viewport={"width": 1024, "height": 768})
            first = context.new_page()
            first.goto(here.address)
            first.wait_for_function(STORED)
            first.close()
            page = context.new_page()
            page.goto(here.address + address, wait_until="commit")
            begun = highest_mib(browser, page, LIVE)
            line(
                "start",
                f"{title}: memory of the page's process, its Python in it, the most while it starts",
                megabytes(begun),
                GOAL,
            )
            page.reload()
            page.wait_for_function(LIVE)
            line(
                "start", f"{title}: the same when it was loaded again, before the browser sweeps", megabytes(private_mib(browser))
            )
            line("start", f"{title}: the same at rest", megabytes(at_rest_mib(browser, page)), GOAL)
            context.close()
    return 0


if __name__ == "__main__":
    sys.exit(main())
