"""The calculator of stripes: what is typed, the figures of a strip worked out by hand, colours that blocks begin with."""

from __future__ import annotations

from fractions import Fraction
from functools import partial
from itertools import pairwise

import pytest

import working
from wedgework.calculators.stripes import CALCULATOR
from wedgework.declare import Picture, work_out
from wedgework.problems import Problem

F = Fraction
STRIP = {
    "size_in": "counts", "needles": "100", "rows": "60", "layout": "single-diamond",
    "base_rows_bottom": "0", "base_rows_top": "0", "loop": "8 mm", "repeat": "#111111 Coal 4 m\n#eeeeee Milk 4 m",
}  # fmt: skip
SMALL = {"size_in": "counts", "needles": "24", "rows": "48", "layout": "diamond-in-corners"}


values = partial(working.values, CALCULATOR)


def problems(**typed: str) -> tuple[Problem, ...]:
    return work_out(CALCULATOR, {**SMALL, **typed}).problems


def test_the_metres_add_up() -> None:
    """What runs off the ball is what the blocks take, ends, edges and base rows."""
    found = values(**SMALL)
    assert found["metres"] == found["repeats"] * found["repeat_m"]
    assert sum(block["metres"] for block in found["blocks"]) < found["metres"]
    for block in found["blocks"]:
        (ball,) = block["stripes"]
        assert 0 <= block["metres"] - sum(one["metres"] for one in ball) < 1, "strands only"


def test_stripes_of_a_wide_block() -> None:
    """100 stitches of 8 mm take 80 cm a row: 4 m are 5 rows, and where 20 stitches are left 25 rows (worked by hand)."""
    found = values(**STRIP)
    first = next(block for block in found["blocks"] if block["number"] == 1)
    rows = [one["rows"] for one in first["stripes"][0]]
    assert all(one["height_mm"] == one["rows"] * F(100, 19) for one in first["stripes"][0])
    assert rows[1] > 4
    for before, after in pairwise(rows[1:-1]):
        assert after >= before - 1, "a corner grows narrower, so its stripes grow higher"


def test_the_start_moves_the_first_colour() -> None:
    assert values(**SMALL)["blocks"][0]["begins_with"] == "Plum"
    assert values(**SMALL, offset="9 m")["blocks"][0]["begins_with"] == "Sage"
    assert values(**SMALL, offset="24 m") == values(**SMALL), "a whole repeat later all is the same"


def test_a_block_begins_with_its_colour_and_that_costs_metres() -> None:
    plain = values(**SMALL)
    block = plain["blocks"][-2]
    number, costs = block["number"], block["begin_costs_m"]
    wanted = max(range(len(costs)), key=lambda i: costs[i])
    name = ("Plum", "Sage", "Straw", "Clay")[wanted]
    for typed in (f"{number}: {name}", f"Block {number} = {wanted + 1}"):
        found = values(**SMALL, begins=typed)
        assert found["blocks"][-2]["begins_with"] == name
        tails = found["more_ends"] * F(18, 100)
        assert found["blocks"][-2]["wound_off_m"] + tails == found["wound_off_m"] == found["metres"] - plain["metres"]


def test_two_balls_have_stripes_of_their_own() -> None:
    found = values(**SMALL, balls="two")
    assert all(len(block["stripes"]) == 2 for block in found["blocks"])
    assert found["metres"] > values(**SMALL)["metres"], "two ends more for every block"


@pytest.mark.parametrize(
    ("typed", "code"),
    [
        ({"repeat": "Rust 2 m"}, "stripes.line"),
        ({"repeat": "#b4533f Rust"}, "stripes.line"),
        ({"repeat": "#b4533f Rust 2 kg"}, "units.not-a-length"),
        ({"repeat": "#b4533f Rust 1 mm"}, "stripes.length"),
        ({"repeat": "#b4533f Rust 4 km"}, "units.not-a-length"),
        ({"repeat": "#b4533f Rust 3000 m; #3f5566 Slate 3000 m"}, "stripes.long"),
        ({"repeat": "; ".join("#b4533f Rust 1 m" for _ in range(31))}, "stripes.many"),
        ({"begins": "first: Plum"}, "stripes.begin"),
        ({"begins": "1: Puce"}, "stripes.begin"),
        ({"begins": "77: Plum"}, "stripes.block"),
        ({"stripe_yarn": "4"}, "stripes.no-yarn"),
        ({"stripe_yarn": "3"}, "stripes.not-used"),
    ],
)
def test_what_cannot_be_read(typed: dict[str, str], code: str) -> None:
    found = problems(**typed)
    assert [problem.code for problem in found] == [code]
    assert found[0].where in typed
    assert found[0].way_out


@pytest.mark.parametrize("line", ["#B4533F Rust 2.5 m", "Rust, #b4533f, 250 cm", "#b4533f Rust 2,5", "  #b4533f   Rust 2 1/2 m;"])
def test_a_line_may_be_written_in_several_ways(line: str) -> None:
    found = values(**SMALL, repeat=line)
    assert found["repeat_m"] == F(5, 2)
    assert found["blocks"][0]["begins_with"] == "Rust"


def test_the_picture_is_there_and_left_to_the_page_only_where_thousands_of_stripes_would_fill_it() -> None:
    def pictures(**typed: str) -> list[Picture]:
        answer = work_out(CALCULATOR, typed)
        assert answer.result is not None
        return [part for part in answer.result.view if isinstance(part, Picture)]

    (small,) = pictures(**SMALL)
    assert "<pattern" in small.svg
    huge = {"bed": "own", "bed_pitch": "4.5", "bed_needles": "250", "needles": "250", "rows": "260"}
    (plain,) = pictures(**SMALL | huge)
    assert "<pattern" not in plain.svg, "single stitches could not be seen"
    assert pictures(**SMALL | huge | {"rows": "700", "repeat": "#7d5a7c Plum 2 cm; #9bb39a Sage 2 cm"}) == []
