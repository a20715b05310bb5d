"""The calculator of short-row shapes: every shape is planned, knitted flat, and told with its own figures."""

from __future__ import annotations

from fractions import Fraction

import pytest

from wedgework.calculators.short_row_shape import CALCULATOR
from wedgework.declare import Bullets, Result, Written, work_out

F = Fraction


def result(**typed: str) -> Result:
    answer = work_out(CALCULATOR, typed)
    assert answer.problems == ()
    assert answer.result is not None
    return answer.result


@pytest.mark.parametrize("shape", ["triangle", "trapezoid", "diamond"])
@pytest.mark.parametrize("more", [{}, {"wide_side": "above"}, {"lean": "left"}, {"lean": "right", "start_side": "left"}])
def test_every_shape_is_flat_and_has_its_angles(shape: str, more: dict[str, str]) -> None:
    found = result(shape=shape, width="24", height="14", **more).values
    assert found["rows_max"] - found["rows_min"] <= 2
    assert (found["needles"], found["rows"]) == (34, 26)
    assert found["holes"] == 0
    edges = {edge["edge"]: edge for edge in found["edges"]}
    assert len(edges) == (4 if shape == "diamond" else 2 if more.get("lean") is None else 1)
    for edge in edges.values():
        assert abs(edge["angle_got"] - edge["angle_wanted"]) < 4
    turns = found["wraps"] + found["wraps_by_hand"] + found["turns_at_selvedge"] + found["turns_open"]
    assert turns == found["block_rows"] - found["parts"], "between any two rows of a block lies a turn"
    assert found["block_rows"] == found["turns"][-1]["rows"]


def test_needles_a_turn_add_up_to_the_edge() -> None:
    """What both ends hold while the triangle narrows is all of it but the needles that knit to the end."""
    found = result(width="24", height="14").values
    left, right = (-sum(turn[end] for turn in found["turns"]) for end in ("left", "right"))
    assert 0 <= 34 - left - right <= 6


def test_a_mirrored_shape_is_mirrored() -> None:
    left, right = (result(lean=side, start_side=carriage).values for side, carriage in (("left", "right"), ("right", "left")))
    assert left["block_stitches"] == right["block_stitches"]
    assert [(t["left"], t["right"]) for t in left["turns"]] == [(t["right"], t["left"]) for t in right["turns"]]
    assert left["edges"][0]["angle_got"] == right["edges"][0]["angle_got"]


@pytest.mark.parametrize("shape", ["triangle", "trapezoid", "diamond"])
def test_a_height_from_an_angle(shape: str) -> None:
    found = result(shape=shape, size_by="angle", angle="40").values
    assert all(abs(edge["angle_wanted"] - 40) < F(1, 100) for edge in found["edges"])


def test_its_words_and_its_steps() -> None:
    found = result()
    (written,) = (part for part in found.view if isinstance(part, Bullets))
    assert written.title.startswith("Block 1 of 3")
    cues = next(part for part in found.view if isinstance(part, Written))
    lines = cues.text.splitlines()
    assert len(lines) == cues.html.count("<li>") == len(found.values["cues"]) > 10
    assert all(line.endswith(cue) for line, cue in zip(lines, found.values["cues"], strict=True))
    assert any("At the carriage: " in line for line in lines)


def test_hand_wraps_are_counted() -> None:
    split, by_hand = (result(shape="diamond", width="40", height="14", step_style=style).values for style in ("split", "by-hand"))
    assert split["wraps_by_hand"] == 0
    assert by_hand["wraps_by_hand"] > 0


def test_too_steep_between_blocks_leaves_slits() -> None:
    codes = [w.code for w in result(width="20", height="60").warnings]
    assert codes[0] == "short-row-shape.too-steep"


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ({"width": "250"}, [("width", "layout.too-wide")]),
        ({"shape": "trapezoid", "narrow_width": "30"}, [("narrow_width", "short-row-shape.not-narrower")]),
        ({"size_by": "angle", "angle": "90", "width": "x"}, [("width", "units.not-a-length"), ("angle", "declare.out-of-range")]),
    ],
)
def test_what_cannot_be(typed: dict[str, str], expected: list[tuple[str, str]]) -> None:
    problems = work_out(CALCULATOR, typed).problems
    assert [(p.where, p.code) for p in problems] == expected
    assert all(p.way_out for p in problems)
