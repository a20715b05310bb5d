"""The practice piece against another library for areas and against plain trigonometry."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from shapely.geometry import Polygon
from shapely.ops import unary_union

from pieces import diamond, drawn, lopsided, piece
from wedgework.formats.design import Design
from wedgework.layout import drawn_layout, resolve
from wedgework.layout.grid import Grid
from wedgework.plan import plan_piece
from wedgework.practice import kinds_of
from wedgework.practice.cuts import Window, cut, scaled
from wedgework.practice.cuts import drawn as polygons
from wedgework.replay import replay_plan


def cells(grid: Grid, yarn: str) -> int:
    return sum(run.last - run.first + 1 for turn in grid.turns for run in turn if run.yarn == yarn)


def picture(design: Design, needles: int, rows: int) -> Grid:
    return scaled(drawn_layout(design, resolve(design)), needles, rows, 0)


@pytest.mark.parametrize("design", [diamond(), lopsided()], ids=["diamond", "harbour"])
def test_polygons_of_a_window_have_the_area_of_its_cells(design: Design) -> None:
    """Areas by the library shapely (GEOS)."""
    sizes = resolve(design)
    grid = cut(picture(design, sizes.needles, sizes.rows), Window(9, 5, 26, 30))
    layout = polygons(grid)
    for yarn in {shape.yarn for shape in layout.shapes}:
        own = [Polygon([(float(x), float(y)) for x, y in shape.points]) for shape in layout.shapes if shape.yarn == yarn]
        assert all(one.is_valid for one in own)
        area = unary_union(own).area
        assert area == pytest.approx(sum(one.area for one in own)), "none lies on another"
        assert area * 26 * 30 == pytest.approx(cells(grid, yarn), abs=1e-3)


@pytest.mark.parametrize("needles", [20, 24, 30])
def test_a_smaller_picture_has_the_same_parts(needles: int) -> None:
    """A diamond from edge to edge covers half of its panel (Euclid I.41), on however few needles, within its stair of cells."""
    grid = picture(diamond(), needles, 2 * needles)
    assert abs(Fraction(cells(grid, "b"), needles * needles) - Fraction(1, 2)) <= Fraction(2, needles)


@pytest.mark.parametrize(
    ("degrees", "kind"),
    [(60, "steep"), (45, "mixed"), (20, "shallow")],
)
def test_the_angle_of_an_edge_says_its_kind(degrees: int, kind: str) -> None:
    """By the tangent: an edge at an angle a to the row moves (2 rows / row gauge) / tan(a) x stitch gauge needles a turn,
    or 0.85, 1.47 and 4.05 at 14 x 19. Less than one can only be one needle now and then; between one and two both come."""
    a_turn = 2 / 19 / math.tan(math.radians(degrees)) * 14
    needles = 40
    rows = 2 * round(needles / a_turn)
    design = piece(drawn("a", ("b", [(0, 0), (1, 0), (0, 1)])), needles, rows)
    plan = plan_piece(design)
    found = {each for each in kinds_of(plan, replay_plan(plan)) if each.startswith("edge") and "level" not in each}
    assert found == {f"edge-left-narrowing-{kind}", f"edge-right-widening-{kind}"}
