"""Yarn: what goes on, what rests, what is cut."""

from __future__ import annotations

from typing import Literal

from wedgework.formats.design import Costs
from wedgework.plan.feed import Change, Passage, feed
from wedgework.plan.price import Prices
from wedgework.plan.strand import Strand, crossed, within_reach

Side = Literal["L", "R"]
PRICES = Prices(Costs(), 40)


def passage(yarn: str, begins: int, ends: int, start: Side = "R", end: Side = "R", low: int = 0, high: int = 0) -> Passage:
    return Passage(yarn, Strand(begins, low, start), Strand(ends, high, end))


def test_the_next_block_goes_on_where_the_yarn_hangs() -> None:
    assert feed([passage("a", 9, 9), passage("a", 9, 5)], 2, 2, PRICES)[1] == Change("nothing", False, False)


def test_a_yarn_rests_for_a_block_and_is_taken_up_again() -> None:
    changes = feed([passage("a", 9, 9, high=4), passage("b", 5, 5), passage("a", 9, 9, low=6)], 2, 2, PRICES)
    assert changes == [Change("nothing", True, True), Change("rest", True, True), Change("cut", True, False)]


def test_too_far_or_too_high_is_cut() -> None:
    far = feed([passage("a", 9, 9), passage("b", 5, 5), passage("a", 2, 2)], 2, 2, PRICES)
    high = feed([passage("a", 9, 9), passage("b", 5, 5), passage("a", 9, 9, low=9)], 2, 2, PRICES)
    assert far[1].away == high[1].away == "cut"
    assert far[2].anew
    assert high[2].anew


def test_no_more_yarns_rest_than_the_mast_carries() -> None:
    row = [passage("a", 9, 9), passage("b", 5, 5), passage("c", 7, 7), passage("b", 5, 5), passage("a", 9, 9)]
    assert [c.away for c in feed(row, 2, 2, PRICES)] == ["nothing", "rest", "cut", "cut", "cut"]
    assert [c.away for c in feed(row, 2, 3, PRICES)] == ["nothing", "rest", "rest", "cut", "cut"]


def test_after_a_free_pass_the_yarn_is_threaded_where_it_hangs() -> None:
    assert feed([passage("a", 9, 4, end="L"), passage("a", 5, 5, start="R")], 2, 2, PRICES)[1] == Change("rest", True, False)


def test_a_strand_inward_crosses_the_needle_it_hangs_from() -> None:
    assert crossed(Strand(3, 0, "L"), Strand(4, 0, "L")) == 1
    assert crossed(Strand(3, 0, "L"), Strand(2, 0, "L")) == 0
    assert crossed(Strand(3, 0, "R"), Strand(3, 0, "R")) == 0
    assert within_reach(Strand(3, 0, "R"), Strand(1, 8, "R"), 2)
    assert not within_reach(Strand(3, 0, "R"), Strand(1, 9, "R"), 2)


def test_where_only_one_can_rest_the_dearer_one_does() -> None:
    """Both a and b could be taken up again; a's ends would lie at the selvedge, those of b inside."""
    row = [passage("a", 0, 0), passage("b", 5, 5), passage("c", 7, 7), passage("b", 5, 5), passage("a", 0, 0)]
    assert [c.away for c in feed(row, 2, 2, PRICES)] == ["nothing", "cut", "rest", "cut", "cut"]
