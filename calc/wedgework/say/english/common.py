"""Sentences that several rooms use."""

from __future__ import annotations

MESSAGES: dict[str, str | tuple[str, str]] = {
    "say.example": "One {name}.",
    "say.example-rows": ("{n} row", "{n} rows"),
    "common.left": "left",
    "common.right": "right",
    "common.rows": ("{n} row", "{n} rows"),
    "common.needles": ("{n} needle", "{n} needles"),
    "common.stitches": ("{n} stitch", "{n} stitches"),
    "common.times": ("{n} time", "{n} times"),
    "common.places": ("{n} place", "{n} places"),
    "common.list-last": "{most} and {last}",
}
