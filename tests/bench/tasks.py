"""The longest task of the page's own thread while a page loads, that thread four times as slow; in Chromium, which alone tells.

Twice: by the processor time of the thread (see `tasks_of_a_page`), which is what is wanted; and by the browser's own brake, which
stops the thread three quarters of the time and so counts in what else the machine does, the start of the engine above all.

make bench
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import contextmanager

from looked_at import looked_at
from playwright.sync_api import Browser, BrowserContext, Page
from told import line

from tasks_of_a_page import LONGEST, SLOWER, tasks
from visiting import PATIENCE, STORED, Host

TIMES = 5
QUIET_AFTER = 4_000
"""ms, when a page has long loaded."""
PAGES = {
    "Gauge": "calculators/gauge/",
    "Planner": "plan/",
    "Yarn needs, the longest form": "calculators/yarn-needs/",
    "At the machine": "machine/",
    "Layout board": "board/",
    "Gallery": "gallery/",
    "Formats, the longest page of words": "reference/formats/",
}
WATCH = """
window.tasks = [];
new PerformanceObserver((list) => tasks.push(...list.getEntries().map((one) => one.duration)))
    .observe({type: 'longtask', buffered: true});
"""


@contextmanager
def warm(browser: Browser, here: Host, address: str) -> Iterator[tuple[BrowserContext, Page]]:
    """A page of a context that has stored the whole site."""
    context = browser.new_context(viewport={"width": 1024, "height": 768})
    context.add_init_script(WATCH)
    page = context.new_page()
    page.set_default_timeout(PATIENCE * 2)
    page.goto(here.address + address)
    page.wait_for_function(STORED)
    yield context, page
    context.close()


def by_the_threads_clock(browser: Browser, here: Host, address: str) -> float:
    """Milliseconds of the longest task in the quietest of a few visits."""
    with warm(browser, here, address) as (_, page):

        def load() -> None:
            page.goto(here.address + address)
            page.wait_for_timeout(QUIET_AFTER)

        found = []
        for _ in range(TIMES):
            page.goto("about:blank")
            found.append(tasks(browser, page, load)[0])
    return min(found)


def by_the_brake(browser: Browser, here: Host, address: str) -> float:
    """The same as the browser says it; 0 where none was long."""
    with warm(browser, here, address) as (context, page):
        context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
        found = []
        for _ in range(TIMES):
            page.goto(here.address + address)
            page.wait_for_timeout(QUIET_AFTER)
            found.append(max(page.evaluate("tasks"), default=0.0))
    return min(found)


def main() -> int:
    with looked_at("tasks") as found:
        if found is None:
            return 0
        for title, address in PAGES.items():
            what = f"{title}: the longest task while it loads, the page's own thread {SLOWER} times slower"
            line("keys", what, f"{by_the_threads_clock(*found, address):.0f} ms", f"at most {LONGEST} ms")
            line("keys", f"{title}: the same by the browser's brake", told(by_the_brake(*found, address)))
    return 0


def told(ms: float) -> str:
    return f"{ms:.0f} ms" if ms else f"none over {LONGEST} ms"


if __name__ == "__main__":
    sys.exit(main())
