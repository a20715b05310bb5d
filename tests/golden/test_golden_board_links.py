"""Links of the layout board that were made once are opened forever, and hold the same design."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from goldens import Goldens
from pieces import lopsided
from wedgework.board import surface
from wedgework.faces.link import BOARD, make_design_link, read_link
from wedgework.formats import read_design, write_design

FILE = Path(__file__).parent / "links" / "boards.json"
OLD = json.loads(FILE.read_text(encoding="utf-8")) if FILE.exists() else []


@pytest.mark.parametrize("old", OLD, ids=lambda old: old["fragment"][:16])
def test_an_old_link_opens_as_it_did(old: dict) -> None:
    opened = read_link(old["fragment"])
    assert opened.slug == BOARD
    assert read_design(opened.inputs["design"]) == read_design(json.dumps(old["design"]))


def test_a_link_is_kept(golden: Goldens) -> None:
    """The file is only added to: WEDGEWORK_ACCEPT=1 makes its first link."""
    if golden.accept and not OLD:
        design = surface(lopsided()).design
        OLD.append({"fragment": make_design_link(design), "design": json.loads(write_design(design))})
        FILE.write_text(json.dumps(OLD, ensure_ascii=False, indent=1) + "\n", encoding="utf-8", newline="\n")
    assert OLD, "WEDGEWORK_ACCEPT=1 adds a link of today"
