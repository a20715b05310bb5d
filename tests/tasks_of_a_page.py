"""How long each task of a page's own thread takes, told as a tablet would feel it whose processor is four times as slow.

A task's length is the processor time of the thread itself, taken four times: what else the machine does beside it counts little
then. The browser's own brake would be counted in, and is many times as rough on a machine with other work to do.
"""

from __future__ import annotations

import json
from collections.abc import Callable

from playwright.sync_api import Browser, Page

__all__ = ["LONGEST", "SLOWER", "tasks"]

SLOWER = 4
LONGEST = 50
"""ms, what browsers call a long task."""
OURS = "wedgework-tasks"


def tasks(browser: Browser, page: Page, act: Callable[[], None]) -> list[float]:
    """How long each task of the page's thread took while `act` went on, in ms, slowed down; the longest first."""
    browser.start_tracing(page=page, categories=["toplevel", "blink.user_timing"])
    page.evaluate(f"performance.mark('{OURS}')")
    act()
    page.evaluate(f"performance.mark('{OURS}')")
    events = json.loads(browser.stop_tracing())["traceEvents"]
    # Windows of the browser's own have such a thread too.
    ours = {(e["pid"], e["tid"]) for e in events if e["name"] == OURS}
    took = (e for e in events if e["name"] == "ThreadControllerImpl::RunTask" and (e["pid"], e["tid"]) in ours)
    return sorted((SLOWER * e.get("tdur", 0) / 1000 for e in took), reverse=True)
