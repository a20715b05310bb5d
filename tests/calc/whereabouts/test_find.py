"""Where am I? Small plans that can be followed by eye: what is seen, what differs, and in which order the answers stand."""

from __future__ import annotations

import pytest

from pieces import diamond
from wedgework.formats.plan import Block, Cut, Edges, Hold, Knit, Plan, Set, Start, Step, Summary, Thread, Work, Wrap
from wedgework.whereabouts import Seen, Sight, differences, find, sight_values, sights


def written(*steps: Step, first: int = -5, last: int = 5) -> Plan:
    """A plan of one block in yarn b over a cast-on in yarn a, of steps that a person wrote."""
    return Plan(
        diamond(24, 24),
        first,
        last,
        Start("R", (first, last)),
        Edges(base_rows_bottom=0, base_rows_top=0, base_yarn_bottom="a"),
        (Block("b1", "b", "", 0, len(steps) - 1),),
        steps,
        Summary(24, 24, 0, 0, 0, 0, 0),
    )


def knit(row: int) -> Knit:
    return Knit("L" if row % 2 else "R", row, "b1", row)


NARROWING = written(
    Set("hold"),
    Hold((-5, -4, -3)),
    Thread("b"),
    knit(1),
    knit(2),
    Hold((5,)),  # at the carriage
    knit(3),
    knit(4),
    Hold((4,)),
    knit(5),
    knit(6),
)


def at(cue: int, part: str, done: int = 0, plan: Plan = NARROWING) -> Sight:
    return next(one for one in sights(plan) if (one.cue, one.part, one.done) == (cue, part, done))


def test_the_colour_against_the_open_needles_tells_whether_the_step_was_made() -> None:
    before, made, half = at(2, "before"), at(2, "made"), at(2, "made", 1)
    assert (before.colour, before.open) == ((-2, 5), (-2, 5))
    assert (made.colour, made.open) == ((-2, 5), (-2, 4)), "R5 is held, its stitch is still of the block"
    assert (half.carriage, half.counter, half.row) == ("L", 3, 3)


def test_nothing_carries_the_colour_before_its_first_row() -> None:
    assert at(0, "made").colour is None
    assert at(0, "made").open == (-2, 5)
    assert at(1, "made", 1).colour == (-2, 5)


def test_the_yarn_lies_round_a_held_needle_once_the_carriage_has_gone_away_from_it() -> None:
    """Common practice, as the job has it: hold at the carriage, knit away; the yarn passes over that needle by itself."""
    assert at(2, "before").wrapped is None, "R5 knits, and there is no needle beyond it"
    assert at(2, "made").wrapped is False, "held, but the row is not knitted"
    assert at(2, "made", 1).wrapped is False, "on the carriage's side waits another block"
    assert at(3, "before").wrapped is True, "back again beside R5"
    assert at(3, "made").wrapped is False, "now R4 is the next one"


def test_a_wrap_by_hand_and_the_needle_that_anchors_the_tail_count_too() -> None:
    plan = written(
        Set("hold"), Hold((-5, -4, -3, 3, 4, 5)), Thread("b", 3), knit(1), Wrap(-3), knit(2), Work((3,)), knit(3), knit(4)
    )
    assert at(0, "made", plan=plan).wrapped is True, "once round R3"
    assert at(2, "made", plan=plan).wrapped is True, "by hand round L3, where the carriage stands"
    assert at(3, "made", plan=plan).wrapped is False, "R3 knits; round R4 there is nothing"


def test_in_the_middle_of_a_change_every_needle_is_held() -> None:
    two = written(
        *NARROWING.steps,
        Cut(),
        Hold((-2, -1, 1, 2, 3)),
        Thread("c"),
        Work((-5, -4, -3)),
        Knit("L", 7, "b2", 1),
    )
    resting = next(one for one in sights(two) if one.part == "resting")
    assert resting.open is None
    assert resting.yarn == ""
    assert resting.colour == (-2, 5), "that of the last row"
    assert find(sights(two), Seen(yarn="", open="none")).fits[0].sight == resting


def test_what_differs_is_said_and_weighed() -> None:
    made = at(2, "made")
    assert differences(made, Seen("b", (-2, 5), (-2, 4), "R", False, 2)) == ()
    wrong = differences(made, Seen("a", "none", (-2, 3), "L", True, 7))
    assert [one.what for one in wrong] == ["yarn", "colour", "open", "carriage", "wrapped", "counter"]
    assert [str(one) for one in wrong[2:]] == [
        "Not in HP there: L2-R4.",
        "The carriage there: right.",
        "The yarn round that needle there: no.",
        "The counter there: 002.",
    ]
    assert min(wrong, key=lambda one: one.weight).what == "counter", "a hint only"


def test_the_counter_has_the_digits_of_the_machine() -> None:
    made = at(2, "made")
    assert differences(made, Seen(counter=1002)) == ()
    assert differences(made, Seen(counter=1002), digits=4)


def test_places_that_look_the_same_are_all_given_the_nearest_first() -> None:
    straight = written(Set("knit"), Thread("b"), *(knit(row) for row in range(1, 9)))
    answer = find(sights(straight), Seen("b", (-5, 5), (-5, 5), "L"), near=1)
    assert [fit.sight.counter for fit in answer.fits] == [1, 3, 5, 7]
    assert answer.alike == 4
    assert "look the same" in answer.why
    one = find(sights(straight), Seen("b", (-5, 5), (-5, 5), "L", counter=5))
    assert [fit.sight.counter for fit in one.fits] == [5]
    assert one.why == ""


def test_where_nothing_fits_the_nearest_are_given_with_what_differs() -> None:
    answer = find(sights(NARROWING), Seen("b", (-2, 5), (-2, 2), "R"))
    assert len(answer.fits) >= 5
    weights = [fit.weight for fit in answer.fits]
    assert weights[0] > 0
    assert weights == sorted(weights)
    assert all(fit.differs for fit in answer.fits)


def test_nothing_said_fits_everywhere() -> None:
    assert find(sights(NARROWING), Seen()).alike == len(sights(NARROWING))
    assert find((), Seen()).fits == ()


@pytest.mark.parametrize("one", sights(NARROWING), ids=lambda one: f"{one.cue}-{one.part}-{one.done}")
def test_short_lists_say_the_same(one: Sight) -> None:
    (found,) = sight_values([one], ["a", "b"])
    cue, part, done, yarn, c1, c2, o1, o2, side, wrapped, counter = found
    assert (cue, ("before", "resting", "made")[part], done, counter) == (one.cue, one.part, one.done, one.counter)
    assert (yarn, side) == ({"a": 0, "b": 1, "": -1}[one.yarn], -1 if one.carriage == "L" else 1)
    assert (c1, c2) == (one.colour or (0, 0))
    assert (o1, o2) == (one.open or (0, 0))
    assert wrapped == {None: -1, False: 0, True: 1}[one.wrapped]
