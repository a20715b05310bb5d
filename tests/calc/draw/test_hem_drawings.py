"""Drawings of hems, edgings and cut designs: to scale, what is marked, and the words in them."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from fractions import Fraction

import pytest

from wedgework.draw.edging import edging_svg
from wedgework.draw.hem import hem_svg
from wedgework.draw.panel_design import panel_design_svg
from wedgework.draw.side_hem import side_hem_svg
from wedgework.formats.design import DrawnLayout, Shape

NS = "{http://www.w3.org/2000/svg}"
F = Fraction


def rects(svg: ET.Element) -> list[tuple[float, float]]:
    return [(float(r.get("width") or 0), float(r.get("height") or 0)) for r in svg.iter(f"{NS}rect")]


def words(svg: ET.Element) -> str:
    return " ".join("".join(text.itertext()) for text in svg.iter(f"{NS}text"))


@pytest.mark.parametrize("top", [False, True])
@pytest.mark.parametrize(("stitches", "untouched", "eyelets"), [(105, 1, 7), (40, 2, 6), (9, 1, 4)])
def test_a_hem_to_scale_with_its_eyelets(top: bool, stitches: int, untouched: int, eyelets: int) -> None:
    svg = ET.fromstring(hem_svg(stitches, 8, 9, F(50, 7), F(100, 19), picot=True, untouched=untouched, top=top))
    assert len(list(svg.iter(f"{NS}ellipse"))) == eyelets
    parts = rects(svg)
    assert len(parts) == 3
    highs = sorted(high for _, high in parts)
    assert highs[2] / highs[1] == pytest.approx(9 / 8, abs=0.01)
    shown = min(stitches, 15 if stitches % 2 else 14)
    assert parts[0][0] / highs[1] == pytest.approx(shown * (50 / 7) / (8 * 100 / 19), abs=0.01)
    assert f"{shown} of {stitches} stitches" in words(svg)
    assert "facing, 9 rows" in words(svg)


def test_a_plain_hem_has_no_eyelet() -> None:
    svg = ET.fromstring(hem_svg(40, 8, 8, F(50, 7), F(100, 19), picot=False, untouched=0, top=False))
    assert list(svg.iter(f"{NS}ellipse")) == []
    assert "the folded edge" not in words(svg)


@pytest.mark.parametrize("corners", ["lapped", "mitred", "butted"])
def test_four_hems_cover_the_frame(corners: str) -> None:
    """Areas of the four outlines, by the rule of Gauss, are those of the frame."""
    svg = ET.fromstring(side_hem_svg(F(740), F(1020), F(42), corners, [(143, 155), (106, 106)], [1, 3, 4], corners))
    areas = []
    for path in svg.iter(f"{NS}path"):
        places = [(float(x), float(y)) for x, y in re.findall(r"([\d.]+) ([\d.]+)", path.get("d") or "")]
        turned = zip(places, places[1:] + places[:1], strict=True)
        areas.append(abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in turned)) / 2)
    assert len(areas) == 4
    scale = 120 / (1020 + 84)
    assert sum(areas) == pytest.approx(((740 + 84) * (1020 + 84) - 740 * 1020) * scale**2, rel=0.01)
    assert "143 hung, 155 at the fold" in words(svg)
    assert len([c for c in svg.iter(f"{NS}circle") if c.get("fill") == "none"]) == 1, "one row of the four is left out"


def test_one_side_hem_is_a_strip() -> None:
    svg = ET.fromstring(side_hem_svg(None, F(1020), F(42), "lapped", [(143, 143)], list(range(1, 40)), "Lapped"))
    assert "The first 16 rows of the edge" in words(svg)
    assert "143 hung" in words(svg)


@pytest.mark.parametrize("corner", ["eased", "square", "none"])
def test_an_edging_goes_round(corner: str) -> None:
    drawn = edging_svg([F(700), F(1000)], F(60), corner, [1, 2, 2, 4], 4, "rows", 700, 340)
    svg = ET.fromstring(drawn)
    assert drawn.count("A") == (4 if corner == "eased" else 0) + drawn.count("ARIA")
    assert len(list(svg.iter(f"{NS}circle"))) == 4
    assert "4 rows along the edge" in words(svg)
    assert "".join(svg.find(f"{NS}desc").itertext()).startswith("700 rows of edging")  # type: ignore[union-attr]


def test_a_design_is_clipped_and_cut_to_scale() -> None:
    layout = DrawnLayout("a", (Shape("b", ((F(-1), F(0)), (F(1), F(0)), (F(0), F(2)))),))
    svg = ET.fromstring(panel_design_svg(layout, {"a": "#ffffff", "b": "#000000"}, [F(600), F(400)], F(900), [1]))
    lines = [line for line in svg.iter(f"{NS}line") if line.get("stroke-dasharray")]
    (cut,) = lines
    frame = rects(svg)[-1]
    assert (float(cut.get("x1") or 0) - 6) / frame[0] == pytest.approx(0.6, abs=0.001)
    assert frame[0] / frame[1] == pytest.approx(1000 / 900, abs=0.001)
    assert svg.find(f".//{NS}clipPath") is not None
    assert "panel 1" in words(svg)
    assert "seam 1" in words(svg)
