"""The calculator of sizes: repeats with even and odd, washing, the bed, everything that is wrong."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

import pytest

import working
from wedgework.calculators.size import CALCULATOR
from wedgework.declare import Figures, work_out

F = Fraction


result = partial(working.result, CALCULATOR)


def test_stitches_rows_and_turns() -> None:
    found = result(width="90", height="120", stitches_per_10cm="14.2", rows_per_10cm="18.8").values
    assert (found["stitches"], found["rows"], found["turns"]) == (128, 226, 113)
    assert (found["stitches_exact"], found["rows_exact"]) == (F("127.8"), F("225.6"))
    assert found["width_mm"] == F(12800) / F("14.2")
    assert found["width_off_mm"] == found["width_mm"] - 900
    assert found["height_off_percent"] == found["height_off_mm"] * 100 / 1200


def test_inches_are_lengths_too() -> None:
    assert result(width="7 in", stitches_per_10cm="19.685").values["stitches"] == 35
    assert result(width="7 1/2 in").values["width_wanted_mm"] == F("190.5")


@pytest.mark.parametrize(
    ("multiple", "extra", "parity", "stitches"),
    [
        ("1", "0", "any", 128),
        ("1", "0", "odd", 127),
        ("6", "1", "any", 127),
        ("7", "1", "odd", 127),
        ("7", "1", "even", 134),
        ("14", "7", "odd", 133),
        ("500", "3", "any", 3),
        ("200", "0", "any", 200),
        ("50", "300", "any", 300),
    ],
)
def test_repeats(multiple: str, extra: str, parity: str, stitches: int) -> None:
    found = result(stitch_multiple=multiple, stitch_extra=extra, stitch_parity=parity)
    assert found.values["stitches"] == stitches
    assert (stitches - int(extra)) % int(multiple) == 0


def test_up_and_down() -> None:
    assert result(rounding="up", width="90.1").values["stitches"] == 128
    assert result(rounding="down").values["stitches"] == 127
    assert result(rounding="down", row_multiple="24").values["rows"] == 216


def test_what_shrinks_is_knitted_larger() -> None:
    found = result(washing_width_percent="-5", washing_height_percent="10").values
    assert found["stitches_exact"] == F("127.8") / F("0.95")
    assert found["width_mm"] == found["width_unwashed_mm"] * F("0.95")
    assert found["height_unwashed_mm"] < found["height_mm"]


def test_the_swatch_leaves_so_much_open() -> None:
    found = result(stitches_off_percent="2").values
    assert found["width_most_mm"] - found["width_mm"] == found["width_mm"] / 50
    assert found["width_mm"] - found["width_least_mm"] == found["width_mm"] / 50


def test_usual_sizes_name_their_source() -> None:
    found = result(size="lap")
    assert (found.values["width_wanted_mm"], found.values["height_wanted_mm"]) == (F("914.4"), F("1219.2"))
    figures = found.view[0]
    assert isinstance(figures, Figures)
    assert figures.title == "What to knit: Lap blanket"
    assert "charities" in figures.rows[-1].value


def test_wider_than_the_bed() -> None:
    assert [(w.where, w.code) for w in result(bed_needles="110").warnings] == [("bed_needles", "size.too-wide")]
    assert result(bed_needles="200").warnings == ()


def test_never_even_and_never_odd_are_told_with_the_rest() -> None:
    typed = {"stitch_multiple": "6", "stitch_extra": "1", "stitch_parity": "even", "row_multiple": "8", "row_parity": "odd"}
    answer = work_out(CALCULATOR, {**typed, "width": "0"})
    assert [(p.where, p.code) for p in answer.problems] == [
        ("width", "declare.out-of-range"),
        ("stitch_parity", "size.never-even"),
        ("row_parity", "size.never-odd"),
    ]
    assert all(p.way_out for p in answer.problems)
