"""What is left to do when mkdocs is done: sweep out what nobody uses, and look at what every page asks for.

A page may not refer to another host: nothing of the product comes from elsewhere, and an address that only a
reader follows is a promise we cannot keep offline. The build fails on the first such page, naming all of them.
"""

from __future__ import annotations

import re
import shutil
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path

__all__ = ["Flaw", "finish", "foreign_references"]

# Stemmers for other languages, the theme's own script (see app/frame.js), maps of its scripts: 1.6 MB that no page loads.
UNUSED = ("assets/javascripts/lunr", "assets/javascripts/bundle*.js", "assets/**/*.map")
# Attributes whose value is an address, in HTML and SVG.
ADDRESSES = {"action", "data", "formaction", "href", "poster", "src", "srcset", "xlink:href"}
ABSOLUTE = re.compile(r"^\s*(?:[a-z][a-z0-9+.-]*:)?//", re.IGNORECASE)
IN_CSS = re.compile(r"""(?:url\(\s*["']?|@import\s+["'])((?:[a-z][a-z0-9+.-]*:)?//[^"')\s]+)""", re.IGNORECASE)


class Flaw(Exception):
    """The finished pages are not as they must be."""


class _Addresses(HTMLParser):
    """Collects what a page refers to."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        for name, value in attrs:
            if value and name in ADDRESSES:
                self.found.append(value)
            elif value and name == "style":
                self.found += IN_CSS.findall(value)

    handle_startendtag = handle_starttag


def addresses(file: Path) -> list[str]:
    """Every address in one file, of a page or a style sheet."""
    text = file.read_text(encoding="utf-8")
    if file.suffix == ".css":
        return IN_CSS.findall(text)
    parser = _Addresses()
    parser.feed(text)
    return parser.found + (IN_CSS.findall(text) if "<style" in text else [])


def foreign_references(folder: Path, site_url: str) -> Iterator[str]:
    """``page: address`` for each address on another host than the site's own."""
    for file in sorted(folder.rglob("*")):
        if file.suffix in {".html", ".css", ".svg"}:
            for address in addresses(file):
                if ABSOLUTE.match(address) and not (site_url and address.startswith(site_url)):
                    yield f"{file.relative_to(folder)}: {address}"


def sweep(folder: Path) -> None:
    """Remove what no page loads."""
    for pattern in UNUSED:
        for path in sorted(folder.glob(pattern), reverse=True):
            if path.is_dir():
                shutil.rmtree(path)
            else:
                path.unlink()


def finish(folder: Path, site_url: str) -> None:
    """Sweep, then look. Raises Flaw with every foreign address."""
    sweep(folder)
    foreign = list(foreign_references(folder, site_url))
    if foreign:
        raise Flaw("other hosts are referred to:\n" + "\n".join(foreign))
