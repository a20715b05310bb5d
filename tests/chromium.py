"""The built pages, a server for them and a browser, for the suites `site` and `browser`: each is made once for both."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Error, sync_playwright

from builder.environment import find_chromium, in_ci
from builder.serve import serving

__all__ = ["QUIET", "browser", "built", "served"]

TOP = Path(__file__).resolve().parents[1]
BUILDING = 900
"""Seconds after which a build has failed."""
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
    """The folder of the finished pages; building them strictly is the first test of all.

    The processes of one run share it: whoever comes first builds, the others wait. `WEDGEWORK_TESTED` names a folder that one run
    hands on to the next, as `make test` does.
    """
    handed_on = os.environ.get("WEDGEWORK_TESTED")
    own = tmp_path_factory.getbasetemp()
    root = TOP / handed_on if handed_on else own.parent if "PYTEST_XDIST_WORKER" in os.environ else own
    root.mkdir(parents=True, exist_ok=True)
    folder, told = root / "site", root / "site.txt"
    try:
        (root / "site.claimed").mkdir()
    except FileExistsError:
        begun = time.monotonic()
        while not told.exists():
            assert time.monotonic() - begun < BUILDING, "the pages were never built"
            time.sleep(0.2)
    else:
        said = _build(folder)
        (root / "site.part").write_text(said, encoding="utf-8")
        (root / "site.part").rename(told)
    said = told.read_text(encoding="utf-8")
    assert said == "", said
    return folder


def _build(folder: Path) -> str:
    """What went wrong, or nothing."""
    done = subprocess.run(
        [sys.executable, "-m", "builder.build", folder],
        cwd=TOP,
        env={**os.environ, "PYTHONPATH": os.pathsep.join(filter(None, (str(TOP / "site"), os.environ.get("PYTHONPATH"))))},
        capture_output=True,
        text=True,
        check=False,
    )
    return done.stdout + done.stderr if done.returncode or "WARNING" in done.stderr else ""


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
