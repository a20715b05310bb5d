"""The edging of a design: as the calculator of edgings has it, over the edges that the piece really has."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

import working
from pieces import diamond
from wedgework.calculators.edging import CALCULATOR
from wedgework.finish import edging_mm, strip_of
from wedgework.formats.design import Design, Edging, Extent, Hem, Hems, Part
from wedgework.layout import resolve

F = Fraction


def edged(edging: Edging, **more: object) -> Design:
    return replace(diamond(), edging=edging, **more)  # type: ignore[arg-type]


@pytest.mark.parametrize("corner", ["eased", "square", "none"])
@pytest.mark.parametrize("repeat", [1, 2, 6])
def test_it_is_that_of_the_calculator(corner: str, repeat: int) -> None:
    design = edged(Edging("all", 8, repeat, corner=corner))  # type: ignore[arg-type]
    strip = strip_of(design, resolve(design), 100)
    assert strip is not None
    typed = {"stitches": "48", "rows": "100", "repeat": str(repeat), "corner": corner}
    found = working.values(CALCULATOR, **typed)
    assert (strip.rows, strip.joins, strip.corner_rows) == (found["rows"], found["joins"], found["corner_rows"])
    assert strip.knitted == found["stitches_knitted"]


def test_along_sides_there_are_two_which_go_over_the_hems_of_the_ends() -> None:
    hems = Hems(bottom=Hem("plain", Extent(count=8)))
    design = edged(Edging("sides", 5), hems=hems)
    strip = strip_of(design, resolve(design), 100)
    assert strip is not None
    assert (strip.strips, strip.runs[0].places, strip.rows) == (2, 108, 108)
    assert strip.knitted == 2 * 108 * 5
    assert edging_mm(design, resolve(design)) == (2 * F(500, 14), 0)


def test_it_goes_round_all_panels() -> None:
    design = edged(Edging("ends", 5))
    part = replace(design.panel, part=Part(1, 2, 1, 24, 0, 1))
    panel = replace(design, panel=part)
    strip, whole = strip_of(panel, resolve(panel), 100), strip_of(design, resolve(design), 100)
    assert strip is not None
    assert strip == whole
    assert strip_of(diamond(), resolve(diamond()), 100) is None
