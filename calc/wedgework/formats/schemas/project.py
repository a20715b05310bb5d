"""Schema of the project file."""

from __future__ import annotations

from wedgework.formats.project import Pace
from wedgework.formats.schemas.classes import CLASS_INSIDE
from wedgework.formats.schemas.design import BED, DESIGN_INSIDE, SWATCH, YARN
from wedgework.formats.schemas.pieces import above, closed, document, many, number, text, whole
from wedgework.formats.schemas.plan import MOST_STEPS, PLAN_INSIDE
from wedgework.formats.schemas.report import REPORT_INSIDE
from wedgework.formats.values_project import pace_value

__all__ = ["PROJECT"]

_DAY = 24 * 60 * 60
MOST_PLANS = 50

KEPT_SWATCH = closed(
    "kept-swatch",
    {
        "name": text("kept-swatch.name", 200, least=1),
        "yarn": text("kept-swatch.yarn", 200),
        "machine": text("kept-swatch.machine", 100),
        "tension": number("kept-swatch.tension", 0, 100),
        "date": text("kept-swatch.date", 40),
        "notes": text("kept-swatch.notes", 5000, lines=True),
        "swatch": SWATCH,
    },
    defaults=dict.fromkeys(("yarn", "machine", "date", "notes"), ""),
    optional=("tension",),
)

PACE = closed(
    "pace",
    {
        "seconds_per_row": above("pace.seconds_per_row", 0, 3600),
        "seconds_per_change": above("pace.seconds_per_change", 0, 3600),
        "seconds_per_yarn": above("pace.seconds_per_yarn", 0, 3600),
    },
    optional=("seconds_per_row", "seconds_per_change", "seconds_per_yarn"),
)

STEP_NOTE = closed(
    "step-note",
    {"steps_done": whole("step-note.steps_done", 0, MOST_STEPS), "text": text("step-note.text", 1000, least=1, lines=True)},
)

PAUSE = closed("pause", {"at": text("pause.at", 40), "seconds": number("pause.seconds", 0, 1000 * _DAY)})

PROGRESS = closed(
    "progress",
    {
        "steps_done": whole("progress.steps_done", 0, MOST_STEPS),
        "seconds": number("progress.seconds", 0, 1000 * _DAY),
        "notes": text("progress.notes", 5000, lines=True),
        "step_notes": many("progress.step_notes", STEP_NOTE, 0, MOST_STEPS),
        "row_seconds": many("progress.row_seconds", number("progress.row_second", 0, _DAY), 0, 1000),
        "change_seconds": many("progress.change_seconds", number("progress.change_second", 0, _DAY), 0, 1000),
        "pauses": many("progress.pauses", PAUSE, 0, 1000),
        "carried_from": whole("progress.carried_from", 0, MOST_PLANS - 1),
        "report": REPORT_INSIDE,
        "plan": PLAN_INSIDE,
    },
    defaults={
        **{"steps_done": 0, "seconds": 0, "notes": ""},
        **{key: [] for key in ("step_notes", "row_seconds", "change_seconds", "pauses")},
    },
    optional=("carried_from", "report"),
)

TYPED = closed("typed", {"name": text("typed.name", 100, least=1), "text": text("typed.text", 200_000, lines=True)})

FIELDS = closed(
    "fields",
    {"calculator": text("fields.calculator", 100, least=1), "inputs": many("fields.inputs", TYPED, 0, 500)},
    defaults={"inputs": []},
)

PROJECT = document(
    "project",
    "project",
    {
        "title": text("project.title", 200),
        "designs": many("project.designs", DESIGN_INSIDE, 0, 500),
        "swatches": many("project.swatches", KEPT_SWATCH, 0, 1000),
        "machines": many("project.machines", BED, 0, 100),
        "yarns": many("project.yarns", YARN, 0, 1000),
        "pace": PACE,
        "progress": many("project.progress", PROGRESS, 0, MOST_PLANS),
        "fields": many("project.fields", FIELDS, 0, 200),
        "classes": many("project.classes", CLASS_INSIDE, 0, 100),
    },
    defaults={
        "title": "",
        **{key: [] for key in ("designs", "swatches", "machines", "yarns", "progress", "fields", "classes")},
        "pace": pace_value(Pace()),
    },
)
