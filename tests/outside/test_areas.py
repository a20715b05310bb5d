"""Shapely judges the grid: areas of polygons against counted cells, points against cells.

Source: shapely (GEOS), a general-purpose geometry library; nothing of ours computes the expected figures.
"""

from __future__ import annotations

import random
from fractions import Fraction

import pytest
import shapely

from pieces import drawn, piece, points
from wedgework.formats.design import DrawnLayout, NamedLayout, Shape
from wedgework.layout import drawn_layout, resolve
from wedgework.layout.checks import crossing
from wedgework.layout.library import LAYOUTS
from wedgework.layout.picture import paint
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan


def polygon(shape: Shape) -> shapely.Polygon:
    return shapely.Polygon(
        [(float(x), float(y)) for x, y in shape.points], [[(float(x), float(y)) for x, y in hole] for hole in shape.holes]
    )


def yarn_areas(layout: DrawnLayout) -> dict[str, shapely.Geometry]:
    """What is left of every yarn on the panel when later shapes lie on top."""
    panel = shapely.box(0, 0, 1, 1)
    left: dict[str, shapely.Geometry] = {layout.background: panel}
    for shape in layout.shapes:
        here = polygon(shape).intersection(panel)
        left = {yarn: area.difference(here) for yarn, area in left.items()}
        left[shape.yarn] = left.get(shape.yarn, shapely.Polygon()).union(here)
    return left


def random_shapes(seed: int) -> DrawnLayout:
    rnd = random.Random(seed)
    shapes = []
    while len(shapes) < 4:
        ring = tuple(
            (Fraction(rnd.randint(-20, 120), 100), Fraction(rnd.randint(-20, 120), 100)) for _ in range(rnd.choice((3, 4, 5)))
        )
        if crossing(ring) is None and polygon(Shape("a", ring)).is_valid and polygon(Shape("a", ring)).area > 0.01:
            shapes.append(Shape(rnd.choice("abc"), ring))
    return DrawnLayout("a", tuple(shapes))


@pytest.mark.parametrize("seed", range(25))
def test_every_cell_has_the_yarn_of_the_polygon_at_its_centre(seed: int) -> None:
    layout = random_shapes(seed)
    needles, rows = 37, 54
    shapes = [polygon(shape) for shape in layout.shapes]
    for turn, cells in enumerate(paint(layout, needles, rows).turns):
        for run in cells:
            for column in (run.first, run.last):
                centre = shapely.Point((2 * column + 1) / (2 * needles), (2 * turn + 1) / rows)
                near = [i for i, shape in enumerate(shapes) if shape.boundary.distance(centre) < 1e-9]
                covering = [i for i, shape in enumerate(shapes) if shape.covers(centre)]
                if not near:  # floating point cannot say on which side of a border a centre on it lies
                    assert run.shape == (covering[-1] if covering else -1)


@pytest.mark.parametrize("seed", range(12))
def test_stitches_of_each_yarn_agree_with_the_areas(seed: int) -> None:
    """Within the stitches that lie on borders: for each yarn its border length in needles and rows, on both sides of it."""
    layout = random_shapes(100 + seed)
    needles, rows = 60, 120
    judged = replay_plan(plan_piece(piece(layout, needles, rows)))
    for yarn, area in yarn_areas(layout).items():
        outline = shapely.affinity.scale(area, needles, rows, origin=(0, 0)).boundary
        counted = judged.stitches.get(yarn, 0)
        # An edge moves by steps of one needle and two rows; a stitch may lie one needle or three rows beside its region.
        allowed = 1.5 * outline.length + 3
        assert abs(counted - area.area * needles * rows) <= allowed


@pytest.mark.parametrize("layout", LAYOUTS, ids=lambda layout: layout.name)
def test_named_layouts_agree_closely(layout: object) -> None:
    design = piece(NamedLayout(layout.name), 100, 240)  # type: ignore[attr-defined]
    judged = replay_plan(plan_piece(design))
    for yarn, area in yarn_areas(drawn_layout(design, resolve(design))).items():
        wanted = area.area * 100 * 240
        assert judged.stitches[yarn] == pytest.approx(wanted, rel=0.03)


def test_a_diamond_asked_for_as_40_by_60_cm_is_40_by_60_cm() -> None:
    """In centimetres, from the replayed stitches: its widest row and its tallest needle, within a stitch and a turn."""
    needles, rows = 84, 152  # 60 x 80 cm at 14 stitches and 19 rows per 10 cm
    x, y = Fraction(40, 120), Fraction(60, 160)
    half = Fraction(1, 2)
    layout = drawn("a", ("b", [(half - x, half), (half, half - y), (half + x, half), (half, half + y)]))  # type: ignore[list-item]
    judged = replay_plan(plan_piece(piece(layout, needles, rows)))
    tall = max(sum(run.rows for run in column if run.yarn == "b") for column in judged.piece.columns)
    wide = sum(any(run.yarn == "b" for run in column) for column in judged.piece.columns)
    assert tall * 100 / 19 == pytest.approx(600, abs=2 * 100 / 19)
    assert wide * 100 / 14 == pytest.approx(400, abs=2 * 100 / 14)


def test_the_outline_with_a_hole_counts_as_shapely_counts() -> None:
    shape = Shape("b", points((0, 0), (1, 0), (1, 1), (0, 1)), (points(("0.2", "0.2"), ("0.8", "0.3"), ("0.4", "0.7")),))
    grid = paint(DrawnLayout("a", (shape,)), 200, 400)
    cells = sum(c.last - c.first + 1 for turn in grid.turns for c in turn if c.yarn == "b")
    assert cells / (200 * 200) == pytest.approx(polygon(shape).area, rel=0.005)
