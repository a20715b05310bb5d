"""Schema of a class."""

from __future__ import annotations

from wedgework.formats.schemas.pieces import closed, document, link, many, text

__all__ = ["CLASS", "CLASS_INSIDE", "MOST_ENTRIES"]

MOST_ENTRIES = 24
"""As many as a person hands out for a season; each of them may be a link of four thousand characters."""

ENTRY = closed(
    "class-entry",
    {
        "title": text("class-entry.title", 120),
        "text": text("class-entry.text", 2000, lines=True),
        "link": link("class-entry.link"),
    },
    defaults={"title": "", "text": ""},
)

CLASS = document(
    "class",
    "class",
    {
        "title": text("class.title", 120),
        "text": text("class.text", 8000, lines=True),
        "entries": many("class.entries", ENTRY, 0, MOST_ENTRIES),
    },
    defaults={"title": "", "text": "", "entries": []},
)

CLASS_INSIDE = {key: value for key, value in CLASS.items() if key != "$schema"}
"""The same inside another file."""
