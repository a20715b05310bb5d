"""Carrying on at the machine: a design and the bed as it really is in, the piece of the rest out.

    carried_told({"design": "{...}", "state": "{...}", "inputs": {}})
    {"rows": "L53-R53: 12", "html": "", "piece": None, "problems": []}

    carried_told({..., "inputs": {"changes": "R25: 1 more", "held_needles": "L53-L20", "carriage_side": "left",
                                  "feeder_yarn": "yarn-2", "feeder_needle": "L19", "mast": ""}})
    {"rows": ..., "html": "<section ...", "piece": {...}, "problems": []}

`state` is the bed as the page believes it to be, `inputs` what the person typed over it; without them only the believed rows
are told. The names are those of the calculator `carry-on`; a yarn is named by its id, on the mast by its number in the piece.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import TypeVar

from wedgework.bed import name, place
from wedgework.calculators.carry_on import in_fields
from wedgework.calculators.carry_on_view import rest_view
from wedgework.calculators.state_lines import read_hanging, read_needles, read_rows, rows_text
from wedgework.declare import Figures, Shown
from wedgework.faces.answers import Json, problem_object
from wedgework.faces.markup import joined
from wedgework.faces.piece import machine_piece
from wedgework.faces.result import part_html
from wedgework.formats import read_design, read_state
from wedgework.formats.design import Design
from wedgework.formats.state import Hanging, State
from wedgework.layout import layout_problems, resolve, size_problems
from wedgework.plan import replan
from wedgework.problems import Problem, Refused
from wedgework.replay import replay_plan
from wedgework.say import say

__all__ = ["CARRY_FIELDS", "carried_told"]

T = TypeVar("T")

CARRY_FIELDS = ("changes", "held_needles", "carriage_side", "feeder_yarn", "feeder_needle", "mast")


def carried_told(design_text: str, state_text: str, typed: Mapping[str, str], carries: str = "") -> dict[str, Json]:
    """The answer as the page wants it; raises nothing that a person can cause. `carries`: the outermost needles that carry the
    yarn in the feeder, as "-11 9"; empty where that is not known."""
    told: dict[str, Json] = {"rows": "", "html": "", "piece": None}
    try:
        design, believed = _read(design_text, state_text)
        told["rows"] = rows_text(believed.first_needle, believed.rows)
        if not typed:
            return told | {"problems": []}
        state = _state(design, believed, typed)
        try:
            plan = replan(design, state)
        except Refused as refused:
            raise Refused(in_fields(refused.problems, planned=True)) from None
    except Refused as refused:
        return told | {"problems": [problem_object(problem) for problem in refused.problems]}
    judged = replay_plan(plan)
    parts = _needed(rest_view(believed, state, plan, judged))
    told |= {"html": joined(*map(part_html, parts)), "piece": machine_piece(plan, judged, _ends(carries, state))}
    return told | {"problems": []}


def _needed(view: tuple[Shown, ...]) -> list[Shown]:
    """What the person has to know before she goes on: how much is left, what stays visible, what differs, and last the bed, to be
    compared. The figures need no title, for the window has one."""
    figures = next(part for part in view if isinstance(part, Figures))
    stays, differs, bed = (
        next((part for part in view if getattr(part, "title", "") == say(f"calculators.carry-on.{key}")), None)
        for key in ("stays", "differs", "picture")
    )
    return [replace(figures, title=""), *(part for part in (stays, differs, bed) if part is not None)]


def _ends(carries: str, state: State) -> tuple[int, int] | None:
    """Two needles of the piece; None for anything else."""
    try:
        first, last = (int(part) for part in carries.split())
    except ValueError:
        return None
    ends = [place(needle) - place(state.first_needle) for needle in (first, last)] if first and last else [-1]
    return (first, last) if 0 <= ends[0] <= ends[-1] < len(state.rows) else None


def _read(design_text: str, state_text: str) -> tuple[Design, State]:
    """Both, where they belong together: a stored piece may be older than the planner that reads it."""
    design = read_design(design_text)
    wrong = layout_problems(design) + size_problems(design)
    if wrong:
        raise Refused(wrong)
    believed = read_state(state_text)
    sizes = resolve(design)
    if believed.first_needle != sizes.first_needle or len(believed.rows) != sizes.needles:
        raise Refused([Problem("", "machine.carry-other", say("machine.carry-other"))])
    return design, believed


def _read_or(problems: list[Problem], reading: Callable[[], T], otherwise: T) -> T:
    """What was read; or, with its problems noted, something to go on with."""
    try:
        return reading()
    except Refused as refused:
        problems.extend(refused.problems)
        return otherwise


def _state(design: Design, believed: State, typed: Mapping[str, str]) -> State:
    """What was typed, over what is believed; every problem is found before anything is refused."""
    first, last = believed.first_needle, resolve(design).last_needle
    problems: list[Problem] = []

    text = {field: typed.get(field, "").strip() for field in CARRY_FIELDS}
    rows = _read_or(problems, lambda: read_rows("changes", text["changes"], first, last, believed.rows), believed.rows)
    none: tuple[int, ...] = ()
    held = _read_or(problems, lambda: read_needles("held_needles", text["held_needles"], first, last), none)
    ids = [yarn.id for yarn in design.yarns]
    numbers = [str(n + 1) for n in range(len(ids))]
    no_yarn: tuple[tuple[str, int], ...] = ()
    mast = _read_or(problems, lambda: read_hanging("mast", text["mast"], first, last, numbers), no_yarn)
    feeder = None
    if text["feeder_yarn"] in ids:
        needles = _read_or(problems, lambda: read_needles("feeder_needle", text["feeder_needle"], first, last), none)
        if len(needles) == 1:
            feeder = Hanging(text["feeder_yarn"], needles[0])
        elif not any(problem.where == "feeder_needle" for problem in problems):
            sentence = say("calculators.carry-on.no-needle")
            way_out = say("calculators.carry-on.no-needle.way-out", first=name(first), last=name(last))
            problems.append(Problem("feeder_needle", "carry-on.no-needle", sentence, way_out))
    if problems:
        raise Refused(problems)
    return State(
        first_needle=first,
        rows=rows,
        held=tuple(sorted(held, key=place)),
        carriage="L" if text["carriage_side"] == "left" else "R",
        feeder=feeder,
        mast=tuple(Hanging(ids[int(number) - 1], needle) for number, needle in mast),
    )
