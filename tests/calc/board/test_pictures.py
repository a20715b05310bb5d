"""Letters and coloured cells that become drawings."""

from __future__ import annotations

import pytest

from pieces import drawn, letters_of, piece
from wedgework.board import from_cells, from_letters
from wedgework.formats import read_design, write_design
from wedgework.formats.design import Design
from wedgework.layout import grid_of, resolve
from wedgework.plan import plan_piece
from wedgework.problems import Refused
from wedgework.replay import replay_plan

SHEET = piece(drawn("a"), 8, 12)
COLOURS = ["#efe8d8", "#3f5566", "#b4533f"]
KITE = "aaaabaaa\naaabbbaa\naabbbbba\nabbbbbbb\naabbbbba\naaaabaaa"


def letters(design: Design) -> list[str]:
    return letters_of(grid_of(design, resolve(design)))


def test_letters_make_the_sheet_as_large_as_they_are() -> None:
    design = from_letters(SHEET, "\n  aabb  \n  abbb  \n\n")
    assert (resolve(design).needles, resolve(design).rows) == (4, 4)
    assert letters(design) == ["aabb", "abbb"]
    assert read_design(write_design(design)) == design


def test_letters_beyond_the_yarns_get_yarns_of_their_own() -> None:
    design = from_letters(SHEET, "ABCDE\nabcde\nabcde")
    assert [yarn.id for yarn in design.yarns] == ["a", "b", "c", "yarn-4", "yarn-5"]
    assert len({yarn.colour for yarn in design.yarns}) == 5


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", "board.letters-none"),
        ("\n \n", "board.letters-none"),
        ("aab\nab", "board.letters-length"),
        ("a1b\nabb", "board.letters-strange"),
        ("a\nb", "board.letters-narrow"),
        ("aa\n" * 3000, "board.letters-none"),
    ],
)
def test_what_is_no_picture_is_refused(text: str, code: str) -> None:
    with pytest.raises(Refused) as refused:
        from_letters(SHEET, text)
    assert code in [problem.code for problem in refused.value.problems]
    assert all(problem.way_out for problem in refused.value.problems)


def test_a_sheet_too_wide_for_the_bed_is_refused() -> None:
    with pytest.raises(Refused) as refused:
        from_letters(SHEET, "ab" * 150 + "\n" + "ab" * 150)
    assert refused.value.problems[0].code == "layout.too-wide"


def test_cells_come_back_as_they_were_and_can_be_knitted() -> None:
    design = from_cells(SHEET, COLOURS[:2], KITE)
    assert letters(design) == KITE.split("\n")
    assert [yarn.colour for yarn in design.yarns] == COLOURS[:2]
    assert replay_plan(plan_piece(design)).summary.dropped == 0


def test_single_cells_are_cleaned_away() -> None:
    dirty = KITE.replace("aaaabaaa\naaabb", "acaabaaa\naaabb", 1)
    design = from_cells(SHEET, COLOURS, dirty, least=6)
    assert letters(design)[0] == "aaaabaaa"


@pytest.mark.parametrize(
    ("colours", "cells", "straighten"),
    [
        (COLOURS[:2], "aaaa\nbbbb", 0),
        (COLOURS[:2], KITE.replace("b", "z"), 0),
        ([], KITE, 0),
        (["red", "#3f5566"], KITE, 0),
        (COLOURS[:2], KITE, 9),
        (COLOURS * 9, KITE, 0),
    ],
)
def test_cells_that_do_not_fit_are_refused(colours: list[str], cells: str, straighten: int) -> None:
    with pytest.raises(Refused) as refused:
        from_cells(SHEET, colours, cells, 0, straighten)
    assert refused.value.problems[0].code == "board.cells"
