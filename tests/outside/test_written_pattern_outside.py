"""The written pattern against units of a reference library, textile geometry, and how patterns are usually written."""

from __future__ import annotations

import re
from functools import partial

import pint
import pytest

import working
from wedgework.calculators.written_pattern import CALCULATOR
from wedgework.declare import Table, Written

SMALL = {"layout": "single-diamond", "width": "50", "height": "70", "size_name": "S", "sizes": "M 60 x 80 cm"}
values = partial(working.values, CALCULATOR, **SMALL)
result = partial(working.result, CALCULATOR, **SMALL)


def test_both_units_of_the_table_as_pint_converts_them() -> None:
    """Against pint: centimetres to a tenth and inches to an eighth are one length."""
    table = next(part for part in result().view if isinstance(part, Table))
    unit = pint.UnitRegistry()
    for cell in (*table.rows[0][1:], *table.rows[1][1:]):
        cm, whole, eighths = re.fullmatch(r"([\d.]+) cm \((\d+)(?: (\d+/\d+))? in\)", cell).groups()  # type: ignore[union-attr]
        over, under = map(int, (eighths or "0/1").split("/"))
        inches = (int(whole) + over / under) * unit.inch
        assert inches.to(unit.cm).magnitude == pytest.approx(float(cm), abs=0.05 + 2.54 / 16)


def test_counts_stand_in_the_order_of_the_sizes() -> None:
    """How sizes are given in published knitting patterns (common practice, no source): the first count stands alone, the others
    follow in brackets with commas between them."""
    text = next(part for part in result(sizes="M 60 x 80 cm; L 72 x 90 cm").view if isinstance(part, Written)).text
    needles = [size["needles"] for size in values(sizes="M 60 x 80 cm; L 72 x 90 cm")["sizes"]]
    assert f"Cast on {needles[0]} ({needles[1]}, {needles[2]}) stitches" in text


def test_yarn_grows_with_the_area() -> None:
    """Textile geometry (a handbook formula: yarn in a fabric = stitches x loop length): at one gauge yarn and area grow together;
    ends and cast-on, which do not, are a few per cent."""
    small, large = values(sizes="L 75 x 105 cm")["sizes"]
    area = (large["width_mm"] * large["height_mm"]) / (small["width_mm"] * small["height_mm"])
    yarn = sum(large["metres"].values()) / sum(small["metres"].values())
    assert float(yarn) == pytest.approx(float(area), rel=0.06)
