"""The pages are built once for the whole suite, into a folder of their own, and served for the browser."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Error, sync_playwright

from builder.environment import find_chromium, in_ci
from builder.serve import serving

TOP = Path(__file__).resolve().parents[2]
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


class Page(HTMLParser):
    """One built page: its tags in order, each with its attributes and the text before the next tag."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str]]] = []
        self.words: list[str] = []
        self._silent = 0
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, {name: value or "" for name, value in attrs}))
        self._silent += tag in ("script", "style")

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, {name: value or "" for name, value in attrs}))

    def handle_endtag(self, tag: str) -> None:
        self._silent -= tag in ("script", "style")

    def handle_data(self, data: str) -> None:
        if not self._silent:
            self.words.append(data)

    @property
    def text(self) -> str:
        return " ".join(" ".join(self.words).split())

    def all(self, tag: str) -> list[dict[str, str]]:
        return [attributes for name, attributes in self.tags if name == tag]

    @property
    def ids(self) -> list[str]:
        return [attributes["id"] for _, attributes in self.tags if "id" in attributes]


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
def pages(built: Path) -> dict[str, Page]:
    """Every page by its address below the site: ``""``, ``plan/``, ``reference/words/`` ..."""
    return {
        str(file.relative_to(built).parent).replace(".", "", 1).strip("/") + ("/" if file.parent != built else ""): Page(
            file.read_text(encoding="utf-8")
        )
        for file in sorted(built.rglob("index.html"))
    }


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
