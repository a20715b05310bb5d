"""What the list of finishing says of panels and of an edging."""

from __future__ import annotations

from dataclasses import replace

import pytest

from pieces import diamond
from wedgework.formats.design import Design, Edging, Part
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan
from wedgework.words import cue_value, cues
from wedgework.words.finish_cues import finishing_cues
from wedgework.words.finishing import finish_list
from wedgework.words.instructions import instructions
from wedgework.words.joining import join_sentences


def finishing(design: Design) -> tuple[str, ...]:
    plan = plan_piece(design)
    return next(s.sentences for s in instructions(plan, replay_plan(plan)).sections if s.key == "finish")


def test_a_middle_panel_is_sewn_at_both_edges() -> None:
    whole = diamond()
    said = finishing(replace(whole, panel=replace(whole.panel, part=Part(2, 3, 17, 32, 1, 1))))
    blocked = next(i for i, words in enumerate(said) if words.startswith("Block panel 2 to 12.9 cm"))
    seams = said[blocked + 1 : blocked + 6]
    assert seams[0] == "When all 3 panels are off the machine, sew them together, the knit sides toward you."
    assert "left edge of this panel, seen from the front, goes to panel 1" in seams[1]
    assert "right edge of this panel, seen from the front, goes to panel 3" in seams[2]
    assert seams[2].endswith("the seam takes 1 stitch of it.")
    assert "Work in" in " ".join(said[:blocked]), "ends are hidden before the seam covers them"
    assert said[-2].startswith("Block it to 34.3 cm"), "the whole: 48 stitches at 14 to 10 cm"


def test_an_outer_panel_is_sewn_at_one() -> None:
    whole = diamond()
    said = " ".join(finishing(replace(whole, panel=replace(whole.panel, part=Part(1, 2, 1, 24, 0, 1)))))
    assert "The right edge" in said
    assert "The left edge" not in said


def test_neighbours_are_named() -> None:
    assert join_sentences(5) == (
        "Sew panel 1 to panel 2.",
        "Sew panel 3 to panel 4.",
        "Sew panels 1 and 2 to panels 3 and 4.",
        "Sew panels 1 to 4 to panel 5.",
    )
    assert join_sentences(1) == ()


@pytest.mark.parametrize(
    ("along", "first", "last"),
    [
        ("all", "Edging all round, 5.7 cm", "graft it to the first one."),
        ("sides", "Edging along each side, 5.7 cm", "Bind off, and hide the ends in the strip."),
        ("ends", "Edging along bottom and top, 5.7 cm", "Bind off, and hide the ends in the strip."),
    ],
)
def test_an_edging_in_order(along: str, first: str, last: str) -> None:
    said = finishing(replace(diamond(), edging=Edging(along, 8)))  # type: ignore[arg-type]
    start = next(i for i, words in enumerate(said) if words.startswith("Edging"))
    assert said[start].startswith(first)
    assert said[start + 1].startswith("Every 2 rows, while the carriage is away from the piece")
    end = next(i for i, words in enumerate(said) if words.endswith(last))
    assert end > start + 1
    assert said[end + 1].startswith("The edging is ")
    assert any("At each corner knit 18 rows more" in words for words in said) == (along == "all")


def test_the_machine_page_goes_on_with_the_finishing() -> None:
    """Every sentence of the list once, in order, a few at a time, with nothing on the bed."""
    plan = plan_piece(replace(diamond(), edging=Edging("all", 8)))
    judged = replay_plan(plan)
    last = cue_value(cues(plan)[-1])
    found = finishing_cues(last, finish_list(plan, judged))
    told = [words for cue in found for words in cue["before"]]  # type: ignore[attr-defined]
    assert told == list(finish_list(plan, judged))
    assert [cue["index"] for cue in found] == [len(cues(plan)) + i for i in range(len(found))]
    assert all(0 < len(cue["before"]) <= 3 for cue in found)  # type: ignore[arg-type]
    assert {(cue["kind"], cue["row_after"], cue["rows"]) for cue in found} == {("finish", last["row_after"], 0)}
    assert all(cue["bed"]["knitting"] == [] for cue in found)  # type: ignore[index]
    assert found[0]["block_name"] == f"Finishing, 1 of {len(found)}"
    assert found[-1]["next"] == "That is all."
