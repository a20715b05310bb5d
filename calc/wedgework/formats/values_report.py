"""A report as plain values for JSON, and back from a checked value."""

from __future__ import annotations

from fractions import Fraction

from wedgework.formats.building_design import given
from wedgework.formats.decimals import carried
from wedgework.formats.report import BlockTime, CountNote, Mishap, PlaceNote, Report, YarnUsed
from wedgework.formats.values_design import Value
from wedgework.version import VERSION

__all__ = ["report_from", "report_value"]


def report_value(report: Report) -> Value:
    """The report as it stands in a file; `made_by` is this copy's version."""
    return {
        "format": "wedgework-report",
        "version": 1,
        "made_by": VERSION,
        "title": report.title,
        "digest": report.digest,
        "steps": report.steps,
        "steps_done": report.steps_done,
        "knitter": report.knitter,
        "begun": report.begun,
        "ended": report.ended,
        "minutes": carried(report.minutes),
        "interruptions": report.interruptions,
        "interruption_minutes": carried(report.interruption_minutes),
        "carried_on": report.carried_on,
        "blocks": [{"block": one.block, "minutes": carried(one.minutes), "rows": one.rows} for one in report.blocks],
        "notes": [{"steps_done": one.steps_done, "block": one.block, "text": one.text} for one in report.notes],
        "mishaps": [
            {"kind": one.kind, "steps_done": one.steps_done, "block": one.block, "text": one.text} for one in report.mishaps
        ],
        "counts": [
            {"steps_done": one.steps_done, "block": one.block, "planned": one.planned, "counted": one.counted}
            for one in report.counts
        ],
        "yarns": [{"yarn": one.yarn, "grams": carried(one.grams)} for one in report.yarns],
        "text": report.text,
    }


def report_from(value: Value) -> Report:
    """The report that `value` describes; it has passed the schema."""
    keys = given(
        value,
        minutes=Fraction,
        interruption_minutes=Fraction,
        blocks=lambda all_: tuple(BlockTime(**given(one, minutes=Fraction)) for one in all_),
        notes=lambda all_: tuple(PlaceNote(**one) for one in all_),
        mishaps=lambda all_: tuple(Mishap(**one) for one in all_),
        counts=lambda all_: tuple(CountNote(**one) for one in all_),
        yarns=lambda all_: tuple(YarnUsed(**given(one, grams=Fraction)) for one in all_),
    )
    del keys["format"], keys["version"]
    return Report(**keys)
