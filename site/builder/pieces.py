"""The demo pieces of the pages: design files of our own, their titles, notes and yarns in the language that is spoken.

site/pages/pieces/*.json          the files as they are
site/languages/de/pieces.tsv      what stands in them, and what it is in German
"""

from __future__ import annotations

import json
from pathlib import Path

from builder.languages import FOLDER, LANGUAGES
from wedgework.say import language

__all__ = ["PIECES", "piece_text", "words_of_pieces", "write_pieces"]

# They are copied into the built site, so that a page can link to them.
PIECES = Path(__file__).resolve().parents[1] / "pages" / "pieces"


def piece_text(name: str) -> str:
    """The design file of that name."""
    text = (PIECES / f"{name}.json").read_text(encoding="utf-8")
    if language() in LANGUAGES:
        for english, other in words_of_pieces(language()).items():
            text = text.replace(json.dumps(english), json.dumps(other, ensure_ascii=False))
    return text


def words_of_pieces(spoken: str) -> dict[str, str]:
    """Titles, notes and names of yarns: English to the other language."""
    rows = (FOLDER / spoken / "pieces.tsv").read_text(encoding="utf-8").splitlines()[1:]
    return {row.split("\t")[0]: row.split("\t")[1] for row in rows}


def write_pieces(folder: Path) -> None:
    """All of them as files of the language that is spoken."""
    folder.mkdir()
    for file in sorted(PIECES.glob("*.json")):
        (folder / file.name).write_text(piece_text(file.stem), encoding="utf-8")
