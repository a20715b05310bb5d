"""The calculator of practice pieces: the figures of the sample, what comes up in it, its file."""

from __future__ import annotations

from wedgework.calculators.practice_piece import CALCULATOR
from wedgework.declare import Bullets, Written, work_out
from wedgework.formats import read_design
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan
from wedgework.say import say

TYPED = {"layout": "diamond-in-corners", "size_in": "counts", "needles": "48", "rows": "96"}


def test_the_figures_are_those_of_the_file() -> None:
    result = work_out(CALCULATOR, TYPED).result
    assert result is not None
    (file,) = [part for part in result.view if isinstance(part, Written) and part.text.startswith("{")]
    design = read_design(file.text)
    judged = replay_plan(plan_piece(design))
    assert result.values["stitches_in_all"] == sum(judged.summary.stitches.values())
    assert result.values["ends"] == judged.summary.ends
    assert result.values["stitches_of_the_whole"] == 48 * 96
    assert design.title == "Practice: Lap blanket"
    assert "<pre>" in file.html
    assert "&quot;format&quot;" in file.html


def test_what_comes_up_is_told_in_words() -> None:
    result = work_out(CALCULATOR, TYPED).result
    assert result is not None
    (shows,) = [part for part in result.view if isinstance(part, Bullets)]
    assert say("practice.start-inside") in shows.items
    assert len(shows.items) == len(result.values["shows"])  # type: ignore[arg-type]
    assert result.values["lacks"] == ()


def test_what_is_wrong_with_the_piece_is_told_under_its_fields() -> None:
    answered = work_out(CALCULATOR, TYPED | {"needles": "300"})
    assert [problem.where for problem in answered.problems] == ["needles"]
