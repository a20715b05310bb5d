"""How much memory of its own the process of a page holds, its worker's Python in it."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import Browser

__all__ = ["private_mib"]


def private_mib(browser: Browser) -> float:
    """MiB that the largest page process shares with nobody, as the system counts them; Linux only.

    Raises FileNotFoundError where the system does not tell.
    """
    told = browser.new_browser_cdp_session().send("SystemInfo.getProcessInfo")["processInfo"]
    pages = [one["id"] for one in told if one["type"] == "renderer"]
    return max(_private_kib(pid) for pid in pages) / 1024


def _private_kib(pid: int) -> int:
    lines = Path(f"/proc/{pid}/smaps_rollup").read_text(encoding="utf-8").splitlines()
    return sum(int(line.split()[1]) for line in lines if line.startswith("Private_"))
