"""Units and spreads against what is known outside: a reference library, a treaty, textbooks."""

from __future__ import annotations

from fractions import Fraction

import pint
import pytest

from wedgework.exact import Group, even_spread, small_ratio, spread_groups
from wedgework.units import LENGTH_UNITS, MASS_UNITS, length_mm, mass_g

# The library's own names for the symbols we take.
NAMES = {"mm": "millimeter", "cm": "centimeter", "m": "meter", "in": "inch", "ft": "foot", "yd": "yard"}
MASSES = {"g": "gram", "kg": "kilogram", "oz": "ounce", "lb": "pound"}


@pytest.fixture(scope="module")
def registry() -> pint.UnitRegistry:
    """The reference library for units, with exact fractions instead of floats."""
    return pint.UnitRegistry(non_int_type=Fraction)


@pytest.mark.parametrize("symbol", LENGTH_UNITS)
@pytest.mark.parametrize("typed", ["1", "12.4", "7 1/2", "0,003"])
def test_lengths_as_pint_converts_them(registry: pint.UnitRegistry, symbol: str, typed: str) -> None:
    value = length_mm(typed, "mm")
    judged = registry.Quantity(value, NAMES[symbol]).to("millimeter").magnitude
    assert length_mm(f"{typed} {symbol}", "mm") == judged


@pytest.mark.parametrize("symbol", MASS_UNITS)
def test_masses_as_pint_converts_them(registry: pint.UnitRegistry, symbol: str) -> None:
    assert mass_g(f"3.5 {symbol}", "g") == registry.Quantity(Fraction(7, 2), MASSES[symbol]).to("gram").magnitude


def test_the_yard_and_the_pound_of_1959() -> None:
    """International yard and pound agreement (from memory; ASTM D2260 repeats both): 1 yd = 0.9144 m, 1 lb = 0.45359237 kg."""
    assert length_mm("1 yd", "mm") == Fraction("914.4")
    assert mass_g("1 lb", "g") == Fraction("453.59237")
    assert length_mm("1 in", "mm") == Fraction("25.4")


@pytest.mark.parametrize(
    ("total", "parts", "groups"),
    [
        # Knitwear design textbooks of 1991 and 2010: 124 stitches, 14 increases.
        (124, 14, (Group(8, 2), Group(9, 12))),
        # The same: 26 decreases in 64 rows, every 2nd 14 times, every 3rd 12 times.
        (64, 26, (Group(2, 14), Group(3, 12))),
        # 55 stitches to 38 in one row: 17 decreases, every 4th 4 times, every 3rd 13 times.
        (55, 17, (Group(3, 13), Group(4, 4))),
        # 112 stitches and 16 more: every 7th.
        (112, 16, (Group(7, 16),)),
        # Textbook: 40 stitches and 4 more, flat, none at the edges: 5 sections of 8.
        (40, 5, (Group(8, 5),)),
        # The same: 110 less 14, flat: 15 sections, 7 each and 5 left over.
        (110, 15, (Group(7, 10), Group(8, 5))),
    ],
)
def test_even_spacing_as_textbooks_give_it(total: int, parts: int, groups: tuple[Group, ...]) -> None:
    assert spread_groups(total, parts) == groups
    assert sum(even_spread(total, parts)) == total


def test_a_published_row_that_does_not_add_up_is_not_ours() -> None:
    """A trap met in print: "120 stitches, 11 groups: every 10th 9 times, 11th once" adds to 101."""
    assert 9 * 10 + 11 == 101
    assert spread_groups(120, 11) == (Group(10, 1), Group(11, 10))


def test_pick_up_along_rows() -> None:
    """A machine knitting handbook: 3 stitches for every 4 rows, 120 rows take 90."""
    assert 120 * small_ratio(Fraction(3, 4), 4) == 90


def test_a_shoulder() -> None:
    """A worked shoulder: 75 stitches are twice 7 + 8 + 8 and 29 at the neck; 23 stitches in 3 steps."""
    assert sorted(even_spread(23, 3)) == [7, 8, 8]
    assert 2 * 23 + 29 == 75
