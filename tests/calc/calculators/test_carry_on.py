"""The calculator that carries on: what is typed becomes the state, and the rest a plan."""

from __future__ import annotations

import pytest

from wedgework.calculators import panel_plan
from wedgework.calculators.carry_on import CALCULATOR, carried_on
from wedgework.calculators.state_lines import needles_text, rows_text
from wedgework.declare import work_out
from wedgework.declare.calculator import read_all
from wedgework.formats import Hanging
from wedgework.formats.plan import Knit
from wedgework.replay import state_at

# Small, so that many are planned quickly.
SMALL = {"layout": "diamond-in-corners", "size_in": "counts", "needles": "24", "rows": "48", "after_row": "60", "changes": ""}
PLAN, _ = panel_plan.planned(
    read_all(panel_plan.CALCULATOR, {name: SMALL[name] for name in ("layout", "size_in", "needles", "rows")})
)
KNITTED = [i for i, step in enumerate(PLAN.steps) if isinstance(step, Knit)]
STATE = state_at(PLAN, KNITTED[59] + 1)


def typed(**more: str) -> dict[str, str]:
    return SMALL | more


def found(**more: str):  # type: ignore[no-untyped-def]
    return carried_on(read_all(CALCULATOR, typed(**more)))


def wrong(**more: str) -> list[tuple[str, str]]:
    return [(problem.where, problem.code) for problem in work_out(CALCULATOR, typed(**more)).problems]


def test_nothing_typed_is_the_state_of_the_plan() -> None:
    one = found()
    assert one.state == one.planned == STATE
    assert one.judged.problems == ()


def test_the_bed_typed_whole_is_the_same_bed() -> None:
    assert STATE.feeder is not None
    needle = STATE.feeder.needle
    one = found(
        known="typed",
        needle_rows=rows_text(STATE.first_needle, STATE.rows),
        held_needles=needles_text(STATE.held) or "none",
        carriage_side="left" if STATE.carriage == "L" else "right",
        feeder_yarn=STATE.feeder.yarn.removeprefix("yarn-"),
        feeder_needle=needles_text([needle]),
        mast="\n".join(f"{one.yarn.removeprefix('yarn-')} at {needles_text([one.needle])}" for one in STATE.mast) or "none",
    )
    assert one.planned is None
    assert one.state == STATE
    assert one.plan.steps == found().plan.steps


def test_what_differs_is_laid_over_the_plan() -> None:
    one = found(changes="L3: 1 more; R12: 2 fewer", held_needles="none", carriage_side="right", feeder_yarn="none", mast="none")
    rows = list(STATE.rows)
    rows[9] += 1
    rows[23] -= 2
    assert one.state.rows == tuple(rows)
    assert (one.state.held, one.state.carriage, one.state.feeder, one.state.mast) == ((), "R", None, ())
    assert found(mast="1 at L12\n2 at R12").state.mast == (Hanging("yarn-1", -12), Hanging("yarn-2", 12))


def test_the_answer_says_what_differs_and_what_stays() -> None:
    view = {part.title: part for part in work_out(CALCULATOR, typed(changes="L3: 1 more", carriage_side="right")).result.view}  # type: ignore[union-attr]
    differs = view["What differs from the plan"]
    assert [row[0] for row in differs.rows][:1] == ["Rows on L3"]  # type: ignore[union-attr]
    assert "Nothing" in view["What stays visible"].paragraphs[0]  # type: ignore[union-attr]
    large = work_out(CALCULATOR, typed(changes="L3: 12 more")).result
    assert large is not None
    assert large.values["visible"]


def test_the_rest_is_all_that_is_left() -> None:
    """Stitches that lie on the needles and stitches still to knit are those of the whole picture, within two rows a needle."""
    one = found(changes="L3: 1 more")
    left = sum(one.judged.summary.stitches.values())
    ends = [column[-1].level + column[-1].rows for column in one.judged.piece.columns]
    assert abs(sum(ends) - 24 * 48) <= 24
    assert 0 < left <= sum(ends)


@pytest.mark.parametrize(
    ("more", "problem"),
    [
        ({"after_row": "5000"}, ("after_row", "carry-on.no-such-row")),
        ({"changes": "L13: 1 more"}, ("changes", "carry-on.no-needles")),
        ({"changes": "L12: 100"}, ("changes", "state.too-high")),
        ({"held_needles": "L13"}, ("held_needles", "carry-on.no-needles")),
        ({"feeder_yarn": "4"}, ("feeder_yarn", "carry-on.no-yarn")),
        ({"feeder_yarn": "1", "feeder_needle": "L40"}, ("feeder_needle", "carry-on.no-needle")),
        ({"mast": "4 at L1"}, ("mast", "carry-on.no-hanging")),
    ],
)
def test_what_is_wrong_is_told_under_its_field(more: dict[str, str], problem: tuple[str, str]) -> None:
    assert wrong(**more) == [problem]


def test_a_bed_typed_whole_has_no_plan_to_lean_on() -> None:
    assert wrong(known="typed") == [("carriage_side", "carry-on.not-planned"), ("feeder_yarn", "carry-on.not-planned")]


def test_several_mistakes_are_told_at_once() -> None:
    assert [where for where, _ in wrong(changes="X: 1 more", held_needles="L99", mast="red")] == [
        "changes",
        "held_needles",
        "mast",
    ]
