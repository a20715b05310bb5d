"""Stitches hung along an edge: spread evenly, told in stretches that add up, in sections that fit the bed."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest

from wedgework.pickups import pick_up, sections


@pytest.mark.parametrize(("rows", "stitches"), [(120, 90), (88, 71), (194, 143), (10, 10), (10, 1), (7, 6), (30, 20)])
def test_the_rows_left_out_are_spread(rows: int, stitches: int) -> None:
    found = pick_up(rows, stitches)
    assert len(found.positions) == len(set(found.positions)) == stitches
    assert len(found.left_out) == rows - stitches
    gaps = [b - a for a, b in pairwise(found.left_out)]
    assert not gaps or max(gaps) - min(gaps) <= 1
    assert sum((one.hung + one.left_out) * one.times for one in found.stretches()) == rows
    assert sum(one.hung * one.times for one in found.stretches()) == stitches


@pytest.mark.parametrize(("rows", "stitches"), [(10, 11), (10, 20), (7, 25), (100, 101)])
def test_more_stitches_than_rows(rows: int, stitches: int) -> None:
    found = pick_up(rows, stitches)
    assert len(found.positions) == stitches
    assert found.left_out == ()
    each = [found.positions.count(row) for row in range(1, rows + 1)]
    assert max(each) - min(each) <= 1
    assert found.doubled == tuple(row for row, times in enumerate(each, 1) if times > 1)
    with pytest.raises(ValueError, match="more stitches"):
        found.stretches()


def test_a_rhythm_to_remember() -> None:
    assert pick_up(120, 90).rhythm() == Fraction(3, 4)
    assert pick_up(194, 143).rhythm() == Fraction(3, 4)
    assert pick_up(194, 143).rhythm(most=19) == Fraction(14, 19)
    assert pick_up(60, 40).rhythm() == Fraction(2, 3)


@pytest.mark.parametrize(("stitches", "bed", "seam"), [(155, 110, 1), (250, 110, 0), (110, 110, 2), (111, 110, 2), (1000, 40, 4)])
def test_sections_cover_the_edge_and_fit(stitches: int, bed: int, seam: int) -> None:
    found = sections(stitches, bed, seam)
    assert (found[0].first, found[-1].last) == (1, stitches)
    assert all(b.first == a.last + 1 for a, b in pairwise(found))
    assert all(one.needles <= bed for one in found)
    assert sum(one.needles for one in found) == stitches + 2 * seam * (len(found) - 1)
    sizes = [one.last - one.first for one in found]
    assert max(sizes) - min(sizes) <= 1
    fewer = len(found) - 1
    assert fewer == 0 or stitches + 2 * seam * (fewer - 1) > fewer * bed - fewer, "one section fewer would not do"


def test_what_cannot_be() -> None:
    for rows, stitches in ((0, 5), (5, 0)):
        with pytest.raises(ValueError, match="an edge"):
            pick_up(rows, stitches)
    with pytest.raises(ValueError, match="no room"):
        sections(50, 4, 2)
