"""The panel plan against the counted case, a published garment's figures, and areas of a reference library."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

import pytest
from shapely.geometry import Polygon

import working
from wedgework.calculators.panel_plan import CALCULATOR
from wedgework.declare import work_out

values = partial(working.values, CALCULATOR)


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


def test_a_charity_afghan_across_in_panels() -> None:
    """Published: an afghan 49 x 63 in, 7 sections across of 35 stitches each at 5 per inch, joined edge to edge."""
    typed = {"stitches_per_10cm": "5 per in", "rows_per_10cm": "7 per in", "width": "49 in", "height": "63 in"}
    bed = {"bed": "own", "bed_pitch": "5 mm", "bed_needles": "40", "base_rows_bottom": "0", "base_rows_top": "0"}
    more = {"split": "equal", "seam_stitches": "none", "panels": "7", "panel_number": "4", "layout": "zigzag-bands"}
    found = values(**typed, **bed, **more)
    assert found["panel_needles"] == [35] * 7
    # a gauge per inch is kept as a decimal per 10 cm
    assert float(found["finished_width_mm"]) == pytest.approx(49 * 25.4)
    assert float(found["finished_height_mm"]) == pytest.approx(63 * 25.4, abs=25.4 / 7), "to a whole turn, half of which is a row"


@pytest.mark.parametrize(("inches", "rows_per_inch", "picked"), [(20, 8, 80), (12, 6, 36)])
def test_an_edging_along_the_sides_by_the_rule_of_a_magazine(inches: int, rows_per_inch: int, picked: int) -> None:
    """A knitting magazine (2018): length of the edge times rows to an inch, halved, so many times it is joined."""
    typed = {"stitches_per_10cm": f"{rows_per_inch} per in", "rows_per_10cm": f"{rows_per_inch} per in", "edging": "sides"}
    found = values(**typed, width="5 in", height=f"{inches} in", layout="single-diamond", base_rows_bottom="0", base_rows_top="0")
    assert found["edging_joins"] == 2 * picked
    assert found["edging_rows"] == 2 * 2 * picked
