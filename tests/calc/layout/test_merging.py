"""Crumbs given to a neighbour."""

from __future__ import annotations

from collections import Counter

import pytest

from pieces import drawn, grid_from, letters_of, piece
from wedgework.formats.design import DrawnLayout
from wedgework.layout import grid_of, resolve
from wedgework.layout.merging import merged
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan


def after(least: int, *lines: str) -> list[str]:
    return letters_of(merged(grid_from(*lines), 2 * len(lines), least))


def test_a_crumb_takes_the_yarn_of_the_longest_border() -> None:
    # The speck touches b with three sides and a with five.
    assert after(20, "aaaaaaaa", "aaacbbbb", "aaacbbbb", "aaabbbbb") == ["aaaaaaaa", "aaaabbbb", "aaaabbbb", "aaabbbbb"]


def test_what_is_large_enough_stays() -> None:
    lines = ("aaaaaaaa", "aaccbbbb", "aaccbbbb")
    assert after(8, *lines) == list(lines)
    assert after(9, *lines) == ["aaaaaaaa", "aaaabbbb", "aaaabbbb"]


def test_regions_that_a_crumb_kept_apart_become_one() -> None:
    """Each half of b is a crumb; with the speck between them they are not."""
    assert after(17, "aaaaaaaaaa", "bbbbcbbbba", "bbbbcbbbba") == ["aaaaaaaaaa", "bbbbbbbbba", "bbbbbbbbba"]


def test_one_crumb_inside_another() -> None:
    assert after(60, "aaaaaaaaa", "aaabbbaaa", "aaabcbaaa", "aaabbbaaa", "aaaaaaaaa") == ["a" * 9] * 5


def test_a_picture_of_crumbs_ends_in_one_yarn_and_not_in_a_loop() -> None:
    (line,) = set(after(1000, "abcabc", "bcabca", "cabcab"))
    assert len(set(line)) == 1


def test_a_single_row_at_the_top_counts_once() -> None:
    grid = grid_from("abbbba", "aaaaaa")
    assert letters_of(merged(grid, 3, 4)) == ["abbbba", "aaaaaa"]
    assert letters_of(merged(grid, 3, 5)) == ["aaaaaa", "aaaaaa"]


@pytest.mark.parametrize("least", [30, 60, 200])
def test_a_picture_with_specks_can_be_knitted_without_them(least: int) -> None:
    specks = tuple(("b", [(f"0.{x}", "0.5"), (f"0.{x}9", "0.5"), (f"0.{x}4", "0.58")]) for x in range(1, 9))
    layout: DrawnLayout = drawn("a", *specks, ("c", [("0.2", "0.7"), ("0.8", "0.7"), ("0.5", "0.95")]))
    design = piece(layout, 60, 100, merge_below=least)
    judged = replay_plan(plan_piece(design))
    assert judged.problems == ()
    cells = grid_of(design, resolve(design)).turns
    assert all(sum(run.last - run.first + 1 for run in turn) == 60 for turn in cells)
    assert judged.stitches.keys() == {"a", "c"}
    assert not Counter(w.code for w in judged.warnings)["piece.crumbs"]
