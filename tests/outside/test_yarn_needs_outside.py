"""Yarn needs against textile formulas, published fabrics, a published swatch, and pint's units."""

from __future__ import annotations

from fractions import Fraction

import pint
import pytest

from pieces import diamond, lopsided
from wedgework.calculators.yarn_needs import CALCULATOR
from wedgework.declare import work_out
from wedgework.layout.sizes import resolve
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan
from wedgework.yarn.counts import tex_of
from wedgework.yarn.loops import from_gauge, from_swatch
from wedgework.yarn.needs import planned_needs
from wedgework.yarn.putup import balls

F = Fraction
UNITS = pint.UnitRegistry()


@pytest.mark.parametrize(("ne", "loop_mm", "grams"), [(30, "2.80", 150), (28, "2.78", 155), (28, "2.75", 160)])
def test_mass_of_finished_single_jersey(ne: int, loop_mm: str, grams: int) -> None:
    """Published finished single-jersey rows (Ne, loop, g/m2; a textile handbook): the loop that the gauge of such a fabric
    gives is the published one, within the 10 per cent that are said of it.

    g/m2 = stitches to a square centimetre x loop in mm x tex / 100 (textile handbook), turned round for the stitches.
    """
    tex = tex_of(F(ne), "cotton")
    density = F(grams) * 100 / (F(loop_mm) * tex)
    # any gauge of that density: courses to wales as 1.3
    wales = density / F(13, 10)
    root = F(int((float(wales) ** 0.5) * 10**6), 10**6)
    loop = from_gauge(root * 10, root * 13)
    assert abs(loop.mm / F(loop_mm) - 1) < loop.off_percent / 100


def test_loops_of_a_worked_example() -> None:
    """GATE Textile 2015: fully relaxed plain fabric, kc 5.5, kw 4.2, loop 0.5 cm gives 92 loops to a square centimetre."""
    loop = from_gauge(F(42, 10) * 20, F(55, 10) * 20)
    assert abs(loop.mm - 5) / 5 < loop.off_percent / 100


def test_a_published_swatch() -> None:
    """A swatch of 6 x 6 in that weighs 4 g, of 87 yd to 50 g, is 6.96 yd; 60 x 60 in, unrounded, take 696 yd (published
    example; its source rounds early and prints 720)."""
    yards = (87 * UNITS.yard / (50 * UNITS.gram) * 4 * UNITS.gram).to("yard").magnitude
    assert yards == pytest.approx(6.96)
    metres_per_gram = F(87) * F(9144, 10000) / 50
    loop = from_swatch(F(30), F(40), F(4), F(1, 10), metres_per_gram)
    all_mm = loop.mm * 300 * 400
    assert (float(all_mm) * UNITS.millimeter).to("yard").magnitude == pytest.approx(696)


def test_never_rounded_down() -> None:
    """A knitter who trusted "1000 yd/lb" ran out (published): 21 oz are 1312.5 yd, 7.05 balls of 186 yd; so eight."""
    yards = (21 * UNITS.ounce * 1000 * UNITS.yard / UNITS.pound).to("yard").magnitude
    assert yards == pytest.approx(1312.5)
    assert balls(F(13125, 10), F(186)) == 8


@pytest.mark.parametrize("design", [diamond(48, 96), lopsided()], ids=["diamond", "harbour"])
def test_the_area_formula_agrees(design) -> None:
    """Area x stitches to its square centimetre x loop: an area formula is no answer, but it must not be far off."""
    plan = plan_piece(design)
    needs, sizes = planned_needs(plan, replay_plan(plan)), resolve(design)
    laid = sum((block.mm - block.strands_mm for block in needs.blocks), F(0))
    loop = from_gauge(sizes.stitches_per_10cm, sizes.rows_per_10cm).mm
    area = sizes.width_mm * sizes.height_mm / 100
    assert float(laid) == pytest.approx(float(area * sizes.stitches_per_10cm * sizes.rows_per_10cm / 100 * loop), rel=0.01)
    # "three times the width", a rule of thumb, is 21 to 29 per cent low (check values of the project)
    rule = 3 * sizes.width_mm * sizes.rows
    assert F(70, 100) < rule / laid < F(80, 100)


def test_grams_and_metres_with_pint() -> None:
    """A yarn of 60 m to 50 g: the grams of the answer are its metres in the unit arithmetic of pint."""
    answer = work_out(CALCULATOR, {"need_3_ball_m": "65 yd", "need_3_ball_g": "1.75 oz"})
    assert answer.result is not None
    yarn = answer.result.values["yarns"]["yarn-3"]  # type: ignore[index, call-overload]
    each = 65 * UNITS.yard / (1.75 * UNITS.ounce)
    grams = (float(yarn["metres"]) * UNITS.meter / each).to("gram").magnitude
    assert float(yarn["grams"]) == pytest.approx(grams)
    tex = (1000 * UNITS.meter / each).to("gram").magnitude
    assert float(yarn["tightness"]) == pytest.approx(tex**0.5 / float(yarn["loop_mm"]))
