"""Laws of the practice piece: small, sound, and with everything that the whole asks for, or with a word about what it lacks."""

from __future__ import annotations

import pytest

from pieces import diamond, drawn, lopsided, piece
from wedgework.formats import read_design, write_design
from wedgework.formats.design import Design, NamedLayout
from wedgework.layout import resolve
from wedgework.layout.library import LAYOUTS
from wedgework.plan import plan_piece
from wedgework.practice import kinds_of, practice, practice_piece
from wedgework.replay import replay_plan

DESIGNS = {layout.name: piece(NamedLayout(layout.name), 90, 160) for layout in LAYOUTS} | {"harbour": lopsided()}


def kinds(design: Design) -> set[str]:
    plan = plan_piece(design)
    return set(kinds_of(plan, replay_plan(plan)))


# Each takes seconds: every third in `make test`, all the others in `make long`.
NAMES = [pytest.param(name, marks=() if k % 3 == 0 else pytest.mark.long) for k, name in enumerate(DESIGNS)]


@pytest.mark.parametrize("name", NAMES)
def test_it_shows_every_kind_of_the_whole_or_says_which_not(name: str) -> None:
    design = DESIGNS[name]
    found = practice(design)
    whole = kinds(design)
    # It says the truth about itself, by a plan that knows nothing of how it was found.
    plan = plan_piece(found.design)
    judged = replay_plan(plan)
    assert judged.problems == ()
    assert set(found.shows) == whole & set(kinds_of(plan, judged))
    assert set(found.lacks) == whole - set(found.shows)
    assert len(found.lacks) <= 1, "nearly everything can be practised"
    assert len(found.reasons) == len(found.lacks)
    assert all(reason in found.design.notes for reason in found.reasons)
    # Sound: closed wherever the whole is.
    assert not judged.summary.holes
    assert judged.joined or "join-slit" in whole
    # Small, of the same stuff, and a file of its own.
    sizes = resolve(found.design)
    assert sizes.needles <= 30
    assert sizes.needles * sizes.rows < resolve(design).needles * resolve(design).rows
    same = ("bed", "gauge", "yarns", "permission")
    assert all(getattr(found.design, key) == getattr(design, key) for key in same)
    assert read_design(write_design(found.design)) == found.design


def test_the_same_design_gives_the_same_piece() -> None:
    assert practice_piece(diamond()) == practice_piece(diamond())


def test_a_piece_that_is_small_already_stays_as_it_is_or_shrinks() -> None:
    found = practice(piece(NamedLayout("diamond-in-corners"), 16, 32))
    assert resolve(found.design).needles <= 16
    assert not found.lacks


def test_a_piece_of_crumbs_is_its_own_sample() -> None:
    """Columns of one needle: more blocks than a sample has, and none of them can be left out."""
    columns = [
        ("b", [(f"0.{i:04}", 0), (f"0.{i + 625:04}", 0), (f"0.{i + 625:04}", 1), (f"0.{i:04}", 1)]) for i in range(0, 9999, 1250)
    ]
    found = practice(piece(drawn("a", *columns), 16, 8))
    assert "the whole piece" in found.design.notes
    assert found.lacks == ()
    assert resolve(found.design).needles == 16


def test_wishes_for_the_order_of_the_whole_are_left_out() -> None:
    found = practice_piece(piece(NamedLayout("steps"), 40, 80, merge_below=30))
    assert found.options.order == ()
    assert found.options.merge_below == 0
    assert found.title == "Practice: Test piece"
