"""A person at the machine with a device of her own: its disk outlives the browser, and the browser can be killed."""

from __future__ import annotations

import os
import signal
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from playwright.sync_api import Browser, BrowserContext, Error, Page

from builder.environment import find_chromium
from chromium import QUIET
from stepping import HURRY, READY, SIZES
from visiting import SCRIPTS

__all__ = ["at_the_machine", "kill_browser"]


@contextmanager
def at_the_machine(browser: Browser, folder: Path, machine: str, script: str = HURRY) -> Iterator[tuple[BrowserContext, Page]]:
    """`with at_the_machine(...) as (context, page)`: the next one finds in `folder` what the last one kept."""
    context = browser.browser_type.launch_persistent_context(
        str(folder), executable_path=find_chromium(), args=QUIET, viewport=SIZES[0]
    )
    context.add_init_script(f"{script};{SCRIPTS}")
    page = context.pages[0]
    page.goto(machine)
    page.wait_for_selector(READY)
    try:
        yield context, page
    finally:
        with suppress(Error):  # a browser that was killed cannot be closed
            context.close()


def kill_browser(folder: Path) -> None:
    """Every process of the browser that this test started, by its id: its command names the folder that only it has."""
    listed = subprocess.run(["ps", "-axww", "-o", "pid=,command="], capture_output=True, text=True, check=True).stdout
    found = [int(line.split()[0]) for line in listed.splitlines() if f"--user-data-dir={folder}" in line]
    assert found
    for process in found:
        with suppress(ProcessLookupError):
            os.kill(process, signal.SIGKILL)
