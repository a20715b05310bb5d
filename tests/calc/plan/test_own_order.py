"""The person's own wishes for the order: earlier, later, from which side; and what cannot be."""

from __future__ import annotations

import itertools

import pytest

from pieces import diamond, drawn, piece
from wedgework.bed import Side
from wedgework.formats.design import Design, NamedLayout, OrderWish
from wedgework.formats.plan import Knit, Plan, is_edge
from wedgework.plan import plan_piece
from wedgework.plan.order import EXACT
from wedgework.problems import Problem, Refused
from wedgework.replay import replay_plan

THREE_TENTS = drawn(
    "a",
    ("b", [("0.02", 0), ("0.3", 0), ("0.16", "0.6")]),
    ("b", [("0.36", 0), ("0.64", 0), ("0.5", "0.6")]),
    ("b", [("0.7", 0), ("0.98", 0), ("0.84", "0.6")]),
)

LATTICE = NamedLayout("diamond-lattice")


def tents(*wishes: OrderWish) -> Design:
    return piece(THREE_TENTS, 90, 80, order=wishes)


def named(yarn: str, plan: Plan) -> list[str]:
    return [block.id for block in plan.blocks if block.yarn == yarn and not is_edge(block.id)]


def order(plan: Plan) -> list[str]:
    return [block.id for block in plan.blocks if not is_edge(block.id)]


def begins(plan: Plan, block_id: str) -> Side:
    """Where the carriage stands when the block begins, read off its first pass."""
    first = next(step for step in plan.steps if isinstance(step, Knit) and step.block == block_id)
    return "R" if first.to == "L" else "L"


def refused(design: Design) -> list[Problem]:
    with pytest.raises(Refused) as found:
        plan_piece(design)
    return list(found.value.problems)


def test_ids_stay_the_same_whatever_the_order() -> None:
    free = plan_piece(tents())
    tent_ids = named("b", free)
    first, last = tent_ids[0], tent_ids[-1]
    moved = plan_piece(tents(OrderWish(last, before=first)))
    assert sorted(order(moved)) == sorted(order(free))
    assert {b.id: b.yarn for b in moved.blocks} == {b.id: b.yarn for b in free.blocks}
    assert order(moved).index(last) < order(moved).index(first)
    assert replay_plan(moved).stitches == replay_plan(free).stitches
    assert replay_plan(moved).problems == ()


def test_later_is_the_mirror_of_earlier() -> None:
    ids = named("b", plan_piece(tents()))
    one = plan_piece(tents(OrderWish(ids[2], before=ids[0])))
    other = plan_piece(tents(OrderWish(ids[0], after=ids[2])))
    assert order(one) == order(other)


@pytest.mark.parametrize("side", ["L", "R"])
def test_a_start_side_that_is_fixed(side: Side) -> None:
    """The rest stays a best one, with free passes where they are needed."""
    for block_id in order(plan_piece(diamond())):
        plan = plan_piece(diamond(order=(OrderWish(block_id, start=side),)))
        assert begins(plan, block_id) == side
        assert replay_plan(plan).sound


def test_the_planner_keeps_the_rest_best() -> None:
    """A wish that the best order fulfils anyway changes nothing."""
    plan = plan_piece(diamond())
    ids = order(plan)
    wishes = (OrderWish(ids[0], before=ids[1], start=begins(plan, ids[0])), OrderWish(ids[4], after=ids[3]))
    assert plan_piece(diamond(order=wishes)).steps == plan.steps


def test_what_lies_below_comes_first() -> None:
    """The diamond is b2, its lower corners b1 and b3, the upper ones b4 and b5."""
    (right_below,) = refused(diamond(order=(OrderWish("b2", before="b1"),)))
    assert right_below.where == "options.order[0]"
    assert right_below.sentence == "Block b2 can't come before b1: b1 lies right below it."
    (deeper,) = refused(diamond(order=(OrderWish("b3", after="b4"),)))
    assert deeper.sentence == "Block b4 can't come before b3: b3 lies below it, with b2 between them."
    assert deeper.way_out


def test_wishes_that_contradict_each_other() -> None:
    found = refused(
        diamond(
            order=(
                OrderWish("b1", before="b3"),
                OrderWish("b3", before="b1"),
                OrderWish("b2", start="L"),
                OrderWish("b2", start="R"),
                OrderWish("b4", before="b4"),
            )
        )
    )
    assert [p.where for p in found] == ["options.order[1]", "options.order[3].start", "options.order[4]"]
    assert found[0].sentence == "Block b3 can't come before b1: with the other wishes the order has to be b1, b3."
    assert found[2].sentence == "Block b4 can't come before itself."


def test_blocks_that_are_not_there() -> None:
    found = refused(diamond(order=(OrderWish("b9", before="b1"), OrderWish("b1", after="hem"))))
    assert [p.where for p in found] == ["options.order[0].block", "options.order[1].after"]
    assert found[0].sentence == "There is no block b9: the blocks of this piece are b1 to b5."


def test_a_wish_is_kept_beyond_the_exact_search() -> None:
    """Thirteen blocks: whichever two neighbours in the order may be exchanged are exchanged; the others lie over each other."""
    free = order(plan_piece(piece(LATTICE, 80, 140)))
    assert len(free) > EXACT
    exchanged, reasons = 0, []
    for one, other in itertools.pairwise(free):
        wish = OrderWish(other, before=one, start="L")
        try:
            plan = plan_piece(piece(LATTICE, 80, 140, order=(wish,)))
        except Refused as impossible:
            reasons.append((f"{one} lies right below it", impossible.problems[0].sentence))
            continue
        assert order(plan).index(other) < order(plan).index(one)
        assert begins(plan, other) == "L"
        assert replay_plan(plan).sound
        exchanged += 1
    assert 2 <= exchanged < len(free) - 1
    assert all(reason in sentence for reason, sentence in reasons)
