"""Reports of test knitters: written at the machine, and read beside the plan by the one who designed the piece.

    {"ask": "report-write", "report": "{...}"}   ->  {"text", "problems"}; the keys of the file without its head
    {"ask": "reports", "plan": "{...}", "reports": "[...]"}   ->  {"html", "title", "compared", "problems"}

`plan` is JSON: ``{"inputs": {...}}``, what is in the planner, or ``{"file": "..."}``, a design or plan file; and ``"time"``, what
is in the time calculator, or nothing. `reports` is a list of texts of files. A report of other steps is told and not compared.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from wedgework.calculators import panel_plan, time
from wedgework.declare import Bullets, Prose, Shown, Table
from wedgework.declare.calculator import read_all
from wedgework.exact import nearest
from wedgework.faces.answers import Teller, Told, refusing
from wedgework.faces.markup import joined
from wedgework.faces.result import part_html
from wedgework.formats import Report, read_design, read_plan, read_report, read_report_value, steps_digest, write_report
from wedgework.formats.design import Yarn
from wedgework.formats.plan import Free, Hold, Knit, Plan, Work
from wedgework.formats.text import parse
from wedgework.plan import plan_piece
from wedgework.problems import Problem, Refused
from wedgework.replay import replay_plan
from wedgework.say import say
from wedgework.units import decimal_text, short_decimal
from wedgework.yarn.balls import metres_per_gram
from wedgework.yarn.needs import planned_needs

__all__ = ["MOST_REPORTS", "REPORT_ASKS"]

MOST_REPORTS = 20
_MOST_ASKED = 80_000_000


@dataclass(frozen=True, slots=True)
class _Planned:
    """What the plan expects: minutes and rows of each block, grams of each yarn or None, metres."""

    plan: Plan
    digest: str
    minutes: Mapping[str, Fraction]
    rows: Mapping[str, int]
    grams: Mapping[str, Fraction | None]
    metres: Mapping[str, Fraction]
    row_after: tuple[int, ...]
    """Rows of the piece after so many steps."""


def _write(asked: dict[str, Any]) -> Told:
    value = parse(asked["report"], _MOST_ASKED)
    if not isinstance(value, dict):
        raise Refused([Problem("", "faces.unreadable-question", say("faces.unreadable-question"))])
    return {"text": write_report(read_report_value({**value, "format": "wedgework-report", "version": 1}))}


def _compare(asked: dict[str, Any]) -> Told | None:
    wanted, texts = parse(asked["plan"], _MOST_ASKED), parse(asked["reports"], _MOST_ASKED)
    if not isinstance(wanted, dict) or not isinstance(texts, list) or not all(isinstance(text, str) for text in texts):
        return None
    if len(texts) > MOST_REPORTS:
        words = say("reports.too-many", most=MOST_REPORTS)
        raise Refused([Problem("", "reports.too-many", words, say("reports.too-many.way-out"))])
    plan = _plan_of(wanted)
    if plan is None:
        return None
    planned = _planned(plan, wanted.get("time"))
    reports, refused = _sorted(texts, planned)
    view: list[Shown] = [Bullets(say("reports.refused"), tuple(refused))] if refused else []
    if reports:
        view += _view(planned, _named(reports))
    elif texts:
        view.append(Prose("", (say("reports.none"),)))
    html = joined(*(part_html(part) for part in view))
    return {"html": html, "title": plan.design.title, "compared": len(reports)}


def _plan_of(wanted: Mapping[str, Any]) -> Plan | None:
    file, inputs = wanted.get("file"), wanted.get("inputs")
    if isinstance(file, str):
        try:
            return read_plan(file)
        except Refused as refused:
            if not any(problem.code == "formats.other-format" for problem in refused.problems):
                raise
        return plan_piece(read_design(file))
    if isinstance(inputs, dict) and all(isinstance(text, str) for text in inputs.values()):
        return panel_plan.planned(read_all(panel_plan.CALCULATOR, inputs))[0]
    return None


def _planned(plan: Plan, typed: object) -> _Planned:
    judged = replay_plan(plan)
    inputs = read_all(time.CALCULATOR, _texts(typed))
    each_pass, change, block_change = (inputs.number(f"seconds_per_{name}") for name in ("pass", "change", "block_change"))
    minutes: dict[str, Fraction] = {}
    rows: dict[str, int] = {}
    for block in plan.blocks:
        steps = plan.steps[block.first_step : block.last_step + 1]
        passes = sum(isinstance(step, (Knit, Free)) for step in steps)
        changes = sum(isinstance(step, (Hold, Work)) for step in steps)
        minutes[block.id] = (passes * each_pass + changes * change + block_change) / 60
        rows[block.id] = sum(isinstance(step, Knit) for step in steps)
    needs = planned_needs(plan, judged)
    metres = {yarn.id: needs.total_mm(yarn.id) / 1000 for yarn in plan.design.yarns}
    grams = {yarn.id: _grams(yarn, metres[yarn.id]) for yarn in plan.design.yarns}
    row, after = 0, [0]
    for step in plan.steps:
        row = step.row if isinstance(step, Knit) else row
        after.append(row)
    return _Planned(plan, steps_digest(plan.steps), minutes, rows, grams, metres, tuple(after))


def _grams(yarn: Yarn, metres: Fraction) -> Fraction | None:
    """What so many metres weigh, where the design says anything of it."""
    rate = metres_per_gram(yarn)
    return metres / rate if rate else None


def _texts(typed: object) -> dict[str, str]:
    """What was typed into the time calculator, where that is what it is."""
    names = time.CALCULATOR.defaults
    if not isinstance(typed, dict):
        return {}
    return {name: text for name, text in typed.items() if name in names and isinstance(text, str)}


def _sorted(texts: Sequence[str], planned: _Planned) -> tuple[list[Report], list[str]]:
    """The reports of this plan, and a sentence for each of the others."""
    reports: list[Report] = []
    refused: list[str] = []
    for number, text in enumerate(texts, 1):
        try:
            report = read_report(text)
        except Refused as wrong:
            first = wrong.problems[0]
            refused.append(say("reports.not-read", number=number, why=f"{first.where}: {first.sentence}".removeprefix(": ")))
            continue
        if report.digest == planned.digest:
            reports.append(report)
        else:
            who = report.knitter or say("reports.unnamed", number=number)
            refused.append(say("reports.other-plan", who=who, title=report.title, digest=report.digest, ours=planned.digest))
    return reports, refused


Named = Sequence[tuple[str, Report]]


def _named(reports: Sequence[Report]) -> Named:
    """Each with the knitter's name; a second one of the same name is told apart."""
    found: list[tuple[str, Report]] = []
    for number, report in enumerate(reports, 1):
        who = report.knitter.strip() or say("reports.unnamed", number=number)
        if any(who == name for name, _ in found):
            who = say("reports.twice", who=who, number=number)
        found.append((who, report))
    return found


def _view(planned: _Planned, reports: Named) -> list[Shown]:
    blocks = _blocks(planned, reports)
    told = _told(planned, reports)
    words = [say("reports.said", who=who, text=report.text) for who, report in reports if report.text.strip()]
    view: list[Shown] = [_overall(planned, reports), blocks, Prose("", (say("reports.blocks-note"),))]
    if told:
        view.append(Bullets(say("reports.told"), tuple(told)))
    if words:
        view.append(Bullets(say("reports.words"), tuple(words)))
    return view


def _overall(planned: _Planned, reports: Named) -> Table:
    nothing = say("reports.nothing")
    whole = sum(planned.minutes.values(), Fraction(0))

    def row(what: str, plan: str, real: Iterable[str]) -> tuple[str, ...]:
        return (what, plan, *(each or nothing for each in real))

    def told(key: str) -> str:
        return say(f"reports.{key}")

    rows = [
        row(told("done"), f"{len(planned.plan.steps)}", (f"{one.steps_done}" for _, one in reports)),
        row(told("begun"), nothing, (one.begun for _, one in reports)),
        row(told("ended"), nothing, (one.ended for _, one in reports)),
        row(told("minutes"), decimal_text(whole, 0), (_against(one.minutes, whole) for _, one in reports)),
        row(told("interruptions"), nothing, (_interrupted(one) for _, one in reports)),
        row(told("mishaps"), nothing, (f"{len(one.mishaps) + len(one.counts)}" for _, one in reports)),
        row(told("carried"), nothing, (f"{one.carried_on}" for _, one in reports)),
    ]
    for yarn in planned.plan.design.yarns:
        used = [next((each.grams for each in one.yarns if each.yarn == yarn.id), None) for _, one in reports]
        grams = planned.grams[yarn.id]
        expected = say("reports.yarn-metres", metres=decimal_text(planned.metres[yarn.id], 0))
        if grams is not None:
            expected = decimal_text(grams, 0)
        real = ("" if each is None else short_decimal(each, 1) if grams is None else _against(each, grams) for each in used)
        rows.append(row(say("reports.yarn", name=yarn.name), expected, real))
    heads = (told("what"), told("plan"), *(who for who, _ in reports))
    return Table(told("overall"), heads, tuple(rows))


def _interrupted(report: Report) -> str:
    if not report.interruptions:
        return ""
    return say("reports.interrupted", n=report.interruptions, minutes=decimal_text(report.interruption_minutes, 0))


def _against(real: Fraction, planned: Fraction) -> str:
    """38 (+6), to whole numbers; nothing where nothing was measured."""
    if not real:
        return ""
    difference = nearest(real) - nearest(planned)
    return say(
        "reports.differs",
        real=nearest(real),
        sign="+" if difference > 0 else "-" if difference < 0 else "\u00b1",
        difference=abs(difference),
    )


def _blocks(planned: _Planned, reports: Named) -> Table:
    measured = [{one.block: one.minutes for one in report.blocks} for _, report in reports]
    nothing = say("reports.nothing")
    rows = [
        (
            block.name or block.id,
            f"{planned.rows[block.id]}",
            decimal_text(planned.minutes[block.id], 0),
            *(_against(each.get(block.id, Fraction(0)), planned.minutes[block.id]) or nothing for each in measured),
        )
        for block in planned.plan.blocks
    ]
    heads = (
        say("reports.block"),
        say("reports.rows"),
        say("reports.plan"),
        *(who for who, _ in reports),
    )
    return Table(say("reports.blocks"), heads, tuple(rows))


def _told(planned: _Planned, reports: Named) -> list[str]:
    """Notes, mishaps and counts of all reports, in the order of the plan."""
    names = {block.id: block.name or block.id for block in planned.plan.blocks}
    found: list[tuple[int, str, str, str]] = []
    for who, report in reports:
        found += [(note.steps_done, note.block, who, note.text) for note in report.notes]
        found += [(one.steps_done, one.block, who, _mishap(one.kind, one.text)) for one in report.mishaps]
        found += [
            (one.steps_done, one.block, who, say("reports.count", planned=one.planned, counted=one.counted))
            for one in report.counts
        ]
    last = len(planned.row_after) - 1
    return [
        say(
            "reports.at",
            block=names.get(block, say("reports.no-block")),
            row=planned.row_after[min(at, last)],
            who=who,
            text=text,
        )
        for at, block, who, text in sorted(found, key=lambda one: one[0])
    ]


def _mishap(kind: str, text: str) -> str:
    what = say("reports.mishap-other") if kind == "other" else f"{say(f'machine.mishap-{kind}')}."
    return say("reports.mishap", what=what, text=text).strip()


_NOTHING: Told = {"html": "", "title": "", "compared": 0}

REPORT_ASKS: Mapping[str, tuple[set[str], set[str], Teller]] = {
    "report-write": ({"report"}, set(), refusing({"text": ""}, _write)),
    "reports": ({"plan", "reports"}, set(), refusing(_NOTHING, _compare)),
}
