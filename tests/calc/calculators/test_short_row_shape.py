"""The calculator of short-row shapes: every shape is planned, knitted flat, and told with its own figures."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

import pytest

import working
from wedgework.calculators.short_row_shape import CALCULATOR
from wedgework.declare import Bullets, Written, work_out

F = Fraction


result = partial(working.result, CALCULATOR)


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


SHAPED = ["dart", "shoulder", "wedge", "ruffle", "heel"]


@pytest.mark.parametrize("open_side", ["left", "right"])
@pytest.mark.parametrize("shape", SHAPED)
def test_shaped_pieces_end_with_the_rows_wanted(shape: str, open_side: str) -> None:
    typed = {"shape": shape, "step_style": "by-hand"} | ({"open_side": open_side} if shape != "heel" else {})
    found = result(**typed).values
    off = [got - wanted for got, wanted in zip(found["rows_got"], found["rows_wanted"], strict=True)]
    assert max(map(abs, off)) <= 1
    if shape in ("shoulder", "wedge", "ruffle"):
        assert not any(off)
    assert (found["holes"], found["slits"]) == (0, 0)
    rows = found["rows_wanted"]
    assert len(rows) == found["needles"]
    if shape != "heel":
        assert (rows[0] < rows[-1]) == (open_side == "left")
    else:
        assert rows == rows[::-1]


def test_a_flat_shape_says_nothing_of_rows_wanted() -> None:
    assert not {"rows_wanted", "rows_got", "turned_degrees"} & set(result().values)


def test_a_dart_is_as_deep_and_as_long_as_typed() -> None:
    """At 10 x 20: 12 cm are 12 needles, 6 cm are 12 rows; 4 cm plain rows below and above it are 8 each."""
    typed = {"stitches_per_10cm": "10", "rows_per_10cm": "20", "dart_length": "12", "height": "6", "plain_rows": "4"}
    rows = result(shape="dart", **typed).values["rows_wanted"]
    assert max(rows) == 8 + 12 + 8
    assert rows[0] == 16
    assert rows.index(28) == 12


def test_an_angle_makes_the_height_of_a_shaped_piece() -> None:
    heel, shoulder, wedge = (
        result(shape=shape, size_by="angle", angle="40", width="60").values for shape in ("heel", "shoulder", "wedge")
    )
    assert all(abs(edge["angle_wanted"] - 40) < 1 for edge in (*heel["edges"], *shoulder["edges"]))
    assert abs(wedge["turned_degrees"] - 40) < 1
    assert abs(wedge["turned_got"] - 40) < 2


def test_several_wedges_are_one_piece() -> None:
    one, three = (result(shape="wedge", times=times).values for times in ("1", "3"))
    assert three["parts"] == 3
    assert three["rows_wanted"] == [3 * rows for rows in one["rows_wanted"]]
    assert three["turned_degrees"] == 3 * one["turned_degrees"]


def test_a_base_row_more_instead_of_a_cut() -> None:
    """The low side lies on the right of the machine when it lies on the left of the front; from either start the yarn is
    threaded once."""
    for side in ("left", "right"):
        found = result(shape="shoulder", start_side=side, step_style="by-hand")
        assert found.values["rows_got"] == found.values["rows_wanted"]
        assert not any("Cut" in cue for cue in found.values["cues"])


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ({"shape": "dart", "dart_length": "30"}, [("dart_length", "short-row-shape.dart-too-long")]),
        ({"shape": "heel", "narrow_width": "40"}, [("narrow_width", "short-row-shape.not-narrower")]),
        ({"shape": "wedge", "width": "250"}, [("width", "layout.too-wide")]),
        ({"shape": "wedge", "times": "0"}, [("times", "declare.out-of-range")]),
    ],
)
def test_what_a_shaped_piece_cannot_be(typed: dict[str, str], expected: list[tuple[str, str]]) -> None:
    assert [(p.where, p.code) for p in work_out(CALCULATOR, typed).problems] == expected
