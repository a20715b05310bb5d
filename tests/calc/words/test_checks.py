"""What a knitter looks at after the rows of a cue."""

from __future__ import annotations

import pytest

from pieces import diamond
from wedgework.bed import Side, across
from wedgework.formats.plan import Hold, Knit, Step, Work, Wrap
from wedgework.words import Handful
from wedgework.words.checks import check_of
from wedgework.words.phrases import Speaker
from wedgework.words.walk import Bed

HELD = frozenset({-6, 6})


def check(moves: list[Step], carriage: Side = "R") -> str:
    bed = Bed(across(-6, 6), HELD, carriage, 0, lever="hold", block="x", block_row=8)
    passes = [Knit("L" if carriage == "R" else "R", 1, "x", 9)]
    return check_of(Handful.of(0, bed, moves, passes), Speaker(diamond()))


@pytest.mark.parametrize(
    ("moves", "carriage", "said"),
    [
        ([Hold((5,))], "R", "The yarn goes round R5 and over no other held needle."),
        ([Hold((-5,))], "L", "The yarn goes round L5 and over no other held needle."),
        # the needle beside those that knit is the one that is wrapped
        ([Hold((3, 4, 5))], "R", "The yarn goes over R4, R5 and round R3; the strand lies loosely."),
        ([Hold((-5, -4))], "L", "The yarn goes over L5 and round L4; the strand lies loosely."),
        ([Hold((-5, -4))], "R", "L5, L4 have not knitted."),
        ([Hold((-5,))], "R", "L5 has not knitted."),
        ([Work((-6,))], "R", "L6 has knitted."),
        ([Hold((5,)), Work((-6,))], "R", "The yarn goes round R5 and over no other held needle. L6 has knitted."),
        ([Hold((-5, 5))], "R", "The yarn goes round R5 and over no other held needle. L5 has not knitted."),
        ([Wrap(6)], "R", "The yarn lies under and round R6."),
        ([], "R", "COL. RC 009."),
    ],
)
def test_what_should_be_seen(moves: list[Step], carriage: Side, said: str) -> None:
    assert check(moves, carriage) == said
