"""The theme's styles without the rules for things that no page of ours has: half of them, and all of them hold the first picture.

A selector stays when each class that it needs is found somewhere: in a built page, in our scripts, in the core's answers.
Whatever is not understood stays. Styles for a few pages only are taken out of the others.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import wedgework

__all__ = ["ship_styles", "without_unused"]

CORE = Path(wedgework.__file__).parent
_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
_CLASS = re.compile(r"\.(-?[A-Za-z_][\w-]*)")
_INSIDE = re.compile(r":(?:not|is|where|has|-webkit-any)\([^()]*\)")
_WORD = re.compile(r"[\w-]+")
_IN_PAGE = re.compile(r"class=[\"']?([^\"'>]*)")
_LINK = r'<link rel="stylesheet" href="[^"]*assets/{}\.css">\s*'
# A style sheet, and the mark in a page by which that page needs it.
ONLY_WITH = {"board": "data-board", "machine": "data-machine"}
GROUPS = ("@media", "@supports")


def _words(folder: Path) -> set[str]:
    """Everything that could be the name of a class in use."""
    found: set[str] = {"js", "no-js"}
    for page in folder.rglob("*.html"):
        for names in _IN_PAGE.findall(page.read_text(encoding="utf-8")):
            found |= set(names.split())
    for source in [*folder.glob("app/*.js"), *CORE.rglob("*.py")]:
        found |= set(_WORD.findall(source.read_text(encoding="utf-8")))
    return found


def _split(selectors: str) -> Iterator[str]:
    """At the commas that stand in no bracket."""
    depth, start = 0, 0
    for at, letter in enumerate(selectors):
        depth += (letter in "([") - (letter in ")]")
        if letter == "," and depth == 0:
            yield selectors[start:at]
            start = at + 1
    yield selectors[start:]


def _needed(selector: str, words: set[str]) -> bool:
    return all(name in words for name in _CLASS.findall(_INSIDE.sub("", selector)))


def without_unused(css: str, words: set[str]) -> str:
    """The style sheet without rules whose every selector needs a class that is not among `words`."""
    css = _COMMENT.sub("", css)
    kept, at = [], 0
    while at < len(css):
        brace, end = css.find("{", at), css.find(";", at)
        if css[at] == "@" and end >= 0 and (brace < 0 or end < brace):
            kept.append(css[at : end + 1])
            at = end + 1
            continue
        if brace < 0:
            kept.append(css[at:])
            break
        close, depth = brace + 1, 1
        while depth:
            depth += {"{": 1, "}": -1}.get(css[close], 0)
            close += 1
        head, body = css[at:brace], css[brace + 1 : close - 1]
        if head.lstrip().startswith(GROUPS):
            inner = without_unused(body, words)
            if inner.strip():
                kept.append(f"{head}{{{inner}}}")
        elif head.lstrip().startswith("@"):
            kept.append(css[at:close])
        else:
            selectors = [one for one in _split(head) if _needed(one, words)]
            if selectors:
                kept.append(f"{','.join(selectors)}{{{body}}}")
        at = close
    return "".join(kept)


def ship_styles(folder: Path) -> None:
    """Make the theme's style sheets smaller, and link those of a few pages from these only."""
    words = _words(folder)
    for sheet in folder.glob("assets/stylesheets/*.css"):
        sheet.write_text(without_unused(sheet.read_text(encoding="utf-8"), words), encoding="utf-8")
    for page in folder.rglob("*.html"):
        html = page.read_text(encoding="utf-8")
        for name, mark in ONLY_WITH.items():
            if mark not in html:
                html = re.sub(_LINK.format(name), "", html)
        page.write_text(html, encoding="utf-8")
