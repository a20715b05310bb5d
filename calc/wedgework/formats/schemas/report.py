"""Schema of the report of a test knitter."""

from __future__ import annotations

from wedgework.formats.report import MISHAP_KINDS
from wedgework.formats.schemas.pieces import Schema, closed, digest, document, many, number, text, whole, words, yarn_id
from wedgework.formats.schemas.plan import MOST_STEPS

__all__ = ["REPORT", "REPORT_INSIDE"]

# More than anybody knits at one piece: a hundred days without sleep.
_MOST_MINUTES = 144_000
_MOST_BLOCKS = 5000
_MOST_TOLD = 1000
# As in a plan.
_MOST_ROWS = 200_000
_MOST_NEEDLES = 1000
_MOST_YARNS = 64
_MOST_GRAMS = 100_000


def _at(about: str, more: dict[str, Schema], optional: tuple[str, ...] = ()) -> Schema:
    """Something that was told at a place: after so many steps, in a block or in none."""
    places = {"steps_done": whole("report.at", 0, MOST_STEPS), "block": yarn_id("report.block", least=0)}
    return closed(about, {**places, **more}, {"block": "", **dict.fromkeys(optional, "")})


BLOCK_TIME = closed(
    "report.block-time",
    {
        "block": yarn_id("report.block"),
        "minutes": number("report.block-minutes", 0, _MOST_MINUTES),
        "rows": whole("report.block-rows", 0, _MOST_ROWS),
    },
    {"rows": 0},
)
NOTE = _at("report.note", {"text": text("report.note-text", 1000, least=1, lines=True)})
MISHAP = _at(
    "report.mishap",
    {"kind": words("report.mishap-kind", *MISHAP_KINDS), "text": text("report.mishap-text", 1000, lines=True)},
    ("text",),
)
COUNT = _at(
    "report.count",
    {"planned": whole("report.planned", 0, _MOST_NEEDLES), "counted": whole("report.counted", 0, _MOST_NEEDLES)},
)
YARN_USED = closed("report.yarn-used", {"yarn": yarn_id("report.yarn"), "grams": number("report.grams", 0, _MOST_GRAMS)})

REPORT = document(
    "report",
    "report",
    {
        "title": text("report.title", 200),
        "digest": digest("report.digest"),
        "steps": whole("report.steps", 0, MOST_STEPS),
        "steps_done": whole("report.steps_done", 0, MOST_STEPS),
        "knitter": text("report.knitter", 100),
        "begun": text("report.begun", 40),
        "ended": text("report.ended", 40),
        "minutes": number("report.minutes", 0, _MOST_MINUTES),
        "interruptions": whole("report.interruptions", 0, 100_000),
        "interruption_minutes": number("report.interruption_minutes", 0, 100 * _MOST_MINUTES),
        "carried_on": whole("report.carried_on", 0, 50),
        "blocks": many("report.blocks", BLOCK_TIME, 0, _MOST_BLOCKS),
        "notes": many("report.notes", NOTE, 0, _MOST_TOLD),
        "mishaps": many("report.mishaps", MISHAP, 0, _MOST_TOLD),
        "counts": many("report.counts", COUNT, 0, _MOST_TOLD),
        "yarns": many("report.yarns", YARN_USED, 0, _MOST_YARNS),
        "text": text("report.text", 5000, lines=True),
    },
    defaults={
        **dict.fromkeys(("knitter", "begun", "ended", "text"), ""),
        **dict.fromkeys(("minutes", "interruptions", "interruption_minutes", "carried_on"), 0),
        **{key: [] for key in ("blocks", "notes", "mishaps", "counts", "yarns")},
    },
)

REPORT_INSIDE = {key: value for key, value in REPORT.items() if key != "$schema"}
