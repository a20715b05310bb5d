"""The drawing of an edge: to scale, every change marked, the same on both sides."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from fractions import Fraction

from wedgework.draw.shaping import edge_svg, row_svg

NS = "{http://www.w3.org/2000/svg}"
STITCH, ROW = Fraction(5), Fraction(4)


def outline(svg: str) -> list[tuple[float, float]]:
    """Corners of the filled shape."""
    shape = next(p for p in ET.fromstring(svg).iter(f"{NS}path") if p.get("fill-opacity"))
    return [(float(x), float(y)) for x, y in re.findall(r"(-?[\d.]+) (-?[\d.]+)", shape.get("d") or "")]


def test_width_and_height_are_to_scale() -> None:
    corners = outline(edge_svg([(4, 1), (8, 1)], 10, 6, STITCH, ROW, both=False, cut=True))
    xs, ys = {x for x, _ in corners}, {y for _, y in corners}
    assert max(xs) - min(xs) == 8 * STITCH
    assert max(ys) - min(ys) == 10 * ROW
    assert sorted(xs)[-3:] == [max(xs) - 10, max(xs) - 5, max(xs)]


def test_a_large_piece_shrinks_alike_both_ways() -> None:
    corners = outline(edge_svg([(100, 10)], 400, 90, STITCH, ROW, both=False))
    wide = max(x for x, _ in corners) - min(x for x, _ in corners)
    high = max(y for _, y in corners) - min(y for _, y in corners)
    assert abs(wide / high - 500 / 1600) < 0.001


def test_both_edges_mirror_each_other() -> None:
    corners = outline(edge_svg([(4, -1), (8, -2)], 10, 12, STITCH, ROW, both=True))
    middle = (max(x for x, _ in corners) + min(x for x, _ in corners)) / 2
    assert {(round(2 * middle - x, 2), y) for x, y in corners} == set(corners)


def test_the_left_edge_may_change_a_row_earlier() -> None:
    corners = outline(edge_svg([(4, 1), (8, 1)], 10, 6, STITCH, ROW, both=True, earlier=1))
    foot, middle = max(y for _, y in corners), sum(x for x, _ in corners) / len(corners)
    rows = [{round((foot - y) / ROW) for x, y in corners if (x < middle) == left} for left in (True, False)]
    assert rows == [{0, 3, 7, 10}, {0, 4, 8, 10}]


def test_row_numbers_stand_outside_of_an_edge_that_narrows() -> None:
    svg = ET.fromstring(edge_svg([(5, -6)], 10, 12, STITCH, ROW, both=False))
    (number,) = [t for t in svg.iter(f"{NS}text") if t.text == "5"]
    assert float(number.get("x") or 0) > max(x for x, _ in outline(edge_svg([(5, -6)], 10, 12, STITCH, ROW, both=False)))


def test_every_change_has_a_dot() -> None:
    places = [(row, 1) for row in range(2, 60, 2)]
    svg = ET.fromstring(edge_svg(places, 60, 5, STITCH, ROW, both=False))
    assert len(list(svg.iter(f"{NS}circle"))) == len(places)


def test_a_row_has_an_arrow_for_each_change() -> None:
    for more in (True, False):
        svg = ET.fromstring(row_svg((8, 16, 24), 24, STITCH, more))
        assert len(list(svg.iter(f"{NS}path"))) == 3
        assert "24 stitches, 3 changes" in "".join(svg.itertext())
