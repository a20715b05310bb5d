"""The built pages as a test reads them: tags, attributes, words. Built, served and shown by tests/chromium.py."""

from __future__ import annotations

from html.parser import HTMLParser
from pathlib import Path

import pytest

from builder.embed import EMBED


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
def every_page(built: Path) -> dict[str, Page]:
    """Every page in every language by its address below the site: ``""``, ``plan/``, ``de/plan/`` ...; not those for frames."""
    return {
        str(file.relative_to(built).parent).replace(".", "", 1).strip("/") + ("/" if file.parent != built else ""): Page(
            file.read_text(encoding="utf-8")
        )
        for file in sorted(built.rglob("index.html"))
        if EMBED not in file.relative_to(built).parts
    }


@pytest.fixture(scope="session")
def pages(every_page: dict[str, Page]) -> dict[str, Page]:
    """Those in English."""
    return {address: page for address, page in every_page.items() if not address.startswith("de/")}


@pytest.fixture(scope="session")
def german_pages(every_page: dict[str, Page]) -> dict[str, Page]:
    """Those in German, by their whole address."""
    return {address: page for address, page in every_page.items() if address.startswith("de/")}
