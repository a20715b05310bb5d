"""The gallery: finished examples that are sound, and links that open just these pieces."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from builder.parts import GALLERY, PIECES, gallery
from wedgework.calculators import panel_plan, written_pattern
from wedgework.declare import work_out
from wedgework.faces.link import read_link
from wedgework.formats import read_design, steps_digest
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan

SHOWN = gallery("")
CALCULATORS = {"plan": panel_plan.CALCULATOR, "written-pattern": written_pattern.CALCULATOR}


def test_there_are_enough_examples_and_each_is_shown() -> None:
    assert len(GALLERY) >= 8
    assert all(f'id="{name}"' in SHOWN for name in GALLERY)
    assert SHOWN.count("<svg") == len(GALLERY)


@pytest.mark.parametrize("name", GALLERY)
def test_an_example_is_sound_and_says_what_it_is(name: str) -> None:
    design = read_design((PIECES / f"{name}.json").read_text(encoding="utf-8"))
    judged = replay_plan(plan_piece(design))
    assert judged.sound
    assert judged.warnings == ()
    assert len(design.notes) > 30


@pytest.mark.parametrize("name", GALLERY)
def test_its_links_open_the_same_piece(name: str) -> None:
    digest = steps_digest(plan_piece(read_design((PIECES / f"{name}.json").read_text(encoding="utf-8"))).steps)
    section = SHOWN.split(f'id="{name}"', 1)[1].split("</section>", 1)[0]
    found = re.findall(r'href="\.\./(?:calculators/)?([a-z-]+)/#([^"]+)"', section)
    assert [page for page, _ in found] == ["plan", "written-pattern"]
    for page, fragment in found:
        opened = read_link(fragment)
        assert opened.digest == digest
        answer = work_out(CALCULATORS[page], opened.inputs)
        assert answer.result is not None, answer.problems
        assert answer.result.values["steps_digest"] == digest


def test_no_name_of_another_goes_with_them() -> None:
    """Yarns and titles are words for things, of our own invention: no brand, no person."""
    for name in GALLERY:
        text = (PIECES / f"{name}.json").read_text(encoding="utf-8")
        assert "author" not in text
        assert "://" not in text


def test_the_files_lie_where_the_page_says(built: Path) -> None:
    assert all((built / "pieces" / f"{name}.json").is_file() for name in GALLERY)
