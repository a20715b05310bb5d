"""A drawing judged: everything at its place as the front is seen, and the figures of the model bed."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from pieces import drawn, lopsided, piece, points
from wedgework.board import effort_of, judge, judged_value, rules_value, surface
from wedgework.board.effort import Effort
from wedgework.board.surface import with_layout
from wedgework.formats import design_value
from wedgework.formats.design import Design, DrawnLayout, Extent, NamedLayout, Panel, Part, Shape
from wedgework.formats.plan import Summary
from wedgework.layout import grid_of, resolve
from wedgework.layout.library import LAYOUTS
from wedgework.plan import plan_piece
from wedgework.problems import Refused
from wedgework.replay import replay_plan


def upright(at: str = "0.5") -> Design:
    return piece(drawn("a", ("b", [(0, 0), (at, 0), (at, 1), (0, 1)])), 60, 120)


def test_a_slit_stands_where_the_border_is_seen_from_the_front() -> None:
    """A quarter from the left of the front is three quarters from the left of the bed; nobody mixes them up here."""
    value = judged_value(judge(surface(upright("0.25")).design))
    assert value["slits"] == [{"from": [30, 0], "to": [30, 120]}]


def test_blocks_have_their_numbers_inside_their_outlines() -> None:
    value = judged_value(judge(surface(lopsided()).design))
    blocks = value["blocks"]
    assert [block["number"] for block in blocks] == list(range(1, len(blocks) + 1))
    for block in blocks:
        x, y = block["at"][0] / 2, block["at"][1]
        across = [corner[0] for loop in block["outline"] for corner in loop]
        up = [corner[1] for loop in block["outline"] for corner in loop]
        assert min(across) <= x <= max(across)
        assert min(up) <= y <= max(up)


def test_the_outlines_cover_the_sheet_once() -> None:
    """By the shoelace formula, in needles x rows: as many as the model bed has stitches."""

    def area(loop: list[list[int]]) -> int:
        pairs = zip(loop, [*loop[1:], loop[0]], strict=True)
        return sum(ax * by - ay * bx for (ax, ay), (bx, by) in pairs)

    found = judge(surface(lopsided()).design)
    blocks = judged_value(found)["blocks"]
    assert sum(area(loop) for block in blocks for loop in block["outline"]) == 2 * sum(found.replay.summary.stitches.values())
    assert sum(block["stitches"] for block in blocks) == sum(found.replay.summary.stitches.values())


def test_ends_are_as_many_as_the_model_bed_counts() -> None:
    for design in (lopsided(), upright()):
        found = judge(surface(design).design)
        ends = judged_value(found)["ends"]
        assert len(ends) == found.replay.summary.ends
        assert sum(end["inside"] for end in ends) == found.replay.summary.ends_inside
        needles, rows = resolve(design).needles, resolve(design).rows
        assert all(0 <= end["at"][0] <= 2 * needles and 0 <= end["at"][1] <= rows + 2 for end in ends)


def test_a_part_of_a_wider_picture_is_judged_at_its_own_place() -> None:
    """The picture has its upright border at needle 40 of 80; the panel shows needles 31 to 80, with one in the seam."""
    whole = piece(drawn("a", ("b", [(0, 0), ("0.5", 0), ("0.5", 1), (0, 1)])), 80, 60, bed=60)
    part = replace(whole, panel=replace(whole.panel, part=Part(2, 2, 31, 80, seam_left=1)))
    value = judged_value(judge(surface(part).design))
    assert value["slits"][0]["from"][0] == 80


def test_what_cannot_be_planned_is_refused_with_its_place() -> None:
    crossed = piece(drawn("a", ("b", [(0, 0), (1, 1), (1, 0), (0, 1)])), 40, 60)
    with pytest.raises(Refused) as refused:
        judge(crossed)
    assert [problem.where for problem in refused.value.problems] == ["layout.shapes[0].points"]


@pytest.mark.parametrize("layout", LAYOUTS, ids=lambda layout: layout.name)
def test_a_named_layout_is_drawn_out_without_a_cell_changed(layout) -> None:
    design = piece(NamedLayout(layout.name), 106, 194)
    own = with_layout(design, layout.name)
    assert isinstance(own.layout, DrawnLayout)
    assert own.layout.counted == (106, 194)
    assert _cells(own) == _cells(design)
    design_value(own)  # every coordinate is a decimal


def _cells(design: Design) -> list[list[tuple[int, int, str]]]:
    return [[(c.first, c.last, c.yarn) for c in turn] for turn in grid_of(design, resolve(design)).turns]


def test_a_drawing_of_another_size_comes_along_to_half_needles_and_rows() -> None:
    own = surface(lopsided()).design
    larger = surface(replace(own, panel=Panel(Extent(count=90), Extent(count=171))))
    assert larger.moved
    assert isinstance(larger.design.layout, DrawnLayout)
    for shape in larger.design.layout.shapes:
        assert all((2 * x * 90).denominator == 1 and (2 * y * 171).denominator == 1 for x, y in shape.points)
    assert not surface(larger.design).moved


def test_the_limits_of_a_slope_are_those_that_planned_pieces_have() -> None:
    """A slope at either limit is planned without slits and without stairs, one beyond it is not."""
    rules = rules_value()

    def planned(*corners: tuple[Fraction | int, Fraction | int]) -> Summary:
        points = tuple((Fraction(x) / 60, Fraction(y) / 120) for x, y in corners)
        return replay_plan(plan_piece(piece(DrawnLayout("a", (Shape("b", points),)), 60, 120))).summary

    def steep(rows: Fraction) -> int:
        """Slits of a border that leans by a needle in so many rows, from the lower edge to the upper one."""
        return len(planned((10, 0), (60, 0), (60, 120), (10 + 120 / rows, 120)).slits)

    def flat(needles: Fraction) -> int:
        """Stairs of a slope of so many needles a turn, from side to side."""
        return len(planned((0, 40), (60, 40 + 60 * rules["turn_rows"] / needles), (60, 120), (0, 120)).stairs)

    joined, wide = Fraction(rules["joined_rows"]), Fraction(rules["wide_needles"])
    assert steep(joined) == 0
    assert steep(joined + 1) > 0
    assert flat(wide) == 0
    assert flat(wide + 1) > 0


def test_effort_is_written_and_read_back() -> None:
    found = judge(surface(upright()).design)
    effort = effort_of(found.plan, found.replay)
    assert Effort.read(effort.value()) == effort
    assert effort.slits == 1
    for wrong in ({}, {**effort.value(), "slits": -1}, {**effort.value(), "slits": "1"}, {**effort.value(), "more": 1}):
        assert Effort.read(wrong) is None


def test_above_a_gap_a_block_stands_where_it_is_drawn() -> None:
    """The dart takes 40 rows from the left edge: the piece has 80 there, the picture still ends at 120."""
    dart = points((0, "0.25"), ("0.5", "0.4"), (0, "0.58333333"))
    layout = replace(drawn("a", ("b", [(0, "0.75"), (1, "0.75"), (1, 1), (0, 1)])), gaps=(dart,))
    value = judged_value(judge(surface(piece(layout, 60, 120)).design))
    corners = [corner for block in value["blocks"] if block["yarn"] == "b" for loop in block["outline"] for corner in loop]
    left = [row for column, row in corners if column == 0]
    assert max(left) - 120 in range(-2, 3)
    assert min(left) - 90 in range(-2, 3)
    right = [row for column, row in corners if column == 60]
    assert max(right) - 120 in range(-2, 3)
