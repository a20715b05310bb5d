"""Cutting a design into panels: beside blocks where a border stands upright, through the fewest where none does."""

from __future__ import annotations

from fractions import Fraction
from functools import partial
from itertools import pairwise

import pytest

import working
from wedgework.calculators.panel_cuts import best_cuts, equal_cuts, inside
from wedgework.calculators.panel_design import YARNS
from wedgework.calculators.panels import CALCULATOR
from wedgework.declare import work_out
from wedgework.layout.grid import Cells, Grid
from wedgework.layout.library import LAYOUTS, named
from wedgework.layout.picture import paint

F = Fraction


def grid(*turns: str) -> Grid:
    """Each turn as letters, one a stitch, from the lowest; equal neighbours are one run."""
    rows = []
    for letters in turns:
        cells, first = [], 0
        for i in range(1, len(letters) + 1):
            if i == len(letters) or letters[i] != letters[first]:
                cells.append(Cells(first, i - 1, ord(letters[first]), letters[first]))
                first = i
        rows.append(tuple(cells))
    return Grid(len(turns[0]), tuple(rows))


result = partial(working.result, CALCULATOR)


def test_what_lies_at_each_place_is_counted() -> None:
    columns = inside(grid("aabb", "aabb", "abbb", "cccc"))
    assert columns.inside == (0, 3, 2, 4, 0)
    # after stitch 1: a, then (a border) c; after 2: b in the third turn, c; after 3: b, c
    assert columns.blocks == (0, 2, 2, 2, 0)


def test_an_upright_border_is_followed() -> None:
    columns = inside(grid(*["aaaaaabbbbbb" + "c" * 8] * 10))
    (cut,) = best_cuts(columns, 2, [20, 20]) or ()
    assert (cut.after, cut.turns_inside, cut.blocks) == (12, 0, 0)
    assert [one.turns_inside for one in equal_cuts(columns, 2)] == [10]


def test_no_cut_in_reach_is_none() -> None:
    columns = inside(grid("a" * 20))
    assert best_cuts(columns, 2, [9, 9]) is None
    assert [cut.after for cut in best_cuts(columns, 2, [10, 10]) or ()] == [10]


@pytest.mark.parametrize("layout", [layout.name for layout in LAYOUTS])
@pytest.mark.parametrize("seam", ["none", "half", "one"])
def test_every_layout_is_cut_into_panels_that_fit(layout: str, seam: str) -> None:
    found = result(layout=layout, seam_stitches=seam, width="120", height="80", bed_needles="80").values
    each = {"none": F(0), "half": F(1, 2), "one": F(1)}[seam]
    spans = [(one["from"], one["to"]) for one in found["design_stitches"]]
    assert (spans[0][0], spans[-1][1]) == (1, 168)
    assert all(b[0] == a[1] + 1 for a, b in pairwise(spans))
    last = len(spans) - 1
    for i, ((first, end), needles) in enumerate(zip(spans, found["panel_needles"], strict=True)):
        hidden = each * ((i > 0) + (i < last))
        assert needles <= 80
        assert 0 <= needles - hidden - (end - first + 1) < 1
    blocks = sum(cut["blocks_cut"] for cut in found["cuts"])
    assert blocks <= _if_equal(layout, len(found["cuts"]) + 1), "never through more blocks than equal panels"


def _if_equal(layout: str, panels: int) -> int:
    declared = named(layout)
    assert declared is not None
    columns = inside(paint(declared.shapes({}, list(YARNS), 168, 152), 168, 152))
    return sum(cut.blocks for cut in equal_cuts(columns, panels))


def test_no_design_is_as_it_was() -> None:
    assert result().values == result(layout="none").values
    assert "cuts" not in result().values


def test_a_design_has_the_same_joins() -> None:
    assert result(layout="kites", panels="5").values["joins"] == result(panels="5").values["joins"]


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ({"layout": "kites", "panels": "2"}, [("panels", "panels.design-no-cut")]),
        ({"layout": "kites", "width": "1000", "stitches_per_10cm": "40"}, [("width", "panels.design-too-wide")]),
        ({"layout": "diamond-lattice", "across": "100"}, [("across", "declare.out-of-range")]),
    ],
)
def test_what_cannot_be_cut(typed: dict[str, str], expected: list[tuple[str, str]]) -> None:
    problems = work_out(CALCULATOR, typed).problems
    assert [(p.where, p.code) for p in problems] == expected
    assert all(p.way_out for p in problems)
