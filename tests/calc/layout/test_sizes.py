"""From millimetres and gauge to needles and rows on a bed."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from pieces import diamond, drawn, piece
from wedgework.formats.design import Extent, Gauge, Panel, Swatch, SwatchState
from wedgework.layout import resolve, size_problems
from wedgework.problems import Refused


def sized(width: Extent, height: Extent, **more: object):  # type: ignore[no-untyped-def]
    return replace(piece(drawn("a"), 40, 80, **more), panel=Panel(width, height))  # type: ignore[arg-type]


def test_a_wanted_size_becomes_whole_needles_and_whole_turns() -> None:
    # 62 cm at 28 stitches per 10 cm is 173.6 needles; 49 cm at 40 rows is 196 rows (a published garment at that gauge).
    sizes = resolve(sized(Extent(mm=Fraction(620)), Extent(mm=Fraction(490)), gauge=(28, 40), pitch=Fraction(45, 10)))
    assert (sizes.needles, sizes.rows) == (174, 196)
    assert resolve(sized(Extent(mm=Fraction(300)), Extent(mm=Fraction(503)))).rows % 2 == 0


def test_counts_are_taken_as_they_are() -> None:
    sizes = resolve(sized(Extent(count=41), Extent(count=81)))
    assert (sizes.needles, sizes.rows) == (41, 81)
    assert (sizes.width_mm, sizes.height_mm) == (41 * Fraction(100, 14), 81 * Fraction(100, 19))


def test_a_panel_lies_about_the_centre_of_the_bed() -> None:
    assert (resolve(diamond(48)).first_needle, resolve(diamond(48)).last_needle) == (-24, 24)
    odd = diamond(49, odd_needle="L")
    assert (resolve(odd).first_needle, resolve(odd).last_needle) == (-25, 24)
    shifted = diamond(48, shift_needles=30)
    assert (resolve(shifted).first_needle, resolve(shifted).last_needle) == (7, 54)


def test_a_washed_swatch_counts_before_an_unwashed_one() -> None:
    swatch = Swatch(
        Fraction(40),
        Fraction(60),
        washed=SwatchState((Fraction(250),), (Fraction(300),)),
        unwashed=SwatchState((Fraction(260),), (Fraction(310),)),
    )
    sizes = resolve(replace(diamond(), gauge=Gauge(swatch=swatch)))
    assert (sizes.stitches_per_10cm, sizes.rows_per_10cm) == (16, 20)


def test_what_does_not_fit_is_refused_with_the_numbers() -> None:
    (problem,) = size_problems(diamond(120, bed=110))
    assert (problem.where, problem.code) == ("panel.width", "layout.too-wide")
    assert "120" in problem.sentence
    assert "110" in problem.sentence
    assert [p.code for p in size_problems(diamond(100, bed=110, shift_needles=9))] == ["layout.off-the-bed"]
    with pytest.raises(Refused) as refused:
        resolve(sized(Extent(mm=Fraction(3)), Extent(mm=Fraction(3))))
    assert [p.code for p in refused.value.problems] == ["layout.too-narrow", "layout.too-low"]
