"""Small plans by hand on the model bed: what each step does to loops, yarn and counters."""

from __future__ import annotations

from dataclasses import replace

from pieces import drawn, piece
from wedgework.formats.plan import (
    BindOff,
    Block,
    CastOn,
    Cut,
    Edges,
    Free,
    Hang,
    Hold,
    Join,
    Knit,
    Plan,
    Remind,
    Rest,
    Set,
    Start,
    Step,
    Summary,
    Thread,
    Transfer,
    Waste,
    Weigh,
    Work,
    Wrap,
)
from wedgework.replay import Replay, replay_plan

ALL = (-3, -2, -1, 1, 2, 3)
EMPTY = Summary(0, 0, 0, 0, 0, 0, 0)


def carried_out(*steps: Step, needles: int = 6, rows: int = 4, yarn: str = "a") -> Replay:
    """One block of these steps on L3 ... R3, begun with the carriage on the right."""
    design = piece(drawn(yarn), needles, rows)
    plan = Plan(
        design,
        -3,
        3,
        Start("R", (-3, 3)),
        Edges(base_rows_bottom=0, base_rows_top=0),
        (Block("b1", yarn, "", 0, len(steps) - 1),),
        steps,
        EMPTY,
    )
    judged = replay_plan(plan)
    return replay_plan(replace(plan, summary=judged.summary))


def codes(*steps: Step, **more: int) -> list[str]:
    return [p.code.removeprefix("steps.") for p in carried_out(*steps, **more).problems if p.code.startswith("steps")]


def rows(count: int, first_to: str = "L") -> list[Step]:
    other = {"L": "R", "R": "L"}
    found: list[Step] = []
    to = first_to
    for row in range(1, count + 1):
        found.append(Knit(to, row, "b1", row))  # type: ignore[arg-type]
        to = other[to]
    return found


def test_four_plain_rows_are_sound() -> None:
    judged = carried_out(Thread("a"), *rows(4), BindOff(ALL), Cut())
    assert judged.problems == ()
    assert judged.sound
    assert judged.stitches == {"a": 24}
    assert (judged.rows_min, judged.rows_max, judged.summary.ends, judged.summary.ends_inside) == (4, 4, 2, 0)


def test_on_knit_the_lever_brings_held_needles_back() -> None:
    judged = carried_out(Thread("a"), Set("hold"), Hold((-3,)), *rows(2), Set("knit"), *rows(4)[2:], BindOff(ALL), Cut())
    assert (judged.rows_min, judged.rows_max) == (2, 4)
    assert len(judged.piece.columns[0]) == 1


def test_on_hold_a_held_needle_waits() -> None:
    judged = carried_out(Thread("a"), Set("hold"), Hold((-3,)), *rows(4), Work((-3,)), BindOff(ALL), Cut())
    assert judged.piece.columns[0] == ()
    assert judged.summary.steepest_fold == 4


def test_a_free_pass_with_all_needles_held_drops_nothing() -> None:
    judged = carried_out(
        *(Thread("a"), Set("hold"), *rows(1), Hold(ALL), Cut(), Free("R"), Thread("a"), Work(ALL)),
        *(Knit("L", 2, "b1", 2), Knit("R", 3, "b1", 3), Knit("L", 4, "b1", 4), BindOff(ALL), Cut()),
    )
    assert judged.problems == ()
    assert judged.summary.free_passes == 1
    assert judged.summary.ends == 4


def test_a_free_pass_on_knit_drops_held_stitches_too() -> None:
    judged = carried_out(Thread("a"), *rows(1), Hold(ALL), Cut(), Free("R"))
    assert judged.summary.dropped == 6


def test_a_free_pass_over_working_needles_drops_their_stitches() -> None:
    judged = carried_out(Thread("a"), Set("hold"), *rows(1), Hold(ALL[:4]), Cut(), Free("R"))
    assert judged.summary.dropped == 2
    assert any(p.code == "steps.dropped" and "R2" in p.sentence for p in judged.problems)


def test_a_rested_yarn_makes_no_end_and_is_taken_up_again() -> None:
    judged = carried_out(Thread("a"), *rows(2), Rest(), Thread("a"), *rows(4)[2:], BindOff(ALL), Cut())
    assert judged.problems == ()
    assert judged.summary.ends == 2


def test_a_new_ball_at_the_edge_makes_two_ends() -> None:
    judged = carried_out(Thread("a"), *rows(2), Join(), *rows(4)[2:], BindOff(ALL), Cut())
    assert judged.summary.ends == 4
    assert judged.summary.ends_inside == 0


def test_an_eyelet_is_a_stitch_moved_and_a_new_one_made() -> None:
    judged = carried_out(Thread("a"), *rows(2), Transfer(-2, -1), *rows(4)[2:], BindOff(ALL), Cut())
    assert judged.problems == ()
    assert codes(Thread("a"), Transfer(-2, -1), Transfer(-2, -3), *rows(1), BindOff(ALL), Cut()) == ["no-loop"]


def test_hung_loops_knit_together() -> None:
    assert codes(Thread("a"), *rows(2), Hang(ALL), *rows(4)[2:], BindOff(ALL), Cut()) == []


def test_casting_on_where_a_loop_is_and_binding_off_where_none_is() -> None:
    assert codes(Thread("a"), CastOn((-3,)), *rows(1), BindOff((*ALL, 1)), Cut()) == ["loop-there", "no-loop"]


def test_waste_weights_and_reminders_change_nothing() -> None:
    judged = carried_out(Thread("a"), Waste(6), Weigh((-3, 3)), Remind("stop"), *rows(4), BindOff(ALL), Cut())
    assert judged.sound


def test_a_narrowing_turn_without_a_wrap_is_a_hole() -> None:
    # L3, L2 go to hold before the pass to the left, and nothing is held at its end: the turn beside L2 is not wrapped.
    steps = [
        Thread("a"),
        Set("hold"),
        *rows(2),
        Hold((-3, -2)),
        *rows(4)[2:],
        Hold((-1, 1, 2, 3)),
        Work(ALL),
        BindOff(ALL),
        Cut(),
    ]
    judged = carried_out(*steps)
    assert [(h.needle, h.row) for h in judged.summary.holes] == [(-2, 3)]
    assert not judged.joined
    wrapped = [*steps[:6], Wrap(-2), *steps[6:]]
    assert carried_out(*wrapped).summary.holes == ()


def test_a_turn_at_the_selvedge_or_on_a_widening_edge_is_no_hole() -> None:
    steps = [Thread("a", -2), Set("hold"), Hold((-3, -2, 2, 3)), *rows(1, "R"), Work((-2,)), *rows(4)[1:2]]
    assert carried_out(*steps).summary.holes == ()


def test_the_tail_of_an_inside_start_goes_round_the_held_needle_beside_the_block() -> None:
    base: list[Step] = [Set("hold"), Hold((1, 2, 3))]
    good = carried_out(*base, Thread("a", 1), *rows(2), Cut())
    assert good.summary.inside_starts == 1
    assert good.summary.ends_inside == 2
    assert "anchor-elsewhere" in codes(*base, Thread("a", 2), *rows(2), Cut())
    assert "anchor-not-held" in codes(*base, Thread("a", -1), *rows(2), Cut())
    assert any(w.code == "steps.loose-tail" for w in carried_out(*base, Thread("a"), *rows(2), Cut()).warnings)


def test_a_strand_over_held_needles_between_knitting_ones() -> None:
    # At 9 mm a strand may cross two needles (25 mm), not three.
    assert "float" not in codes(Thread("a"), Set("hold"), Hold((-1, 1)), *rows(2), Cut())
    assert "float" in codes(Thread("a"), Set("hold"), Hold((-2, -1, 1)), *rows(2), Cut())


def test_counters_are_counted_again() -> None:
    wrong: list[Step] = [Knit("L", 1, "b1", 1), Knit("R", 3, "b1", 2), Knit("L", 3, "b1", 4)]
    assert codes(Thread("a"), *wrong, BindOff(ALL), Cut()) == ["row-count", "block-row-count"]


def test_needles_that_are_not_there_and_yarns_that_are_not_there() -> None:
    assert codes(Thread("z"), Hold((9,)), *rows(1), BindOff(ALL), Cut())[:2] == ["unknown-yarn", "not-in-use"]


def test_more_yarns_than_the_mast_carries() -> None:
    assert "mast-full" in codes(Thread("a"), *rows(1), Rest(), Thread("b"), Rest(), Thread("c"), Cut())


def test_a_yarn_left_uncut_and_stitches_left_on() -> None:
    judged = carried_out(Thread("a"), *rows(4))
    assert [p.code for p in judged.problems] == ["steps.yarn-left"]
    assert "steps.left-on" in [w.code for w in judged.warnings]


def test_a_plan_for_a_design_that_cannot_be_is_judged_and_not_a_crash() -> None:
    judged = carried_out(Thread("a"), *rows(2), Cut(), needles=900)
    assert any(p.where == "design.panel.width" for p in judged.problems)
