"""The law of the written pattern: a reader who has nothing but its sentences does exactly what the plan has."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pieces import diamond, drawn, hemmed, lopsided, piece, points
from reading_pattern import Deed, of_size, read_pattern
from wedgework.bed import across
from wedgework.formats.design import Design, DrawnLayout, NamedLayout
from wedgework.formats.plan import BindOff, Cut, Free, Hang, Hold, Knit, Plan, Rest, Set, Thread, Transfer, Waste, Work, Wrap
from wedgework.layout.library import LAYOUTS, LayoutDeclaration
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan
from wedgework.units import short_decimal
from wedgework.words import instructions
from wedgework.words.dialects import in_dialect
from wedgework.words.pattern import pattern
from wedgework.words.several_sizes import for_size, one_text


def deeds_of(plan: Plan) -> list[Deed]:
    """The same of the plan itself, step by step. A needle that goes forward and comes back before a row has done nothing."""
    names = {yarn.id: yarn.name for yarn in plan.design.yarns}
    needles = across(*plan.start.working)
    held: set[int] = set()
    hold, yarn, blocks = False, "", dict[str, int]()
    resting: set[str] = set()
    found: list[Deed] = []
    for step in plan.steps:
        match step:
            case Set(hold_lever=lever, tension=tension):
                hold = lever == "hold" if lever else hold
                if tension is not None:
                    found.append(("tension", short_decimal(tension, 2)))
            case Hold(needles=moving):
                held.update(moving)
            case Work(needles=moving):
                held.difference_update(moving)
            case Thread(yarn=new, around=around):
                yarn = names[new]
                found.append(("thread", "again" if yarn in resting else "new", yarn, around))
                resting.discard(yarn)
            case Cut() | Rest():
                found.append(("cut" if isinstance(step, Cut) else "rest", yarn))
                resting.update({yarn} if isinstance(step, Rest) else ())
                yarn = ""
            case Free(to=to):
                found.append(("free", to))
            case Knit(to=to, block=block, block_row=row):
                number = blocks.setdefault(block, len(blocks) + 1)
                found.append(("knit", to, tuple(n for n in needles if not (hold and n in held)), yarn, number, row))
                held = held if hold else set()
            case Wrap(needle=needle):
                found.append(("wrap", needle))
            case Transfer(from_needle=one, to_needle=other):
                found.append(("transfer", one, other))
            case Hang(needles=on):
                found.append(("hang", *on))
            case Waste(rows=rows):
                found.append(("waste", rows))
            case BindOff(needles=off):
                found.append(("bind off", *off))
    return found


def assert_readable(design: Design) -> None:
    plan = plan_piece(design)
    text = instructions(plan, replay_plan(plan)).as_text()
    read, wanted = read_pattern(text), deeds_of(plan)
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
        lambda words: in_dialect(words, "uk"),
    )
    for name, plan in zip(names, plans, strict=True):
        assert read_pattern(of_size(document.as_text(), name, names)) == deeds_of(plan)


CHANGES = [
    ("hold 1 needle at the carriage", "hold 2 needles at the carriage"),
    ("opposite the carriage", "at the carriage"),
    ("to the left and back", "to the right and back"),
    (" times", "0 times"),
    ("COL. RC 00", "COR. RC 00"),
    ("Cut ", "Rest "),
    ("once round ", "once under "),
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
