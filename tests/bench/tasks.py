"""The longest task of the page's own thread while a page loads, that thread slowed four times; in Chromium, which alone tells.

make bench
"""

from __future__ import annotations

import sys

from looked_at import looked_at
from playwright.sync_api import Browser
from told import line

from visiting import PATIENCE, STORED, Host

SLOWER = 4
TIMES = 5
PAGES = {"Gauge": "calculators/gauge/", "Planner": "plan/", "At the machine": "machine/", "A page of words": "reference/words/"}
# What each task was spent on is not told; how long the scripts of a frame took, and which, is.
WATCH = """
window.tasks = [];
window.scripts = [];
new PerformanceObserver((list) => tasks.push(...list.getEntries().map((one) => one.duration)))
    .observe({type: 'longtask', buffered: true});
new PerformanceObserver((list) => {
    for (const frame of list.getEntries()) {
        for (const one of frame.scripts) scripts.push([one.duration, one.sourceURL.split('/').pop() || 'one in the page']);
    }
}).observe({type: 'long-animation-frame', buffered: true});
"""


def longest(browser: Browser, here: Host, address: str) -> tuple[float, str]:
    """Milliseconds of the longest task in the quietest of a few visits, and the script that took longest in it."""
    context = browser.new_context(viewport={"width": 1024, "height": 768})
    context.add_init_script(WATCH)
    page = context.new_page()
    page.set_default_timeout(PATIENCE * 2)
    page.goto(here.address + address)
    page.wait_for_function(STORED)
    context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
    found = []
    for _ in range(TIMES):
        page.goto(here.address + address)
        page.wait_for_timeout(4_000)
        script = max(page.evaluate("scripts"), default=[0, "none"])[1]
        found.append((max(page.evaluate("tasks"), default=0.0), script))
    context.close()
    return min(found)


def main() -> int:
    with looked_at("tasks") as found:
        if found is None:
            return 0
        browser, here = found
        for title, address in PAGES.items():
            spent, script = longest(browser, here, address)
            what = f"{title}: the longest task while it loads, the page's own thread {SLOWER} times slower (most of it: {script})"
            line("keys", what, f"{spent:.0f} ms", "50 ms")
    return 0


if __name__ == "__main__":
    sys.exit(main())
