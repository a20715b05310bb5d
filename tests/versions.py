"""A built site becomes a new version of itself."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

from builder.fingerprint import fingerprint, named
from builder.keep import TWINS, ship_worker

__all__ = ["FIRST", "GAUGE", "SECOND", "change", "few_pages"]

GAUGE = "calculators/gauge/"
FIRST, SECOND = "Gauge from a swatch", "Gauge, the second"
"""What the heading of that page is, and what a test makes of it."""


def few_pages(built: Path, folder: Path) -> Path:
    """A copy that a test may change, without most pages: it is stored, and made anew, in less time."""

    def others(place: str, names: list[str]) -> set[str]:
        match Path(place).relative_to(built).as_posix():
            case ".":
                return {"board", "classes", "de", "embed", "gallery", TWINS}
            case "calculators":
                return set(names) - {"gauge", "index.html"}
            case "reference":
                return set(names) - {"copy", "words"}
        return set()

    copy = Path(shutil.copytree(built, folder, ignore=others))
    ship_worker(copy)
    return copy


def change(folder: Path, words: str, script: str = "") -> None:
    """A new version: one page says something else, and a script of this name does."""
    if script:
        file = named(folder, "app") / script
        file.write_text(f"{file.read_text(encoding='utf-8')}\n// {words}\n", encoding="utf-8")
        fingerprint(folder)
    page = folder / GAUGE / "index.html"
    before = page.read_text(encoding="utf-8")
    after = re.sub(r"(<h1[^>]*>)[^<]*", rf"\g<1>{words}", before, count=1)
    assert after != before
    page.write_text(after, encoding="utf-8")
    ship_worker(folder)
