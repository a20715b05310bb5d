"""The fabric as SVG: every stitch once, the back mirrored, proportions of the gauge, nothing that a page forbids."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from fractions import Fraction

import pytest

from wedgework.draw.fabric import Ink, Mark, can_be_drawn, fabric_svg
from wedgework.yarn.fabric import Fabric

F = Fraction
# Three stitches by two rows, nothing above the middle one.
SMALL = Fabric(3, 2, bytes((1, 0, 2, 1, 2, 2)))
INKS = [Ink("#efe8d8", "Chalk"), Ink("#b4533f", "Rust <b>"), Ink("#000000", "Unused")]
RUN = re.compile(r"M(\d+) (\d+)h(\d+)v1h-(\d+)z")


def drawn(fabric: Fabric = SMALL, **more: object) -> str:
    return fabric_svg(fabric, INKS, (F(5), F(4)), title="Small", desc="Six stitches", prefix="test", **more)  # type: ignore[arg-type]


def stitches(svg: str) -> dict[tuple[int, int], str]:
    found: dict[tuple[int, int], str] = {}
    for element in ET.fromstring(svg).iter("{http://www.w3.org/2000/svg}path"):
        for x, y, wide, back in RUN.findall(element.get("d") or ""):
            assert wide == back
            for column in range(int(x), int(x) + int(wide)):
                assert (column, int(y)) not in found
                found[column, int(y)] = element.get("fill") or ""
    return found


def test_every_stitch_once_in_its_ink() -> None:
    one, two = "url(#test-ink-1)", "url(#test-ink-2)"
    assert stitches(drawn()) == {(0, 0): one, (2, 0): two, (0, 1): one, (1, 1): two, (2, 1): two}
    assert stitches(drawn(side="back")) == {(2, 0): one, (0, 0): two, (2, 1): one, (1, 1): two, (0, 1): two}


def test_a_needle_that_ends_a_row_early_leaves_no_notch() -> None:
    """The last stitch below it is drawn on; where the top is no straight edge, nothing is."""
    drawn_on = re.compile(r"M(\d+) 0V(\d+)h1V0z")
    assert drawn_on.findall(drawn()) == [("1", "1")]
    assert drawn_on.findall(drawn(side="back")) == [("1", "1")]
    stepped = Fabric(2, 4, bytes((0, 1, 0, 1, 0, 1, 1, 1)))
    assert drawn_on.findall(drawn(stepped)) == []


def test_a_large_piece_is_drawn_in_plain_colour_and_a_speckled_one_not_at_all() -> None:
    large = Fabric(200, 400, (bytes((1,)) * 100 + bytes((2,)) * 100) * 400)
    assert can_be_drawn(large)
    found = stitches(drawn(large))
    assert len(found) == 80_000
    assert set(found.values()) == {"#efe8d8", "#b4533f"}
    assert not can_be_drawn(Fabric(200, 400, bytes((1, 2)) * 40_000))
    assert can_be_drawn(SMALL)


def test_true_proportions() -> None:
    (scale,) = re.findall(r"scale\((\S+) (\S+)\)\" class=\"stitches\"", drawn())
    assert (F(scale[0]), F(scale[1])) == (5, 4), "a small piece at its own size"
    large = Fabric(200, 1200, bytes((1,)) * 240_000)
    (scale,) = re.findall(r"scale\((\S+) (\S+)\)\" class=\"stitches\"", drawn(large))
    assert float(scale[0]) / float(scale[1]) == pytest.approx(5 / 4, rel=0.001)


def test_only_inks_that_are_there_stand_in_the_legend() -> None:
    svg = drawn()
    assert "Chalk" in svg
    assert "Rust &lt;b&gt;" in svg
    assert "Unused" not in svg
    assert "<b>" not in svg
    assert svg.count("<pattern") == 2


def test_marks_are_mirrored_with_their_block() -> None:
    mark = Mark("7", F(1, 2), F(1))
    front, back = (re.findall(r'<circle cx="(\S+)"', drawn(marks=[mark], side=side)) for side in ("front", "back"))
    assert (F(front[0]) - 2) + (F(back[0]) - 2) == 3 * 5


def test_no_style_no_script_and_a_size() -> None:
    root = ET.fromstring(drawn())
    assert root.get("width", "").endswith("mm")
    assert root.find("{http://www.w3.org/2000/svg}title") is not None
    for element in root.iter():
        assert not [key for key in element.attrib if key == "style" or key.startswith("on")]
