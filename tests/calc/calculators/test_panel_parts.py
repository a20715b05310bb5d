"""Panels and an edging inside the planner: which part of the picture is knitted, what the whole becomes, what is wrong."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

import pytest

import working
from wedgework.calculators.panel_plan import CALCULATOR, design_from, planned
from wedgework.declare import Bullets, Picture, work_out
from wedgework.declare.calculator import read_all
from wedgework.formats import read_design, write_design
from wedgework.formats.design import Edging
from wedgework.layout import grid_of, resolve

F = Fraction
WIDE = {"bed": "own", "bed_needles": "40", "size_in": "counts", "needles": "100", "rows": "48", "layout": "zigzag-bands"}

result = partial(working.result, CALCULATOR, **WIDE)
values = partial(working.values, CALCULATOR, **WIDE)
wrong = partial(working.wrong, CALCULATOR, **WIDE)


def test_a_piece_wider_than_the_bed_is_offered_in_panels() -> None:
    (problem,) = work_out(CALCULATOR, WIDE).problems
    assert (problem.where, problem.code) == ("needles", "layout.too-wide")
    assert problem.way_out.startswith("Knit it in panels")


@pytest.mark.parametrize("split", ["equal", "design"])
@pytest.mark.parametrize(("seam", "each"), [("none", 0), ("half", F(1, 2)), ("one", 1)])
def test_the_panels_are_the_whole(split: str, seam: str, each: Fraction) -> None:
    """Stitches of all panels are those of the picture and those of the seams; none is wider than the bed."""
    first = values(split=split, seam_stitches=seam)
    panels = first["panels"]
    needles = [values(split=split, seam_stitches=seam, panel_number=str(n))["needles"] for n in range(1, panels + 1)]
    assert needles == first["panel_needles"]
    assert max(needles) <= 40
    spare = sum(needles) - 100 - 2 * (panels - 1) * each
    assert 0 <= spare <= (2 if seam == "half" else 0), "a half at each end of the row of panels is rounded up"
    assert first["finished_width_mm"] == F(100 * 100, 14)


@pytest.mark.parametrize("split", ["equal", "design"])
def test_side_by_side_the_panels_show_the_picture(split: str) -> None:
    """Without its seam stitches every turn of the panels is the turn of a piece on a bed that is wide enough."""
    typed = WIDE | {"split": split, "layout": "diamond-lattice"}
    designs = [design_from(read_all(CALCULATOR, typed | {"panel_number": str(n)})) for n in (1, 2, 3)]
    whole = design_from(read_all(CALCULATOR, WIDE | {"bed_needles": "200", "layout": "diamond-lattice"}))
    expected = grid_of(whole, resolve(whole))
    for t, turn in enumerate(expected.turns):
        shown: list[str] = []
        for design in designs:
            part = design.panel.part
            assert part is not None
            cells = [run.yarn for run in grid_of(design, resolve(design)).turns[t] for _ in range(run.first, run.last + 1)]
            assert cells[: part.seam_left] == cells[part.seam_left : part.seam_left + 1] * part.seam_left
            shown += cells[part.seam_left : len(cells) - part.seam_right]
        assert shown == [run.yarn for run in turn for _ in range(run.first, run.last + 1)]


def test_cuts_beside_blocks_go_through_fewer_of_them() -> None:
    def cut(split: str) -> int:
        found = values(split=split, layout="flying-triangles", panels="4")
        return sum(one["blocks_cut"] for one in found["cuts"])

    assert cut("design") <= cut("equal")


def test_the_page_shows_the_whole_with_the_chosen_panel() -> None:
    found = result(split="equal", panel_number="2")
    pictures = [part for part in found.view if isinstance(part, Picture)]
    assert "seam 1" in pictures[0].svg
    (order,) = (part for part in found.view if isinstance(part, Bullets))
    assert order.items == ("Sew panel 1 to panel 2.", "Sew panels 1 and 2 to panel 3.")
    assert found.view[0].title == "Lap blanket, panel 2 of 3"  # type: ignore[union-attr]


def test_a_panel_is_a_design_of_its_own() -> None:
    """Written to a file and read, it is the same panel; the model bed has nothing against its plan."""
    inputs = read_all(CALCULATOR, WIDE | {"split": "design", "panel_number": "3", "edging": "sides"})
    design = design_from(inputs)
    read = read_design(write_design(design))
    assert read.panel.part == design.panel.part
    assert read.edging == design.edging == Edging("sides", 8, 2)
    plan, judged = planned(inputs)
    assert judged.problems == ()
    assert plan.design.panel.part == design.panel.part


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ({"split": "equal", "panel_number": "4"}, ("panel_number", "panel-plan.no-such-panel")),
        ({"split": "equal", "panels": "3", "panel_number": "5"}, ("panel_number", "panel-plan.no-such-panel")),
        ({"split": "equal", "panels": "2"}, ("panels", "panels.design-no-cut")),
        ({"split": "design", "needles": "1000", "bed_needles": "20"}, ("panels", "panels.design-no-cut")),
    ],
)
def test_what_cannot_be_cut_is_told(typed: dict[str, str], expected: tuple[str, str]) -> None:
    assert wrong(**typed) == [expected]


def test_one_panel_alone_is_the_piece_without_seams() -> None:
    whole, alone = values(needles="36"), values(needles="36", split="equal")
    assert alone["panels"] == 1
    same = set(whole) - {"steps_digest"}
    assert {key: alone[key] for key in same} == {key: whole[key] for key in same}


@pytest.mark.parametrize(
    ("along", "wider", "higher"), [("all", True, True), ("sides", True, False), ("ends", False, True), ("none", False, False)]
)
def test_an_edging_adds_its_width(along: str, wider: bool, higher: bool) -> None:
    """8 stitches at 14 to 10 cm at each edge that has one."""
    bare, edged = values(needles="36"), values(needles="36", edging=along)
    strip = 2 * F(800, 14)
    assert edged["finished_width_mm"] - bare["finished_width_mm"] == (strip if wider else 0)
    assert edged["finished_height_mm"] - bare["finished_height_mm"] == (strip if higher else 0)
    assert edged["width_mm"] == bare["width_mm"]
    assert ("edging_rows" in edged) == (along != "none")
    assert edged["steps_digest"] == bare["steps_digest"] or along != "none"


@pytest.mark.parametrize(
    ("typed", "fields"),
    [
        ({"edging": "all", "hem_sides": "plain", "hem_top": "picot"}, ["edging", "edging"]),
        ({"edging": "sides", "hem_sides": "plain", "hem_top": "picot"}, ["edging"]),
        ({"edging": "ends", "hem_sides": "plain"}, []),
    ],
)
def test_an_edge_has_a_hem_or_an_edging(typed: dict[str, str], fields: list[str]) -> None:
    assert [where for where, _ in wrong(needles="36", **typed)] == fields


def test_everything_together() -> None:
    """Picture 100 stitches, two edge stitches go into the hems, each hem adds 8 rows; base rows and the hem below add height."""
    found = values(split="equal", hem_bottom="picot", hem_sides="plain", hem_top="plain")
    assert found["finished_width_mm"] == F(98 * 100, 14) + 2 * F(800, 19)
    assert found["finished_height_mm"] == F((48 + 4 + 8 + 8) * 100, 19)
