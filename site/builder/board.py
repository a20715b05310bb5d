"""The layout board's page before any script: the first drawing as it is knitted, and everything that drawing has to know.

The script draws at once from this data, with no engine running.
"""

from __future__ import annotations

import json
from html import escape

from builder.pieces import piece_text
from wedgework.draw import front_svg
from wedgework.faces.board import board_default
from wedgework.formats import read_design
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan
from wedgework.say import say

__all__ = ["FIRST", "board"]

FIRST = "lantern"


def board(_nothing: str) -> str:
    """The page's part."""
    text = piece_text(FIRST)
    plan = plan_piece(read_design(text))
    front = front_svg(plan, replay_plan(plan), prefix="first")
    # Inside a script element only its own end tag ends the data.
    data = json.dumps(board_default(text), ensure_ascii=False, separators=(",", ":")).replace("</", "<\\/")
    return (
        f'<div class="lb" data-board>'
        f'<figure class="lb-first">{front}<figcaption>{escape(say("app.board-opening"))}</figcaption></figure>'
        f'<noscript><p class="lb-note">{escape(say("app.board-without-script"))}</p></noscript>'
        f'<script type="application/json">{data}</script>'
        "</div>"
    )
