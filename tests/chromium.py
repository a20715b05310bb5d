"""The built pages, a server for them and a browser, for the suites `site` and `browser`: each is made once for both."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Error, sync_playwright

from builder.environment import find_chromium, in_ci
from builder.serve import serving

__all__ = ["QUIET", "browser", "built", "served"]

TOP = Path(__file__).resolve().parents[1]
# What keeps the browser from calling home: a closed network must not slow the tests or fill the console.
QUIET = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


@pytest.fixture(scope="session")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of the finished pages; building them strictly is the first test of all."""
    folder = tmp_path_factory.mktemp("pages") / "site"
    done = subprocess.run(
        [sys.executable, "-m", "builder.build", folder],
        cwd=TOP,
        env={**os.environ, "PYTHONPATH": os.pathsep.join(filter(None, (str(TOP / "site"), os.environ.get("PYTHONPATH"))))},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    assert "WARNING" not in done.stderr
    return folder


@pytest.fixture(scope="session")
def served(built: Path) -> Iterator[str]:
    with serving(built) as address:
        yield address


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """An installed Chromium, else the test tool's own download, else the test is skipped (in CI it fails)."""
    with sync_playwright() as tool:
        try:
            engine = tool.chromium.launch(executable_path=find_chromium(), args=QUIET)
        except Error as missing:
            if in_ci():
                raise
            pytest.skip(f"no Chromium: {missing.message.splitlines()[0]}")
        yield engine
        engine.close()
