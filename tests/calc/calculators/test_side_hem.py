"""The side hem calculator: rhythm, corners of three kinds, sections, both gauges, everything that is wrong."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

import pytest

import working
from wedgework.calculators.side_hem import CALCULATOR
from wedgework.declare import Result, work_out

F = Fraction


result = partial(working.result, CALCULATOR)


def sides(found: Result) -> dict[str, tuple[int, int, int]]:
    return {one["side"]: (one["picked_up"], one["stitches"], one["at_fold"]) for one in found.values["sides"]}


def test_corners() -> None:
    """8 rows of outside are as wide as 6 stitches at this gauge."""
    lapped = sides(result(corners="lapped"))
    assert lapped == {
        "bottom": (106, 106, 106),
        "top": (106, 106, 106),
        "right": (143, 155, 155),
        "left": (143, 155, 155),
    }
    mitred = sides(result(corners="mitred"))
    assert mitred["bottom"] == (106, 106, 118)
    assert mitred["left"] == (143, 143, 155)
    butted = sides(result(corners="butted"))
    assert butted["top"] == (106, 118, 118)
    assert butted["right"] == (143, 143, 143)


@pytest.mark.parametrize("corners", ["lapped", "mitred", "butted"])
def test_all_corners_are_filled_once(corners: str) -> None:
    """Of the two hems that meet at a corner, one takes it, or both take half of it."""
    found = sides(result(corners=corners))
    assert sum(F(wide + fold, 2) - hung for hung, wide, fold in found.values()) == 4 * 6


def test_a_mitre_by_rows() -> None:
    found = result(corners="mitred").values
    assert sum(one["stitches"] for one in found["outside_changes"]) == 6
    assert [8 - one["row"] for one in reversed(found["outside_changes"])] == [one["row"] for one in found["facing_changes"]]
    assert "outside_changes" not in result().values


def test_the_finished_size() -> None:
    found = result().values
    assert found["finished_width_mm"] == F((106 - 2) * 100, 14) + 2 * found["depth_mm"]
    assert found["finished_height_mm"] == F(194 * 100, 19) + 2 * found["depth_mm"]
    assert result(edge_takes="none").values["width_mm"] - found["width_mm"] == F(200, 14)


def test_one_side_alone_knows_no_width() -> None:
    found = result(edges="side")
    assert list(sides(found)) == ["side"]
    assert "width_mm" not in found.values


def test_a_hem_with_its_own_gauge() -> None:
    found = result(hem_stitches_per_10cm="16", hem_rows_per_10cm="22")
    assert found.values["picked_up"] == 163  # 194 rows / 19 x 16
    assert sides(found)["bottom"][0] == 121  # 106 / 14 x 16
    assert found.values["outside_rows"] == 9


def test_sections_on_a_narrow_bed() -> None:
    parts = next(one for one in result(bed_needles="110").values["sides"] if one["side"] == "left")["sections"]
    assert [(one["from"], one["to"], one["needles"]) for one in parts] == [(1, 78, 79), (79, 155, 78)]
    warned = result(corners="mitred", bed_needles="110")
    assert [w.code for w in warned.warnings] == ["side-hem.mitred-sections"]


def test_picots_of_each_side() -> None:
    found = result(kind="picot").values
    assert found["fold_rows"] == 0
    assert found["eyelets"] == {"bottom": 52, "top": 52, "right": 77, "left": 77}


@pytest.mark.parametrize(
    ("rhythm", "stitches", "code"), [("three-for-four", 146, ""), ("two-for-three", 129, "pulls"), ("every", 194, "waves")]
)
def test_a_rhythm_by_heart(rhythm: str, stitches: int, code: str) -> None:
    found = result(pick_up=rhythm)
    assert found.values["picked_up"] == stitches
    assert [w.code for w in found.warnings] == ([f"side-hem.{code}"] if code else [])


def test_what_cannot_be() -> None:
    problems = work_out(CALCULATOR, {"bed_needles": "10", "seam_stitches": "4", "rows": "3"}).problems
    assert [p.where for p in problems] == ["rows"]
    # four stitches at both ends leave two of ten
    assert work_out(CALCULATOR, {"bed_needles": "10", "seam_stitches": "4"}).problems == ()
