"""Yarn counts against the standard's table, an examination, makers' tables and a reference library."""

from __future__ import annotations

from fractions import Fraction

import pint
import pytest

import working
from wedgework.calculators.yarn_count import CALCULATOR
from wedgework.yarn import CATEGORIES, SYSTEMS, categories_for, count_in, tex_of

F = Fraction


def answered(**typed: str) -> dict[str, float]:
    return {key: float(value) for key, value in working.numbers(CALCULATOR, **typed).items()}


@pytest.mark.parametrize(
    ("system", "factor"),
    [("cotton", "590.541"), ("worsted", "885.812"), ("run", "310.034"), ("lea", "1653.52"), ("nm", "1000")],
)
def test_factors_of_the_standard(system: str, factor: str) -> None:
    """ASTM D2260, table of conversion factors: tex = factor / count, printed to six figures."""
    printed = F(factor)
    assert abs(tex_of(F(1), system) - printed) <= printed / 10**6 * 5


def test_yards_to_the_pound() -> None:
    """ASTM D2260: yd/lb = 496.055 x Nm."""
    assert float(count_in(tex_of(F(1), "nm"), "yards_per_pound")) == pytest.approx(496.055, abs=0.0005)


def test_the_worked_example_of_the_standard() -> None:
    """ASTM D2260: 10 Ne = 15 worsted."""
    assert count_in(tex_of(F(10), "cotton"), "worsted") == 15


@pytest.mark.parametrize(("value", "system"), [("20", "tex"), ("180", "denier"), ("50", "nm")])
def test_an_examination(value: str, system: str) -> None:
    """GATE 1992, textile engineering: 20 tex = 29.5 Ne = 180 denier = 50 Nm."""
    found = answered(value=value, system=system)
    assert (found["tex"], found["denier"], found["nm"]) == (20, 180, 50)
    assert round(found["cotton_ne"], 1) == 29.5


def test_a_plied_sewing_thread() -> None:
    """A thread maker's table: Ne 40/2 is 29.5 tex together."""
    assert round(answered(value="40", system="cotton", plies="2")["tex"], 1) == 29.5


def test_a_metric_cone() -> None:
    """2/30 in the metric count is two plies of Nm 30; common practice, no source."""
    assert answered(value="30", system="nm", plies="2")["nm"] == 15


def test_a_ball_of_a_printed_swatch_example() -> None:
    """A published quantity example uses a ball of 50 g with 87 yd: 79.55 m (87 x 0.9144)."""
    found = answered(value="79.5528", system="metres_per_50g")
    assert found["yards_per_pound"] == pytest.approx(87 * 453.59237 / 50, rel=1e-9)


# Units of the reference library: what each system counts.
UNITS = {
    "tex": "gram / kilometer",
    "dtex": "gram / (10 * kilometer)",
    "denier": "gram / (9 * kilometer)",
    "nm": "kilometer / kilogram",
    "cotton": "840 * yard / pound",
    "worsted": "560 * yard / pound",
    "run": "1600 * yard / pound",
    "lea": "300 * yard / pound",
    "metres_per_gram": "meter / gram",
    "yards_per_pound": "yard / pound",
    "metres_per_50g": "meter / (50 * gram)",
    "metres_per_100g": "meter / (100 * gram)",
}


def test_every_system_has_a_judge() -> None:
    assert set(UNITS) == set(SYSTEMS)


@pytest.mark.parametrize("system", UNITS)
@pytest.mark.parametrize("count", [F(1), F(73, 10)])
def test_counts_as_pint_converts_them(system: str, count: Fraction) -> None:
    """The library pint, with exact fractions: the unit is written out, and turned over where it is length by mass."""
    registry = pint.UnitRegistry(non_int_type=Fraction)
    quantity = count * registry.parse_expression(UNITS[system])
    if not SYSTEMS[system].direct:
        quantity = 1 / quantity
    assert quantity.to("gram / kilometer").magnitude == tex_of(count, system)


@pytest.mark.parametrize("system", ["tex", "dtex", "denier", "nm"])
def test_units_that_pint_knows_by_name(system: str) -> None:
    """The library's own textile units: tex, dtex, denier, number_meter."""
    registry = pint.UnitRegistry(non_int_type=Fraction)
    name = "number_meter" if system == "nm" else system
    quantity = registry.Quantity(F(15), name)
    tex = quantity.to("tex") if SYSTEMS[system].direct else (1 / quantity).to("tex")
    assert tex.magnitude == tex_of(F(15), system)


def test_the_categories_of_the_council() -> None:
    """Craft Yarn Council, Standard Yarn Weight System: stitches to 10 cm."""
    printed = {0: (33, 40), 1: (27, 32), 2: (23, 26), 3: (21, 24), 4: (16, 20), 5: (12, 15), 6: (7, 11)}
    for number, (least, most) in printed.items():
        fitting = [gauge for gauge in range(1, 60) if number in [c.number for c in categories_for(F(gauge))]]
        assert fitting == list(range(least, most + 1))
    assert [c.number for c in categories_for(F(6))] == [7]
    assert (CATEGORIES[4].least_needle_mm, CATEGORIES[4].most_needle_mm) == (F("4.5"), F("5.5"))
