"""The drawing of panels: widths to scale, numbers, seams in their order."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from fractions import Fraction

from wedgework.draw.panels import panels_svg

NS = "{http://www.w3.org/2000/svg}"


def test_widths_and_height_are_to_scale() -> None:
    svg = ET.fromstring(panels_svg([Fraction(670), Fraction(660), Fraction(670)], Fraction(2200), [1, 2]))
    rects = [(float(r.get("width") or 0), float(r.get("height") or 0)) for r in svg.iter(f"{NS}rect")]
    assert len(rects) == 4
    wide = [width for width, _ in rects[:3]]
    assert abs(wide[0] / wide[1] - 670 / 660) < 0.01
    assert abs(rects[3][0] - sum(wide)) < 0.03
    assert abs(rects[3][0] / rects[3][1] - 2000 / 2200) < 0.001


def test_numbers_and_seams() -> None:
    words = "".join(ET.fromstring(panels_svg([Fraction(500)] * 3, Fraction(900), [2, 1])).itertext())
    assert "seam 2" in words
    assert words.index("seam 2") < words.index("seam 1")
    assert "3 panels, seen from the front" in words
