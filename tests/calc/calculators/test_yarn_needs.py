"""The calculator of yarn needs: each thing beside the blocks alone, the range, balls, what is on hand, unlike yarns."""

from __future__ import annotations

import json
from fractions import Fraction
from functools import partial
from typing import Any

import pytest

import working
from wedgework.calculators.drawing_field import typed_of
from wedgework.calculators.yarn_needs import CALCULATOR
from wedgework.declare import work_out
from wedgework.formats import read_design

F = Fraction
SMALL = {"size_in": "counts", "needles": "24", "rows": "48", "layout": "diamond-in-corners"}
BARE = {**SMALL, "own_swatch_stitches": "0", "margin_percent": "0"}


values = partial(working.values, CALCULATOR, **BARE)


def yarn(number: int = 1, **typed: str) -> dict[str, Any]:
    found: dict[str, Any] = values(**typed)["yarns"][f"yarn-{number}"]
    return found


def test_it_adds_up() -> None:
    found = values(hems="both", hem_rows="4", side_hem_rows="6", seams="1 m", own_swatch_stitches="40")
    for number in (1, 2):
        one = found["yarns"][f"yarn-{number}"]
        assert one["metres_in_blocks"] + sum(one["metres_beside"].values(), F(0)) == one["metres"]
        mine = [block for block in found["blocks"] if block["yarn"] == f"yarn-{number}"]
        assert sum((block["metres"] for block in mine), F(0)) == one["metres_in_blocks"]
        assert one["grams"] == one["metres"] * 50 / 60
        assert one["grams_least"] < one["grams_with_margin"] < one["grams_most"]


def test_side_hems_of_the_piece_are_counted_though_the_plan_does_not_knit_them() -> None:
    """A loop of 1 m: 48 rows and 2 + 2 base rows along each side are 38 stitches (52 x 14/19), 8 rows, fold, 8 rows."""
    loop = {"need_1_swatch_stitches": "2", "need_1_swatch_rows": "2", "need_1_swatch_g": "4", "need_1_ball_m": "50"}
    sides = yarn(**loop, hem_sides="plain", hem_sides_depth="4 cm")["metres_beside"]["side-hems"]
    assert sides == 2 * 38 * (8 + 1 + 8)
    assert "side-hems" not in yarn(**loop)["metres_beside"]


def test_a_block_is_its_stitches_and_its_strands() -> None:
    """A weighed swatch of 2 x 2 stitches of 4 g at 1 m/g: a metre a stitch, so strands hardly count."""
    typed = {"need_1_swatch_stitches": "2", "need_1_swatch_rows": "2", "need_1_swatch_g": "4", "need_1_ball_m": "50"}
    found = values(**typed)
    for block in found["blocks"]:
        if block["yarn"] == "yarn-1":
            assert 0 <= block["metres"] - block["stitches"] < block["stitches"] * F(1, 100)


@pytest.mark.parametrize(
    ("typed", "kind", "metres"),
    [
        # loop of 1 m, 24 needles: two hems of 4 + 4 rows; side hems of 6 + 6 rows over 35 stitches (48 rows x 14/19); sewing
        ({"hems": "both", "hem_rows": "4"}, "hems", 2 * 8 * 24),
        ({"hems": "top", "hem_rows": "4"}, "hems", 8 * 24),
        ({"side_hem_rows": "6"}, "side-hems", 2 * 12 * 35),
        ({"seams": "1 m", "tail": "20 cm"}, "seams", F(34, 10)),
        ({"own_swatch_stitches": "3", "own_swatch_rows": "5"}, "swatch", 15),
    ],
)
def test_each_thing_beside_the_blocks(typed: dict[str, str], kind: str, metres: Fraction | int) -> None:
    loop = {"need_1_swatch_stitches": "2", "need_1_swatch_rows": "2", "need_1_swatch_g": "4", "need_1_ball_m": "50"}
    assert yarn(**loop, **typed)["metres_beside"][kind] == metres


def test_waste_yarn_stands_apart() -> None:
    with_waste, without = values(waste_rows="10"), values()
    assert with_waste["yarns"] == without["yarns"]
    assert with_waste["waste_m"] == 10 * 24 * yarn()["loop_mm"] / 1000


def test_ends_are_tails() -> None:
    short, long = yarn(tail="10 cm"), yarn(tail="20 cm")
    assert long["metres_beside"]["ends"] == 2 * short["metres_beside"]["ends"]
    assert long["metres_in_blocks"] == short["metres_in_blocks"]


def test_balls_and_what_is_on_hand() -> None:
    one = yarn(margin_percent="10", need_1_on_hand_g="10 g")
    assert one["grams_with_margin"] == one["grams"] * F(11, 10)
    assert (one["balls"] - 1) * 50 < one["grams_with_margin"] <= one["balls"] * 50
    assert one["verdict"] == "short"
    assert one["over_g"] == 10 - one["grams_with_margin"]
    assert one["balls_to_buy"] == -((10 - one["grams_with_margin"]) // 50)
    assert yarn(need_1_on_hand_g="5 kg")["verdict"] == "enough"
    exact = float(yarn()["grams"])
    assert yarn(need_1_on_hand_g=f"{exact:.3f}")["verdict"] == "perhaps"


def test_each_source_says_what_it_can_be_off_by() -> None:
    off = [yarn(need_1_from=source)["off_percent"] for source in ("swatch", "row", "geometry")]
    assert off == sorted(off)
    assert yarn(need_1_from="geometry")["from"] == "geometry"
    measured = {"gauge_from": "swatch", "swatch_width": "28.5 cm", "swatch_height": "31.5 cm"}
    assert yarn(need_1_from="geometry", **measured)["off_percent"] > off[-1], "an unsure gauge makes it wider"
    finer = yarn(scale_step="0.1 g")["off_percent"]
    assert finer < off[0]


def test_a_yarn_that_knits_wider_than_its_neighbour_is_told() -> None:
    answer = work_out(CALCULATOR, {**BARE, "need_2_stitches_per_10cm": "13.4", "need_2_rows_per_10cm": "18.6"})
    assert answer.result is not None
    (told,) = answer.result.warnings
    assert (told.where, told.code) == ("need_2_stitches_per_10cm", "yarn-needs.unlike")
    assert told.sentence == "Slate knits 4.5 % wider than Chalk beside it: its blocks will pucker."
    assert told.way_out
    within = work_out(CALCULATOR, {**BARE, "need_2_stitches_per_10cm": "13.6"})
    assert within.result is not None
    assert within.result.warnings == ()


def test_nonsense() -> None:
    answer = work_out(CALCULATOR, {"need_1_ball_g": "0", "need_1_swatch_g": "a lot", "tail": "1 m"})
    assert [(p.where, p.code) for p in answer.problems] == [
        ("need_1_swatch_g", "units.not-a-mass"),
        ("need_1_ball_g", "declare.out-of-range"),
        ("tail", "declare.out-of-range"),
    ]


def test_panels_share_what_goes_round_them() -> None:
    """Each seam once, each side hem with its panel, the edging with the last one."""
    typed = {
        "bed": "own",
        "bed_needles": "12",
        "layout": "zigzag-bands",
        "split": "equal",
        "hem_sides": "plain",
        "edging": "ends",
    }

    def beside(number: str) -> set[str]:
        yarns = values(panel_number=number, **typed)["yarns"].values()
        return {kind for yarn in yarns for kind in yarn["metres_beside"]} & {"seams", "side-hems", "edging"}

    assert [beside(number) for number in ("1", "2", "3")] == [{"seams", "side-hems"}, {"seams"}, {"side-hems", "edging"}]


def test_each_new_ball_is_said_and_its_two_ends_are_counted() -> None:
    """A ball of 4 m against one that never ends: what differs is two ends of 18 cm for each join."""
    plain = {"need_1_from": "geometry", "need_2_from": "geometry", "need_2_ball_m": "100000 m"}
    small, endless = ({**plain, "need_1_ball_m": metres} for metres in ("4 m", "100000 m"))
    joined = work_out(CALCULATOR, {**BARE, **small})
    assert joined.result is not None
    lines = next(part.items for part in joined.result.view if getattr(part, "title", "") == "New balls")
    assert [f"Ball {n} of Chalk" for n in range(2, len(lines) + 1)] == [line.partition(":")[0] for line in lines[:-1]]
    more = yarn(**small)["metres_beside"]["ends"] - yarn(**endless)["metres_beside"]["ends"]
    assert more == 2 * (len(lines) - 1) * F(18, 100)


def test_a_drawing_with_more_yarns_than_fields_is_reckoned_and_told() -> None:
    yarns = [{"id": f"y{n}", "name": f"Y{n}", "colour": "#3f5566"} for n in range(1, 6)]
    bands = [{"yarn": f"y{n}", "points": [[0, (n - 1) / 5], [1, (n - 1) / 5], [1, n / 5], [0, n / 5]]} for n in range(2, 6)]
    design = {
        "format": "wedgework-design", "version": 1, "title": "Five", "bed": {"pitch_mm": 9, "needles": 110},
        "gauge": {"stitches_per_10cm": 14, "rows_per_10cm": 19}, "panel": {"width": {"needles": 40}, "height": {"rows": 60}},
        "yarns": yarns, "layout": {"background": "y1", "shapes": bands},
    }  # fmt: skip
    found = work_out(CALCULATOR, {**typed_of(read_design(json.dumps(design))), "own_swatch_stitches": "0"})
    assert found.result is not None
    assert len(found.result.values["yarns"]) == 5  # type: ignore[arg-type]
    assert "Y5" in next(warning.sentence for warning in found.result.warnings if warning.code == "yarn-needs.more-yarns")
