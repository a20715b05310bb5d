"""CIEDE2000 against its published test data, and against a well-kept library of colour over many colours."""

from __future__ import annotations

from decimal import Decimal

import pytest
from coloraide import Color
from hypothesis import given, settings
from hypothesis import strategies as st

from wedgework.yarn.alike import difference, lab_difference, lab_of

# Sharma, Wu and Dalal, "The CIEDE2000 color-difference formula: implementation notes, supplementary test data, and mathematical
# observations", Color Research and Application 30 (2005), table 1: all 34 pairs. Pairs 9 to 16 lie about half a turn of hue.
TABLE = """
50.0000 2.6772 -79.7751 50.0000 0.0000 -82.7485 2.0425
50.0000 3.1571 -77.2803 50.0000 0.0000 -82.7485 2.8615
50.0000 2.8361 -74.0200 50.0000 0.0000 -82.7485 3.4412
50.0000 -1.3802 -84.2814 50.0000 0.0000 -82.7485 1.0000
50.0000 -1.1848 -84.8006 50.0000 0.0000 -82.7485 1.0000
50.0000 -0.9009 -85.5211 50.0000 0.0000 -82.7485 1.0000
50.0000 0.0000 0.0000 50.0000 -1.0000 2.0000 2.3669
50.0000 -1.0000 2.0000 50.0000 0.0000 0.0000 2.3669
50.0000 2.4900 -0.0010 50.0000 -2.4900 0.0009 7.1792
50.0000 2.4900 -0.0010 50.0000 -2.4900 0.0010 7.1792
50.0000 2.4900 -0.0010 50.0000 -2.4900 0.0011 7.2195
50.0000 2.4900 -0.0010 50.0000 -2.4900 0.0012 7.2195
50.0000 -0.0010 2.4900 50.0000 0.0009 -2.4900 4.8045
50.0000 -0.0010 2.4900 50.0000 0.0010 -2.4900 4.8045
50.0000 -0.0010 2.4900 50.0000 0.0011 -2.4900 4.7461
50.0000 2.5000 0.0000 50.0000 0.0000 -2.5000 4.3065
50.0000 2.5000 0.0000 73.0000 25.0000 -18.0000 27.1492
50.0000 2.5000 0.0000 61.0000 -5.0000 29.0000 22.8977
50.0000 2.5000 0.0000 56.0000 -27.0000 -3.0000 31.9030
50.0000 2.5000 0.0000 58.0000 24.0000 15.0000 19.4535
50.0000 2.5000 0.0000 50.0000 3.1736 0.5854 1.0000
50.0000 2.5000 0.0000 50.0000 3.2972 0.0000 1.0000
50.0000 2.5000 0.0000 50.0000 1.8634 0.5757 1.0000
50.0000 2.5000 0.0000 50.0000 3.2592 0.3350 1.0000
60.2574 -34.0099 36.2677 60.4626 -34.1751 39.4387 1.2644
63.0109 -31.0961 -5.8663 62.8187 -29.7946 -4.0864 1.2630
61.2901 3.7196 -5.3901 61.4292 2.2480 -4.9620 1.8731
35.0831 -44.1164 3.7933 35.0232 -40.0716 1.5901 1.8645
22.7233 20.0904 -46.6940 23.0331 14.9730 -42.5619 2.0373
36.4612 47.8580 18.3852 36.2715 50.5065 21.2231 1.4146
90.8027 -2.0831 1.4410 91.1528 -1.6435 0.0447 1.4441
90.9257 -0.5406 -0.9208 88.6381 -0.8985 -0.7239 1.5381
6.7747 -0.2908 -2.4247 5.8714 -0.0985 -2.2286 0.6377
2.0776 0.0795 -1.1350 0.9033 -0.0636 -0.5514 0.9082
"""
ROWS = [tuple(map(Decimal, line.split())) for line in TABLE.strip().splitlines()]
colours = st.integers(0, 0xFFFFFF).map(lambda n: f"#{n:06x}")


@pytest.mark.parametrize("row", ROWS, ids=[str(n) for n in range(1, len(ROWS) + 1)])
def test_published_pairs(row: tuple[Decimal, ...]) -> None:
    one, other, wanted = row[:3], row[3:6], row[6]
    assert lab_difference(one, other) == wanted  # type: ignore[arg-type]
    assert lab_difference(other, one) == wanted  # type: ignore[arg-type]


def test_there_are_as_many_as_were_published() -> None:
    assert len(ROWS) == 34


@given(colours, colours)
@settings(max_examples=150, deadline=None)
def test_as_the_library_finds_it(one: str, other: str) -> None:
    """coloraide: its CIELAB is under D50 by default, so the one under D65 is asked for."""
    lab = [float(value) for value in lab_of(one)]
    assert lab == pytest.approx(Color(one).convert("lab-d65").coords(), abs=0.02)
    found = float(difference(one, other))
    judged = Color(one).delta_e(other, method="2000", space="lab-d65")
    assert found == pytest.approx(judged, abs=0.02)


@given(colours, colours)
@settings(max_examples=60, deadline=None)
def test_it_is_no_matter_which_comes_first(one: str, other: str) -> None:
    assert difference(one, other) == difference(other, one)
    assert difference(one, one) == 0
