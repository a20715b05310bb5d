"""Blocking against published gauges and sizes, and the statistics module."""

from __future__ import annotations

import statistics
from fractions import Fraction
from functools import partial

import pytest

import working
from wedgework.calculators.blocking import CALCULATOR

F = Fraction


values = partial(working.numbers, CALCULATOR)


def test_a_published_swatch_read_backwards() -> None:
    """A machine knitting manual's example: 30 stitches and 39 rows are 10 cm each way."""
    found = values(stitches="30", rows="39", width="10 cm", height="10 cm", widths="10 cm", heights="10 cm")
    assert (found["stitches_per_10cm"], found["rows_per_10cm"]) == (30, 39)
    assert (found["next_stitches"], found["next_rows"]) == (30, 40), "rows are whole turns"


@pytest.mark.parametrize(
    ("stitches", "rows", "width", "height"), [("174", "196", "62.14 cm", "49 cm"), ("73", "152", "26.07 cm", "38 cm")]
)
def test_a_worked_garment_measured(stitches: str, rows: str, width: str, height: str) -> None:
    """A published garment at 28 stitches and 40 rows per 10 cm: pieces of that size have that gauge."""
    found = values(stitches=stitches, rows=rows, width=width, height=height, widths=width, heights=height)
    assert float(found["stitches_per_10cm"]) == pytest.approx(28, abs=0.01)
    assert found["rows_per_10cm"] == 40


def test_an_afghan_section_that_came_out_wide() -> None:
    """A charity's section of 7 x 9 in, 35 stitches at 5 per inch; 7 1/2 in wide it was knitted at 4 2/3 per inch."""
    found = values(stitches="35", rows="60", width="7 in", height="9 in", widths="7 1/2 in", heights="9 in")
    assert found["stitches_per_10cm"] * F(254, 1000) == F(14, 3)
    assert found["next_stitches"] == 33


def test_means_as_the_statistics_module_finds_them() -> None:
    """Against statistics.fmean of the standard library: the mean of the panels, not of their gauges."""
    found = values(widths="67.5 cm; 68.2 cm; 65.5 cm", heights="219 cm; 221 cm; 217 cm")
    assert float(found["stitches_per_10cm"]) == pytest.approx(95 * 100 / statistics.fmean([675, 682, 655]), rel=1e-12)
    assert float(found["rows_per_10cm"]) == pytest.approx(418 * 100 / statistics.fmean([2190, 2210, 2170]), rel=1e-12)
