"""Links are short enough to be sent: any named layout under 300 characters, a usual design under 600.

What stands behind the ``#`` is counted: the place of a copy is its own affair.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from wedgework.calculators.drawing_field import typed_of
from wedgework.draw.qr import MOST_BYTES
from wedgework.faces.class_link import make_class_link
from wedgework.faces.link import make_design_link, make_link
from wedgework.formats import read_class, read_design
from wedgework.formats.design import DrawnLayout
from wedgework.layout import is_shaped
from wedgework.layout.library import LAYOUTS

PAGES = Path(__file__).resolve().parents[2] / "site" / "pages"
PLACE = "https://knitters.example/wedgework/"
USUAL = {
    "title": "Blanket for the window seat",
    **{"stitches_per_10cm": "14.25", "rows_per_10cm": "19.5", "width": "81 cm", "height": "109 cm"},
    **{"yarn_1_name": "Oat", "yarn_1_colour": "#e9dfc7", "yarn_2_name": "Pine", "yarn_2_colour": "#2f4d43"},
}


@pytest.mark.parametrize("layout", LAYOUTS, ids=lambda layout: layout.name)
def test_a_named_layout(layout) -> None:
    """With a title, size, gauge and yarns of one's own, and the digest of its steps."""
    assert len(make_link("panel-plan", {**USUAL, "layout": layout.name}, "0123456789ab")) < 300


@pytest.mark.skipif(not PAGES.is_dir(), reason="the pages are not here: the wheel is tested without them")
def test_usual_designs() -> None:
    """Every piece on the pages, as the layout board shares it and as the planner does, which says again what its form asks.

    A shaped piece has a gap for each wedge: that is no usual design, but its link is hardly longer.
    """
    files = sorted((PAGES / "pieces").glob("*.json"))
    assert len(files) >= 8
    for file in files:
        design = read_design(file.read_text(encoding="utf-8"))
        drawn = isinstance(design.layout, DrawnLayout)
        most = 700 if is_shaped(design) else 600
        assert len(make_design_link(design)) < most, file.stem
        assert len(make_link("panel-plan", typed_of(design), "0123456789ab")) < most + 100 * drawn, file.stem


@pytest.mark.skipif(not PAGES.is_dir(), reason="the pages are not here: the wheel is tested without them")
def test_the_class_that_is_shown_fits_a_code() -> None:
    found = read_class((PAGES / "classes" / "guild-evening.json").read_text(encoding="utf-8"))
    assert len(f"{PLACE}class/#{make_class_link(found)}") <= MOST_BYTES
