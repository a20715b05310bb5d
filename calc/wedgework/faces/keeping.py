"""The project file between this device and a file: everything that is kept here, written whole and read whole.

    {"ask": "project-write", "kept": "{...}"}              ->  {"text", "left_out", "problems"}
    {"ask": "project-look", "text": "..."}                 ->  what is in the file, without the pieces themselves; see `looked`
    {"ask": "project-piece", "text": "...", "number": "0"} ->  {"piece", "problems"}; one of them, for the page at the machine

`kept` is JSON: ``{"pieces": [...], "yarns": [...], "fields": [...], "designs": [...], "classes": [...]}``, the last one where
there are any. Pieces have the keys of the project file's `progress`, yarns and fields are texts as typed into the calculators,
designs are design files, classes files of classes. A piece that an earlier version stored has no ``plan``; where this version
plans the same steps from its ``design``, as its ``digest`` tells, that is its plan, else its title is told in ``left_out``.
Swatch and machine in the file follow from the fields and the designs.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from contextlib import suppress
from dataclasses import replace
from fractions import Fraction
from typing import Any

from wedgework.calculators import gauge, panel_plan
from wedgework.calculators.drawing_field import typed_bed
from wedgework.calculators.planning import bed_words
from wedgework.catalogue import calculator
from wedgework.declare.calculator import read_all
from wedgework.faces.answers import Json, Teller, Told, refusing
from wedgework.faces.piece import machine_piece
from wedgework.faces.shelf import shelf_typed_yarn, shelf_yarns
from wedgework.formats import (
    canonical,
    class_value,
    design_value,
    read_design,
    read_project,
    read_project_value,
    steps_digest,
    write_project,
)
from wedgework.formats.design import Bed, Swatch, SwatchState
from wedgework.formats.project import KeptSwatch, Progress, Project
from wedgework.formats.text import parse
from wedgework.formats.values_design import yarn_value
from wedgework.formats.values_plan import plan_value
from wedgework.formats.values_report import report_value
from wedgework.plan import plan_piece
from wedgework.problems import Problem, Refused
from wedgework.replay import replay_plan
from wedgework.say import say
from wedgework.units import short_point

__all__ = ["KEEPING_ASKS"]

MOST_KEPT = 64_000_000


# --- writing ------------------------------------------------------------------------------------------------------------


def _written(asked: dict[str, Any]) -> Told:
    kept = parse(asked["kept"], MOST_KEPT)
    if not _shaped(kept):
        raise Refused([Problem("", "faces.unreadable-question", say("faces.unreadable-question"))])
    pieces, left_out = _with_plans(kept["pieces"])
    typed = {each["calculator"]: each["inputs"] for each in kept["fields"] if calculator(each["calculator"]) is not None}
    value = {
        "format": "wedgework-project",
        "version": 1,
        "title": say("faces.kept-title"),
        "designs": kept["designs"],
        "yarns": [yarn_value(yarn) for yarn in shelf_yarns(kept["yarns"])],
        "progress": pieces,
        "fields": [
            {"calculator": slug, "inputs": [{"name": name, "text": text} for name, text in inputs.items()]}
            for slug, inputs in typed.items()
        ],
        "classes": kept.get("classes", []),
    }
    project = read_project_value(value)
    project = replace(project, swatches=_swatches(typed), machines=_beds(project, typed))
    return {"text": write_project(project), "left_out": list[Json](left_out)}


def _shaped(kept: Any) -> bool:
    """Whether it has the lists that it should have; what is inside the pieces and the designs the reader of the file judges."""

    def lists(key: str, what: Callable[[Any], bool]) -> bool:
        return isinstance(kept.get(key), list) and all(what(each) for each in kept[key])

    def texts(value: Any) -> bool:
        return isinstance(value, dict) and all(isinstance(text, str) for text in value.values())

    return (
        isinstance(kept, dict)
        and lists("pieces", lambda piece: isinstance(piece, dict) and ("plan" in piece or isinstance(piece.get("design"), dict)))
        and lists("yarns", texts)
        and lists(
            "fields",
            lambda each: isinstance(each, dict) and isinstance(each.get("calculator"), str) and texts(each.get("inputs")),
        )
        and lists("designs", lambda design: isinstance(design, dict))
        and ("classes" not in kept or lists("classes", lambda each: isinstance(each, dict)))
    )


def _with_plans(pieces: Iterable[dict[str, Any]]) -> tuple[list[dict[str, Any]], list[str]]:
    """The pieces whose plan is there or can be made again, and the titles of the others. Places in the list are kept right."""
    found: list[dict[str, Any]] = []
    left_out: list[str] = []
    places: dict[int, int] = {}
    for number, piece in enumerate(pieces):
        plan = piece["plan"] if "plan" in piece else _plan_again(piece)
        if plan is None:
            left_out.append(str(piece["design"].get("title", "")))
            continue
        places[number] = len(found)
        kept = {key: value for key, value in piece.items() if key not in ("design", "digest", "carried_from")} | {"plan": plan}
        before = piece.get("carried_from")
        if isinstance(before, int) and before in places:
            kept["carried_from"] = places[before]
        found.append(kept)
    return found, left_out


def _plan_again(piece: dict[str, Any]) -> Json:
    """The plan of a piece that is stored without it; None where this version plans other steps."""
    made = plan_piece(read_design(canonical(piece["design"])))
    return plan_value(made) if steps_digest(made.steps) == piece.get("digest") else None


def _beds(project: Project, typed: Mapping[str, Mapping[str, str]]) -> tuple[Bed, ...]:
    """Each bed that a piece, a design or the planner has, once."""
    found = [progress.plan.design.bed for progress in project.progress] + [design.bed for design in project.designs]
    if "panel-plan" in typed:
        with suppress(Refused):  # its fields are kept as they stand
            found.append(panel_plan.design_from(read_all(panel_plan.CALCULATOR, typed["panel-plan"])).bed)
    return tuple(bed for n, bed in enumerate(found) if bed not in found[:n])


def _swatches(typed: Mapping[str, Mapping[str, str]]) -> tuple[KeptSwatch, ...]:
    """What was last measured on the page of the gauge, where it can be read."""
    if "gauge" not in typed:
        return ()
    try:
        inputs = read_all(gauge.CALCULATOR, typed["gauge"])
        stitches = gauge.stitches_of(inputs)
    except Refused:
        return ()
    unwashed = SwatchState(inputs.several_mm("width"), inputs.several_mm("height"))
    washed = None
    if inputs.has("washed_width"):
        washed = SwatchState(inputs.several_mm("washed_width"), inputs.several_mm("washed_height"))
    return (KeptSwatch(say("faces.kept-swatch"), Swatch(stitches, inputs.number("rows"), washed, unwashed)),)


# --- reading ------------------------------------------------------------------------------------------------------------


def _looked(asked: dict[str, Any]) -> Told:
    """Pieces with their place and what belongs to it; yarns and fields as they would be typed; designs, swatches and machines
    with the texts that they put into the planner or the page of the gauge."""
    project = read_project(asked["text"])
    return {
        "title": project.title,
        "made_by": project.made_by,
        "pieces": [_piece_told(project, number) for number in range(len(project.progress))],
        "yarns": [dict[str, Json](shelf_typed_yarn(yarn)) for yarn in project.yarns],
        "fields": [
            {"calculator": each.calculator, "title": found.title, "inputs": dict[str, Json](each.inputs)}
            for each in project.fields
            if (found := calculator(each.calculator)) is not None
        ],
        "designs": [{"title": design.title, "text": canonical(design_value(design))} for design in project.designs],
        "classes": [{"title": each.title, "text": canonical(class_value(each))} for each in project.classes],
        "swatches": [{"name": kept.name, "inputs": dict[str, Json](_gauge_inputs(kept.swatch))} for kept in project.swatches],
        "machines": [{"name": _bed_name(bed), "inputs": dict[str, Json](typed_bed(bed))} for bed in project.machines],
    }


def _piece_told(project: Project, number: int) -> Told:
    progress = project.progress[number]
    return {
        "digest": steps_digest(progress.plan.steps),
        "title": progress.plan.design.title,
        "steps_done": progress.steps_done,
        "steps": len(progress.plan.steps),
        "step_notes": [[note.steps_done, note.text] for note in progress.step_notes],
        "row_ms": [_ms(each) for each in progress.row_seconds],
        "change_ms": [_ms(each) for each in progress.change_seconds],
        "pauses": [[pause.at, _ms(pause.seconds)] for pause in progress.pauses],
        "from": _earlier(progress, number),
        "report": None if progress.report is None else report_value(progress.report),
    }


def _earlier(progress: Progress, number: int) -> int | None:
    """The plan before; it stands earlier in the list, or there is none."""
    before = progress.carried_from
    return before if before is not None and before < number else None


def _ms(seconds: Fraction) -> int:
    return round(seconds * 1000)


def _gauge_inputs(swatch: Swatch) -> dict[str, str]:
    def lengths(mm: Iterable[Any]) -> str:
        return "; ".join(f"{short_point(each, 6)} mm" for each in mm)

    first = swatch.unwashed or swatch.washed or SwatchState((), ())
    typed = {
        "counted": "typed",
        "stitches": short_point(swatch.stitches, 6),
        "rows": short_point(swatch.rows, 6),
        "width": lengths(first.widths_mm),
        "height": lengths(first.heights_mm),
    }
    if swatch.washed is not None:
        typed |= {"washed_width": lengths(swatch.washed.widths_mm), "washed_height": lengths(swatch.washed.heights_mm)}
    return typed


def _bed_name(bed: Bed) -> str:
    return bed.machine.name or bed_words(bed.pitch_mm, bed.needles)


def _piece(asked: dict[str, Any]) -> Told:
    """The piece, once the model bed has carried out its plan: a file may have been changed by hand."""
    project = read_project(asked["text"])
    number = int(asked["number"]) if asked["number"].isdecimal() else -1
    if not 0 <= number < len(project.progress):
        raise Refused([Problem("progress", "faces.no-such-piece", say("faces.no-such-piece", all=len(project.progress)))])
    plan = project.progress[number].plan
    judged = replay_plan(plan)
    if judged.problems and plan.state is None:
        at = f"progress[{number}].plan"
        raise Refused(Problem(f"{at}.{p.where}".rstrip("."), p.code, p.sentence, p.way_out) for p in judged.problems)
    return {"piece": machine_piece(plan, judged)}


_NOTHING_LOOKED: Told = {key: [] for key in ("pieces", "yarns", "fields", "designs", "classes", "swatches", "machines")}

KEEPING_ASKS: Mapping[str, tuple[set[str], set[str], Teller]] = {
    "project-write": ({"kept"}, set(), refusing({"text": "", "left_out": []}, _written)),
    "project-look": ({"text"}, set(), refusing({"title": "", "made_by": "", **_NOTHING_LOOKED}, _looked)),
    "project-piece": ({"text", "number"}, set(), refusing({"piece": None}, _piece)),
}
