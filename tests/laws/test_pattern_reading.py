"""The law of the written pattern: a reader who has nothing but its sentences does exactly what the plan has."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pieces import diamond, drawn, hemmed, lopsided, piece, points
from plan_deeds import deeds_of
from reading_pattern import Deed, of_size, read_pattern
from wedgework.formats.design import Design, DrawnLayout, Machine, NamedLayout
from wedgework.formats.plan import Plan
from wedgework.layout.library import LAYOUTS, LayoutDeclaration
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan
from wedgework.words import instructions
from wedgework.words.dialects import Dialect, spoken_in
from wedgework.words.pattern import pattern
from wedgework.words.several_sizes import for_size, one_text
from wedgework.yarn.balls import with_new_balls


def written(plan: Plan) -> str:
    return instructions(plan, replay_plan(plan)).as_text()


def assert_readable(design: Design) -> None:
    plan = plan_piece(design)
    assert_same(read_pattern(written(plan)), deeds_of(plan))


def assert_same(read: list[Deed], wanted: list[Deed]) -> None:
    for at, (one, other) in enumerate(zip(read, wanted, strict=False)):
        assert one == other, (at, read[max(at - 2, 0) : at + 2], wanted[max(at - 2, 0) : at + 2])
    assert len(read) == len(wanted)


@pytest.mark.parametrize("style", ["split", "carriage-side", "by-hand"])
@pytest.mark.parametrize("layout", LAYOUTS, ids=lambda layout: layout.name)
def test_every_layout_is_read_back(layout: LayoutDeclaration, style: str) -> None:
    assert_readable(piece(NamedLayout(layout.name), 60, 96, step_style=style))


DART = points((0, "0.3"), ("0.5", "0.5"), (0, "0.7"))
PIECES = {
    "diamond": diamond(),
    "lopsided": lopsided(),
    "from the left": lopsided(start_side="L"),
    "dart": piece(replace(drawn("a", ("b", [(0, 0), (1, 0), ("0.5", 1)])), gaps=(DART,)), 40, 60),
    "shoulder": piece(DrawnLayout("a", profile=tuple(2 * (i // 3 + 1) for i in range(30))), 30, 20, step_style="by-hand"),
    "hems": hemmed(lopsided(), bottom="plain", top="plain"),
    "picot hems": hemmed(lopsided(), bottom="picot", top="picot"),
    "hems without tensions": hemmed(diamond(), tension=None, bottom="picot", top="plain"),
    "own tensions": replace(lopsided(), yarns=tuple(replace(yarn, tension=5 + k) for k, yarn in enumerate(lopsided().yarns))),
}


@pytest.mark.parametrize("design", [*PIECES.values()], ids=[*PIECES])
def test_pieces_of_every_kind_are_read_back(design: Design) -> None:
    assert_readable(design)


SIZED = {
    "one diamond": (NamedLayout("single-diamond"), [(60, 96), (70, 110), (81, 130)]),
    "nested diamonds": (NamedLayout("nested-diamonds"), [(60, 96), (66, 104)]),
    "chevron bands": (NamedLayout("chevron-bands"), [(60, 96), (60, 120), (72, 96)]),
    "one size": (NamedLayout("sawtooth"), [(60, 96)]),
}


@pytest.mark.parametrize(("layout", "sizes"), [*SIZED.values()], ids=[*SIZED])
def test_each_size_of_a_pattern_is_read_back(layout: NamedLayout, sizes: list[tuple[int, int]]) -> None:
    names = list("SML")[: len(sizes)]
    plans = [plan_piece(piece(layout, *size)) for size in sizes]
    document = pattern(
        [(name, plan, replay_plan(plan)) for name, plan in zip(names, plans, strict=True)],
        {"start": ("Before you start", ["A word of my own, 3 (4, 5) of them."])},
    )
    for name, plan in zip(names, plans, strict=True):
        assert read_pattern(of_size(document.as_text(), name, names)) == deeds_of(plan)


HER_OWN = {
    "four names": {"non-working": "back", "working": "middle", "upper-working": "middle front", "holding": "front"},
    "one name": {"holding": "Resting"},
    "letters and figures": {"working": "2", "upper-working": "3 (4)", "holding": "4. notch, far out"},
    "points": {"upper-working": "Up. Pos.", "holding": "Hold. Pos."},
    "exchanged": {"upper-working": "HP", "holding": "UWP", "working": "NWP"},
    "all alike": dict.fromkeys(("working", "upper-working", "holding"), "in use."),
    "our own words": {"upper-working": "the needles to UWP", "holding": "HP, knit 2 rows"},
}
YARN_NAMES = ("Grey, the yarn of the cast-on", "No. 8 (4). COL. RC 004.", "Colour: bind off")


def with_names(design: Design, positions: dict[str, str], **more: object) -> Design:
    """The design on a machine whose positions have her own names, and in yarns that make it hard to read."""
    yarns = tuple(replace(yarn, name=name) for yarn, name in zip(design.yarns, YARN_NAMES, strict=True))
    machine = Machine(position_names=positions, **more)  # type: ignore[arg-type]
    return replace(design, yarns=yarns, bed=replace(design.bed, machine=machine))


@pytest.mark.parametrize("dialect", ["uk", "us"])
@pytest.mark.parametrize("positions", [*HER_OWN.values()], ids=[*HER_OWN])
def test_her_own_names_are_read_back_on_both_sides_of_the_sea(positions: dict[str, str], dialect: Dialect) -> None:
    """Names of positions and yarns as she wrote them, whatever stands in them."""
    hems = {"bottom": "picot", "top": "plain"} if dialect == "us" else {}
    plan = plan_piece(with_names(hemmed(lopsided(step_style="by-hand"), **hems), positions))
    with spoken_in(dialect):
        text = written(plan)
    assert ("ast off" in text, "tockinette" in text) == ((True, False) if dialect == "uk" else (False, True))
    assert_same(read_pattern(text), deeds_of(plan))


def test_yarns_of_one_name_are_told_apart() -> None:
    design = lopsided(step_style="by-hand")
    plan = plan_piece(replace(design, yarns=tuple(replace(yarn, name="Wool") for yarn in design.yarns)))
    assert len({deed[2] for deed in deeds_of(plan) if deed[0] == "thread"}) > 1
    assert_same(read_pattern(written(plan)), deeds_of(plan))


@pytest.mark.parametrize("digits", [2, 4])
def test_a_counter_with_few_digits_is_read_back(digits: int) -> None:
    plan = plan_piece(with_names(piece(NamedLayout("single-diamond"), 40, 240), {}, counter_digits=digits, hold_levers=2))
    assert max(step.block_row for step in plan.steps if hasattr(step, "block_row")) > 100
    assert_same(read_pattern(written(plan)), deeds_of(plan))


@pytest.mark.parametrize("dialect", ["uk", "us"])
def test_sizes_with_her_own_names_are_read_back(dialect: Dialect) -> None:
    """A yarn called "No. 8 (4)" is no count."""
    designs = [
        with_names(piece(NamedLayout("single-diamond"), *size), HER_OWN["letters and figures"]) for size in ((40, 60), (50, 76))
    ]
    plans = [plan_piece(design) for design in designs]
    with spoken_in(dialect):
        document = pattern([(name, plan, replay_plan(plan)) for name, plan in zip("SM", plans, strict=True)], {})
    for name, plan in zip("SM", plans, strict=True):
        assert_same(read_pattern(of_size(document.as_text(), name, list("SM"))), deeds_of(plan))


@pytest.mark.parametrize("style", ["split", "by-hand"])
def test_new_balls_are_read_back(style: str) -> None:
    yarns = tuple(replace(yarn, ball_g=Fraction(9), metres_per_gram=Fraction(6, 5)) for yarn in lopsided().yarns)
    plan = plan_piece(replace(lopsided(step_style=style), yarns=yarns))
    plan, _ = with_new_balls(plan, replay_plan(plan))
    assert any(deed[0] == "join" for deed in deeds_of(plan))
    assert_same(read_pattern(written(plan)), deeds_of(plan))


CHANGES = [
    ("hold 1 needle at the carriage", "hold 2 needles at the carriage"),
    ("opposite the carriage", "at the carriage"),
    ("to the left and back", "to the right and back"),
    (" times", "0 times"),
    ("COL. RC 00", "COR. RC 00"),
    ("Cut ", "Rest "),
    ("once round ", "once under "),
    ("check: only ", "Check: Only L31, "),
]


@pytest.mark.parametrize(("old", "new"), CHANGES)
def test_the_reader_finds_a_wrong_word(old: str, new: str) -> None:
    """A number, a side, a repeat changed: it is noticed, or other deeds come out."""
    plan = plan_piece(lopsided())
    text = instructions(plan, replay_plan(plan)).as_text()
    at = text.lower().find(old.lower(), text.index("Base rows"))
    assert at > 0, old
    changed = text[:at] + new + text[at + len(old) :]
    try:
        read = read_pattern(changed)
    except (AssertionError, ValueError):
        return
    assert read != deeds_of(plan)


scraps = st.sampled_from(["knit ", "rows, ", "L", " times (", ") ", "R7", "12", "L20-R20", ", ", " ", "3 1/2", "hold "])


@given(st.lists(st.lists(scraps, max_size=8).map("".join), min_size=1, max_size=4))
def test_whatever_is_one_text_goes_back_to_each_size(versions: list[str]) -> None:
    text = one_text(versions)
    assert text is None or [for_size(text, k, len(versions)) for k in range(len(versions))] == versions
