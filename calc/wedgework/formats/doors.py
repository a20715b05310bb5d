"""The ways in and out: text to design, plan, state, project, class and report, and back."""

from __future__ import annotations

from typing import Any

from wedgework.formats.building_design import design_from
from wedgework.formats.building_plan import plan_from
from wedgework.formats.classes import Class
from wedgework.formats.complaints import found_phrase, newer_problem, problems_of
from wedgework.formats.design import Design
from wedgework.formats.paths import spell
from wedgework.formats.plan import Plan
from wedgework.formats.project import Project
from wedgework.formats.reading import Finding, compiled
from wedgework.formats.report import Report
from wedgework.formats.schemas import SCHEMAS
from wedgework.formats.state import State
from wedgework.formats.text import exact_value, parse
from wedgework.formats.values_classes import class_from, class_value
from wedgework.formats.values_design import design_value
from wedgework.formats.values_plan import plan_value
from wedgework.formats.values_project import project_from, project_value
from wedgework.formats.values_report import report_from, report_value
from wedgework.formats.values_state import state_from, state_value
from wedgework.formats.writing import pretty
from wedgework.problems import Problem, Refused
from wedgework.say import say

__all__ = [
    "MOST_CHARACTERS",
    "read_class",
    "read_class_value",
    "read_design",
    "read_design_value",
    "read_plan",
    "read_plan_value",
    "read_project",
    "read_project_value",
    "read_report",
    "read_report_value",
    "read_state",
    "read_state_value",
    "value_problems",
    "write_class",
    "write_design",
    "write_plan",
    "write_project",
    "write_report",
    "write_state",
]

# Text is read into memory whole. A design lives in a link and is a few hundred characters; four hundred large shapes
# fit into a million. A plan of 2,000 steps has a quarter of a million, so eight million are thirty large pieces.
# A state of a thousand needles has ten thousand, a class at most two hundred thousand, a report with a note at every block
# some tens of thousands.
MOST_CHARACTERS = {
    "design": 1_000_000,
    "plan": 8_000_000,
    "state": 1_000_000,
    "project": 64_000_000,
    "class": 1_000_000,
    "report": 4_000_000,
}

_CHECKS = {kind: compiled(schema) for kind, schema in SCHEMAS.items()}


def read_design(text: str) -> Design:
    """The design written in `text` (JSON, format ``wedgework-design``). Raises Refused with everything that is wrong."""
    return design_from(_read(text, "design"))


def read_plan(text: str) -> Plan:
    """The plan written in `text` (JSON, format ``wedgework-plan``). Raises Refused with everything that is wrong.

    Only the form is checked; `wedgework.replay.replay_plan` judges whether it can be knitted.
    """
    return plan_from(_read(text, "plan"))


def read_project(text: str) -> Project:
    """The project written in `text` (JSON, format ``wedgework-project``). Raises Refused with everything that is wrong."""
    return project_from(_read(text, "project"))


def read_report(text: str) -> Report:
    """The report written in `text` (JSON, format ``wedgework-report``). Raises Refused with everything that is wrong."""
    return report_from(_read(text, "report"))


def read_state(text: str) -> State:
    """The state written in `text` (JSON, format ``wedgework-state``). Raises Refused with everything that is wrong.

    Only the form is checked; `wedgework.plan.replan` holds it against a design.
    """
    return state_from(_read(text, "state"))


def read_class(text: str) -> Class:
    """The class written in `text` (JSON, format ``wedgework-class``). Raises Refused with everything that is wrong.

    Only the form is checked; `wedgework.faces.classes` opens the links in it.
    """
    return class_from(_read(text, "class"))


def read_class_value(value: Any, at: str = "") -> Class:
    """A class that stands inside something else; as `read_design_value`."""
    return class_from(_checked(exact_value(value), "class", at))


def read_design_value(value: Any, at: str = "") -> Design:
    """A design that stands inside something else, as any JSON reader gives it; paths in problems begin with `at`."""
    return design_from(_checked(exact_value(value), "design", at))


def read_plan_value(value: Any, at: str = "") -> Plan:
    """A plan that stands inside something else; as `read_design_value`."""
    return plan_from(_checked(exact_value(value), "plan", at))


def read_project_value(value: Any) -> Project:
    """A project that is there as a value; as `read_design_value`."""
    return project_from(_checked(exact_value(value), "project", ""))


def read_report_value(value: Any) -> Report:
    """A report that is there as a value; as `read_design_value`."""
    return report_from(_checked(exact_value(value), "report", ""))


def read_state_value(value: Any, at: str = "") -> State:
    """A state that stands inside something else; as `read_design_value`."""
    return state_from(_checked(exact_value(value), "state", at))


def write_class(found: Class) -> str:
    """The class as the text of a file."""
    return pretty(class_value(found))


def write_design(design: Design) -> str:
    """The design as the text of a file, every default written out. Raises ValueError for a number like 1/3."""
    return pretty(design_value(design))


def write_plan(plan: Plan) -> str:
    """The plan as the text of a file, one step a line."""
    return pretty(plan_value(plan))


def write_project(project: Project) -> str:
    """The project as the text of a file."""
    return pretty(project_value(project))


def write_report(report: Report) -> str:
    """The report as the text of a file."""
    return pretty(report_value(report))


def write_state(state: State) -> str:
    """The state as the text of a file."""
    return pretty(state_value(state))


def value_problems(value: Any, kind: str, at: str = "") -> list[Problem]:
    """Everything that is wrong with `value` as one of `SCHEMAS`; numbers in it are exact."""
    stranger = _stranger(value, kind, at)
    if stranger is not None:
        return [stranger]
    findings: list[Finding] = []
    _CHECKS[kind](value, None, findings)
    return problems_of(findings, value, at)


def _read(text: str, kind: str) -> dict[str, Any]:
    return _checked(parse(text, MOST_CHARACTERS[kind]), kind, "")


def _checked(value: Any, kind: str, at: str) -> dict[str, Any]:
    problems = value_problems(value, kind, at)
    if problems:
        raise Refused(problems)
    checked: dict[str, Any] = value
    return checked


def _stranger(value: Any, kind: str, at: str) -> Problem | None:
    """Of another format or version nothing else can be said."""
    if not isinstance(value, dict):
        return None
    name, version = value.get("format"), value.get("version")
    if isinstance(name, str) and name != f"wedgework-{kind}":
        ours = name.removeprefix("wedgework-") in SCHEMAS
        return Problem(
            spell((None, "format"), at),
            "formats.other-format",
            say("formats.other-format", found=found_phrase(name), wanted=f"wedgework-{kind}"),
            say("formats.other-format.way-out" if ours else "formats.no-format.way-out", wanted=kind),
        )
    if type(version) is int and version != 1:
        where = (None, "version")
        return newer_problem(value, where, at) or Problem(
            spell(where, at),
            "formats.unknown-version",
            say("formats.unknown-version", found=found_phrase(version)),
            say("formats.unknown-version.way-out"),
        )
    return None
