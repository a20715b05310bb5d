"""The planner's first piece for the page at the machine: its first step in the page, all of it in a file beside the page.

The page shows this piece until another is opened, with no engine running: it is plain data.
"""

from __future__ import annotations

from pathlib import Path

from wedgework.faces.answers import Json
from wedgework.faces.machine import machine_html
from wedgework.faces.piece import piece_of
from wedgework.formats import canonical

__all__ = ["DEFAULT", "machine", "ship_default_piece"]

DEFAULT = "machine/default.json"


def _default() -> dict[str, Json]:
    return piece_of({})


def machine(_nothing: str) -> str:
    """The page's part: the first step of the planner's first piece."""
    return machine_html(_default())


def ship_default_piece(folder: Path) -> None:
    """Write the whole piece to where the page's script looks for it."""
    target = folder / DEFAULT
    target.parent.mkdir(parents=True, exist_ok=True)
    target.write_text(canonical(_default()), encoding="utf-8")
