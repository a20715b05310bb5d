"""Drawings, kept as markup with one element a line."""

from __future__ import annotations

import pytest

from goldens import Goldens, lines_of
from pieces import diamond, hemmed, lopsided, piece
from wedgework.draw import DIAGRAMS, bed_svg, front_svg, levels_svg, purl_svg
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan
from wedgework.words import BedView

DRAWINGS = {"front": front_svg, "purl": purl_svg, "levels": levels_svg}


@pytest.mark.parametrize("name", DRAWINGS)
def test_the_piece(golden: Goldens, name: str) -> None:
    plan = plan_piece(lopsided())
    golden(f"draw/harbour-{name}.svg", lines_of(DRAWINGS[name](plan, replay_plan(plan))))


@pytest.mark.parametrize("name", ["front", "purl"])
def test_a_piece_with_hems(golden: Goldens, name: str) -> None:
    plan = plan_piece(hemmed(piece(diamond().layout, 25, 48, base_yarn_bottom="c"), bottom="picot", top="plain", rows=6))
    golden(f"draw/hemmed-{name}.svg", lines_of(DRAWINGS[name](plan, replay_plan(plan))))


def test_the_bed(golden: Goldens) -> None:
    bed = BedView(-20, 20, ((-8, 8),), ((-20, -10), (10, 20)), ((-9, -9),), ((9, 9),), "R", None, "a")
    golden("draw/bed.svg", lines_of(bed_svg(bed, yarn="Chalk", colour="#f2efe6")))


@pytest.mark.parametrize("name", DIAGRAMS)
def test_diagrams(golden: Goldens, name: str) -> None:
    golden(f"draw/diagram-{name}.svg", lines_of(DIAGRAMS[name]()))
