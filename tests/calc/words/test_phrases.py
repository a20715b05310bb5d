"""Small parts of sentences: needles by name, singular and plural, the trade's words."""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction

import pytest

from pieces import diamond
from wedgework.bed import across
from wedgework.formats.design import Machine
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
from wedgework.say.english import draw, words
from wedgework.words.phrases import Speaker, needle_list, ordinal, runs, sentence
from wedgework.words.walk import Bed

BED = Bed(across(-5, 5), frozenset(), "R", 5, yarn="a", row=3)


@pytest.mark.parametrize(
    ("n", "words"),
    [
        (1, "1st"),
        (2, "2nd"),
        (3, "3rd"),
        (4, "4th"),
        (11, "11th"),
        (12, "12th"),
        (13, "13th"),
        (21, "21st"),
        (22, "22nd"),
        (100, "100th"),
        (101, "101st"),
        (111, "111th"),
        (112, "112th"),
        (113, "113th"),
        (123, "123rd"),
    ],
)
def test_ordinals(n: int, words: str) -> None:
    assert ordinal(n) == words


@pytest.mark.parametrize(
    ("needles", "words"),
    [
        ((-15, -14), "L15, L14"),
        ((3,), "R3"),
        ((-1, 1), "L1, R1"),
        ((-2, -1, 1, 2), "L2-R2"),
        ((5, 4, 9), "R4, R5, R9"),
        ((-24, -23, -22, -21, 7), "L24-L21, R7"),
        ((), ""),
    ],
)
def test_needle_lists_run_from_left_to_right(needles: tuple[int, ...], words: str) -> None:
    assert needle_list(needles) == words


def test_runs_cross_the_middle_where_there_is_no_zero() -> None:
    assert runs([2, -1, 1, -2, 7]) == ((-2, 2), (7, 7))


def test_a_sentence_begins_with_a_capital_also_behind_a_bracket() -> None:
    assert sentence("hold 1 needle") == "Hold 1 needle."
    assert sentence("(hold 1 needle) twice") == "(Hold 1 needle) twice."
    assert sentence("Is it held?") == "Is it held?"


EVERY: dict[Step, str] = {
    Set("hold"): "set the hold lever to hold",
    Set("knit", Fraction(71, 10)): "set the hold lever to knit, set the tension, T, to 7.1",
    Thread("b"): "thread Slate and hold its tail down at the edge until the first row is knitted",
    Thread("b", -2): "thread Slate: under the sinker plate, over the held needles and once round L2, which waits in HP; "
    "weigh the tail lightly and hold the slack up until the carriage is near",
    Cut(): "cut Chalk, leaving a tail of 20 cm",
    Rest(): "take Chalk out of the feeder and let it rest on the mast, uncut",
    Join(): "join a new ball of Chalk here, at the edge, never in the middle of a row, with 15 to 20 cm of both ends",
    Hold((-5, -4)): "push L5, L4 to HP",
    Work((-4,)): "return L4 to UWP",
    Knit("L", 1, "x", 1): "knit 1 row to the left",
    Free("R"): "free pass to the right: push the carriage across without yarn until it is clear of R5",
    Wrap(3): "pass the yarn by hand under and round R3",
    Transfer(2, 3): "move the loop of R2 to R3; R2 stays empty in WP",
    Hang((1,)): "hang one loop of the earlier row on R1, beside its own stitch",
    Hang((1, 2)): "hang one loop of the earlier row on each of R1, R2, beside their own stitches",
    CastOn((1,)): "cast on one loop on R1",
    CastOn((1, 2)): "cast on one loop on each of R1, R2",
    Waste(1): "knit 1 row of waste yarn over every needle",
    Waste(6): "knit 6 rows of waste yarn over every needle, the last of them in ravel cord, end COR and take the cord out of the "
    "feeder",
    BindOff((1, 2)): "bind off R1, R2 loosely",
    Weigh((1,)): "put a weight under R1",
    Remind("look at the clock"): "remember: look at the clock",
}


def test_every_kind_of_step_has_a_phrase() -> None:
    speaker = Speaker(diamond())
    assert {type(step) for step in EVERY} == set(Step.__args__)  # type: ignore[attr-defined]
    for step, words_ in EVERY.items():
        assert speaker.step(step, BED) == words_


def test_two_hold_levers_are_spoken_of_as_two() -> None:
    design = diamond()
    machine = replace(design, bed=replace(design.bed, machine=Machine(hold_levers=2)))
    assert Speaker(machine).step(Set("hold")) == "set both hold levers to hold"


def test_the_counter_has_the_machine_s_digits_and_starts_over() -> None:
    design = diamond()
    assert Speaker(design).counter(24) == "024"
    assert Speaker(design).counter(1002) == "002"
    four = replace(design, bed=replace(design.bed, machine=Machine(counter_digits=4)))
    assert Speaker(four).counter(1002) == "1002"


def test_a_rested_yarn_is_taken_up_where_it_hangs() -> None:
    bed = replace(BED, resting=frozenset({"b"}))
    assert Speaker(diamond()).step(Thread("b"), bed).startswith("take up Slate where it hangs")


def _forms(messages: dict[str, str | tuple[str, str]]) -> list[str]:
    return [form for forms in messages.values() for form in ((forms,) if isinstance(forms, str) else forms)]


def test_no_sentence_uses_words_that_mean_something_else_in_the_trade() -> None:
    """A card is a punched pattern card, a turn is two rows or a turning of the carriage, R2 is a needle."""
    for words_ in _forms(words.MESSAGES) + _forms(draw.MESSAGES):
        assert not re.search(r"\bcards?\b|\bdial\b|\bK\d|\bright side\b|\bwrong side\b", words_, re.I), words_
        if "never turn back" not in words_:
            assert not re.search(r"\bturns?\b", words_, re.I), words_


def test_plurals_have_two_different_forms() -> None:
    for key, forms in words.MESSAGES.items():
        if isinstance(forms, tuple) and not key.startswith("words.step-lever"):
            assert forms[0] != forms[1], key
