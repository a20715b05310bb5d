"""Reports of test knitters, beside the plan of the one who designed the piece."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from fractions import Fraction
from typing import Any

from wedgework.calculators import panel_plan, time
from wedgework.declare.calculator import read_all
from wedgework.faces.machine_windows import MISHAPS
from wedgework.faces.reports import MOST_REPORTS
from wedgework.faces.wire import answer
from wedgework.formats import design_value, read_report, steps_digest, write_plan
from wedgework.formats.plan import Free, Hold, Knit, Work
from wedgework.formats.report import MISHAP_KINDS

PLAN = panel_plan.planned(read_all(panel_plan.CALCULATOR, {}))[0]
DIGEST = steps_digest(PLAN.steps)
FIRST = PLAN.blocks[1]


def ask(kind: str, **given: Any) -> dict[str, Any]:
    texts = {key: value if isinstance(value, str) else json.dumps(value) for key, value in given.items()}
    told: dict[str, Any] = json.loads(answer(json.dumps({"ask": kind, **texts})))
    return told


def written(**changes: Any) -> str:
    told = ask("report-write", report={"title": "Lap blanket", "digest": DIGEST, "steps": 9, "steps_done": 3, **changes})
    assert told["problems"] == []
    return str(told["text"])


def compare(*reports: str, plan: object = None, **more: Any) -> dict[str, Any]:
    return ask("reports", plan={**(plan or {"inputs": {}}), **more}, reports=list(reports))  # type: ignore[dict-item]


def rows(html: str) -> list[list[str]]:
    return [re.findall(r"<t[hd][^>]*>(.*?)</t[hd]>", row) for row in re.findall(r"<tr.*?</tr>", html)]


def test_what_the_page_knows_becomes_a_file_that_can_be_read() -> None:
    report = read_report(written(knitter="Ann", mishaps=[{"kind": "jam", "steps_done": 4}]))
    assert (report.knitter, report.digest, report.mishaps[0].kind) == ("Ann", DIGEST, "jam")
    refused = ask("report-write", report={"title": "x", "digest": "no", "steps": 1, "steps_done": 1})
    assert [problem["where"] for problem in refused["problems"]] == ["digest"]
    assert ask("report-write", report="[1]")["problems"]


def test_every_mishap_of_the_page_can_be_reported() -> None:
    assert set(MISHAPS) <= set(MISHAP_KINDS)


def test_minutes_stand_beside_those_of_the_plan() -> None:
    """The plan's are counted here once more: 4 s a pass, 6 s a change of needles, 60 s a block; the calculator's own defaults."""
    defaults = {name: int(time.CALCULATOR.defaults[f"seconds_per_{name}"]) for name in ("pass", "change", "block_change")}
    assert defaults == {"pass": 4, "change": 6, "block_change": 60}
    steps = PLAN.steps[FIRST.first_step : FIRST.last_step + 1]
    seconds = 60 + sum(4 if isinstance(step, (Knit, Free)) else 6 if isinstance(step, (Hold, Work)) else 0 for step in steps)
    told = compare(written(knitter="Ann", blocks=[{"block": FIRST.id, "minutes": 20}]), written(knitter="Bea"))
    assert told["compared"] == 2
    row = next(row for row in rows(told["html"]) if row[0] == FIRST.name)
    knitted = sum(isinstance(step, Knit) for step in steps)
    planned = int(seconds / 60 + 0.5)
    assert row == [FIRST.name, str(knitted), str(planned), f"20 (+{20 - planned})", "-"]
    slower = compare(written(), time={"seconds_per_block_change": "660"})
    row = next(row for row in rows(slower["html"]) if row[0] == FIRST.name)
    assert row[2] == str(int((seconds + 600) / 60 + 0.5))


def test_a_report_of_another_plan_is_named_and_not_compared() -> None:
    other = written(knitter="Ann", blocks=[{"block": FIRST.id, "minutes": 20}]).replace(DIGEST, "0123456789ab")
    told = compare(other)
    assert told["compared"] == 0
    assert "Ann: this report is of another plan" in told["html"]
    assert "20 (" not in told["html"]


def test_what_is_no_report_is_named_and_the_others_are_compared() -> None:
    told = compare("{", write_plan(PLAN), written(knitter="Ann"))
    assert told["compared"] == 1
    assert "File 1 is no report" in told["html"]
    assert "File 2 is no report" in told["html"]


def test_notes_stand_in_the_order_of_the_plan_with_their_blocks_and_rows() -> None:
    at = FIRST.first_step + 5
    row = [step.row for step in PLAN.steps[:at] if isinstance(step, Knit)][-1]
    late = written(knitter="Ann", notes=[{"steps_done": at, "block": FIRST.id, "text": "late"}])
    early = written(knitter="Bea", counts=[{"steps_done": 1, "planned": 10, "counted": 11}])
    html = compare(late, early)["html"]
    assert f"{FIRST.name}, after row {row}. Ann: late" in html
    assert html.index("there were 11") < html.index("Ann: late")


def test_two_reports_without_a_name_or_with_the_same_are_told_apart() -> None:
    heads = rows(compare(written(), written(knitter="Ann"), written(knitter="Ann"))["html"])[0]
    assert heads[2:] == ["Report 1", "Ann", "Ann (3)"]


def test_the_plan_may_come_as_a_plan_or_a_design_file() -> None:
    for file in (write_plan(PLAN), json.dumps(design_value(PLAN.design), default=float)):
        assert compare(written(), plan={"file": file})["compared"] == 1
    assert compare(written(), plan={"file": "{"})["problems"]


def test_grams_are_compared_where_the_design_says_what_a_yarn_weighs() -> None:
    used = written(yarns=[{"yarn": PLAN.design.yarns[0].id, "grams": 120}])
    html = compare(used)["html"]
    assert "its weight is not known" in html
    assert [next(row for row in rows(html) if row[0] == "Chalk, g")[i] for i in (0, 2)] == ["Chalk, g", "120"]
    first, *others = PLAN.design.yarns
    heavy = replace(PLAN, design=replace(PLAN.design, yarns=(replace(first, metres_per_gram=Fraction(5, 2)), *others)))
    weighed = next(row for row in rows(compare(used, plan={"file": write_plan(heavy)})["html"]) if row[0] == "Chalk, g")
    metres = int(re.search(r"(\d+) m; its", html)[1])  # type: ignore[index]
    assert abs(int(weighed[1]) - metres * 100 / 250) <= 1
    assert weighed[2] == f"120 ({'+' if int(weighed[1]) < 120 else '-'}{abs(120 - int(weighed[1]))})"


def test_words_of_a_stranger_stay_words() -> None:
    script = "<img src=x onerror=alert(1)>{title}%s"
    report = written(knitter=script, text=script, notes=[{"steps_done": 99_999, "block": "nowhere", "text": script}])
    html = compare(report)["html"]
    assert "<img" not in html
    assert "{title}" in html


def test_too_many_at_once_are_refused() -> None:
    told = compare(*[written()] * (MOST_REPORTS + 1))
    assert [problem["code"] for problem in told["problems"]] == ["reports.too-many"]
