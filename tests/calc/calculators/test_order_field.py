"""Wishes for the order as a person types them."""

from __future__ import annotations

from wedgework.calculators.order_field import order_problems, wishes_from
from wedgework.calculators.panel_plan import CALCULATOR
from wedgework.declare import work_out
from wedgework.formats.design import OrderWish


def test_one_wish_a_line_or_with_a_semicolon_between() -> None:
    typed = "b4 before b2\n\n B5 After b3. ; b2 from the left\nb1 from right"
    assert wishes_from(typed) == (
        OrderWish("b4", before="b2"),
        OrderWish("b5", after="b3"),
        OrderWish("b2", start="L"),
        OrderWish("b1", start="R"),
    )
    assert order_problems("own_order", typed) == []


def test_what_is_no_wish_is_told_with_a_way_out() -> None:
    found = order_problems("own_order", "b4 before b2\nfirst the diamond\nb4 over b2")
    assert [p.sentence for p in found] == [
        "“first the diamond” is no wish for the order.",
        "“b4 over b2” is no wish for the order.",
    ]
    assert "b4 before b2" in found[0].way_out


SMALL = {"layout": "diamond-in-corners", "size_in": "counts", "needles": "48", "rows": "96"}


def test_the_panel_plan_takes_wishes_and_says_what_cannot_be() -> None:
    free = work_out(CALCULATOR, SMALL)
    wished = work_out(CALCULATOR, {**SMALL, "own_order": "b1 before b3"})
    other = work_out(CALCULATOR, {**SMALL, "own_order": "b3 before b1"})
    assert free.problems == wished.problems == other.problems == ()
    assert free.result is not None
    assert wished.result is not None
    assert other.result is not None
    digests = {found.result.values["steps_digest"] for found in (free, wished, other) if found.result}
    assert len(digests) == 2
    impossible = work_out(CALCULATOR, {**SMALL, "own_order": "b2 before b1"})
    assert [(p.where, p.sentence) for p in impossible.problems] == [
        ("own_order", "Block b2 can't come before b1: b1 lies right below it.")
    ]


def test_several_mistakes_come_back_at_once() -> None:
    found = work_out(CALCULATOR, {**SMALL, "own_order": "never", "merge_below": "-3", "needles": "many"})
    assert {p.where for p in found.problems} == {"own_order", "merge_below", "needles"}
