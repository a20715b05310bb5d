"""What a common judge of pages says of ours: nothing to mend in accessibility and in best practices."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.serve import serving
from lighthouse import reports

CATEGORIES = ["accessibility", "best-practices"]
# Each page takes a third of a minute; axe looks at every one (test_in_browser.py).
MAIN = ["", "plan/", "machine/"]
OTHERS = ["calculators/gauge/", "board/", "class/", "de/plan/"]


@pytest.mark.parametrize("pages", [pytest.param(MAIN, id="main"), pytest.param(OTHERS, id="others", marks=pytest.mark.long)])
def test_nothing_is_found_wanting(pages: list[str], served: str) -> None:
    found = reports([served + address for address in pages], CATEGORIES)
    wrong = {address: one.wrong for address, one in zip(pages, found, strict=True) if one.wrong}
    assert [one.scores for one in found] == [dict.fromkeys(CATEGORIES, 1)] * len(pages), wrong


@pytest.mark.long
def test_it_can_find_something_wanting(tmp_path: Path) -> None:
    (tmp_path / "index.html").write_text("<!doctype html><title>x</title><img src=x.svg><input>", encoding="utf-8")
    with serving(tmp_path) as address:
        (found,) = reports([address], CATEGORIES)
    assert found.scores["accessibility"] < 1
    assert any("image-alt" in line for line in found.wrong)
