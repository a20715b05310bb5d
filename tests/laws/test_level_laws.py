"""All needles end together, however the borders lie; judged by the model bed.

Common practice, no source: rows of a flat piece may differ by two, a turn.
"""

from __future__ import annotations

import itertools
import random
from collections import Counter
from collections.abc import Iterator
from fractions import Fraction

import pytest

from pieces import diamond, piece
from wedgework.bed import Side
from wedgework.formats.design import Design, DrawnLayout, Shape
from wedgework.formats.plan import Hold, Knit, Plan, Work, is_edge
from wedgework.layout import grid_of, layout_problems, resolve
from wedgework.plan import plan_piece
from wedgework.plan.regions import chains_of
from wedgework.replay import replay_plan
from wedgework.replay.result import Replay

STYLES = ("split", "carriage-side", "by-hand")


def off(judged: Replay, rows: int) -> int:
    """The most that needles differ from each other, or from the height of the panel."""
    return max(judged.rows_max - judged.rows_min, abs(judged.rows_max - rows), abs(judged.rows_min - rows))


def corners(rnd: random.Random, count: int) -> tuple[tuple[Fraction, Fraction], ...]:
    return tuple((Fraction(rnd.randint(-3, 13), 10), Fraction(rnd.randint(-3, 13), 10)) for _ in range(count))


def thick_pictures(count: int, seed: int) -> Iterator[tuple[Design, int]]:
    """Random pictures, with their rows, whose regions are at least four needles wide somewhere and eight rows high."""
    rnd = random.Random(seed)
    found = 0
    while found < count:
        shapes = tuple(Shape(rnd.choice("abc"), corners(rnd, rnd.choice((3, 3, 4, 5)))) for _ in range(rnd.randint(1, 5)))
        needles, rows = rnd.randint(30, 100), rnd.randint(40, 240)
        design = piece(
            DrawnLayout(rnd.choice("abc"), shapes),
            needles,
            rows,
            pitch=rnd.choice((Fraction(9, 2), Fraction(9))),
            start_side=rnd.choice("LR"),
            step_style=rnd.choice(STYLES),
            base_rows_bottom=rnd.choice((2, 3)),
        )
        if layout_problems(design):
            continue
        chains = chains_of(grid_of(design, resolve(design)))
        if all(len(c.runs) >= 4 and max(b for _, b in c.runs) - min(a for a, _ in c.runs) >= 3 for c in chains):
            found += 1
            yield design, rows


def test_thick_pictures_are_level_without_an_exception() -> None:
    for design, rows in thick_pictures(250, seed=41):
        assert off(replay_plan(plan_piece(design)), rows) <= 2


@pytest.mark.long
def test_thousands_of_thick_pictures_are_level() -> None:
    for design, rows in thick_pictures(4000, seed=42):
        assert off(replay_plan(plan_piece(design)), rows) <= 2


@pytest.mark.parametrize("style", STYLES)
@pytest.mark.parametrize("start", ["L", "R"])
@pytest.mark.parametrize("lean", [Fraction(1, 40), Fraction(1, 15), Fraction(-1, 15), Fraction(1, 6)])
def test_errors_of_one_row_do_not_add_up_over_twelve_shallow_bands(style: str, start: Side, lean: Fraction) -> None:
    """A border that moves many needles a turn loses a row at each of them, unless the next one watches the real rows."""
    shapes = tuple(
        Shape(
            "abc"[k % 3],
            (
                (Fraction(0), Fraction(k, 12)),
                (Fraction(1), Fraction(k, 12) + lean),
                (Fraction(1), Fraction(2)),
                (Fraction(0), Fraction(2)),
            ),
        )
        for k in range(1, 12)
    )
    judged = replay_plan(plan_piece(piece(DrawnLayout("a", shapes), 90, 240, start_side=start, step_style=style)))
    assert judged.problems == ()
    assert off(judged, 240) <= 2


def slope_one(count: int, seed: int) -> Iterator[tuple[Design, int]]:
    """Diamonds, triangles and bands on whole cells: every edge is level, or moves one needle every two rows."""
    rnd = random.Random(seed)
    for _ in range(count):
        needles, turns = rnd.randint(24, 60), rnd.randint(20, 50)
        shapes = []
        for _ in range(rnd.randint(1, 2)):
            r, x, y = rnd.randint(6, 20), rnd.randint(0, needles), rnd.randint(0, turns)
            up, down = [(x - r, y), (x + r, y), (x, y + r)], [(x - r, y), (x + r, y), (x, y - r)]
            lozenge = [(x - r, y), (x, y - r), (x + r, y), (x, y + r)]
            points = rnd.choice((lozenge, up, down))
            shapes.append(Shape(rnd.choice("bc"), tuple((Fraction(a, needles), Fraction(b, turns)) for a, b in points)))
        yield piece(DrawnLayout("a", tuple(shapes)), needles, 2 * turns, start_side=rnd.choice("LR")), 2 * turns


def in_phase(plan: Plan, judged: Replay) -> bool:
    """Read off the steps: every block begins on the home side where its needles have an even number of rows, else on the other;
    and within blocks no edge moves more than one needle at a time."""
    home = plan.start.carriage  # two base rows bring it back
    levels: dict[str, int] = {}
    for run in itertools.chain(*judged.piece.columns):
        levels[run.block] = min(run.level, levels.get(run.block, run.level))
    moved: list[int] = []
    current = ""
    for step in plan.steps:
        if isinstance(step, Hold | Work):
            moved.append(len(step.needles))
        elif isinstance(step, Knit) and not is_edge(step.block):
            if step.block != current:
                start = "L" if step.to == "R" else "R"
                if (levels[step.block] % 2 == 0) != (start == home):
                    return False
            elif any(count > 1 for count in moved):
                return False
            current, moved = step.block, []
    return True


def test_exactly_level_where_every_block_starts_in_phase_and_no_step_is_wider_than_one_needle() -> None:
    found: Counter[bool] = Counter()
    for design, rows in slope_one(300, seed=5):
        if layout_problems(design):
            continue
        plan = plan_piece(design)
        judged = replay_plan(plan)
        assert off(judged, rows) <= 2
        if in_phase(plan, judged):
            found[off(judged, rows) == 0] += 1
    assert found[True] >= 12
    assert found[False] == 0


@pytest.mark.parametrize("half", range(6, 40, 3))
def test_the_worked_case_is_exactly_level_at_any_size(half: int) -> None:
    judged = replay_plan(plan_piece(diamond(2 * half, 4 * half)))
    assert judged.sound
    assert (judged.rows_min, judged.rows_max) == (4 * half, 4 * half)
