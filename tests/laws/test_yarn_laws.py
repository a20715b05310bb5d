"""Laws of the laid yarn: every metre of the picture is a metre of the plan, stripes are as high as they are long."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pieces import diamond, drawn, lopsided, piece
from wedgework.formats.design import Design, NamedLayout
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan
from wedgework.yarn.fabric import FIXED, NOTHING, PINNED, SECOND, UNIT, colours_of, places_of
from wedgework.yarn.laid import Laid, Measures, lay
from wedgework.yarn.needs import needs_of
from wedgework.yarn.path import YarnPath, path_of
from wedgework.yarn.stripes import Repeat, Striped

DESIGNS = {
    "diamond": diamond(20, 40),
    "harbour": lopsided(),
    "bands": piece(NamedLayout("chevron-bands"), 24, 60),
}
PATHS: dict[str, YarnPath] = {}
INKS = {"a": 4, "b": 5, "c": 6}
few = settings(max_examples=12, deadline=None)

names = st.sampled_from(list(DESIGNS))
loops = st.integers(3_000, 30_000)
tens = st.integers(0, 2_000_000).map(lambda n: UNIT * n)
repeats = st.lists(st.integers(1_000, 900_000), min_size=1, max_size=5).map(
    lambda each: Repeat(tuple(f"#00000{i}" for i in range(len(each))), tuple(UNIT * sum(each[: i + 1]) for i in range(len(each))))
)
offsets = st.lists(tens, min_size=1, max_size=2).map(tuple)


def way(name: str) -> YarnPath:
    if name not in PATHS:
        plan = plan_piece(DESIGNS[name])
        PATHS[name] = path_of(plan, replay_plan(plan))
    return PATHS[name]


def measures(loop: int) -> dict[str, Measures]:
    return {yarn: Measures(loop + i, 180_000, 9_000, 5_263) for i, yarn in enumerate("abc")}


@given(names, loops, repeats, offsets, st.sampled_from("abc"))
@few
def test_metres_in_the_picture_are_metres_of_the_plan(
    name: str, loop: int, repeat: Repeat, offset: tuple[int, ...], yarn: str
) -> None:
    """Stitches that are painted, times their loop, and what is no stitch, make up what ran off the ball."""
    path, striped = way(name), Striped(yarn, repeat, offset)
    laid = lay(path, measures(loop), striped)
    inks = tuple(10 + i for i in range(len(repeat.colours)))
    cells = colours_of(laid, INKS, striped, inks).cells
    painted = sum(cells.count(ink) for ink in inks)
    of = laid.measures[yarn]
    numbers = [i for i, stretch in enumerate(path.stretches) if stretch.yarn == yarn]
    beside = sum(laid.strands[i] + laid.tails[i] * of.tail + laid.edges[i] + laid.skipped[i] for i in numbers)
    assert painted * of.loop + beside == laid.used[yarn]
    needs = needs_of(laid)
    assert needs.total_mm(yarn) * 1000 == laid.used[yarn]
    assert sum(cells.count(ink) for ink in (*inks, *INKS.values())) == sum(path.stitches)


@given(names, loops, repeats, offsets, st.integers(1, 4), st.sampled_from("abc"))
@few
def test_a_whole_repeat_more_changes_nothing(
    name: str, loop: int, repeat: Repeat, offset: tuple[int, ...], times: int, yarn: str
) -> None:
    path = way(name)
    one, more = Striped(yarn, repeat, offset), Striped(yarn, repeat, tuple(o + times * repeat.length for o in offset))
    inks = tuple(10 + i for i in range(len(repeat.colours)))
    pictures = [colours_of(lay(path, measures(loop), striped), INKS, striped, inks) for striped in (one, more)]
    assert pictures[0] == pictures[1]


@given(names, loops, repeats, offsets, offsets, st.sampled_from("abc"), st.data())
@few
def test_the_page_finds_the_same_colours_from_places(
    name: str, loop: int, repeat: Repeat, offset: tuple[int, ...], other: tuple[int, ...], yarn: str, data: st.DataObject
) -> None:
    """What a page does with the places of one offset when another is wanted: put that in, look the colour up."""
    path = way(name)
    numbers = [i for i, stretch in enumerate(path.stretches) if stretch.yarn == yarn]
    begins = {
        i: data.draw(st.integers(0, len(repeat.colours) - 1))
        for i in data.draw(st.sets(st.sampled_from(numbers)) if numbers else st.just(set()))
    }
    wanted = (*other, 0)[: len(offset)]
    inks = tuple(10 + i for i in range(len(repeat.colours)))

    def colour(cell: int) -> int:
        if cell & FIXED:
            return cell - FIXED
        ball = 1 if cell & SECOND else 0
        place = (cell & (PINNED - 1)) * UNIT + (0 if cell & PINNED else wanted[ball])
        return inks[repeat.at(place)]

    given_, asked = (Striped(yarn, repeat, of, begins) for of in (offset, wanted))
    places = places_of(lay(path, measures(loop), given_), INKS, given_)
    assert bytes(map(colour, places.cells)) == colours_of(lay(path, measures(loop), asked), INKS, asked, inks).cells
    assert NOTHING == 0


@pytest.mark.parametrize("width", [3, 10, 41])
@pytest.mark.parametrize("metres", [1, 2, 7])
def test_stripes_of_a_plain_strip_are_as_high_as_their_length_says(width: int, metres: int) -> None:
    """Height = length / (width x loop), within one row, for every whole stripe of a block of constant width.

    That is the mean over the needles; on a single needle near an edge, which is passed twice in short order and then not
    for two rows, a colour may come a row early and stay a row late.
    """
    plan = plan_piece(piece(drawn("a"), width, 240, base_rows_bottom=0, base_rows_top=0))
    path = path_of(plan, replay_plan(plan))
    loop = 9_300
    repeat = Repeat(("#ffffff", "#000000"), (metres * 1_000_000, 3 * metres * 1_000_000))
    striped = Striped("a", repeat)
    fabric = colours_of(
        lay(path, {"a": Measures(loop, 180_000, 9_000, 5_000)}, striped), {"a": 9, "b": 8, "c": 7}, striped, (1, 2)
    )
    heights: list[list[tuple[int, int]]] = []
    for column in range(width):
        up = fabric.cells[column::width][::-1]
        borders = [i for i, (a, b) in enumerate(pairwise(up), 1) if a != b]
        heights.append([(up[low], high - low) for low, high in pairwise(borders)])
    for stripe in zip(*heights, strict=False):
        ((colour,), each) = {colour for colour, _ in stripe}, [rows for _, rows in stripe]
        expected = Fraction(repeat.lengths()[colour - 1], width * loop)
        assert abs(Fraction(sum(each), width) - expected) < 1
        assert all(abs(rows - expected) < 2 for rows in each)


def whole_stitches(laid: Laid, name: str) -> list[int]:
    path = way(name)
    return [t for stretch in path.stretches if stretch.yarn == "a" for t in range(stretch.begin, stretch.end)]


@given(names, loops, repeats, st.data())
@few
def test_a_block_begins_with_the_colour_that_was_wanted(name: str, loop: int, repeat: Repeat, data: st.DataObject) -> None:
    """And all that it costs is wound off: no stitch is added or lost, and never a whole repeat goes."""
    path = way(name)
    numbers = [i for i, stretch in enumerate(path.stretches) if stretch.yarn == "a"]
    wanted = {
        i: data.draw(st.integers(0, len(repeat.colours) - 1))
        for i in data.draw(st.sets(st.sampled_from(numbers)) if numbers else st.just(set()))
    }
    striped = Striped("a", repeat, (data.draw(tens),), wanted)
    laid = lay(path, measures(loop), striped)
    plain = lay(path, measures(loop), Striped("a", repeat, striped.offsets))
    for number, colour in wanted.items():
        assert repeat.at(laid.start[path.stretches[number].begin] + striped.offsets[0]) == colour
        assert 0 <= laid.skipped[number] < repeat.length
    tail = laid.measures["a"].tail
    assert laid.used["a"] - plain.used["a"] == sum(laid.skipped) + sum(laid.more_tails) * tail
    assert all(number in wanted or not laid.skipped[number] for number in range(len(path.stretches)))


@given(names, loops)
@few
def test_passes_follow_each_other_on_the_yarn(name: str, loop: int) -> None:
    laid = lay(way(name), measures(loop))
    passes = whole_stitches(laid, name)
    for t, after in pairwise(passes):
        assert laid.start[after] >= laid.start[t] + way(name).stitches[t] * loop


def test_two_balls_share_the_work() -> None:
    """Two rows of each in turn: in a strip of 4 rows a ball they have the same stitches."""
    design: Design = piece(drawn("a"), 10, 40, base_rows_bottom=0, base_rows_top=0)
    plan = plan_piece(design)
    path = path_of(plan, replay_plan(plan))
    repeat = Repeat(("#ffffff", "#000000"), (1_000_000_000, 2_000_000_000))
    striped = Striped("a", repeat, (0, 1_000_000_000))
    fabric = colours_of(lay(path, measures(9_000), striped), {"b": 8, "c": 7}, striped, (1, 2))
    up = [fabric.cells[row * 10] for row in reversed(range(40))]
    assert up == [1, 1, 2, 2] * 10
