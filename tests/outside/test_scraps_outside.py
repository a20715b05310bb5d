"""Scraps against the theorem of four colours, a library of colour, and pint's units."""

from __future__ import annotations

from functools import partial

import pint
import pytest
from coloraide import Color

import working
from wedgework.calculators.scraps import CALCULATOR, assigned
from wedgework.declare.calculator import read_all
from wedgework.layout.library import LAYOUTS
from wedgework.replay import replay_plan
from wedgework.yarn.beside import neighbours

UNITS = pint.UnitRegistry()
SMALL = {"size_in": "counts", "needles": "40", "rows": "80"}
FOUR = "#f4efe0 Chalk, 9 kg, 1 m/g\n#20304a Night, 9 kg, 1 m/g\n#b4533f Rust, 9 kg, 1 m/g\n#4d8a4f Moss, 9 kg, 1 m/g"


values = partial(working.values, CALCULATOR, **SMALL)


@pytest.mark.parametrize("name", [layout.name for layout in LAYOUTS])
def test_four_colours_do_for_every_layout(name: str) -> None:
    """Appel and Haken, Illinois Journal of Mathematics 21 (1977): four colours do for every map in the plane. So with enough
    of four leftovers that can be told apart no layout may be refused."""
    assert values(layout=name, leftovers=FOUR, least_difference="0", each="areas")["possible"]


def test_neighbours_can_be_told_apart_by_a_library_of_colour() -> None:
    """coloraide's CIEDE2000 over every two neighbours of the default answer: at least the 10 that were asked for."""
    inputs = read_all(CALCULATOR, {})
    shown, _ = assigned(inputs)
    blocks = [stretch.block for stretch in shown.path.stretches if not stretch.outside]
    colour = {block: shown.leftovers[one].colour for block, one in zip(blocks, shown.chosen, strict=True)}
    pairs = [
        (a, b) for a, b in neighbours(replay_plan(shown.plan).piece) if a in colour and b in colour and colour[a] != colour[b]
    ]
    assert pairs
    assert all(Color(colour[a]).delta_e(Color(colour[b]), method="2000") >= 10 for a, b in pairs)


def test_grams_by_a_library_of_units() -> None:
    """pint: the metres of all blocks at 1.2 m/g are as many ounces as the leftovers have lost."""
    leftovers = "#efe8d8 Chalk, 40 oz, 1.2 m/g\n#20304a Night, 40 oz, 1.2 m/g"
    found = values(layout="diamond-in-corners", leftovers=leftovers)
    needed = sum(map(float, found["needs_m"])) * UNITS.meter / (1.2 * UNITS.meter / UNITS.gram)
    left = sum(map(float, found["left_g"].values())) * UNITS.gram
    assert (80 * UNITS.ounce - left).to("gram").magnitude == pytest.approx(needed.to("gram").magnitude, rel=1e-6)
