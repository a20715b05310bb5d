"""The yarn in a stitch and what it can be off by, worked out by hand; balls and verdicts."""

from __future__ import annotations

from fractions import Fraction

import pytest

from wedgework.yarn.loops import from_gauge, from_row, from_swatch, mass_off_percent
from wedgework.yarn.putup import balls, verdict

F = Fraction


def test_a_weighed_swatch() -> None:
    """50 x 80 stitches of 40 g at 2 m/g: 80 m, so 20 mm a stitch and a hundredth of a gram."""
    loop = from_swatch(F(50), F(80), F(40), F(1), F(2))
    assert (loop.mm, loop.g, loop.source) == (20, F(1, 100), "swatch")
    # 2 x root of ((0.5/40)^2 / 3 + (0.5/80)^2 / 3): by hand 1.614 per cent
    assert float(loop.off_percent) == pytest.approx(1.6137, abs=0.0005)
    finer = from_swatch(F(50), F(80), F(40), F(1, 10), F(2))
    assert finer.off_percent < loop.off_percent
    assert mass_off_percent(loop) == loop.off_percent


def test_an_unravelled_row() -> None:
    loop = from_row(100, (F(1610), F(1630)))
    assert loop.mm == F(81, 5)
    one = from_row(100, (F(1620),))
    assert one.off_percent < loop.off_percent, "rows that differ say so"
    assert mass_off_percent(one) > one.off_percent, "grams hang on the label too"


def test_the_gauge_alone_has_the_widest_range() -> None:
    loop = from_gauge(F(20), F(28))
    assert float(loop.mm) == pytest.approx(10 * (21 / 5.6) ** 0.5)
    assert loop.off_percent == 10
    unsure = from_gauge(F(20), F(28), (F(6), F(8)))
    assert float(unsure.off_percent) == pytest.approx((100 + 9 + 16) ** 0.5)


@pytest.mark.parametrize(("need", "ball", "count"), [(0, 50, 0), (1, 50, 1), (50, 50, 1), ("50.001", 50, 2), (351, 50, 8)])
def test_balls_are_never_rounded_down(need: int | str, ball: int, count: int) -> None:
    assert balls(F(need), F(ball)) == count


@pytest.mark.parametrize(
    ("least", "most", "on_hand", "sentence"),
    [
        (90, 100, 140, "enough, 40 g over"),
        (100, 100, 100, "enough, 0 g over"),
        (100, 100, "99.5", "short by 1 g"),
        (112, 112, 100, "short by 12 g"),
        (112, 130, 100, "short by 12 to 30 g"),
        (90, 110, 100, "it may do: between 10 g short and 10 g over"),
    ],
)
def test_the_words_of_the_trade(least: int, most: int, on_hand: int | str, sentence: str) -> None:
    assert verdict(F(least), F(most), F(on_hand)).sentence == sentence
