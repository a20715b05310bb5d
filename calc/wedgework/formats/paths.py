"""Where a value stands in a file: kept as a chain while reading, spelled out only when something is wrong.

>>> spell((((None, "shapes"), 3), "points"))
'shapes[3].points'
"""

from __future__ import annotations

import json
import re
from typing import Any

__all__ = ["Path", "keys_of", "spell"]

# (where the container stands, key or index); None is the whole file. A chain costs one small tuple a value,
# a string would have to be built for each of the hundred thousand values that are right.
Path = tuple[Any, str | int] | None

_PLAIN_KEY = re.compile(r"[A-Za-z_][A-Za-z0-9_-]*")
_LONGEST_KEY = 40


def keys_of(path: Path) -> list[str | int]:
    """The keys and indices from the top down."""
    keys: list[str | int] = []
    while path is not None:
        path, key = path
        keys.append(key)
    return keys[::-1]


def spell(path: Path, at: str = "") -> str:
    """The path as text, below `at`; a key that is no plain word stands in quotes: ``parameters["a b"]``."""
    text = at
    for key in keys_of(path):
        if isinstance(key, int):
            text += f"[{key}]"
        elif len(key) <= _LONGEST_KEY and _PLAIN_KEY.fullmatch(key):
            text += f".{key}" if text else key
        else:
            short = key if len(key) <= _LONGEST_KEY else key[:_LONGEST_KEY] + "..."
            text += f"[{json.dumps(short)}]"
    return text
