"""The page of a class before any script: the example as everybody sees it, and what the script has to know."""

from __future__ import annotations

import json
from html import escape
from pathlib import Path

from builder.languages import FOLDER
from wedgework.catalogue import CALCULATORS
from wedgework.faces.sheet import picture_html, sheet_html
from wedgework.formats import class_value, read_class
from wedgework.say import language, say

__all__ = ["EXAMPLE", "class_page"]

EXAMPLE = Path(__file__).resolve().parents[1] / "pages" / "classes" / "guild-evening.json"


def class_page(_nothing: str) -> str:
    """The page's part."""
    own = FOLDER / language() / "class.json"
    found = read_class((own if own.is_file() else EXAMPLE).read_text(encoding="utf-8"))
    value = {key: each for key, each in class_value(found).items() if key != "made_by"}
    data = {"titles": {one.slug: one.title for one in CALCULATORS}, "example": value}
    # Inside a script element only its own end tag ends the data.
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":")).replace("</", "<\\/")
    return (
        f'<div class="ww-class" data-class>'
        f"<noscript><p>{escape(say('app.class-without-script'))}</p></noscript>"
        f'<section class="ww-class-example"><p class="ww-class-label">{escape(say("app.class-example"))}</p>'
        f"{sheet_html(found, picture_html)}</section>"
        f'<script type="application/json">{text}</script>'
        "</div>"
    )
