"""Hems in words: where you are, before, knit, check, next; what a person could not guess stands in the line itself."""

from __future__ import annotations

from itertools import pairwise

import pytest

from pieces import diamond, hemmed, piece
from wedgework.formats.design import Design
from wedgework.formats.plan import Block, Edges, Hang, Knit, Plan, Start, Step, Summary, Thread, Transfer
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan
from wedgework.words import Cue, cues, instructions

PLAIN = hemmed(diamond(12, 24), bottom="plain", top="plain")
PICOT = hemmed(piece(diamond().layout, 13, 26), None, bottom="picot", top="picot")


def of(design: Design, block: str) -> list[Cue]:
    return [cue for cue in cues(plan_piece(design)) if cue.block == block]


def test_the_start_on_waste_yarn() -> None:
    start, *_ = cues(plan_piece(PLAIN))
    said = " ".join(start.before)
    assert "Cast on 12 stitches with waste yarn" in said
    assert "closed edge" not in said
    assert said.index("Cast on") < said.index("8 rows of waste yarn") < said.index("ravel cord") < said.index("Thread Chalk")
    assert "the yarn of the cast-on" not in said


def test_the_fold_is_one_loose_row_and_the_tension_goes_back() -> None:
    fold = of(PLAIN, "hem-bottom-facing")[-1]
    assert (fold.rows, fold.knit) == (1, "Knit 1 row to the left.")
    assert fold.before[0].startswith("The next row is the fold")
    assert fold.before[1] == "Set the tension, T, to 10."
    assert "Set the tension, T, to 7." in of(PLAIN, "hem-bottom")[0].before


def test_a_picot_names_its_needles_and_where_they_stay() -> None:
    change = of(PICOT, "hem-bottom")[0]
    assert change.before[:3] == (
        "Move the stitch of every second needle to its neighbour on the left: "
        "L5 to L6, L3 to L4 and so on, the last one R6 to R5.",
        "6 needles are empty now and stay in WP.",
        "R7, at the right end, keeps its own stitch.",
    )
    assert change.check == "6 needles are empty and in WP, never two side by side."


@pytest.mark.parametrize("design", [PLAIN, PICOT], ids=["plain", "picot"])
def test_hanging_says_which_loops_go_where(design: Design) -> None:
    bottom, top = of(design, "base-bottom")[0], of(design, "hem-top-facing-close")[0]
    assert any("the first row of Chalk" in line and "ravel cord" in line for line in bottom.before)
    assert any("the marked row" in line for line in top.before)
    for cue in (bottom, top):
        assert "Take the weights off." in cue.before
        assert any(line.startswith("Skip no loop") for line in cue.before)
        assert cue.check.startswith("Each needle carries two loops")
    (mark,) = [line for line in of(design, "hem-top")[0].before if "Mark the last row" in line]
    assert "both ends" in mark


@pytest.mark.parametrize("design", [PLAIN, PICOT], ids=["plain", "picot"])
def test_the_caution_stands_where_loops_are_lifted_by_hand(design: Design) -> None:
    plan = plan_piece(design)
    for cue in cues(plan):
        by_hand = any(isinstance(step, Hang | Transfer) for step in plan.steps[cue.first_step : cue.last_step + 1])
        assert any("Hooks and latches are sharp" in line for line in cue.before) == by_hand


@pytest.mark.parametrize("design", [PLAIN, PICOT], ids=["plain", "picot"])
def test_every_cue_of_a_hem_says_where_it_is_and_what_is_next(design: Design) -> None:
    found = cues(plan_piece(design))
    for one, after in pairwise(found):
        assert one.where.startswith(("COL. RC ", "COR. RC "))
        assert one.next.startswith("Next: ")
        if not after.block.startswith("b") and after.kind == "block-change":
            assert "the change to " in one.next
        if one.kind == "hem":
            assert (one.carriage_after == one.bed.carriage) == (one.rows % 2 == 0)


def test_the_written_pattern_adds_up() -> None:
    """12 stitches at 14 and 24 rows at 19 per 10 cm; 4 base rows and twice 4 rows of hem add 63 mm to 126 mm."""
    plan = plan_piece(PLAIN)
    written = {section.key: section for section in instructions(plan, replay_plan(plan)).sections}
    assert (
        written["piece"].sentences[0] == "Finished size 8.6 cm (3 3/8 in) wide, 18.9 cm (7 1/2 in) high, with base rows and hems."
    )
    assert written["piece"].sentences[1].startswith("The picture is 8.6 cm (3 3/8 in) wide and 12.6 cm")
    assert "Plain hem at the bottom: 2.1 cm (7/8 in), 4 rows outside and 4 of facing" in written["piece"].sentences[2]
    assert written["finish"].sentences[0].startswith("Pull the ravel cord out")
    assert any("18.9 cm" in words for words in written["finish"].sentences)
    for key in ("hem-bottom-facing", "hem-bottom", "hem-top", "hem-top-facing", "hem-top-facing-close"):
        assert written[key].sentences[-1].startswith("Next: ")
    assert any(
        words.startswith("The next row is the fold") and "knit 1 row" in words for words in written["hem-bottom-facing"].sentences
    )


def test_side_hems_are_finishing() -> None:
    """28 rows at 14 x 19 are 20.6 stitches; 4 rows of an end hem are 2.9 stitches wide."""
    plan = plan_piece(hemmed(diamond(12, 24), bottom="plain", sides="picot"))
    finish = next(s for s in instructions(plan, replay_plan(plan)).sections if s.key == "finish").sentences
    said = " ".join(finish)
    assert "21 stitches over 28 rows, about 3 for every 4 rows" in said
    assert "At the bottom hem hang 3 stitches more, through both layers." in said
    assert "At the top hem" not in said
    assert f"Both side hems together are {2 * 24 * 8} stitches" in said
    order = [
        next(i for i, words in enumerate(finish) if key in words)
        for key in ("Treat it", "Side hems", "Work in", "Wash", "Block it")
    ]
    assert order == sorted(order)


def test_loops_moved_and_hung_in_a_plan_of_ones_own() -> None:
    """Single loops, as in linking a border, and moves that are no picot: said needle by needle."""
    steps: list[Step] = [Thread("a"), Knit("L", 1, "b1", 1), Hang((-3,)), Transfer(1, 2), Transfer(-1, -2), Knit("R", 2, "b1", 2)]
    plan = Plan(
        diamond(24, 24),
        -3,
        3,
        Start("R", (-3, 3)),
        Edges(base_rows_bottom=0, base_rows_top=0),
        (Block("b1", "a", "", 0, len(steps) - 1),),
        tuple(steps),
        Summary(24, 24, 0, 0, 0, 0, 0),
    )
    cue = next(cue for cue in cues(plan) if cue.before and cue.rows)
    assert cue.before[:3] == (
        "Hang one loop of the earlier row on L3, beside its own stitch.",
        "Move the loop of R1 to R2; R1 stays empty in WP.",
        "Move the loop of L1 to L2; L1 stays empty in WP.",
    )
    assert cue.check == "L3 carries one loop again."
