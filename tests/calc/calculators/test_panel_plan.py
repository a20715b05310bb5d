"""The panel plan: what is typed reaches the planner, what the model bed found reaches the answer."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

import pytest

import working
from wedgework.calculators.layout_fields import LAYOUT_FIELDS
from wedgework.calculators.panel_plan import CALCULATOR, design_from
from wedgework.declare import Inputs, Picture, Table, Written, work_out
from wedgework.declare.calculator import read_all
from wedgework.formats import read_plan, write_plan
from wedgework.formats.plan import Set
from wedgework.layout.library import LAYOUTS
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan

SMALL = {"size_in": "counts", "needles": "48", "rows": "96"}


def inputs(**typed: str) -> Inputs:
    return read_all(CALCULATOR, typed)


values = partial(working.values, CALCULATOR, **SMALL)


def problems(**typed: str) -> list[tuple[str, str]]:
    return [(p.where, p.code) for p in work_out(CALCULATOR, SMALL | typed).problems]


def test_the_worked_case() -> None:
    found = values(layout="diamond-in-corners")
    assert (found["needles"], found["rows"], found["blocks"]) == (48, 96, 5)
    assert (found["rows_min"], found["rows_max"]) == (96, 96)
    assert (found["slits"], found["holes"], found["floats"], found["dropped"]) == (0, 0, 0, 0)
    assert (found["first_needle"], found["last_needle"]) == ("L24", "R24")


def test_the_figures_are_those_of_the_replay() -> None:
    judged = replay_plan(plan_piece(design_from(inputs(**SMALL))))
    found, shown = judged.summary, values()
    for name in ("ends", "ends_inside", "free_passes", "inside_starts", "rows_min", "rows_max", "steepest_fold", "floats"):
        assert shown[name] == getattr(found, name), name
    assert shown["stitches"] == found.stitches
    together = sum(found.stitches.values()) + sum(found.edge_stitches.values())
    assert together == sum(judged.block_stitches.values())


def test_lengths_become_needles_and_turns() -> None:
    found = values(size_in="lengths", width="76 cm", height="102 cm")
    assert (found["needles"], found["rows"]) == (106, 194)
    assert (found["width_mm"], found["height_mm"]) == (Fraction(106 * 100, 14), Fraction(194 * 100, 19))


def test_a_swatch_may_give_the_gauge() -> None:
    typed = {"gauge_from": "swatch", "swatch_stitches": "30", "swatch_width": "4 1/3 in; 10 cm", "swatch_height": "10 cm"}
    swatch = design_from(inputs(**typed)).gauge.swatch
    assert swatch is not None
    assert swatch.washed is not None
    assert (swatch.stitches, swatch.rows) == (30, 60)
    # A file holds decimals: the third of an inch ends at a millionth of a millimetre.
    assert swatch.washed.widths_mm == (Fraction("110.066667"), 100)


def test_a_bed_of_ones_own() -> None:
    design = design_from(inputs(bed="own", bed_pitch="8.5 mm", bed_needles="96"))
    assert (design.bed.pitch_mm, design.bed.needles) == (Fraction(17, 2), 96)


def test_yarns_without_a_name_are_not_there() -> None:
    design = design_from(inputs(yarn_2_name="", yarn_4_name="Moss", yarn_4_colour="#556b2f"))
    assert [(yarn.id, yarn.name) for yarn in design.yarns] == [("yarn-1", "Chalk"), ("yarn-3", "Rust"), ("yarn-4", "Moss")]


def test_parameters_reach_the_layout() -> None:
    design = design_from(inputs(layout="chevron-bands", bands="4", points="2", rise="1/4", yarns="3, 1"))
    assert design.layout.name == "chevron-bands"  # type: ignore[union-attr]
    assert design.layout.parameters == {  # type: ignore[union-attr]
        "bands": 4,
        "points": 2,
        "rise": Fraction(1, 4),
        "yarns": "yarn-3 yarn-1",
    }


def test_a_parameter_of_another_layout_does_not_count() -> None:
    assert design_from(inputs(layout="diamond-in-corners", bands="4")).layout.parameters == {}  # type: ignore[union-attr]


def test_every_parameter_of_every_layout_has_its_field() -> None:
    for layout in LAYOUTS:
        for parameter in layout.parameters:
            field = next(field for field in LAYOUT_FIELDS if field.name == parameter.name)
            assert field.only is not None
            assert layout.name in field.only.values
            assert layout.label(parameter) in field.label("panel-plan")


@pytest.mark.parametrize("layout", [layout.name for layout in LAYOUTS])
def test_every_layout_is_planned_from_the_form(layout: str) -> None:
    found = values(layout=layout)
    assert found["dropped"] == 0
    stitches = found["stitches"]
    assert isinstance(stitches, dict)
    assert sum(stitches.values()) > 0


def test_problems_of_the_piece_come_back_under_the_names_of_the_fields() -> None:
    assert problems(needles="200") == [("needles", "layout.too-wide")]
    assert problems(size_in="lengths", width="2 m") == [("width", "layout.too-wide")]
    assert problems(layout="nested-diamonds", bands="13") == [("bands", "layout.parameter-range")]


def test_a_yarn_that_is_not_there_is_told_with_all_the_rest() -> None:
    assert problems(layout="chevron-bands", yarns="1 7 x", yarn_1_colour="blue") == [
        ("yarns", "panel-plan.no-such-yarn"),
        ("yarn_1_colour", "declare.not-a-colour"),
    ]


def test_the_answer_shows_both_faces_blocks_rows_and_instructions() -> None:
    answer = work_out(CALCULATOR, SMALL)
    assert answer.result is not None
    view = answer.result.view
    assert len([part for part in view if isinstance(part, Picture)]) == 3
    blocks = next(part for part in view if isinstance(part, Table))
    assert len(blocks.rows) == answer.result.values["blocks"] + 2  # type: ignore[operator]
    written = view[-1]
    assert isinstance(written, Written)
    assert "Knit" in written.text


def test_the_plan_of_a_form_can_be_kept_as_a_file() -> None:
    typed = SMALL | {"width": "1/3 ft", "gauge_from": "swatch", "swatch_width": "11 1/3 in", "title": "Ein Stück <b>"}
    plan = plan_piece(design_from(inputs(**typed)))
    assert read_plan(write_plan(plan)) == plan


def test_hems_reach_the_planner_and_the_answer() -> None:
    """8 rows at 19 per 10 cm are 42 mm; a side hem adds its depth and takes an edge stitch, at both sides."""
    plain = values()
    found = values(hem_bottom="picot", hem_bottom_depth="42 mm", hem_top="plain", hem_top_depth="2 in", hem_sides="plain")
    depths = Fraction(8 * 100, 19) + Fraction(10 * 100, 19)  # 2 in are 50.8 mm, 9.65 rows
    assert found["height_mm"] == plain["height_mm"]
    assert found["finished_height_mm"] == plain["finished_height_mm"] + depths
    assert found["finished_width_mm"] == Fraction(46 * 100, 14) + 2 * Fraction(8 * 100, 19)
    assert plain["finished_width_mm"] == plain["width_mm"]
    hems = 48 * (8 + 8) + 48 * (10 + 1 + 10 + 1)
    assert sum(found["edge_stitches"].values()) == sum(plain["edge_stitches"].values()) + hems


def test_what_is_wrong_with_a_hem_is_told_at_its_field() -> None:
    assert problems(hem_bottom="plain", base_rows_bottom="0") == [("base_rows_bottom", "plan.hem-without-rows")]
    assert problems(hem_top="plain", hem_top_depth="40 cm")[0][0] == "hem_top_depth"
    assert problems(needles="2", hem_bottom="picot", layout="single-diamond")[0][0] in ("hem_bottom", "needles", "layout")
    assert problems(hem_bottom_depth="40 cm") == [], "read only where there is a hem"


def test_a_yarn_s_own_tension_reaches_the_steps() -> None:
    plan = plan_piece(design_from(inputs(**SMALL, yarn_1_tension="7", yarn_2_tension="7 1/2")))
    dials = [step.tension for step in plan.steps if isinstance(step, Set) and step.tension is not None]
    assert set(dials) == {Fraction(7), Fraction(15, 2)}
    assert work_out(CALCULATOR, SMALL | {"yarn_1_tension": "11"}).problems[0].where == "yarn_1_tension"
    without = plan_piece(design_from(inputs(**SMALL)))
    assert not any(isinstance(step, Set) and step.tension is not None for step in without.steps)
