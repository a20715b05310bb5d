"""Cells to chains: one run of needles in every turn, and what waits for what."""

from __future__ import annotations

from pieces import grid_from
from wedgework.plan.regions import chains_of


def shown(*lines: str) -> list[tuple[str, int, list[tuple[int, int]]]]:
    return [(c.yarn, c.first_turn, c.runs) for c in chains_of(grid_from(*lines))]


def test_one_region_is_one_chain() -> None:
    assert shown("aaaa", "aaaa") == [("a", 0, [(0, 3), (0, 3)])]


def test_a_region_that_forks_begins_anew_on_both_sides() -> None:
    assert shown("aabaa", "aaaaa") == [
        ("a", 0, [(0, 4)]),
        ("a", 1, [(0, 1)]),
        ("b", 1, [(2, 2)]),
        ("a", 1, [(3, 4)]),
    ]


def test_arms_that_meet_begin_a_chain() -> None:
    assert [c[0:2] for c in shown("aaaaa", "aabaa")] == [("a", 0), ("b", 0), ("a", 0), ("a", 1)]


def test_neighbours_of_one_yarn_are_one_region_whatever_their_shapes() -> None:
    assert shown("aAAb", "aaAb") == [("a", 0, [(0, 2), (0, 2)]), ("b", 0, [(3, 3), (3, 3)])]


def test_a_thin_band_may_lean_by_more_than_its_width() -> None:
    assert ("b", 0, [(1, 2), (3, 4), (5, 6)]) in shown("aaaaabba", "aaabbaaa", "abbaaaaa")


def test_two_shapes_that_touch_at_a_corner_stay_two_chains() -> None:
    assert sum(c[0] == "b" for c in shown("aaBa", "abaa")) == 2


def test_a_chain_waits_for_what_lies_under_the_needles_it_enters() -> None:
    below, above = chains_of(grid_from("bbbb", "bbba", "bbaa", "baaa", "aaaa"))
    assert above.waits == {0: [1, 2, 3, 4]}
    assert below.waits == {}
