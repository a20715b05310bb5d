"""Whether a file was made by a newer Wedgework than this one.

>>> is_newer("0.2.0", "0.1.9")
True
"""

from __future__ import annotations

import re
from typing import Any

from wedgework.formats.paths import Path, keys_of
from wedgework.version import VERSION

__all__ = ["is_newer", "newer_maker"]

_NUMBERS = re.compile(r"(?:wedgework )?([0-9]{1,9}(?:\.[0-9]{1,9})*)", re.IGNORECASE)


def is_newer(made_by: str, ours: str = VERSION) -> bool:
    """Whether the version `made_by` is above `ours`, by its numbers alone; False for what is no version."""
    theirs = _numbers(made_by)
    return theirs is not None and theirs > (_numbers(ours) or [])


def _numbers(version: str) -> list[int] | None:
    match = _NUMBERS.match(version)
    if match is None:
        return None
    numbers = [int(part) for part in match[1].split(".")]
    while numbers and numbers[-1] == 0:  # 1.0 and 1.0.0 are one version
        numbers.pop()
    return numbers


def newer_maker(value: Any, path: Path) -> str | None:
    """The newer version that wrote what stands at `path`: the nearest `made_by` around it says so."""
    newest = None
    for key in [*keys_of(path), None]:
        if isinstance(value, dict) and isinstance(value.get("made_by"), str):
            newest = value["made_by"] if is_newer(value["made_by"]) else None
        if key is None:
            break
        try:
            value = value[key]
        except (KeyError, IndexError, TypeError):
            break
    return newest
