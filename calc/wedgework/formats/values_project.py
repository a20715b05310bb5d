"""A project as plain values for JSON, and back from a checked value."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from wedgework.formats.building_design import bed_from, design_from, given, swatch_from, yarn_from
from wedgework.formats.building_plan import plan_from
from wedgework.formats.decimals import carried
from wedgework.formats.project import Fields, KeptSwatch, Pace, Pause, Progress, Project, StepNote
from wedgework.formats.values_classes import class_from, class_value
from wedgework.formats.values_design import Value, bed_value, design_value, present, swatch_value, yarn_value
from wedgework.formats.values_plan import plan_value
from wedgework.formats.values_report import report_from, report_value
from wedgework.version import VERSION

__all__ = ["pace_value", "project_from", "project_value"]


def project_value(project: Project) -> Value:
    """The project as it stands in a file; `made_by` is this copy's version, here and in each design and plan.
    What later versions have added is written where there is any."""
    value: Value = {
        "format": "wedgework-project",
        "version": 1,
        "made_by": VERSION,
        "title": project.title,
        "designs": [design_value(design) for design in project.designs],
        "swatches": [_kept_swatch(swatch) for swatch in project.swatches],
        "machines": [bed_value(bed) for bed in project.machines],
        "yarns": [yarn_value(yarn) for yarn in project.yarns],
        "pace": pace_value(project.pace),
        "progress": [_progress(progress) for progress in project.progress],
    }
    if project.fields:
        value["fields"] = [
            {"calculator": each.calculator, "inputs": [{"name": name, "text": text} for name, text in each.inputs]}
            for each in project.fields
        ]
    if project.classes:
        value["classes"] = [class_value(each) for each in project.classes]
    return value


def _kept_swatch(kept: KeptSwatch) -> Value:
    return present(
        {
            "name": kept.name,
            "yarn": kept.yarn,
            "machine": kept.machine,
            "tension": None if kept.tension is None else carried(kept.tension),
            "date": kept.date,
            "notes": kept.notes,
            "swatch": swatch_value(kept.swatch),
        }
    )


def pace_value(pace: Pace) -> Value:
    seconds = {
        "seconds_per_row": pace.seconds_per_row,
        "seconds_per_change": pace.seconds_per_change,
        "seconds_per_yarn": pace.seconds_per_yarn,
    }
    return {key: carried(each) for key, each in seconds.items() if each is not None}


def _progress(progress: Progress) -> Value:
    return present(
        {
            "steps_done": progress.steps_done,
            "seconds": carried(progress.seconds),
            "notes": progress.notes,
            "step_notes": [{"steps_done": note.steps_done, "text": note.text} for note in progress.step_notes] or None,
            "row_seconds": [carried(seconds) for seconds in progress.row_seconds] or None,
            "change_seconds": [carried(seconds) for seconds in progress.change_seconds] or None,
            "pauses": [{"at": pause.at, "seconds": carried(pause.seconds)} for pause in progress.pauses] or None,
            "carried_from": progress.carried_from,
            "report": None if progress.report is None else report_value(progress.report),
            "plan": plan_value(progress.plan),
        }
    )


def project_from(value: Value) -> Project:
    """The project that `value` describes; it has passed the schema."""
    keys = given(
        value,
        designs=lambda designs: tuple(design_from(design) for design in designs),
        swatches=lambda swatches: tuple(KeptSwatch(**given(kept, tension=Fraction, swatch=swatch_from)) for kept in swatches),
        machines=lambda machines: tuple(bed_from(bed) for bed in machines),
        yarns=lambda yarns: tuple(yarn_from(yarn) for yarn in yarns),
        pace=lambda pace: Pace(**{key: Fraction(seconds) for key, seconds in pace.items()}),
        progress=lambda plans: tuple(_progress_from(progress) for progress in plans),
        classes=lambda all_: tuple(map(class_from, all_)),
        fields=lambda all_: tuple(
            Fields(each["calculator"], tuple((one["name"], one["text"]) for one in each.get("inputs", ()))) for each in all_
        ),
    )
    del keys["format"], keys["version"]
    return Project(**keys)


def _progress_from(value: dict[str, Any]) -> Progress:
    return Progress(
        **given(
            value,
            seconds=Fraction,
            plan=plan_from,
            report=report_from,
            step_notes=lambda notes: tuple(StepNote(**note) for note in notes),
            row_seconds=lambda all_: tuple(map(Fraction, all_)),
            change_seconds=lambda all_: tuple(map(Fraction, all_)),
            pauses=lambda pauses: tuple(Pause(pause["at"], Fraction(pause["seconds"])) for pause in pauses),
        )
    )
