"""Panels against published sizes, and against geometry of a reference library."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

import pytest
from shapely.geometry import LineString, Polygon, box
from shapely.ops import unary_union

import working
from wedgework.calculators.panels import CALCULATOR
from wedgework.declare import work_out
from wedgework.layout.library import named

INCH = Fraction("25.4")


values = partial(working.values, CALCULATOR)


def test_a_charity_afghan_across() -> None:
    """Published: 49 x 63 in of 7 sections across, 35 stitches each at 5 per inch, joined edge to edge."""
    found = values(
        width="49 in",
        height="63 in",
        stitches_per_10cm=str(float(500 / INCH)),
        panels="7",
        seam_stitches="none",
        bed_needles="200",
    )
    assert found["needles_per_panel"] == 35
    assert float(found["width_mm"]) == pytest.approx(float(49 * INCH), rel=1e-9)


@pytest.mark.parametrize(("needles", "panels"), [("200", 2), ("110", 3), ("180", 2), ("250", 2), ("100", 4)])
def test_a_king_size_blanket_on_usual_beds(needles: str, panels: int) -> None:
    """US household list: 108 x 100 in. At 11 stitches per 10 cm that is 301.8 stitches; beds by common practice, no source."""
    assert values(width="108 in", height="100 in", stitches_per_10cm="11", bed_needles=needles)["panels"] == panels


@pytest.mark.parametrize("seam", ["none", "half", "one"])
@pytest.mark.parametrize("panels", [3, 4, 7])
def test_overlapping_strips_cover_the_width(seam: str, panels: int) -> None:
    """Against shapely: strips of the knitted width laid so that each pair overlaps by what a seam hides cover what is said."""
    found = values(panels=str(panels), seam_stitches=seam)
    stitch, hidden = 100 / 14, {"none": 0.0, "half": 0.5, "one": 1.0}[seam]
    wide = int(str(found["needles_per_panel"])) * stitch
    step = wide - 2 * hidden * stitch
    covered = unary_union([box(i * step, 0, i * step + wide, 100) for i in range(panels)])
    minx, _, maxx, _ = covered.bounds
    assert maxx - minx == pytest.approx(float(found["width_mm"]), abs=1e-6)


def test_the_rule_of_a_published_count_of_sections() -> None:
    """The same afghan: 63 in of sections 9 in high are 7 of them, 49 in all; a join of 7 across has 6 seams."""
    assert values(width="49 in", panels="7", bed_needles="200")["seams"] == 6


def test_a_machine_knitted_checkerboard() -> None:
    """A published machine-knitted blanket: 4 stitches to an inch, 6 panels of 5 in make 30 in; each has 21 stitches, which allows
    for half a stitch in each join."""
    found = values(
        width="30 in",
        height="40 in",
        stitches_per_10cm=str(float(400 / INCH)),
        rows_per_10cm=str(float(575 / INCH)),
        panels="6",
        seam_stitches="half",
    )
    assert found["needles_per_panel"] == 21


@pytest.mark.parametrize("layout", ["diamond-lattice", "hexagons", "half-square-triangles"])
def test_a_cut_runs_inside_blocks_as_shapely_measures_it(layout: str) -> None:
    """Against shapely: the height over which a cut lies inside one block or another, and the blocks that it parts."""
    answer = work_out(CALCULATOR, {"layout": layout, "width": "120", "height": "80", "bed_needles": "90"})
    assert answer.result is not None
    needles, rows = 168, 152
    declared = named(layout)
    assert declared is not None
    drawn = declared.shapes({}, ["a", "b", "c"], needles, rows)
    visible: list[Polygon] = []
    background = box(0, 0, needles, rows)
    for shape in drawn.shapes:
        polygon = Polygon([(float(x) * needles, float(y) * rows) for x, y in shape.points]).intersection(box(0, 0, needles, rows))
        visible = [one.difference(polygon) for one in visible]
        background = background.difference(polygon)
        visible.append(polygon)
    for cut in answer.result.values["cuts"]:
        line = LineString([(cut["after_stitch"], 0), (cut["after_stitch"], rows)])
        inside = sum(one.intersection(line).length for one in [*visible, background])
        assert float(cut["inside_percent"]) == pytest.approx(100 * inside / rows, abs=8)
