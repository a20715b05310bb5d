"""Carry on: the real state of the bed in; the rest of the piece planned anew, and what will stay visible."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from wedgework.bed import Side, name
from wedgework.calculators import panel_plan
from wedgework.calculators.carry_on_view import carry_on_values, carry_on_view
from wedgework.calculators.layout_fields import NUMBERS, yarn_id, yarn_problems
from wedgework.calculators.plan_groups import PLAN_GROUPS
from wedgework.calculators.state_lines import read_hanging, read_needles, read_rows
from wedgework.declare import Calculator, Group, Inputs, Only, Result, choice, lines, text, whole
from wedgework.formats.plan import Knit, Plan
from wedgework.formats.state import Hanging, State
from wedgework.plan import replan
from wedgework.problems import Problem, Refused
from wedgework.replay import Replay, replay_plan, state_at
from wedgework.say import say

__all__ = ["CALCULATOR", "CarriedOn", "carried_on", "in_fields"]

PLAN, TYPED = "plan", "typed"
AS_PLANNED, NONE = "planned", "none"
# What is typed where nothing is held or waits, in the languages of the pages.
NOTHING = {NONE, "keine", "keins", "keines"}
SIDES: dict[str, Side] = {"left": "L", "right": "R"}


@dataclass(frozen=True, slots=True)
class CarriedOn:
    """The state, the plan of the rest, and what the model bed found in it."""

    planned: State | None
    """What the plan has after that row, where the person began from it."""
    state: State
    plan: Plan
    judged: Replay


def _say(key: str, **values: object) -> str:
    return say(f"calculators.carry-on.{key}", **values)


def _problem(field: str, code: str, **values: object) -> Problem:
    return Problem(field, f"carry-on.{code}", _say(code, **values), _say(f"{code}.way-out", **values))


def compute(inputs: Inputs) -> Result:
    """The rest is planned from what is there, and replayed from there."""
    found = carried_on(inputs)
    return Result(
        carry_on_values(found.state, found.plan, found.judged),
        carry_on_view(found.planned, found.state, found.plan, found.judged),
    )


def carried_on(inputs: Inputs) -> CarriedOn:
    """Raises Refused with the names of fields."""
    whole_plan, _ = panel_plan.planned(inputs)
    planned = _planned(whole_plan, inputs.whole("after_row")) if inputs.text("known") == PLAN else None
    state = _state(inputs, whole_plan, planned)
    try:
        plan = replan(whole_plan.design, state)
    except Refused as refused:
        raise Refused(in_fields(refused.problems, planned=planned is not None)) from None
    return CarriedOn(planned, state, plan, replay_plan(plan))


def _planned(plan: Plan, row: int) -> State:
    """The bed just after a row of the plan."""
    knitted = [i for i, step in enumerate(plan.steps) if isinstance(step, Knit)]
    if row > len(knitted):
        raise Refused([_problem("after_row", "no-such-row", rows=len(knitted))])
    return state_at(plan, knitted[row - 1] + 1 if row else 0)


def _state(inputs: Inputs, plan: Plan, planned: State | None) -> State:
    """What was typed, over what the plan has. Every problem is found before anything is refused."""
    first, last = plan.first_needle, plan.last_needle
    there = [number for number in NUMBERS if inputs.given(f"yarn_{number}_name")]
    problems: list[Problem] = []
    state = planned or State(first, (), (), "R")
    try:
        field = "changes" if planned else "needle_rows"
        typed = inputs.text(field) if inputs.given(field) else ""
        state = replace(state, rows=read_rows(field, typed, first, last, planned.rows if planned else None))
    except Refused as refused:
        problems += refused.problems
    try:
        held = inputs.text("held_needles").strip() if inputs.given("held_needles") else ""
        if held.lower() in NOTHING:
            state = replace(state, held=())
        elif held:
            state = replace(state, held=read_needles("held_needles", held, first, last))
    except Refused as refused:
        problems += refused.problems
    side = inputs.text("carriage_side")
    if side != AS_PLANNED:
        state = replace(state, carriage=SIDES[side])
    yarn = inputs.text("feeder_yarn")
    if yarn == NONE:
        state = replace(state, feeder=None)
    elif yarn != AS_PLANNED:
        try:
            ((_, needle),) = read_hanging("feeder_needle", f"1 {inputs.text('feeder_needle')}", first, last, ["1"])
            state = replace(state, feeder=Hanging(yarn_id(yarn), needle))
        except Refused:
            problems.append(_problem("feeder_needle", "no-needle", first=name(first), last=name(last)))
    try:
        if inputs.given("mast"):
            typed = inputs.text("mast").strip()
            hanging = () if typed.lower() in NOTHING else read_hanging("mast", typed, first, last, there)
            state = replace(state, mast=tuple(Hanging(yarn_id(number), needle) for number, needle in hanging))
    except Refused as refused:
        problems += refused.problems
    if problems:
        raise Refused(problems)
    return state


def in_fields(problems: Iterable[Problem], *, planned: bool) -> list[Problem]:
    """The same problems under the names of the fields that they come from."""

    def field(where: str) -> str:
        if where.startswith("rows"):
            return "changes" if planned else "needle_rows"
        if where.startswith("held"):
            return "held_needles"
        if where.startswith("feeder"):
            return "feeder_needle" if where.endswith("needle") else "feeder_yarn"
        return "mast" if where.startswith("mast") else where

    return [replace(problem, where=field(problem.where)) for problem in problems]


def check(inputs: Inputs) -> Iterable[Problem]:
    """Where the bed is typed whole, there is no plan to take a side or a yarn from; a yarn has to be there."""
    found = yarn_problems(inputs)
    if inputs.has("known") and inputs.text("known") == TYPED:
        for field in ("carriage_side", "feeder_yarn"):
            if inputs.has(field) and inputs.text(field) == AS_PLANNED:
                found.append(_problem(field, "not-planned"))
    if inputs.has("feeder_yarn"):
        number = inputs.text("feeder_yarn")
        if number in NUMBERS and not inputs.given(f"yarn_{number}_name"):
            found.append(_problem("feeder_yarn", "no-yarn"))
    return found


def _yarn_words(number: str) -> str:
    if number in NUMBERS:
        return say("calculators.panel-plan.yarn-number", number=number)
    return _say(f"feeder_yarn.{number}")


_FROM_PLAN, _WHOLE = Only("known", (PLAN,)), Only("known", (TYPED,))

# Of our own invention: held needle R25 was not quite forward, and knitted.
_CHANGES = "R25: 1 more"
# The same bed typed whole.
_ROWS = (
    "L53-L37: 98 rows\nL36-L35: 97\nL34-L19: 95 to 65\nL18-L16: 65\nL15-L12: 66\nL11-L4: 65\nL3-L2: 66\nL1-R1: 65\n"
    "R2-R6: 67 to 75\nR7-R11: 76\nR12-R15: 75\nR16-R18: 76\nR19: 75\nR20-R24: 76\nR25: 78\nR26-R35: 79 to 97\n"
    "R36: 97\nR37-R53: 98"
)

CALCULATOR = Calculator(
    "carry-on",
    (
        Group(
            "rows",
            (
                choice("known", PLAN, (PLAN, TYPED)),
                whole("after_row", "400", 0, 99_999, "rows", only=_FROM_PLAN),
                lines("changes", _CHANGES, longest=4000, optional=True, only=_FROM_PLAN),
                lines("needle_rows", _ROWS, longest=8000, only=_WHOLE),
            ),
        ),
        Group(
            "bed-now",
            (
                text("held_needles", "", longest=400, optional=True),
                choice("carriage_side", AS_PLANNED, (AS_PLANNED, *SIDES)),
                choice("feeder_yarn", AS_PLANNED, (AS_PLANNED, NONE, *NUMBERS), words=_yarn_words),
                text("feeder_needle", "R24", longest=10, only=Only("feeder_yarn", NUMBERS)),
                lines("mast", "", longest=200, optional=True),
            ),
        ),
        *PLAN_GROUPS,
    ),
    compute,
    check,
)
