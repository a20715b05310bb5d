"""Stripes against loop geometry, pooled colours, Python's bisection, and pint's units."""

from __future__ import annotations

from bisect import bisect_right
from collections import Counter
from fractions import Fraction
from typing import Any

import pint
import pytest

from pieces import drawn, piece
from wedgework.calculators.stripes import CALCULATOR
from wedgework.declare import work_out
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan
from wedgework.yarn.fabric import colours_of
from wedgework.yarn.laid import Laid, Measures, lay
from wedgework.yarn.path import path_of
from wedgework.yarn.stripes import Repeat, Striped

UNITS = pint.UnitRegistry()
WIDE, HIGH, LOOP = 42, 120, 5_000


def strip(repeat: Repeat) -> tuple[Laid, Striped]:
    """A plain strip of 42 stitches in one yarn, without base rows; loops of 5 mm."""
    plan = plan_piece(piece(drawn("a"), WIDE, HIGH, base_rows_bottom=0, base_rows_top=0))
    striped = Striped("a", repeat)
    return lay(path_of(plan, replay_plan(plan)), {"a": Measures(LOOP, 180_000, 9_000, 1_000)}, striped), striped


def test_area_of_a_stripe_by_published_loops() -> None:
    """GATE Textile 2015: fully relaxed plain fabric, kc 5.5, kw 4.2, of loop 0.5 cm has 92 loops to a square centimetre. So
    1 m of a colour, 200 loops, covers 2.17 cm2: on 42 stitches of that fabric, 5 cm, a stripe 4.3 mm high."""
    repeat = Repeat(("#ffffff", "#000000"), (1_000_000, 2_000_000))
    laid, striped = strip(repeat)
    cells = colours_of(laid, {"a": 9, "b": 8, "c": 7}, striped, (1, 2)).cells
    share = Fraction(cells.count(1), len(cells))
    courses_per_cm, wales_per_cm = Fraction(55, 5), Fraction(42, 5)
    area_cm2 = share * (WIDE / wales_per_cm) * (HIGH / courses_per_cm)
    metres = cells.count(1) * Fraction(LOOP, 1_000_000)
    assert float(area_cm2 / metres) == pytest.approx(200 / 92, rel=0.01)
    stripes = WIDE * HIGH * Fraction(LOOP, 1_000_000) / 2
    assert float(area_cm2 / stripes / (WIDE / wales_per_cm)) == pytest.approx(0.43, abs=0.03)


def test_a_repeat_of_two_rows_stacks_its_colours() -> None:
    """Planned pooling, common practice, from memory: where two rows take exactly one repeat, every second row is alike,
    and the colours stand in columns. The yarn that climbs at the edges is none here."""
    row = WIDE * LOOP
    laid, striped = strip(Repeat(("#ffffff", "#000000"), (row, 2 * row)))
    fabric = colours_of(laid, {"a": 9, "b": 8, "c": 7}, striped, (1, 2))
    rows = [fabric.cells[y * WIDE : (y + 1) * WIDE] for y in range(fabric.height)]
    # Towards each edge a needle's rows begin or end one pass apart from the other edge's.
    middle = [line[WIDE // 4 : -WIDE // 4] for line in rows]
    assert all(above == two_below for above, two_below in zip(middle[2:-4], middle[4:-2], strict=True))
    assert {one for line in middle for one in line} == {1, 2}


def test_every_stitch_by_bisection() -> None:
    """Python's own bisect finds the colour at the middle of every stitch on a line: as many of each, to the stitch."""
    ends = (700_000, 950_000, 1_600_000)
    laid, striped = strip(Repeat(("#111111", "#222222", "#333333"), ends))
    counted = colours_of(laid, {"a": 9, "b": 8, "c": 7}, striped, (1, 2, 3)).cells
    knitted = list(laid.path.stitches)
    starts = list(laid.start)[: len(knitted)]
    middles = [start + LOOP // 2 + LOOP * i for start, n in zip(starts, knitted, strict=True) for i in range(n)]
    expected = Counter(bisect_right(ends, middle % ends[-1]) for middle in middles)
    assert [counted.count(ink) for ink in (1, 2, 3)] == [expected[colour] for colour in (0, 1, 2)]


def test_a_repeat_in_yards() -> None:
    """pint: 2 yd, 4 ft and 30 in of three colours are a repeat of 3.81 m."""
    answer = work_out(CALCULATOR, {"repeat": "#111111 2 yd\n#222222 4 ft\n#333333 30 in"})
    assert answer.result is not None
    found: Any = answer.result.values["repeat_m"]
    assert float(found) == pytest.approx((2 * UNITS.yard + 4 * UNITS.foot + 30 * UNITS.inch).to("meter").magnitude)
