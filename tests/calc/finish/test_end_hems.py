"""Hems of a design in rows, stitches and tension numbers."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from pieces import diamond, hemmed
from wedgework.finish import dial_of, end_hem, finished_width_mm, hem_rows, side_hem
from wedgework.formats.design import Design, Extent, Hem, Hems, Machine
from wedgework.layout import resolve

F = Fraction


@pytest.mark.parametrize(("mm", "rows"), [(42, 8), (40, 8), (1, 2), (F(105, 2), 10)])
def test_a_depth_in_mm_becomes_the_nearest_rows_and_at_least_two(mm: Fraction, rows: int) -> None:
    """19 rows per 10 cm: 8 rows are 42.1 mm."""
    assert hem_rows(Extent(mm=F(mm)), F(19)) == rows


def test_counted_rows_stay_as_they_are() -> None:
    assert hem_rows(Extent(count=1), F(19)) == 1
    with pytest.raises(ValueError, match="depth"):
        hem_rows(Extent(), F(19))


def test_a_plain_hem_has_a_loose_row_and_a_picot_hem_has_none() -> None:
    design = hemmed(diamond(), bottom="plain", top="picot", rows=8)
    bottom, top = (end_hem(design, resolve(design), end) for end in ("bottom", "top"))
    assert bottom is not None
    assert top is not None
    assert (bottom.outside, bottom.facing, bottom.fold, bottom.closing, bottom.rows) == (8, 8, 1, 0, 17)
    assert (top.outside, top.facing, top.fold, top.closing, top.rows) == (8, 8, 0, 1, 17)
    assert top.picot is not None
    assert top.picot.eyelets == 23  # 48 stitches, and the last two stay
    assert end_hem(diamond(), resolve(diamond()), "bottom") is None


def test_the_numbers_of_the_dial_and_where_it_ends() -> None:
    dial = dial_of(F(7), Machine())
    assert dial is not None
    assert (dial.outside, dial.facing, dial.fold, dial.closing) == (7, 6, 10, 9)
    ends = dial_of(F(19, 2), Machine(tension_min=F(9)))
    assert ends is not None
    assert (ends.facing, ends.fold, ends.closing) == (9, 10, 10)
    assert dial_of(None, Machine()) is None


def with_sides(design: Design, kind: str = "plain", **more: Hem) -> Design:
    return replace(design, hems=Hems(sides=Hem(kind, Extent(count=8)), **more))  # type: ignore[arg-type]


def test_a_side_hem_takes_the_stitches_of_both_gauges_and_the_depth_of_the_hems_it_laps() -> None:
    """100 rows at 14 x 19 are 73.7 stitches; 8 rows of a hem are 42 mm, which is 6 stitches (the worked case of a corner)."""
    design = with_sides(diamond(), bottom=Hem("plain", Extent(count=8)))
    hem = side_hem(design, resolve(design), 100)
    assert hem is not None
    assert (hem.hung.stitches, hem.over_bottom, hem.over_top, hem.stitches) == (74, 6, 0, 80)
    assert (hem.outside, hem.fold, hem.facing, hem.knitted) == (8, 1, 8, 80 * 17)
    assert len(hem.sections) == 1
    assert side_hem(diamond(), resolve(diamond()), 100) is None


def test_a_side_longer_than_the_bed_is_worked_in_sections() -> None:
    design = with_sides(diamond(bed=50), "picot")
    hem = side_hem(design, resolve(design), 100)
    assert hem is not None
    assert [section.needles for section in hem.sections] == [38, 38]  # 37 each, and a seam stitch
    assert hem.fold == 0


def test_side_hems_take_an_edge_stitch_each_and_give_their_depth() -> None:
    """46 stitches at 14 per 10 cm and twice 8 rows at 19."""
    design = with_sides(diamond())
    assert finished_width_mm(design, resolve(design)) == F(4600, 14) + F(1600, 19)
    assert finished_width_mm(diamond(), resolve(diamond())) == F(4800, 14)
