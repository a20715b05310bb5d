"""Counts: direct and indirect, plies, and the promise that each system undoes itself."""

from __future__ import annotations

from fractions import Fraction

import pytest

from wedgework.yarn import SYSTEMS, count_in, plied, tex_of


@pytest.mark.parametrize("system", SYSTEMS)
@pytest.mark.parametrize("count", [Fraction(1, 3), Fraction(15), Fraction(4000, 7)])
def test_a_count_comes_back_exactly(system: str, count: Fraction) -> None:
    assert count_in(tex_of(count, system), system) == count


@pytest.mark.parametrize("system", SYSTEMS)
def test_a_direct_count_grows_with_the_yarn_and_an_indirect_one_shrinks(system: str) -> None:
    thin, thick = count_in(Fraction(10), system), count_in(Fraction(20), system)
    assert (thick == 2 * thin) if SYSTEMS[system].direct else (thin == 2 * thick)


def test_plies_add_in_tex_and_divide_in_metres() -> None:
    two = plied(tex_of(Fraction(30), "nm"), 2)
    assert count_in(two, "nm") == 15
    assert count_in(two, "metres_per_100g") == 1500
