"""Shaped pieces: every needle ends with the rows that the shaping wants, the plan is legal, its picture is the design's."""

from __future__ import annotations

import itertools
import random
from collections import Counter
from dataclasses import replace
from fractions import Fraction

import pytest

from pieces import drawn, piece, points
from wedgework.formats import read_plan, write_plan
from wedgework.formats.design import Design, DrawnLayout, Point
from wedgework.formats.plan import Knit, is_edge
from wedgework.layout import grid_of, resolve, shaping_of
from wedgework.plan import plan_piece, replan
from wedgework.replay import Replay, replay_plan, state_at
from wedgework.words import expand, passages

STYLES = ("split", "carriage-side", "by-hand")


def wanted(design: Design) -> tuple[int, ...]:
    """Rows of each needle, as it hangs on the bed."""
    sizes = resolve(design)
    return shaping_of(grid_of(design, sizes).mirrored(), sizes.rows).wanted


def off(design: Design, judged: Replay) -> list[int]:
    got = [sum(run.rows for run in column) for column in judged.piece.columns]
    return [own - rows for own, rows in zip(got, wanted(design), strict=True)]


def random_shape(seed: int) -> Design:
    """Darts at one side or both, holes that close, wedges; half of them with a diamond in a second yarn."""
    rnd = random.Random(seed)
    gaps: list[tuple[Point, ...]] = []
    low = Fraction(0)
    for _ in range(rnd.randint(1, 4)):
        low += Fraction(rnd.randint(1, 10), 60)
        high = low + Fraction(rnd.randint(2, 20), 60)
        if high > 1:
            break
        tip = low + (high - low) * rnd.choice((Fraction(0), Fraction(1, 2), Fraction(1)))
        deep, kind = Fraction(rnd.randint(2, 9), 10), rnd.choice(("left", "right", "both", "middle"))
        if kind == "middle":
            gaps.append(((Fraction(1, 5), tip), (Fraction(1, 2), low), (Fraction(4, 5), tip), (Fraction(1, 2), high)))
        else:
            deep = deep if kind != "both" else Fraction(1, 3)
            left = ((Fraction(0), low), (deep, tip), (Fraction(0), high))
            gaps += [left] if kind != "right" else []
            gaps += [tuple((1 - x, y) for x, y in left)] if kind != "left" else []
        low = high
    shapes = [("b", [("0.1", "0.5"), ("0.5", "0.1"), ("0.9", "0.5"), ("0.5", "0.9")])] if rnd.random() < 0.5 else []
    layout = replace(drawn("a", *shapes), gaps=tuple(gaps))
    return piece(
        layout,
        rnd.randint(10, 50),
        2 * rnd.randint(8, 60),
        step_style=rnd.choice(STYLES),
        start_side=rnd.choice(("L", "R")),
    )


@pytest.mark.parametrize(
    "seeds", [pytest.param(range(100), id="100"), pytest.param(range(2000), id="2000", marks=pytest.mark.long)]
)
def test_random_shapes_end_with_the_rows_that_are_wanted(seeds: range, capsys: pytest.CaptureFixture[str]) -> None:
    worst: Counter[int] = Counter()
    for seed in seeds:
        design = random_shape(seed)
        judged = replay_plan(plan_piece(design))
        assert judged.problems == (), seed
        worst[max(map(abs, off(design, judged)))] += 1
    assert max(worst) <= 2
    with capsys.disabled():
        print(f"\n{sum(worst.values())} random shaped pieces; rows off at the worst needle: {dict(sorted(worst.items()))}")


def steps(needles: int, rows: int, group: int) -> tuple[int, ...]:
    """A shoulder: so many needles more go to hold every two rows."""
    return tuple(min(2 * (i // group + 1), rows) for i in range(needles))


SHOULDERS = [(30, 12, 5), (24, 24, 2), (20, 40, 1), (23, 6, 8)]


@pytest.mark.parametrize(("needles", "rows", "group"), SHOULDERS)
@pytest.mark.parametrize("left", [False, True])
def test_a_shoulder_ends_with_exactly_its_profile(needles: int, rows: int, group: int, left: bool) -> None:
    """Groups held opposite the carriage and wrapped by hand: every needle has the rows that are wanted, not one more."""
    profile = steps(needles, rows, group)
    layout = DrawnLayout("a", profile=profile[::-1] if left else profile)
    exact = []
    for side, base in itertools.product("LR", (2, 3)):
        design = piece(layout, needles, rows, step_style="by-hand", start_side=side, base_rows_bottom=base)
        judged = replay_plan(plan_piece(design))
        assert judged.problems == ()
        assert max(map(abs, off(design, judged))) <= 1
        if not any(off(design, judged)):
            exact.append((judged.summary.ends, judged.summary.free_passes))
    # From one side it needs no cut; a pass without yarn only where the last needle leaves the carriage at the wrong end.
    assert min(exact) <= (2, 1)


def test_a_wedge_one_needle_a_turn_is_exact_and_half_of_the_rectangle() -> None:
    """One needle to hold every two rows: 2, 4, 6 ... rows, n (n + 1) stitches for n needles."""
    layout = DrawnLayout("a", profile=tuple(range(2, 42, 2)))
    design = piece(layout, 20, 40, start_side="R")
    judged = replay_plan(plan_piece(design))
    assert off(design, judged) == [0] * 20
    assert sum(judged.stitches.values()) == 20 * 21


DART = points((0, "0.3"), ("0.5", "0.5"), (0, "0.7"))
OTHER_DART = tuple((1 - x, y) for x, y in DART)
SOME = {
    "dart": piece(DrawnLayout("a", gaps=(DART,)), 40, 60),
    "two darts": piece(DrawnLayout("a", gaps=(DART, OTHER_DART)), 40, 60, step_style="by-hand"),
    "dart in two colours": piece(replace(drawn("a", ("b", [(0, 0), (1, 0), ("0.5", 1)])), gaps=(DART,)), 40, 60),
    "shoulder": piece(DrawnLayout("a", profile=tuple(2 * (i // 3 + 1) for i in range(30))), 30, 20),
}


@pytest.mark.parametrize("design", [*SOME.values()], ids=[*SOME])
def test_the_rest_of_a_shaped_piece_from_where_its_plan_stands(design: Design) -> None:
    plan = plan_piece(design)
    knitted = [i for i, step in enumerate(plan.steps) if isinstance(step, Knit) and not is_edge(step.block)]
    for i in knitted[::5]:
        state = state_at(plan, i + 1)
        judged = replay_plan(replan(design, state))
        assert judged.problems == ()
        assert max(map(abs, off(design, judged))) <= 2


@pytest.mark.parametrize("design", [*SOME.values()], ids=[*SOME])
def test_its_words_go_back_to_its_steps_and_its_file_to_the_plan(design: Design) -> None:
    plan = plan_piece(design)
    for passage in passages(plan)[:-1]:
        first, last = passage.handfuls[0].first, passage.handfuls[-1].last
        assert expand(passage.handfuls[0].bed, passage.grouped) == plan.steps[first : last + 1]
    assert read_plan(write_plan(plan)) == plan


def test_the_mirrored_piece_is_the_mirrored_shape() -> None:
    left = piece(DrawnLayout("a", gaps=(DART,)), 40, 60, start_side="R")
    right = piece(DrawnLayout("a", gaps=(OTHER_DART,)), 40, 60, start_side="L")
    one, other = (off(design, replay_plan(plan_piece(design))) for design in (left, right))
    assert one == other[::-1]
    assert wanted(left) == wanted(right)[::-1]
