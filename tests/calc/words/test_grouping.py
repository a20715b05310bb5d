"""Grouped steps: repeats are found, they are short, and they go back to the steps exactly."""

from __future__ import annotations

import pytest

from pieces import diamond, lopsided, piece
from wedgework.bed import across
from wedgework.formats.design import Design, NamedLayout
from wedgework.formats.plan import (
    BindOff,
    CastOn,
    Cut,
    Free,
    Hang,
    Hold,
    Join,
    Knit,
    Remind,
    Rest,
    Set,
    Step,
    Thread,
    Transfer,
    Waste,
    Weigh,
    Work,
    Wrap,
)
from wedgework.plan import plan_piece
from wedgework.words import Leaf, Literally, Move, Repeat, expand, group, passages, read, unfold
from wedgework.words.walk import Bed

DESIGNS = {
    "diamond": diamond(),
    "lopsided": lopsided(),
    "nested": piece(NamedLayout("nested-diamonds"), 60, 96),
    "chevron": piece(NamedLayout("chevron-bands"), 60, 96),
    "all at the carriage": lopsided(step_style="carriage-side"),
    "wrapped by hand": lopsided(step_style="by-hand"),
}

HOLD = Leaf((Move("hold", 1, 0),), 2)
HOLD_TWO = Leaf((Move("hold", 2, 0),), 2)


def bed(first: int, last: int, held: tuple[int, ...] = (), carriage: str = "R") -> Bed:
    needles = across(first, last)
    return Bed(needles, frozenset(held), carriage, 99 if carriage == "R" else -99, lever="hold", block="x")  # type: ignore[arg-type]


@pytest.mark.parametrize("design", DESIGNS.values(), ids=DESIGNS.keys())
def test_expanding_the_groups_gives_the_steps(design: Design) -> None:
    plan = plan_piece(design)
    found = passages(plan)
    for passage in found[:-1]:
        first, last = passage.handfuls[0].first, passage.handfuls[-1].last
        assert expand(passage.handfuls[0].bed, passage.grouped) == plan.steps[first : last + 1]


def test_equal_leaves_are_one_repeat() -> None:
    assert group([HOLD] * 23) == (Repeat(23, (HOLD,)),)


def test_steps_of_one_and_two_alternate_in_one_repeat() -> None:
    assert group([HOLD, HOLD_TWO] * 12) == (Repeat(12, (HOLD, HOLD_TWO)),)


def test_a_repeat_inside_a_repeat() -> None:
    leaves = [HOLD_TWO, *[HOLD] * 5] * 4
    assert group(leaves) == (Repeat(4, (HOLD_TWO, Repeat(5, (HOLD,)))),)
    assert list(unfold(group(leaves))) == leaves


def test_what_repeats_nowhere_stays_as_it_is() -> None:
    once = [Leaf((Move("hold", n, 0),), 2) for n in range(1, 6)]
    assert group(once) == tuple(once)
    assert group([]) == ()


def test_no_repeat_goes_deeper_than_two() -> None:
    inner = [HOLD, HOLD, HOLD_TWO] * 3 + [HOLD]
    grouped = group((inner * 2 + [HOLD_TWO]) * 2)

    def depth(items: tuple[Leaf | Repeat, ...]) -> int:
        return max((1 + depth(item.body) for item in items if isinstance(item, Repeat)), default=0)

    assert 1 <= depth(grouped) <= 2


def test_the_diamond_takes_three_sentences() -> None:
    """The worked case: one needle a step up to the full width, then back."""
    blocks = [passage for passage in passages(plan_piece(diamond())) if passage.is_picture]
    assert [len(block.grouped) for block in blocks] == [2, 2, 4, 2, 2]


def test_both_sides_count_from_the_carriage() -> None:
    """The same work on the left and on the right is the same leaf."""
    left = read(bed(-5, 5, carriage="L"), [Hold((-5,)), Knit("R", 1, "x", 1), Knit("L", 2, "x", 2)])
    right = read(bed(-5, 5), [Hold((5,)), Knit("L", 1, "x", 1), Knit("R", 2, "x", 2)])
    assert left == right == (HOLD,)


def test_needles_at_both_ends_in_one_step() -> None:
    start = bed(-5, 5)
    steps = (Hold((-5, -4, 5)), Knit("L", 1, "x", 1), Work((5,)), Knit("R", 2, "x", 2))
    leaves = read(start, steps)
    assert leaves == (Leaf((Move("hold", 1, 2),), 1), Leaf((Move("work", 0, 1),), 1))
    assert expand(start, leaves) == steps


def test_a_needle_in_the_middle_stands_literally() -> None:
    leaves = read(bed(-5, 5), [Hold((1,)), Knit("L", 1, "x", 1)])
    assert leaves == (Leaf((Literally(Hold((1,))),), 1),)


def test_a_wrap_by_hand_counts_from_the_carriage() -> None:
    start = bed(-5, 5, held=(4, 5))
    leaves = read(start, [Wrap(4), Knit("L", 1, "x", 1)])
    assert leaves == (Leaf((Move("wrap", 1, 0),), 1),)
    assert expand(start, leaves) == (Wrap(4), Knit("L", 1, "x", 1))


EVERY: tuple[Step, ...] = (
    Set("hold", None),
    Thread("a", -2),
    Thread("b"),
    Cut(),
    Rest(),
    Join(),
    Hold((-5, -4)),
    Work((-4,)),
    Knit("L", 1, "x", 1),
    Knit("L", 2, "x", 2),
    Knit("R", 9, "y", 4),
    Free("L"),
    Wrap(3),
    Transfer(2, 3),
    Hang((1, 2)),
    CastOn((1,)),
    Waste(4),
    BindOff((1, 2)),
    Weigh((1,)),
    Remind("anything"),
    Hold(()),
    Hold((2, 1)),
    Hold(tuple(n for n in range(-5, 6) if n)),
)


def test_every_kind_of_step_goes_there_and_back_also_in_a_wrong_order() -> None:
    for steps in (EVERY, EVERY[::-1], EVERY + EVERY):
        assert expand(bed(-5, 5), group(read(bed(-5, 5), steps))) == tuple(steps)
