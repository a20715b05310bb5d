"""The law of the written pattern in German: a reader who has nothing but its sentences does exactly what the plan has."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

import pytest

from pieces import diamond, drawn, hemmed, lopsided, piece, points
from plan_deeds import deeds_of
from reading_bed import Deed, of_size
from reading_pattern_german import read_german
from wedgework.formats.design import Design, DrawnLayout, Machine, NamedLayout
from wedgework.layout.library import LAYOUTS, LayoutDeclaration
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan
from wedgework.say import spoken
from wedgework.words import instructions
from wedgework.words.pattern import pattern
from wedgework.yarn.balls import with_new_balls

languages = pytest.importorskip("builder.languages")  # it needs what builds the pages


@pytest.fixture(autouse=True, scope="module")
def german() -> Iterator[None]:
    with spoken("de", languages.catalogue("de")):
        yield


def assert_readable(design: Design) -> None:
    plan = plan_piece(design)
    plan, judged = with_new_balls(plan, replay_plan(plan))
    assert_same(read_german(instructions(plan, judged).as_text()), deeds_of(plan))


def assert_same(read: list[Deed], wanted: list[Deed]) -> None:
    for at, (one, other) in enumerate(zip(read, wanted, strict=False)):
        assert one == other, (at, read[max(at - 2, 0) : at + 2], wanted[max(at - 2, 0) : at + 2])
    assert len(read) == len(wanted)


# Each layout in one style here and in every style in the long run.
STYLES = ("split", "carriage-side", "by-hand")
EACH = [
    pytest.param(layout, style, id=f"{layout.name}-{style}", marks=() if i % 3 == k else pytest.mark.long)
    for i, layout in enumerate(LAYOUTS)
    for k, style in enumerate(STYLES)
]


@pytest.mark.parametrize(("layout", "style"), EACH)
def test_every_layout_is_read_back(layout: LayoutDeclaration, style: str) -> None:
    assert_readable(piece(NamedLayout(layout.name), 60, 96, step_style=style))


def tensions(design: Design, *numbers: str) -> Design:
    return replace(design, yarns=tuple(replace(yarn, tension=Fraction(n)) for yarn, n in zip(design.yarns, numbers, strict=True)))


def balls(design: Design) -> Design:
    yarns = tuple(replace(yarn, ball_g=Fraction(9), metres_per_gram=Fraction(6, 5)) for yarn in design.yarns)
    return replace(design, yarns=yarns)


def named(design: Design, positions: dict[str, str], **more: object) -> Design:
    machine = Machine(position_names=positions, **more)  # type: ignore[arg-type]
    names = ("Grau, das Garn des Anschlags", "Nr. 8 (4). SL. RZ 004.", "Rost und Ruß")
    yarns = tuple(replace(yarn, name=name) for yarn, name in zip(design.yarns, names, strict=True))
    return replace(design, yarns=yarns, bed=replace(design.bed, machine=machine))


DART = points((0, "0.3"), ("0.5", "0.5"), (0, "0.7"))
PIECES = {
    "diamond": diamond(),
    "lopsided": lopsided(),
    "from the left": lopsided(start_side="L"),
    "by hand": lopsided(step_style="by-hand"),
    "dart": piece(replace(drawn("a", ("b", [(0, 0), (1, 0), ("0.5", 1)])), gaps=(DART,)), 40, 60),
    "shoulder": piece(DrawnLayout("a", profile=tuple(2 * (i // 3 + 1) for i in range(30))), 30, 20, step_style="by-hand"),
    "hems": hemmed(lopsided(), bottom="plain", top="plain"),
    "picot hems": hemmed(lopsided(), bottom="picot", top="picot"),
    "hems without tensions": hemmed(diamond(), tension=None, bottom="picot", top="plain"),
    "tensions": tensions(lopsided(), "5.5", "6", "7.25"),
    "new balls": balls(lopsided(step_style="by-hand")),
    "names": named(hemmed(lopsided(), bottom="picot"), {"working": "2", "upper-working": "3 (4)", "holding": "Halt. Pos."}),
    "exchanged": named(lopsided(step_style="by-hand"), {"upper-working": "HST", "holding": "OAST", "working": "RST"}),
    "counter": named(piece(NamedLayout("single-diamond"), 40, 240), {}, counter_digits=2, hold_levers=2),
}


@pytest.mark.parametrize("design", [*PIECES.values()], ids=[*PIECES])
def test_pieces_of_every_kind_are_read_back(design: Design) -> None:
    assert_readable(design)


SIZED = {
    "one diamond": (NamedLayout("single-diamond"), [(60, 96), (70, 110), (81, 130)]),
    "chevron bands": (NamedLayout("chevron-bands"), [(60, 96), (60, 120), (72, 96)]),
    "own names": (NamedLayout("single-diamond"), [(40, 60), (50, 76)]),
}


@pytest.mark.parametrize("case", SIZED)
def test_each_size_of_a_pattern_is_read_back(case: str) -> None:
    layout, sizes = SIZED[case]
    names = list("SML")[: len(sizes)]
    designs = [tensions(piece(layout, *size), f"{5 + k}.5", "6", "7") for k, size in enumerate(sizes)]
    if case == "own names":
        designs = [named(design, {"holding": "3 (4)"}) for design in designs]
    plans = [plan_piece(design) for design in designs]
    document = pattern([(name, plan, replay_plan(plan)) for name, plan in zip(names, plans, strict=True)], {})
    for name, plan in zip(names, plans, strict=True):
        assert_same(read_german(of_size(document.as_text(), name, names)), deeds_of(plan))


CHANGES = [
    ("1 Nadel am Schlitten stilllegen", "2 Nadeln am Schlitten stilllegen"),
    ("gegenüber dem Schlitten", "am Schlitten"),
    ("nach links und zurück", "nach rechts und zurück"),
    (" Mal", "0 Mal"),
    ("SL. RZ 00", "SR. RZ 00"),
    ("abschneiden", "ansehen"),
    ("einmal um ", "einmal unter "),
    ("arbeit nur ", "Arbeit nur L31, "),
]


@pytest.mark.parametrize(("old", "new"), CHANGES)
def test_the_reader_finds_a_wrong_word(old: str, new: str) -> None:
    """A number, a side, a repeat changed: it is noticed, or other deeds come out."""
    plan = plan_piece(lopsided())
    text = instructions(plan, replay_plan(plan)).as_text()
    at = text.lower().find(old.lower(), text.index("Grundreihen"))
    assert at > 0, old
    try:
        read = read_german(text[:at] + new + text[at + len(old) :])
    except (AssertionError, ValueError):
        return
    assert read != deeds_of(plan)
