"""The calculator of scraps: rules kept in a real piece, what is missing said in grams, lines that cannot be read."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

import pytest

import working
from wedgework.calculators.scraps import CALCULATOR
from wedgework.declare import work_out
from wedgework.problems import Problem
from wedgework.yarn.alike import difference

F = Fraction
SMALL = {"size_in": "counts", "needles": "24", "rows": "48", "layout": "diamond-in-corners"}
PLENTY = "#efe8d8 Chalk, 200 g, 1 m/g, wool\n#3f5566 Slate, 200 g, 1 m/g, wool\n#e8e0d0 Cream, 200 g, 1 m/g, cotton"


values = partial(working.values, CALCULATOR, **SMALL, leftovers=PLENTY)


def problems(**typed: str) -> tuple[Problem, ...]:
    return work_out(CALCULATOR, {**SMALL, "leftovers": PLENTY, **typed}).problems


def test_enough_of_two_colours() -> None:
    found = values()
    assert found["possible"]
    assert found["proved"]
    assert found["strange_pairs"] == 0
    assert set(found["assignment"]) == {"Chalk", "Slate"}, "cream looks like chalk, and is of another kind"
    used = sum(200 - left for left in found["left_g"].values())
    assert used == sum(found["needs_m"])


def test_alike_colours_do_not_stand_side_by_side() -> None:
    typed = "#efe8d8 Chalk, 200 g, 1 m/g\n#e8e0d0 Cream, 200 g, 1 m/g"
    assert difference("#efe8d8", "#e8e0d0") < 10
    found = values(leftovers=typed)
    assert not found["possible"]
    assert found["proved"]
    (change,) = found["changes"]
    assert change["change"] == "difference"
    assert values(leftovers=typed, least_difference=f"{float(change['figure'])}")["possible"]


def test_fixed_choices_stay() -> None:
    assert values(fixed="1: Cream")["assignment"][0] == "Cream"
    assert values(fixed="1: Slate\n2: Chalk", least_difference="0")["assignment"][:2] == ["Slate", "Chalk"]


def test_kinds_that_may_not_stand_together() -> None:
    mixed = "#efe8d8 Chalk, 200 g, 1 m/g, wool\n#3f5566 Slate, 200 g, 1 m/g, cotton"
    two, one = values(leftovers=mixed), values(leftovers=mixed, most_kinds="1")
    assert two["possible"]
    assert two["strange_pairs"] > 0
    assert not one["possible"]
    assert [change["figure"] for change in one["changes"] if change["change"] == "kinds"] == [2]


def test_an_area_is_one_leftover() -> None:
    nested = {"layout": "nested-diamonds", "each": "areas", "least_difference": "0"}
    found = values(**nested)
    assert found["possible"]
    blocks = values(**{**nested, "each": "blocks"})
    assert blocks["ends"] <= found["ends"]


def test_what_is_missing_is_what_would_do() -> None:
    """Give each leftover what the answer says, a gram less, and see."""
    little = {"leftovers": "#efe8d8 Chalk, {a} g, 1 m/g\n#3f5566 Slate, {b} g, 1 m/g"}
    short = values(leftovers=little["leftovers"].format(a=10, b=10))
    assert not short["possible"]
    (more,) = [change for change in short["changes"] if change["change"] == "more-yarn"]
    assert more["proved"]
    chalk, slate = (10 + float(more["grams"].get(name, 0)) for name in ("Chalk", "Slate"))
    assert values(leftovers=little["leftovers"].format(a=chalk, b=slate))["possible"]
    assert not values(leftovers=little["leftovers"].format(a=chalk - 1, b=slate))["possible"]


def test_where_one_change_is_not_enough_two_together_are_told() -> None:
    """A single colour can never do for neighbours: the answer says how much of one more, and that much does."""
    alone = "#efe8d8 Chalk, 10 g, 1 m/g"
    short = values(leftovers=alone)
    (more,) = short["changes"]
    assert more["change"] == "colours"
    chalk = 10 + float(more["grams"].get("Chalk", 0))
    (metres,) = more["metres_of_new_colours"]
    done = f"#efe8d8 Chalk, {chalk} g, 1 m/g\n#102030 Night, {{night}} g, 1 m/g"
    assert values(leftovers=done.format(night=float(metres)))["possible"]
    assert not values(leftovers=done.format(night=float(metres) - 1))["possible"]
    kinds = values(leftovers="#efe8d8 Chalk, 10 g, 1 m/g, wool\n#102030 Night, 10 g, 1 m/g, cotton", most_kinds="1")
    eased = next(change for change in kinds["changes"] if change["change"] == "kinds")
    assert eased["grams"]
    assert eased["figure"] == 2


def test_a_smaller_margin_may_do() -> None:
    exact = values(margin_percent="5", fixed="1: Chalk")
    used = {name: 200 - left for name, left in exact["left_g"].items()}
    lines = f"#efe8d8 Chalk, {float(used['Chalk']):.3f} g, 1 m/g\n#3f5566 Slate, {float(used['Slate']) + 0.001:.3f} g, 1 m/g"
    lines = lines.replace(f"{float(used['Chalk']):.3f}", f"{float(used['Chalk']) + 0.001:.3f}")
    found = values(leftovers=lines, margin_percent="10")
    assert not found["possible"]
    assert [change["figure"] for change in found["changes"] if change["change"] == "margin"] == [5]


@pytest.mark.parametrize(
    ("typed", "code"),
    [
        ({"leftovers": "Chalk, 120 g, 2 m/g"}, "scraps.line"),
        ({"leftovers": "#efe8d8 Chalk, 120 g"}, "scraps.line"),
        ({"leftovers": "#efe8d8 Chalk, 2 m/g"}, "scraps.line"),
        ({"leftovers": "#efe8d8, 120 g, 2 m/g"}, "scraps.line"),
        ({"leftovers": "#efe8d8 Chalk, 120 g, 0 m/g"}, "scraps.line"),
        ({"leftovers": f"{PLENTY}\n#000000 chalk, 1 g, 1 m/g"}, "scraps.twice"),
        ({"leftovers": "\n".join(f"#efe8d8 Y{i}, 1 g, 1 m/g" for i in range(41))}, "scraps.many"),
        ({"fixed": "one: Chalk"}, "scraps.fixed"),
        ({"fixed": "1: Puce"}, "scraps.fixed"),
        ({"fixed": "99: Chalk"}, "scraps.fixed"),
    ],
)
def test_what_cannot_be_read(typed: dict[str, str], code: str) -> None:
    (problem,) = problems(**typed)
    assert (problem.where, problem.code) == (next(iter(typed)), code)
    assert problem.way_out


@pytest.mark.parametrize("line", ["#efe8d8 Chalk, 4 oz, 2.4 m/g, wool", "Chalk #efe8d8 0.5 kg 2,4 m / g"])
def test_a_line_may_be_written_in_several_ways(line: str) -> None:
    found = values(leftovers=f"{line}\n#3f5566 Slate, 200 g, 1 m/g")
    assert "Chalk" in found["left_g"]
