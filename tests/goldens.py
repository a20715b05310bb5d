"""Texts that a person has read and accepted, kept as files, and the comparison with what comes out today.

    def test_something(golden):
        golden("words/kites.txt", text)

A difference fails and shows the lines. When the new text is the better one, run the tests with
``WEDGEWORK_ACCEPT=1`` set, read what changed in the files, and commit them.
"""

from __future__ import annotations

from dataclasses import dataclass
from difflib import unified_diff
from pathlib import Path

__all__ = ["Goldens", "lines_of"]

MOST_LINES = 60


@dataclass(frozen=True)
class Goldens:
    folder: Path
    accept: bool = False

    def __call__(self, name: str, text: str) -> None:
        """Fails where the file `name` differs from `text`, or is not there."""
        path = self.folder / name
        if self.accept:
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8", newline="\n")
            return
        if not path.is_file():
            raise AssertionError(f"there is no golden {name}; WEDGEWORK_ACCEPT=1 writes it")
        kept = path.read_bytes().decode("utf-8")
        if kept != text:
            changed = list(unified_diff(kept.splitlines(), text.splitlines(), name, "now", lineterm=""))
            shown = changed[:MOST_LINES] or ["the same lines, but other line endings"]
            raise AssertionError("\n".join([*shown, "If that is better, WEDGEWORK_ACCEPT=1 accepts it."]))


def lines_of(markup: str) -> str:
    """Markup with each element on a line of its own, so that a person can read it and a difference is one line."""
    return markup.replace("><", ">\n<") + "\n"
