"""Drawings of wedges and discs."""

from __future__ import annotations

import math
import re
import xml.etree.ElementTree as ET
from fractions import Fraction

from wedgework.draw.circle import disc_svg, wedge_svg

NS = "{http://www.w3.org/2000/svg}"


def test_each_bar_is_shorter_by_what_is_held() -> None:
    svg = ET.fromstring(wedge_svg((2, 1, 0, 3), Fraction(5), Fraction(4)))
    widths = [float(r.get("width") or 0) for r in svg.iter(f"{NS}rect")]
    heights = [float(r.get("height") or 0) for r in svg.iter(f"{NS}rect")]
    assert widths == [30, 20, 15, 15, 15]
    assert heights == [4, 8, 8, 8, 4]


def test_a_disc_is_a_regular_polygon() -> None:
    svg = ET.fromstring(disc_svg(Fraction(50), Fraction(55), 7))
    d = next(p.get("d") or "" for p in svg.iter(f"{NS}path"))
    points = [(float(x), float(y)) for x, y in re.findall(r"(-?[\d.]+) (-?[\d.]+)", d)]
    sides = [math.dist(a, b) for a, b in zip(points, [*points[1:], points[0]], strict=True)]
    assert len(points) == 7
    assert max(sides) - min(sides) < 0.03
    assert float(next(svg.iter(f"{NS}circle")).get("r") or 0) == 50
