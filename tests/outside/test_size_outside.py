"""Sizes against published garments, sections and lists."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

import pytest

import working
from wedgework.blankets import BLANKETS, MATTRESSES
from wedgework.calculators.size import CALCULATOR

F = Fraction


values = partial(working.numbers, CALCULATOR)


@pytest.mark.parametrize(
    ("width", "stitches", "height", "rows"), [("62 cm", "173.6", "38 cm", 152), ("26 cm", "72.8", "49 cm", 196)]
)
def test_a_worked_garment(width: str, stitches: str, height: str, rows: int) -> None:
    """A published garment at 28 stitches and 40 rows per 10 cm."""
    found = values(width=width, height=height, stitches_per_10cm="28", rows_per_10cm="40")
    assert (found["stitches_exact"], found["rows"]) == (F(stitches), rows)


def test_a_section_of_an_afghan() -> None:
    """A charity's afghan: sections of 7 x 9 in, 35 stitches at 5 per inch; 7 of them are 49 in, 7 high are 63 in."""
    found = values(width="7 in", height="9 in", stitches_per_10cm=str(float(F(500) / F("25.4"))))
    assert found["stitches"] == 35
    afghan = BLANKETS["charity-afghan"]
    assert (afghan.width_mm, afghan.height_mm) == (7 * found["width_wanted_mm"], 7 * found["height_wanted_mm"])


@pytest.mark.parametrize(
    ("key", "inches"),
    [
        ("baby", (32, 38)),
        ("lap", (36, 48)),
        ("adult", (50, 70)),
        ("twin", (66, 90)),
        ("full", (80, 90)),
        ("queen", (90, 100)),
        ("king", (108, 100)),
    ],
)
def test_blankets_as_lists_give_them(key: str, inches: tuple[int, int]) -> None:
    """Charities' lists (baby, lap, adult) and US household lists (beds)."""
    assert (BLANKETS[key].width_mm / F("25.4"), BLANKETS[key].height_mm / F("25.4")) == inches


@pytest.mark.parametrize(
    ("key", "inches"), [("crib", (28, 52)), ("twin", (39, 75)), ("full", (54, 75)), ("queen", (60, 80)), ("king", (76, 80))]
)
def test_mattresses_as_lists_give_them(key: str, inches: tuple[int, int]) -> None:
    """US household lists of mattress tops."""
    size = MATTRESSES[f"{key}-top"]
    assert (size.width_mm / F("25.4"), size.height_mm / F("25.4")) == inches


def test_a_pie_of_a_published_lesson() -> None:
    """A machine knitting lesson (2011): radius 22 in at 4 stitches per inch are 88 stitches, 138 in at 6 rows 828 rows."""
    inch = F("25.4")
    found = values(width="22 in", height="138 in", stitches_per_10cm=str(float(400 / inch)), rows_per_10cm=str(float(600 / inch)))
    assert (found["stitches"], found["rows"]) == (88, 828)


def test_a_blanket_with_a_repeat() -> None:
    """A knitter's sums (2012): a repeat of 12 stitches measures 4.5 cm; a blanket of about 60 cm with a multiple of 12 plus 7
    has 13 repeats, 163 stitches."""
    gauge = str(float(12 * 100 / F(45)))
    found = values(width="60", stitches_per_10cm=gauge, stitch_multiple="12", stitch_extra="7")
    assert found["stitches"] == 163


def test_an_afghan_of_two_strands() -> None:
    """A published afghan: 9 stitches and 12 rows in 4 in, 107 stitches, 47 in wide as printed."""
    found = values(width="47 in", stitches_per_10cm=str(float(900 / F("101.6"))), rows_per_10cm=str(float(1200 / F("101.6"))))
    assert abs(found["stitches"] - 107) <= 2
