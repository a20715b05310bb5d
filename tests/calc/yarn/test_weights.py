"""Weight categories: whole gauges, gauges between them, both ends of the list."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest

from wedgework.yarn import CATEGORIES, categories_for


@pytest.mark.parametrize(
    ("gauge", "numbers"),
    [
        ("41", []),
        ("40.5", [0]),
        ("33", [0]),
        ("32.5", [0, 1]),
        ("25", [2]),
        ("24", [2, 3]),
        ("22", [3]),
        ("20.4", [4]),
        ("20.5", [3, 4]),
        ("6.6", [6]),
        ("2", [7]),
    ],
)
def test_categories(gauge: str, numbers: list[int]) -> None:
    assert [category.number for category in categories_for(Fraction(gauge))] == numbers


def test_there_is_no_gap_below_lace() -> None:
    for tenth in range(1, 406):
        assert 1 <= len(categories_for(Fraction(tenth, 10))) <= 2


def test_the_list_runs_from_thin_to_thick() -> None:
    assert [category.number for category in CATEGORIES] == list(range(8))
    for thin, thick in pairwise(CATEGORIES):
        assert thin.most_needle_mm == thick.least_needle_mm
