"""How much memory the process of a page holds for itself, its worker with the Python in it; in Chromium, which tells.

make bench
"""

from __future__ import annotations

import sys

from looked_at import looked_at
from told import line

from memory_of_a_page import at_rest_mib
from visiting import LIVE, STORED

PAGES = {"Gauge": "calculators/gauge/", "Planner": "plan/"}


def main() -> int:
    with looked_at("memory") as found:
        if found is None:
            return 0
        browser, here = found
        for title, address in PAGES.items():
            context = browser.new_context(viewport={"width": 1024, "height": 768})
            page = context.new_page()
            page.goto(here.address + address)
            page.wait_for_function(STORED)
            page.reload()
            page.wait_for_function(LIVE)
            held = at_rest_mib(browser, page)
            line("start", f"{title}: memory of the page's process at rest, its Python in it", f"{held:.0f} MiB", "170 MiB")
            context.close()
    return 0


if __name__ == "__main__":
    sys.exit(main())
