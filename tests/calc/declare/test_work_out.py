"""A calculator as a value, and asking it."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

import pytest

from wedgework.declare import Calculator, Group, Inputs, Only, Result, choice, decimal, length, text, whole, work_out
from wedgework.problems import Problem, Refused


def compute(inputs: Inputs) -> Result:
    if inputs.has("count") and inputs.whole("count") == 13:
        raise Refused([Problem("count", "test.thirteen", "Thirteen is not wanted.", "Take twelve.")])
    return Result({"count": inputs.whole("count") if inputs.has("count") else 0}, ())


def check(inputs: Inputs) -> Iterable[Problem]:
    if not inputs.given("note"):
        yield Problem("note", "test.no-note", "A note is wanted.")


TRIAL = Calculator(
    "trial",
    (
        Group(
            "one",
            (
                choice("how", "counted", ("counted", "measured")),
                whole("count", "12", 1, 20, only=Only("how", ("counted",))),
            ),
        ),
        Group(
            "two",
            (
                length("width", "1 cm", 1, 9, "cm", only=Only("how", ("measured",))),
                text("note", "n", optional=True),
            ),
        ),
    ),
    compute,
    check,
)


def codes(**typed: str) -> list[tuple[str, str]]:
    return [(p.where, p.code) for p in work_out(TRIAL, typed).problems]


def test_defaults_are_filled_in() -> None:
    answer = work_out(TRIAL, {"count": "7"})
    assert answer.problems == ()
    assert answer.inputs == {"how": "counted", "count": "7", "width": "1 cm", "note": "n"}
    assert answer.result is not None
    assert answer.result.values == {"count": 7}


def test_every_problem_is_told_at_once_in_the_order_of_the_form() -> None:
    assert codes(note="", width="x", count="99", how="measured", strange="1") == [
        ("strange", "declare.unknown-field"),
        ("width", "units.not-a-length"),
        ("note", "test.no-note"),
    ]


def test_fields_that_are_not_in_use_are_not_read() -> None:
    assert codes(width="x") == []
    assert codes(how="measured", count="x") == []


def test_what_was_typed_but_not_read_counts_as_given() -> None:
    assert codes(note="\x00") == [("note", "declare.odd-characters")]


def test_refusals_of_the_computation_are_problems_too() -> None:
    assert codes(count="13") == [("count", "test.thirteen")]
    assert work_out(TRIAL, {"count": "13"}).result is None


def test_half_a_character_is_not_carried_along() -> None:
    answer = work_out(TRIAL, {"note": "a\ud800", "x\ud800": ""})
    assert [p.where for p in answer.problems] == ["x?", "note"]
    for told in (*answer.inputs.values(), *(str(p) for p in answer.problems)):
        told.encode("utf-8")


def test_values_are_asked_for_by_their_kind() -> None:
    inputs = Inputs({"n": 3, "d": Fraction(1, 2), "t": "x", "y": True, "s": (Fraction(1),), "none": None}, ["bad"])
    assert (inputs.whole("n"), inputs.number("n"), inputs.number("d"), inputs.mm("d")) == (3, 3, Fraction(1, 2), Fraction(1, 2))
    assert (inputs.text("t"), inputs.yes("y"), inputs.several_mm("s")) == ("x", True, (1,))
    assert [inputs.given(n) for n in ("n", "none", "bad", "absent")] == [True, False, True, False]
    assert [inputs.has(n) for n in ("n", "none", "bad", "absent")] == [True, False, False, False]
    for wrong in (inputs.whole, inputs.number, inputs.mm, inputs.yes, inputs.several_mm):
        with pytest.raises(TypeError):
            wrong("t")
    with pytest.raises(TypeError):
        inputs.whole("y")
    with pytest.raises(KeyError):
        inputs.whole("absent")


@pytest.mark.parametrize(
    "fields",
    [
        (decimal("a", "1", 0, 2), decimal("a", "1", 0, 2)),
        (decimal("a", "1", 0, 2, only=Only("b", ("x",))),),
        (choice("b", "x", ("x",)), decimal("a", "1", 0, 2, only=Only("b", ("y",)))),
        (text("b", "x"), decimal("a", "1", 0, 2, only=Only("b", ("x",)))),
    ],
)
def test_a_declaration_that_contradicts_itself_is_a_programmers_mistake(fields: tuple) -> None:
    with pytest.raises(ValueError, match=r"two fields|hangs on"):
        Calculator("trial", (Group("g", fields),), compute)
