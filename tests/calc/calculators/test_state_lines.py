"""The state of a bed as it is typed, and typed again from what was read."""

from __future__ import annotations

import random

import pytest

from wedgework.bed import across
from wedgework.calculators.state_lines import needles_text, read_hanging, read_needles, read_rows, rows_text
from wedgework.problems import Refused

FIRST, LAST = -4, 4


def codes(caught: pytest.ExceptionInfo[Refused]) -> list[str]:
    return [problem.code for problem in caught.value.problems]


@pytest.mark.parametrize(
    ("typed", "rows"),
    [
        ("L4-R4: 41 rows", (41,) * 8),
        ("L4-L1: 41; R1-R4: 7", (41, 41, 41, 41, 7, 7, 7, 7)),
        ("l4 to r4: 10 to 24 rows.", (10, 12, 14, 16, 18, 20, 22, 24)),
        ("R4-L4: 10 to 24", (24, 22, 20, 18, 16, 14, 12, 10)),
        ("L4-L2: 10-13\nL1: 1 row\nR1-R4: 0", (10, 12, 13, 1, 0, 0, 0, 0)),
    ],
)
def test_rows_are_typed_in_runs(typed: str, rows: tuple[int, ...]) -> None:
    assert read_rows("f", typed, FIRST, LAST) == rows


@pytest.mark.parametrize(
    ("typed", "rows"),
    [
        ("", (9,) * 8),
        ("L4: 1 more", (10, *(9,) * 7)),
        ("L4-L3: +2 rows", (11, 11, *(9,) * 6)),
        ("R4: 2 rows fewer; R3: -1", (*(9,) * 6, 8, 7)),
        ("L1: 41", (9, 9, 9, 41, 9, 9, 9, 9)),
    ],
)
def test_against_a_plan_only_what_differs_is_typed(typed: str, rows: tuple[int, ...]) -> None:
    assert read_rows("f", typed, FIRST, LAST, (9,) * 8) == rows


@pytest.mark.parametrize(
    ("typed", "planned", "found"),
    [
        ("L4-R3: 5", None, ["carry-on.left-out"]),
        ("L4-R4: 5; L1: 6", None, ["carry-on.twice"]),
        ("L5-R4: 5", None, ["carry-on.no-needles"]),
        ("L0-R4: 5", None, ["carry-on.no-needles"]),
        ("L4-R4: many", None, ["carry-on.no-rows"]),
        ("L4-R4", None, ["carry-on.no-rows"]),
        ("L4-R4: 1 more", None, ["carry-on.no-rows"]),
        ("L4: 10 fewer", (9,) * 8, ["carry-on.below-nothing"]),
        ("L4: odd; X: 3", (9,) * 8, ["carry-on.no-change", "carry-on.no-needles"]),
    ],
)
def test_what_cannot_be_read_is_told_line_by_line(typed: str, planned: tuple[int, ...] | None, found: list[str]) -> None:
    with pytest.raises(Refused) as caught:
        read_rows("f", typed, FIRST, LAST, planned)
    assert codes(caught) == found
    assert all(problem.where == "f" and problem.way_out for problem in caught.value.problems)


def test_missing_needles_are_named_in_runs() -> None:
    with pytest.raises(Refused) as caught:
        read_rows("f", "L3: 5; R2: 5", FIRST, LAST)
    assert "L4, L2-R1, R3-R4" in caught.value.problems[0].sentence


def test_rows_typed_again_are_the_same() -> None:
    dice = random.Random(7)
    for _ in range(200):
        rows = [dice.randrange(9)]
        while len(rows) < len(across(FIRST, LAST)) - 1:
            rows.append(rows[-1] + dice.choice([0, 0, 0, 2, 2, 1]))
        rows.append(dice.randrange(50))
        assert read_rows("f", rows_text(FIRST, rows), FIRST, LAST) == tuple(rows)


def test_a_slope_is_one_line() -> None:
    assert rows_text(FIRST, (4, 6, 8, 10, 10, 10, 3, 9)) == "L4-L1: 4 to 10\nR1-R2: 10\nR3: 3\nR4: 9"


def test_needles_come_from_left_to_right_whatever_was_typed() -> None:
    assert read_needles("f", "R3, L4-L2; r1", FIRST, LAST) == (-4, -3, -2, 1, 3)
    assert needles_text((-4, -3, -2, 1, 3)) == "L4-L2, R1, R3"
    assert read_needles("f", "", FIRST, LAST) == ()
    with pytest.raises(Refused) as caught:
        read_needles("f", "L9, R1, here", FIRST, LAST)
    assert codes(caught) == ["carry-on.no-needles"] * 2


def test_yarns_hang_beside_needles() -> None:
    assert read_hanging("f", "2 at L4\nyarn 1 beside R4, 1: l1", FIRST, LAST, ["1", "2"]) == (("2", -4), ("1", 4), ("1", -1))
    with pytest.raises(Refused) as caught:
        read_hanging("f", "3 at L4; 1 at L5; red", FIRST, LAST, ["1", "2"])
    assert codes(caught) == ["carry-on.no-hanging"] * 3
