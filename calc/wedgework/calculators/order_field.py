"""The person's own wishes for the order of the blocks, as she types them: one wish a line.

b4 before b2
b5 after b3
b2 from the left

The words of any language of the pages are read on every page, since a link may come from another one.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from wedgework.formats.design import OrderWish
from wedgework.problems import Problem
from wedgework.say import say

__all__ = ["order_problems", "wishes_from"]

_PLACE = re.compile(r"(b\d{1,4})\s+(before|after|vor|nach)\s+(b\d{1,4})", re.IGNORECASE)
_START = re.compile(r"(b\d{1,4})\s+(?:from\s+(?:the\s+)?|von\s+)(left|right|links|rechts)", re.IGNORECASE)


def wishes_from(typed: str) -> tuple[OrderWish, ...]:
    """The wishes in what was typed; lines that are none are left out (`order_problems` tells of them)."""
    return tuple(wish for wish in map(_wish, _lines(typed)) if wish is not None)


def order_problems(name: str, typed: str) -> list[Problem]:
    """Lines that are no wish."""
    return [
        Problem(
            name,
            "panel-plan.no-wish",
            say("calculators.panel-plan.no-wish", found=line[:60]),
            say("calculators.panel-plan.no-wish.way-out"),
        )
        for line in _lines(typed)
        if _wish(line) is None
    ]


def _lines(typed: str) -> Sequence[str]:
    return [line.strip() for line in re.split(r"[\n;]", typed) if line.strip()]


def _wish(line: str) -> OrderWish | None:
    placed = _PLACE.fullmatch(line.rstrip("."))
    if placed:
        block, way, other = (part.lower() for part in placed.groups())
        return OrderWish(block, before=other) if way in ("before", "vor") else OrderWish(block, after=other)
    starts = _START.fullmatch(line.rstrip("."))
    if starts:
        return OrderWish(starts[1].lower(), start="L" if starts[2].lower() in ("left", "links") else "R")
    return None
