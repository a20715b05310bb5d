"""Hems in rows and stitches: picot folds, corners, mitres that mirror each other."""

from __future__ import annotations

from fractions import Fraction

import pytest

from wedgework.hems import FACINGS, corner_stitches, facing_rows, mitre, mitre_back, picot

F = Fraction


@pytest.mark.parametrize("stitches", range(3, 60))
def test_every_second_stitch_moves_and_the_ends_stay(stitches: int) -> None:
    found = picot(stitches)
    emptied = set(found.emptied)
    assert 1 not in emptied
    assert stitches not in emptied
    assert all(place + 1 not in emptied for place in emptied)
    assert all(place - 1 not in emptied for place in emptied), "each emptied needle has a neighbour that takes its stitch"
    assert found.untouched == (1 if stitches % 2 else 2)
    assert found.eyelets == (stitches - found.untouched) // 2
    assert found.points == max(0, found.eyelets - 1)


def test_facings() -> None:
    assert [facing_rows(8, way) for way in FACINGS] == [8, 7, 9]
    assert facing_rows(1, "shorter") == 1


@pytest.mark.parametrize("rows", [1, 2, 7, 8, 30])
@pytest.mark.parametrize("stitches", [0, 1, 6, 8, 40])
def test_a_mitre_gains_and_loses_the_same(rows: int, stitches: int) -> None:
    out, back = mitre(rows, stitches), mitre_back(rows, stitches)
    assert sum(n for _, n in out) == sum(n for _, n in back) == stitches
    assert [(rows - row, n) for row, n in reversed(out)] == list(back)
    assert all(1 <= row <= rows for row, _ in out)
    widths = [sum(n for row, n in out if row < now) for now in range(1, rows + 1)]
    after = [stitches - sum(n for row, n in back if row < now) for now in range(1, rows + 1)]
    assert after == widths[::-1], "the facing lies exactly behind the outside"


def test_a_corner_in_real_length() -> None:
    """8 rows at 14 x 19 are 42.1 mm, which is 5.9 stitches."""
    assert corner_stitches(8, F(14), F(19)) == 6
    assert corner_stitches(8, F(10), F(10)) == 8
