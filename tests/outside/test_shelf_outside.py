"""The shelf against a standard of yarn counts, a published put-up, and pint's units."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

import pint
import pytest

import working
from wedgework.calculators.shelf import CALCULATOR

UNITS = pint.UnitRegistry()


values = partial(working.values, CALCULATOR)


def test_metric_count_to_yards_per_pound() -> None:
    """ASTM D2260: yards to a pound are 496.055 times the metric count."""
    found = values(known="count", count="1", system="nm")["metres_per_gram"]
    assert (float(found) * UNITS.meter / UNITS.gram).to("yard / pound").magnitude == pytest.approx(496.055, abs=0.001)


def test_two_counts_of_one_yarn() -> None:
    """ASTM D2260, worked example: 10 cotton is 15 worsted."""
    cotton, worsted = (
        values(known="count", count=count, system=system)["tex"] for count, system in (("10", "cotton"), ("15", "worsted"))
    )
    assert abs(Fraction(cotton) / Fraction(worsted) - 1) < Fraction(1, 100_000)


def test_a_count_asked_in_an_examination() -> None:
    """GATE Textile 1992: 20 tex are 50 Nm."""
    found = values(known="count", count="50", system="nm", ball_g="1 kg")
    assert found["tex"] == 20
    assert found["ball_m"] == 50_000


def test_a_published_put_up_in_yards() -> None:
    """A published yarn of 87 yd to 50 g: metres to the gram, and 5 oz of it on hand, by pint."""
    found = values(ball_g="50 g", ball_m="87 yd", on_hand_g="5 oz")
    rate = (87 * UNITS.yard / (50 * UNITS.gram)).to("meter / gram")
    assert float(found["metres_per_gram"]) == pytest.approx(rate.magnitude, abs=1e-6)
    assert float(found["on_hand_m"]) == pytest.approx((rate * 5 * UNITS.ounce).to("meter").magnitude, abs=1e-3)
