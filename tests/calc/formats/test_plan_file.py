"""Plans: every kind of step there and back."""

from __future__ import annotations

import json
from fractions import Fraction
from typing import Any, get_args

import pytest

from wedgework.formats import read_plan, read_plan_value, steps_digest, write_plan
from wedgework.formats.plan import (
    BindOff,
    CastOn,
    Cut,
    Edges,
    Free,
    Hang,
    Hold,
    Join,
    Knit,
    Remind,
    Rest,
    Set,
    Start,
    Step,
    Thread,
    Transfer,
    Uneven,
    Waste,
    Weigh,
    Work,
    Wrap,
)
from wedgework.problems import Problem, Refused

DESIGN: dict[str, Any] = {
    "format": "wedgework-design",
    "version": 1,
    "title": "Plain",
    "bed": {"pitch_mm": 9, "needles": 110},
    "gauge": {"stitches_per_10cm": 14, "rows_per_10cm": 19},
    "panel": {"width": {"needles": 4}, "height": {"rows": 4}},
    "yarns": [{"id": "a", "name": "Chalk", "colour": "#f2efe6"}],
    "layout": {"background": "a"},
}
SUMMARY: dict[str, Any] = {
    "rows_min": 4,
    "rows_max": 4,
    "steepest_fold": 0,
    "ends": 1,
    "ends_inside": 0,
    "free_passes": 0,
    "inside_starts": 0,
}
PLAN: dict[str, Any] = {
    "format": "wedgework-plan",
    "version": 1,
    "design": DESIGN,
    "bed": {"first": -2, "last": 2},
    "start": {"carriage": "R", "working": [-2, 2]},
    "blocks": [{"id": "b1", "yarn": "a", "name": "All of it", "first_step": 0, "last_step": 1}],
    "steps": [{"do": "thread", "yarn": "a"}, {"do": "knit", "to": "L", "row": 1, "block": "b1", "block_row": 1}],
    "summary": SUMMARY,
}

EVERY_STEP: list[tuple[dict[str, Any], Step]] = [
    ({"do": "set", "hold_lever": "hold"}, Set("hold")),
    ({"do": "set", "tension": 7.1}, Set(tension=Fraction(71, 10))),
    ({"do": "set", "hold_lever": "knit", "tension": 7}, Set("knit", Fraction(7))),
    ({"do": "thread", "yarn": "a"}, Thread("a")),
    ({"do": "thread", "yarn": "a", "around": -2}, Thread("a", -2)),
    ({"do": "cut"}, Cut()),
    ({"do": "rest"}, Rest()),
    ({"do": "join"}, Join()),
    ({"do": "hold", "needles": [-20, 1]}, Hold((-20, 1))),
    ({"do": "work", "needles": [2]}, Work((2,))),
    ({"do": "knit", "to": "L", "row": 812, "block": "b7", "block_row": 24}, Knit("L", 812, "b7", 24)),
    ({"do": "free", "to": "R"}, Free("R")),
    ({"do": "wrap", "needle": 7}, Wrap(7)),
    ({"do": "transfer", "from": 2, "to": 3}, Transfer(2, 3)),
    ({"do": "hang", "needles": [1, 2]}, Hang((1, 2))),
    ({"do": "cast_on", "needles": [1, 2]}, CastOn((1, 2))),
    ({"do": "waste", "rows": 8}, Waste(8)),
    ({"do": "bind_off", "needles": [1, 2]}, BindOff((1, 2))),
    ({"do": "weigh", "needles": [1, 2]}, Weigh((1, 2))),
    ({"do": "remind", "about": "tea"}, Remind("tea")),
]


def plan_text(**changes: Any) -> str:
    return json.dumps({**PLAN, **changes})


def refused(text: str) -> list[Problem]:
    with pytest.raises(Refused) as caught:
        read_plan(text)
    return list(caught.value.problems)


def test_no_kind_of_step_is_forgotten() -> None:
    assert {type(step) for _, step in EVERY_STEP} == set(get_args(Step))


@pytest.mark.parametrize(("written", "step"), EVERY_STEP, ids=lambda each: each["do"] if isinstance(each, dict) else "")
def test_a_step_there_and_back(written: dict[str, Any], step: Step) -> None:
    plan = read_plan(plan_text(steps=[written]))
    assert plan.steps == (step,)
    assert json.loads(write_plan(plan))["steps"] == [written]


@pytest.mark.parametrize(("written", "_step"), EVERY_STEP, ids=lambda each: each["do"] if isinstance(each, dict) else "")
def test_no_step_takes_a_strange_key(written: dict[str, Any], _step: Step) -> None:
    (problem,) = refused(plan_text(steps=[{**written, "why": "so"}]))
    assert (problem.where, problem.code) == ("steps[0].why", "formats.unknown-key")


def test_a_plan_by_hand_may_leave_out_what_has_a_default() -> None:
    plan = read_plan(plan_text())
    assert plan.start == Start("R", (-2, 2))
    assert plan.edges == Edges()
    assert plan.summary.slits == ()
    assert plan.made_by == ""


def test_a_written_plan_is_complete() -> None:
    written = json.loads(write_plan(read_plan(plan_text())))
    assert written["design"]["format"] == "wedgework-design"
    assert written["design"]["options"]["base_rows_top"] == 2
    assert written["edges"] == {
        "cast_on": "closed",
        "base_rows_bottom": 2,
        "base_yarn_bottom": "",
        "base_rows_top": 2,
        "base_yarn_top": "",
    }
    assert written["summary"]["uneven"] == []


def test_lists_of_the_summary() -> None:
    summary = {
        **SUMMARY,
        "slits": [{"needle": -3, "from_row": 41, "rows": 6}],
        "holes": [{"needle": 2, "row": 9}],
        "uneven": [{"needle": 1, "rows": 7}],
        "stitches": {"a": 16},
    }
    read = read_plan(plan_text(summary=summary)).summary
    assert (read.slits[0].needle, read.slits[0].from_row, read.slits[0].rows) == (-3, 41, 6)
    assert (read.holes[0].needle, read.holes[0].row) == (2, 9)
    assert read.uneven == (Uneven(1, 7, ""),)
    assert read.stitches == {"a": 16}


@pytest.mark.parametrize(
    ("changes", "where", "code"),
    [
        ({"steps": [{"do": "knit", "to": "L", "row": 1, "block": "b1"}]}, "steps[0].block_row", "missing-key"),
        ({"steps": [{"do": "sew"}]}, "steps[0].do", "not-offered"),
        ({"steps": [{"do": 7}]}, "steps[0].do", "wrong-type"),
        ({"steps": [{"needles": [1]}]}, "steps[0].do", "missing-key"),
        ({"steps": ["cut"]}, "steps[0]", "wrong-type"),
        ({"steps": [{"do": "set"}]}, "steps[0]", "key-count"),
        ({"steps": [{"do": "hold", "needles": []}]}, "steps[0].needles", "list-length"),
        ({"steps": [{"do": "hold", "needles": [3, 0]}]}, "steps[0].needles[1]", "out-of-range"),
        ({"bed": {"first": 0, "last": 2}}, "bed.first", "out-of-range"),
        ({"start": {"carriage": "R", "working": [-2]}}, "start.working", "list-length"),
        (
            {"blocks": [{"id": "b1", "yarn": "a", "name": "", "first_step": -1, "last_step": 0}]},
            "blocks[0].first_step",
            "out-of-range",
        ),
        ({"summary": {**SUMMARY, "ends": None}}, "summary.ends", "wrong-type"),
        ({"design": {**DESIGN, "title": ""}}, "design.title", "text-length"),
        ({"design": {**DESIGN, "version": 3}}, "design.version", "not-offered"),
        ({"design": {key: DESIGN[key] for key in DESIGN if key != "bed"}}, "design.bed", "missing-key"),
    ],
)
def test_a_wrong_value_is_named_by_its_path(changes: dict[str, Any], where: str, code: str) -> None:
    (problem,) = refused(plan_text(**changes))
    assert (problem.where, problem.code) == (where, f"formats.{code}")


def test_an_unknown_step_of_a_newer_file_asks_for_an_update() -> None:
    (problem,) = refused(plan_text(made_by="999.0", steps=[{"do": "sew"}]))
    assert (problem.where, problem.code) == ("steps[0].do", "formats.newer")


def test_there_is_no_needle_0_and_the_sentence_says_so() -> None:
    (problem,) = refused(plan_text(steps=[{"do": "wrap", "needle": 0}]))
    assert "without 0" in problem.sentence


def test_a_plan_inside_something_else() -> None:
    assert read_plan_value(json.loads(plan_text())) == read_plan(plan_text())


def test_the_digest_follows_the_steps_and_nothing_else() -> None:
    plan = read_plan(plan_text())
    renamed = read_plan(plan_text(design={**DESIGN, "title": "Another name"}))
    longer = read_plan(plan_text(steps=[*PLAN["steps"], {"do": "cut"}]))
    assert steps_digest(plan.steps) == steps_digest(renamed.steps)
    assert steps_digest(plan.steps) != steps_digest(longer.steps)
    assert len(steps_digest(())) == 12


def test_the_digest_is_that_of_the_canonical_json() -> None:
    # printf '[{"do":"cut"}]' | sha256sum
    assert steps_digest([Cut()]) == "7ab36646ff29"
