"""Schema of the project file."""

from __future__ import annotations

from wedgework.formats.project import Pace
from wedgework.formats.schemas.design import BED, DESIGN_INSIDE, SWATCH, YARN
from wedgework.formats.schemas.pieces import above, closed, document, many, number, text, whole
from wedgework.formats.schemas.plan import MOST_STEPS, PLAN_INSIDE
from wedgework.formats.values_project import pace_value

__all__ = ["PROJECT"]

_DAY = 24 * 60 * 60

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

PROGRESS = closed(
    "progress",
    {
        "steps_done": whole("progress.steps_done", 0, MOST_STEPS),
        "seconds": number("progress.seconds", 0, 1000 * _DAY),
        "notes": text("progress.notes", 5000, lines=True),
        "plan": PLAN_INSIDE,
    },
    defaults={"steps_done": 0, "seconds": 0, "notes": ""},
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
        "progress": many("project.progress", PROGRESS, 0, 50),
    },
    defaults={
        "title": "",
        **{key: [] for key in ("designs", "swatches", "machines", "yarns", "progress")},
        "pace": pace_value(Pace()),
    },
)
