"""The way of the yarn: every stitch once, in the order of the passes, with turns, strands and ends counted by hand."""

from __future__ import annotations

from fractions import Fraction

import pytest

from pieces import YARNS, diamond, drawn, lopsided, piece
from wedgework.formats.design import Bed, Design, Extent, Gauge, NamedLayout, Panel
from wedgework.formats.plan import Block, Cut, Edges, Hold, Knit, Plan, Rest, Set, Start, Summary, Thread, Wrap
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan
from wedgework.yarn.path import AROUND, YarnPath, path_of

DESIGNS = {
    "diamond": diamond(20, 40),
    "harbour": lopsided(),
    "bands": piece(NamedLayout("chevron-bands"), 24, 60),
    "plain": piece(drawn("a"), 6, 8, base_rows_bottom=0, base_rows_top=0),
}


def way(design: Design) -> YarnPath:
    plan = plan_piece(design)
    return path_of(plan, replay_plan(plan))


@pytest.mark.parametrize("design", DESIGNS.values(), ids=DESIGNS.keys())
def test_every_stitch_of_the_replay_lies_on_the_path(design: Design) -> None:
    plan = plan_piece(design)
    judged = replay_plan(plan)
    path = path_of(plan, judged)
    for stretch in path.stretches:
        assert sum(path.stitches[stretch.begin : stretch.end]) == judged.block_stitches[stretch.block]
        assert stretch.end - stretch.begin == judged.block_rows[stretch.block]
    knits = [step for step in plan.steps if isinstance(step, Knit)]
    assert path.passes == len(knits)
    for at, step in enumerate(knits):
        places = path.places(at)
        assert len(places) == path.stitches[at]
        assert list(places) == sorted(places, reverse=step.to == "L")
        for place in places:
            if path.stretches[-1].begin > at and not step.block.startswith("base"):
                (run,) = [r for r in judged.piece.columns[place] if r.first_pass <= at + 1 <= r.last_pass]
                assert run.block == step.block


def test_tails_are_the_ends_that_the_replay_counted() -> None:
    for design in DESIGNS.values():
        plan = plan_piece(design)
        judged = replay_plan(plan)
        path = path_of(plan, judged)
        assert sum(path.anew.values()) + sum(path.cut.values()) == judged.summary.ends


def test_a_plain_piece_has_no_strands_and_both_edges() -> None:
    path = way(DESIGNS["plain"])
    assert sum(path.crossed) == 0
    assert (path.cast_on, path.bound_off) == ({0: 6}, {7: 6})
    assert (path.anew, path.cut) == ({0: 1}, {7: 1})
    assert path.stitches == [6] * 8


def by_hand(*steps: object, needles: tuple[int, int] = (-2, 2)) -> tuple[Plan, YarnPath]:
    """A plan of so many steps in one block; what the model bed thinks of it does not matter here."""
    design = Design(
        "By hand", Bed(Fraction(9), 100), Gauge(Fraction(14), Fraction(19)),
        Panel(Extent(count=4), Extent(count=4)), YARNS, drawn("a"),
    )  # fmt: skip
    plan = Plan(
        design, *needles, Start("R", needles), Edges(base_rows_bottom=0, base_rows_top=0),
        (Block("b1", "a", "One", 0, len(steps) - 1),), steps, Summary(0, 0, 0, 0, 0, 0, 0),
    )  # fmt: skip
    return plan, path_of(plan, replay_plan(plan))


def test_a_needle_held_at_the_carriage_is_one_needle_crossed() -> None:
    """Narrowing, one needle every two rows (common practice): the yarn lies over the needle that was held."""
    _, path = by_hand(
        Set("hold"), Thread("a"), Knit("L", 1, "b1", 1), Hold((-2,)), Knit("R", 2, "b1", 2), Knit("L", 3, "b1", 3), Cut()
    )
    assert path.stitches == [4, 3, 3]
    assert path.crossed == [0, 1, 0]
    assert [path.places(t) for t in range(3)] == [(3, 2, 1, 0), (1, 2, 3), (3, 2, 1)]


def test_a_wrap_by_hand_goes_there_and_back() -> None:
    _, path = by_hand(Set("hold"), Thread("a"), Hold((-2,)), Knit("L", 1, "b1", 1), Wrap(-2), Knit("R", 2, "b1", 2), Cut())
    assert path.stitches == [3, 3]
    assert path.crossed == [0, AROUND]


def test_held_needles_in_the_middle_leave_a_gap() -> None:
    _, path = by_hand(Set("hold"), Thread("a"), Hold((1,)), Knit("L", 1, "b1", 1), Knit("R", 2, "b1", 2), Cut())
    assert path.places(0) == (3, 1, 0)
    assert path.places(1) == (0, 1, 3)


def test_a_rested_yarn_is_not_a_new_one() -> None:
    _, path = by_hand(Thread("a"), Knit("L", 1, "b1", 1), Rest(), Thread("a"), Knit("R", 2, "b1", 2), Cut())
    assert path.anew == {0: 1}
    assert path.cut == {1: 1}
