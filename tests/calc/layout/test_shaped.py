"""Gaps and profiles: which cells are left, how many rows each needle is to have, and what cannot be."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from pieces import drawn, piece, points
from wedgework.formats.design import Design, DrawnLayout, Part
from wedgework.layout import grid_of, is_shaped, resolve, shaping_of, shaping_problems, size_problems
from wedgework.layout.shaped import Shaping
from wedgework.plan import plan_piece
from wedgework.problems import Refused

DART = points((0, "0.3"), ("0.5", "0.5"), (0, "0.7"))


def shaped(needles: int, rows: int, **keys: object) -> Design:
    return piece(replace(drawn("a"), **keys), needles, rows)  # type: ignore[arg-type]


def shaping(design: Design) -> Shaping:
    sizes = resolve(design)
    return shaping_of(grid_of(design, sizes), sizes.rows)


def test_a_rectangle_has_no_shaping() -> None:
    flat = shaped(10, 21)
    assert not is_shaped(flat)
    found = shaping(flat)
    assert found.wanted == found.tops == (21,) * 10
    assert not any(found.gaps)


def test_a_profile_ends_each_needle_at_its_rows_also_in_the_middle_of_a_turn() -> None:
    design = shaped(5, 9, profile=(2, 3, 8, 9, 1))
    found = shaping(design)
    assert is_shaped(design)
    assert found.wanted == found.tops == (2, 3, 8, 9, 1)
    assert [sum(run.last - run.first + 1 for run in turn) for turn in grid_of(design, resolve(design)).turns] == [5, 3, 2, 2, 1]


def test_a_dart_takes_rows_out_of_the_needles_that_it_reaches() -> None:
    found = shaping(shaped(20, 40, gaps=(DART,)))
    assert set(found.tops) == {40}
    taken = [40 - rows for rows in found.wanted]
    assert taken[0] == 16
    assert taken == sorted(taken, reverse=True)
    assert taken[10:] == [0] * 10
    low, high = found.gaps[0][0]
    assert (low, high) == (12, 28)


def test_a_profile_counts_what_is_knitted_not_the_gaps() -> None:
    found = shaping(shaped(20, 40, gaps=(DART,), profile=(20,) * 20))
    assert found.wanted == (20,) * 20
    assert found.tops[0] == 36
    assert found.tops[-1] == 20


def test_where_a_needle_is_in_the_picture() -> None:
    one = Shaping((30,), (((4, 10), (20, 24)),))
    assert one.wanted == (20,)
    assert [one.in_picture(0, rows) for rows in (0, 3, 4, 13, 14)] == [0, 3, 10, 19, 24]
    assert one.in_picture(0, 3, early=1) == 9
    assert [one.passed(0, row) for row in (4, 10, 23, 24)] == [0, 6, 6, 10]
    assert list(one.split(0, 0, 30)) == [(0, 4), (10, 20), (24, 30)]
    assert list(one.split(0, 2, 12)) == [(2, 4), (10, 12)]


def test_a_panel_of_a_shaped_picture_keeps_its_tops() -> None:
    design = shaped(12, 24, profile=tuple(range(2, 26, 2)))
    part = Part(number=2, panels=2, first=7, last=12, seam_left=1)
    found = shaping(replace(design, panel=replace(design.panel, part=part)))
    assert found.wanted == (14, 14, 16, 18, 20, 22, 24)


@pytest.mark.parametrize(
    ("keys", "expected"),
    [
        ({"profile": (4,) * 9}, [("layout.profile", "layout.profile-needles")]),
        ({"profile": (4,) * 9 + (31,)}, [("layout.profile[9]", "layout.profile-too-high")]),
        ({"gaps": (points((0, 0), (1, 1), (1, 0), (0, 1)),)}, [("layout.gaps[0]", "layout.crossing-edges")]),
        ({"gaps": (points((0, 0), (1, 1), ("0.5", "0.5")),)}, [("layout.gaps[0]", "layout.no-area")]),
        ({"gaps": (points((0, 0), (1, 0), (1, 1), (0, 1)),)}, [("layout", "layout.nothing-left")]),
        (
            {"gaps": (points((0, 0), ("0.1", 0), ("0.1", "0.5"), (0, "0.5")),), "profile": (30,) * 10},
            [("layout.profile[0]", "layout.profile-too-high")],
        ),
    ],
)
def test_what_cannot_be(keys: dict[str, object], expected: list[tuple[str, str]]) -> None:
    with pytest.raises(Refused) as refused:
        plan_piece(shaped(10, 30, **keys))
    assert [(problem.where, problem.code) for problem in refused.value.problems] == expected
    assert all(problem.way_out for problem in refused.value.problems)


def test_only_so_many_needles_are_named() -> None:
    assert len(size_problems(shaped(10, 30, profile=(40,) * 10))) == 5
    fine = shaped(10, 30, profile=(30,) * 10)
    assert size_problems(fine) == shaping_problems(fine, grid_of(fine, resolve(fine)), 30) == []


def test_crumbs_are_merged_within_what_is_knitted() -> None:
    """A gap between two regions is no border: a crumb goes to a neighbour that it touches."""
    layout = drawn("a", ("b", [("0", "0.4"), ("0.2", "0.4"), ("0.2", "0.6"), ("0", "0.6")]))
    gap = points(("0.2", "0"), ("0.4", "0"), ("0.4", "1"), ("0.2", "1"))
    design = piece(replace(layout, gaps=(gap,)), 10, 20, merge_below=30)
    turns = grid_of(design, resolve(design)).turns
    assert {run.yarn for turn in turns for run in turn} == {"a"}
    assert all([(run.first, run.last) for run in turn] == [(0, 1), (4, 9)] for turn in turns)
    assert Fraction(1, 5) in {x for x, _ in gap}
    assert isinstance(design.layout, DrawnLayout)
