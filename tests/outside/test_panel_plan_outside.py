"""The panel plan against the counted case, a published garment's figures, and areas of a reference library."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
from shapely.geometry import Polygon

from wedgework.calculators.panel_plan import CALCULATOR
from wedgework.declare import work_out


def values(**typed: str) -> dict[str, Any]:
    answer = work_out(CALCULATOR, typed)
    assert answer.problems == ()
    assert answer.result is not None
    return dict(answer.result.values)


def test_the_counted_diamond_between_four_triangles() -> None:
    """Common practice, counted needle by needle for n = 20 on 2n needles and 4n rows: 76 turns wrap themselves, none leaves a
    hole, and every needle ends with the same rows within two."""
    found = values(layout="diamond-in-corners", size_in="counts", needles="40", rows="80")
    assert (found["needles"], found["rows"]) == (40, 80)
    assert (found["holes"], found["slits"], found["dropped"]) == (0, 0, 0)
    assert found["rows_max"] - found["rows_min"] <= 2


def test_the_size_of_a_worked_garment() -> None:
    """A published garment at 28 stitches and 40 rows per 10 cm: 62 cm are 173.6 stitches, 38 cm are 152 rows."""
    found = values(
        bed="standard-4.5", stitches_per_10cm="28", rows_per_10cm="40", width="62 cm", height="38 cm", layout="single-diamond"
    )
    assert (found["needles"], found["rows"]) == (174, 152)


def test_a_diamond_has_half_of_its_rectangle() -> None:
    """Against shapely: a diamond from middle to middle covers half of the panel; the stitches knitted do so within two rows
    on each needle of each of its four edges."""
    found = values(layout="diamond-in-corners", size_in="counts", needles="48", rows="96")
    half = Polygon([(24, 0), (48, 48), (24, 96), (0, 48)]).area
    stitches = found["stitches"]
    assert any(abs(count - half) <= 2 * 4 * 24 for count in stitches.values())
    assert sum(stitches.values()) == pytest.approx(48 * 96, abs=48)


def test_a_bed_of_the_trade() -> None:
    """Common practice, no source: a bed of 9 mm has 110 needles; a piece of 120 is refused with the number that fits."""
    (problem,) = work_out(CALCULATOR, {"size_in": "counts", "needles": "120"}).problems
    assert problem.code == "layout.too-wide"
    assert "110" in problem.sentence


def test_a_swatch_of_a_manual_gives_its_gauge() -> None:
    """A machine knitting manual's swatch: 30 stitches and 39 rows over 10 cm each way; 20 cm are 60 needles and 78 rows."""
    found = values(
        bed="fine-3.6",
        gauge_from="swatch",
        swatch_stitches="30",
        swatch_width="10 cm",
        swatch_rows="39",
        swatch_height="10 cm",
        width="20 cm",
        height="20 cm",
        layout="single-diamond",
    )
    assert (found["needles"], found["rows"]) == (60, 78)
    assert found["width_mm"] == Fraction(200)
