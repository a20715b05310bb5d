"""The trade's words on either side of the sea. One grammar makes the sentences; a few words are exchanged in what it made.

Common practice, no source: in British patterns stitches are cast off, in American ones bound off; plain fabric of one bed is
stocking stitch there and stockinette here.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import contextmanager
from functools import lru_cache, partial
from typing import Literal

from wedgework.say import reworded

__all__ = ["Dialect", "in_dialect", "spoken_in"]

Dialect = Literal["uk", "us"]

_WORDS: dict[Dialect, dict[str, str]] = {
    "uk": {"bind off": "cast off", "binding off": "casting off", "bound off": "cast off"},
    "us": {
        "stocking stitch": "stockinette stitch",
        "colour": "color",
        "colours": "colors",
        "grey": "gray",
        "centre": "center",
        "mitred": "mitered",
        "metres": "meters",
        "metre": "meter",
    },
}


@contextmanager
def spoken_in(dialect: Dialect) -> Iterator[None]:
    """For a while our sentences are in the words of that side; what a person wrote herself (the name of a yarn called Grey)
    stays as it is. Other languages than English have no such sides."""
    with reworded(partial(in_dialect, dialect=dialect)):
        yield


@lru_cache(maxsize=4096)
def in_dialect(text: str, dialect: Dialect) -> str:
    """`text` with the words of that side; a capital stays one, and so do names in braces."""

    def other(found: re.Match[str]) -> str:
        word = _WORDS[dialect].get(found[0].lower(), found[0])
        return word[0].upper() + word[1:] if found[0][0].isupper() else word

    pattern = "|".join(sorted(map(re.escape, _WORDS[dialect]), key=len, reverse=True))
    return re.sub(rf"\{{\w*\}}|\b(?:{pattern})\b", other, text, flags=re.IGNORECASE)
