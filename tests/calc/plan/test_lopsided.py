"""A piece that is nowhere its own mirror image, on another bed: it shows whether left and right are exchanged."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from pieces import drawn, lopsided, mirrored, picture, piece
from wedgework.formats.design import DrawnLayout
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan


def test_the_purl_side_on_the_bed_is_the_mirror_of_the_front() -> None:
    # The front has b in its lower left corner; the knitter, who sees the purl side, knits it at the lower right.
    design = piece(drawn("a", ("b", [(0, 0), ("0.5", 0), (0, "0.5")])), 12, 24)
    seen = picture(replay_plan(plan_piece(design)).piece.columns)
    assert seen[-1].endswith("bbb")
    assert seen[-1].startswith("aaa")


@pytest.mark.parametrize("start", ["L", "R"])
@pytest.mark.parametrize("style", ["split", "carriage-side", "by-hand"])
def test_a_lopsided_piece_is_knitted_as_drawn(start: str, style: str) -> None:
    judged = replay_plan(plan_piece(lopsided(start_side=start, step_style=style)))
    assert judged.problems == ()
    assert judged.rows_max - judged.rows_min <= 2


def test_the_mirrored_design_from_the_other_side_is_the_mirrored_plan() -> None:
    design = lopsided(start_side="R", odd_needle="R")
    assert isinstance(design.layout, DrawnLayout)
    other = lopsided(start_side="L", odd_needle="L")
    other = replace(other, layout=mirrored(design.layout))
    one, two = (replay_plan(plan_piece(d)) for d in (design, other))
    assert picture(one.piece.columns) == [line[::-1] for line in picture(two.piece.columns)]
    assert one.summary.ends == two.summary.ends


def test_a_piece_shifted_along_the_bed_is_the_same_piece() -> None:
    one, two = (replay_plan(plan_piece(lopsided(shift_needles=shift))) for shift in (0, 17))
    assert picture(one.piece.columns) == picture(two.piece.columns)
    assert two.piece.first_needle != one.piece.first_needle


def test_the_bed_is_another_one() -> None:
    assert lopsided().bed.pitch_mm == Fraction(9, 2)
