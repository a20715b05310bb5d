"""How much memory of its own the process of a page holds, its worker's Python in it."""

from __future__ import annotations

import math
from pathlib import Path

from playwright.sync_api import Browser, Page

__all__ = ["at_rest_mib", "highest_mib", "private_mib"]

REST_S, LOOK_S = 80, 2
POLL_MS = 50
AFTER = 20  # looks


def private_mib(browser: Browser) -> float:
    """MiB that the largest page process shares with nobody, as the system counts them; Linux only.

    Raises FileNotFoundError where the system does not tell.
    """
    told = browser.new_browser_cdp_session().send("SystemInfo.getProcessInfo")["processInfo"]
    pages = [one["id"] for one in told if one["type"] == "renderer"]
    return max(_private_kib(pid) for pid in pages) / 1024


def highest_mib(browser: Browser, page: Page, until: str) -> float:
    """The most of it until `until` holds in the page, and a second longer."""
    highest, after = 0.0, 0
    while after < AFTER:
        highest = max(highest, private_mib(browser))
        page.wait_for_timeout(POLL_MS)
        after += bool(page.evaluate(until))
    return highest


def at_rest_mib(browser: Browser, page: Page, enough: float = 0) -> float:
    """The least of it in the time after a page was used: until then the browser has not swept up what the start left behind, the
    memory of the page before this one in the same process among it. Once it is below `enough` nobody waits for less."""
    page.context.new_cdp_session(page).send("HeapProfiler.collectGarbage")
    least = math.inf
    for _ in range(REST_S // LOOK_S):
        page.wait_for_timeout(LOOK_S * 1_000)
        least = min(least, private_mib(browser))
        if least < enough:
            break
    return least


def _private_kib(pid: int) -> int:
    lines = Path(f"/proc/{pid}/smaps_rollup").read_text(encoding="utf-8").splitlines()
    return sum(int(line.split()[1]) for line in lines if line.startswith("Private_"))
