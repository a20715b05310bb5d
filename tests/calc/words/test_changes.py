"""The change from block to block as a check list, on steps that a person wrote."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from pieces import diamond
from wedgework.bed import across
from wedgework.formats.design import Design
from wedgework.formats.plan import Block, Cut, Edges, Free, Hold, Knit, Plan, Rest, Set, Start, Step, Summary, Thread, Weigh, Work
from wedgework.words import passages
from wedgework.words.changes import change_list
from wedgework.words.phrases import Speaker

LEFT, RIGHT = across(-6, -1), across(1, 6)


def change(between: list[Step], first_row: str, before: list[Step] | None = None, design: Design | None = None) -> list[str]:
    """What is said between a block on the left half, which ends COL beside L6, and the next one."""
    first: list[Step] = [Set("hold"), Hold(RIGHT), Thread("a"), Knit("L", 1, "b1", 1)]
    steps = [*(before or first), *between, Knit(first_row, 2, "b2", 1)]  # type: ignore[arg-type]
    blocks = (Block("b1", "a", "", 0, 3), Block("b2", "b", "", 4, len(steps) - 1))
    plan = Plan(
        design or diamond(12, 12),
        -6,
        6,
        Start("R", (-6, 6)),
        Edges(base_rows_bottom=0),
        blocks,
        tuple(steps),
        Summary(1, 1, 0, 0, 0, 0, 0),
    )
    return list(change_list(passages(plan)[1], Speaker.of(plan)))


def index(said: list[str], words: str) -> int:
    found = [i for i, sentence in enumerate(said) if words in sentence]
    assert len(found) == 1, f"{words!r} should be said once in {said}"
    return found[0]


def test_the_slide_across_held_needles() -> None:
    """COL beside L6; the next block begins on the right and goes to the right: the side fits, the place does not."""
    said = change([Hold(LEFT), Cut(), Thread("b", -1), Work(RIGHT)], "R")
    slide = index(said, "slide the carriage across the held needles until it is clear of R1.")
    assert said[slide].startswith("Every needle in HP, yarn out of the feeder:")
    assert index(said, "Cut Chalk") < slide < index(said, "Thread Slate") < index(said, "Return R1-R6 to UWP.")


def test_no_slide_where_the_carriage_stands_beside_the_block() -> None:
    said = change([Hold(LEFT), Cut(), Thread("b"), Work(LEFT)], "R")
    assert not any("slide" in words for words in said)


def test_the_free_pass_has_its_warning_just_before_it() -> None:
    said = change([Hold(LEFT), Cut(), Free("R"), Thread("b"), Work(RIGHT)], "L")
    warning = index(said, "A needle that is not in HP drops its stitch.")
    assert said[warning].startswith("Before the free pass: hold lever on hold, every needle fully forward")
    assert said[warning + 1] == "Free pass to the right: push the carriage across without yarn until it is clear of R6."
    assert not any("slide" in words for words in said)


def test_a_free_pass_in_name_only_is_a_slide() -> None:
    """The block before ends COR beside L1; the next one begins on R3 and goes to the right: the carriage stands left of it."""
    before: list[Step] = [Set("hold"), Hold(RIGHT), Thread("a"), Knit("L", 1, "b1", 1), Knit("R", 2, "b1", 2)]
    said = change([Hold(LEFT), Cut(), Free("L"), Thread("b", 2), Work((3, 4, 5, 6))], "R", before)
    found = index(said, "Free pass: the carriage stands left of the block already, so slide it")
    assert said[found].endswith("until it is just clear of R3.")
    assert "drops its stitch" in said[found - 1]
    assert not any("Free pass to" in words for words in said)


def test_the_counter_comes_after_the_free_pass_and_before_needles_return() -> None:
    said = change([Hold(LEFT), Cut(), Free("R"), Thread("b"), Work(RIGHT)], "L")
    assert index(said, "Free pass") < index(said, "Counter to 000.") < index(said, "Return R1-R6 to UWP.")


def test_every_needle_forward_and_a_place_to_stop() -> None:
    said = change([Hold(LEFT), Cut(), Thread("b"), Work(LEFT)], "R")
    assert index(said, "Push L6-L1 to HP.") < index(said, "Every needle fully forward in HP.") < index(said, "Good place to stop")


def test_a_rested_yarn_is_not_cut() -> None:
    said = change([Hold(LEFT), Rest(), Thread("b"), Work(LEFT)], "R")
    assert index(said, "Take Chalk out of the feeder and let it rest on the mast, uncut.") >= 0
    assert not any("Cut" in words for words in said)


def test_needles_that_go_forward_only_to_come_back_are_left_alone() -> None:
    said = change([Hold(LEFT), Work((-6, -5, -4))], "R")
    assert "Push L3, L2, L1 to HP." in said
    assert not any("Return" in words for words in said)


def test_with_yarn_in_the_feeder_the_carriage_only_moves_clear() -> None:
    said = change(
        [Work(RIGHT), Hold(LEFT), Set("hold")], "L", [Set("hold"), Hold((*LEFT, 4, 5, 6)), Thread("a"), Knit("R", 1, "b1", 1)]
    )
    assert "Move the carriage until it is just clear of R6." in said


def test_weights_go_under_the_new_needles_unless_a_step_says_so() -> None:
    assert "Weights under the needles that will knit, close to both ends: R1, R6." in change(
        [Hold(LEFT), Cut(), Thread("b"), Work(RIGHT)], "R"
    )
    point = change([Hold(LEFT), Cut(), Thread("b", 3), Work((1, 2))], "R")
    assert "One light weight or a clip under R1, R2, where the point begins." in point
    told = change([Hold(LEFT), Cut(), Thread("b"), Work(RIGHT), Weigh((2,))], "R")
    assert "Put a weight under R2." in told
    assert not any("close to both ends" in words for words in told)


def test_a_yarn_with_a_tension_of_its_own_says_so_unless_a_step_does() -> None:
    design = diamond(12, 12)
    own = replace(design, yarns=(design.yarns[0], replace(design.yarns[1], tension=Fraction(13, 2))))
    said = change([Hold(LEFT), Cut(), Thread("b"), Work(LEFT)], "R", design=own)
    assert said[index(said, "Thread Slate") + 1] == "Set the tension, T, to 6.5."
    told = change([Hold(LEFT), Cut(), Set(tension=Fraction(7)), Thread("b"), Work(LEFT)], "R", design=own)
    assert told[index(told, "Set the tension, T, to")] == "Set the tension, T, to 7."
