"""The drawing of a state: needles forward, rows up to which it is knitted, the carriage on its side, the yarn."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from dataclasses import replace
from fractions import Fraction

from pieces import diamond, drawn, lopsided, piece
from wedgework.draw import state_svg
from wedgework.formats import Hanging, State
from wedgework.formats.design import Design

SQUARE = diamond(20, 40)
WEDGE = State(-10, tuple(range(20, 0, -1)), tuple(range(1, 11)), "R", Hanging("b", -1))


def root(state: State = WEDGE, design: Design = SQUARE) -> ET.Element:
    return ET.fromstring(state_svg(design, state))


def text_of(element: ET.Element) -> str:
    return " ".join("".join(part.itertext()) for part in element)


def shafts(element: ET.Element) -> list[int]:
    """How far each needle comes, from left to right."""
    (d,) = [p.get("d") for p in element.iter() if p.tag.endswith("path") and re.match(r"M[\d.]+ 12V", p.get("d", ""))]
    return [int(end) for end in re.findall(r"V(\d+)", d or "")]


def test_held_needles_stand_forward() -> None:
    ends = shafts(root())
    assert len(ends) == 20
    assert len(set(ends[:10])) == len(set(ends[10:])) == 1
    assert ends[10] > ends[0]


def test_the_carriage_stands_on_its_side() -> None:
    def where(state: State) -> float:
        (label,) = [e for e in root(state).iter() if e.tag.endswith("text") and "".join(e.itertext()) in ("COL", "COR")]
        return float(label.get("x", ""))

    assert where(WEDGE) > 90 > where(replace(WEDGE, carriage="L"))


def test_the_upper_edge_has_the_rows_of_each_needle_at_true_proportions() -> None:
    """A stitch is 100/14 mm wide and a row 100/19 mm high: a step of one row is 14/19 of the width of a needle."""
    (d,) = [e.get("d", "") for e in root().iter() if e.get("class") == "level"]
    across = [Fraction(x) for x in re.findall(r"H([\d.]+)", d)]
    up = [Fraction(y) for y in re.findall(r"V([\d.]+)", d)]
    assert len(up) == 19
    step, wide = (up[-1] - up[0]) / 18, (across[-1] - across[0]) / 19
    assert abs(step / wide - Fraction(14, 19)) < Fraction(1, 100)


def test_the_words_say_the_same() -> None:
    said = text_of(root())
    for words in ("The carriage stands on the right.", "Knitting: L10-L1.", "Held: R1-R10.", "1 to 20 rows", "hangs beside L1"):
        assert words in said


def test_without_yarn_there_is_no_strand() -> None:
    assert any(e.get("class") == "strand" for e in root().iter())
    bare = root(replace(WEDGE, feeder=None))
    assert not any(e.get("class") == "strand" for e in bare.iter())
    assert "feeder" not in text_of(bare)


def test_the_picture_is_that_of_the_purl_side() -> None:
    """A yarn at the left of the front hangs at the right of the bed."""
    design = piece(drawn("a", ("b", [(0, 0), ("0.5", 0), ("0.5", 1), (0, 1)])), 20, 40)
    state = State(-10, (20,) * 20, (), "L")
    filled = [e for e in root(state, design).iter() if e.get("fill-rule") == "evenodd"]
    starts = {e.get("fill"): min(float(x) for x in re.findall(r"[ML]([\d.]+) ", e.get("d", ""))) for e in filled}
    assert starts["#f2efe6"] < 90 <= starts["url(#state-yarn-1)"]


def test_every_height_can_be_drawn() -> None:
    design = lopsided()
    for rows in ((0,) * 61, (118,) * 61, (125,) * 61, tuple(2 * i for i in range(61))):
        drawing = state_svg(design, State(-30, rows, (), "L"))
        assert ET.fromstring(drawing).get("height", "").endswith("mm")
        assert "style" not in drawing
