"""The built site and a Chromium that looks at it, for what is measured in the page."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import Browser, sync_playwright

from builder.build import build
from builder.environment import find_chromium
from chromium import QUIET
from visiting import Host

__all__ = ["looked_at"]


@contextmanager
def looked_at(name: str) -> Iterator[tuple[Browser, Host] | None]:
    """None, and a word about it, where there is no Chromium."""
    chromium = find_chromium()
    if chromium is None:
        print(f"{name}: no Chromium here")
        yield None
        return
    with tempfile.TemporaryDirectory() as made, sync_playwright() as tool:
        folder = Path(made) / "site"
        build(folder)
        here = Host(folder)
        browser = tool.chromium.launch(executable_path=chromium, args=QUIET)
        try:
            yield browser, here
        finally:
            browser.close()
            here.stop()
