"""Even shaping against published rows, through the calculator as a person asks it, and against a reference library's rasters."""

from __future__ import annotations

import pytest
from shapely.geometry import LineString, Point

from wedgework.calculators.even_shaping import CALCULATOR
from wedgework.declare import work_out
from wedgework.shaping import spaced, stages


def groups(**typed: str) -> list[tuple[int, int]]:
    result = work_out(CALCULATOR, typed).result
    assert result is not None
    found = result.values["groups"]
    assert isinstance(found, list)
    return [(group["every"], group["times"]) for group in found]


def test_a_sleeve_of_two_textbooks() -> None:
    """Knitwear design textbooks of 1991 and 2010: 124 and 14, every 8th twice and every 9th 12 times."""
    assert groups(changes="14", over="124", gaps="k") == [(8, 2), (9, 12)]


def test_decreases_in_rows() -> None:
    """The same: 26 decreases in 64 rows, every 2nd 14 times, every 3rd 12 times."""
    assert groups(changes="26", over="64", gaps="k", change="fewer") == [(2, 14), (3, 12)]


def test_decreases_across_a_row() -> None:
    """Published: 55 stitches to 38 in one row, every 4th 4 times, every 3rd 13 times."""
    assert groups(along="stitches", changes="17", over="55", gaps="k", change="fewer") == [(3, 13), (4, 4)]


def test_increases_across_a_row() -> None:
    """Published: 112 stitches and 16 more, every 7th."""
    assert groups(along="stitches", changes="16", over="112", gaps="k") == [(7, 16)]


def test_flat_increases_with_none_at_the_edges() -> None:
    """Textbook: 40 stitches and 4 more, flat: 5 sections of 8."""
    assert groups(along="stitches", changes="4", over="40", gaps="k+1") == [(8, 5)]


def test_flat_decreases() -> None:
    """Textbook: 110 less 14, flat: 15 sections, 7 and 5 remain."""
    assert groups(along="stitches", changes="14", over="110", gaps="k+1", change="fewer") == [(7, 10), (8, 5)]


def test_a_skirt_with_a_half_that_is_no_stitch() -> None:
    """A published lesson (2011): 56 stitches to 40, 56 / 16 = 3.5: 3 and 4 stitches by turns, eight of each."""
    assert groups(along="stitches", changes="16", over="56", gaps="k", change="fewer") == [(3, 8), (4, 8)]


def test_a_mitten() -> None:
    """The same lesson: a cuff of 40 stitches becomes 48, one more after every 5."""
    assert groups(along="stitches", changes="8", over="40", gaps="k") == [(5, 8)]


def test_a_border_of_51_stitches() -> None:
    """A yarn shop's lesson: 51 stitches and 4 more in the round, every 12.75: 13, 13, 13 and 12."""
    assert groups(along="stitches", changes="4", over="51", gaps="k") == [(12, 1), (13, 3)]


def test_two_edges_of_a_triangle() -> None:
    """An essay on knitted triangles (2009): 20 stitches in 10 rows are two in each row, 5 in 10 rows one every other row."""
    assert groups(changes="5", over="10", gaps="k", change="fewer") == [(2, 5)]
    (stage,) = stages([(0, 20), (10, 0)])
    assert sum(-stitches for _, stitches in stage.places) == 20


def test_the_row_that_does_not_add_up() -> None:
    """A trap met in print: "120 stitches, 11 groups: every 10th 9 times, 11th once" is 101. Ours are 120."""
    found = groups(along="stitches", changes="11", over="120", gaps="k")
    assert found == [(10, 1), (11, 10)]
    assert sum(every * times for every, times in found) == 120


def test_a_shoulder_cast_off_in_three_steps() -> None:
    """A worked shoulder: 75 stitches = 2 x (7 + 8 + 8) + 29. One side: 23 stitches in 6 rows."""
    (stage,) = stages([(0, 23), (6, 0)])
    assert sorted(-stitches for _, stitches in stage.places) == [7, 8, 8]
    assert [row for row, _ in stage.places] == [2, 4, 6]


@pytest.mark.parametrize(("changes", "rows"), [(14, 124), (26, 64), (5, 90), (37, 100)])
def test_places_lie_on_the_straight_line(changes: int, rows: int) -> None:
    """Against shapely: no change lies further than one row below the straight line from start to end."""
    straight = LineString([(0, 0), (rows, changes)])
    for i, row in enumerate(spaced(changes, rows).positions, 1):
        across = straight.intersection(LineString([(row, -1), (row, changes + 1)]))
        assert isinstance(across, Point)
        assert -1e-9 <= i - across.y < 1
