"""The written pattern: sections in order, cautions, sizes, and markup that is only text."""

from __future__ import annotations

import re
import xml.etree.ElementTree as Tree
from dataclasses import replace
from fractions import Fraction

import pytest

from pieces import diamond, lopsided, piece
from wedgework.formats.design import Design, Gauge, Machine, NamedLayout, Swatch, SwatchState
from wedgework.formats.plan import Hole, Slit
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan
from wedgework.words import Instructions, instructions


def written(design: Design) -> Instructions:
    plan = plan_piece(design)
    return instructions(plan, replay_plan(plan))


def section(found: Instructions, key: str) -> str:
    return "\n".join(next(part.sentences for part in found.sections if part.key == key))


def test_sections_in_the_order_of_the_work() -> None:
    keys = [part.key for part in written(diamond()).sections]
    assert keys == [
        "piece",
        "yarns",
        "key",
        "cautions",
        "notes",
        "start",
        "base-bottom",
        "b3",
        "b1",
        "b2",
        "b4",
        "b5",
        "base-top",
        "end",
        "finish",
    ]


def test_the_piece_in_figures() -> None:
    """48 needles at 14 per 10 cm are 342.86 mm, 13 1/2 in; 96 rows at 19 are 505.26 mm, 19 7/8 in (1 in = 25.4 mm), and with 4
    base rows 526.32 mm."""
    said = section(written(diamond()), "piece")
    assert "Finished size 34.3 cm (13 1/2 in) wide, 52.6 cm (20 3/4 in) high, with the base rows." in said
    assert "34.3 cm (13 1/2 in) wide and 50.5 cm (19 7/8 in) high: 48 stitches, 96 rows." in said
    assert "Gauge 14 stitches and 19 rows per 10 cm (3.56 and 4.83 per inch), as you gave it." in said
    assert "Needles L24 to R24, 48 needles." in said
    assert "Every needle ends with 96 rows." in said
    assert "odd needle" not in said


def test_a_washed_swatch_is_named_and_the_odd_needle_too() -> None:
    design = lopsided()
    measured = SwatchState((Fraction(100),), (Fraction(150),))
    swatch = Gauge(swatch=Swatch(Fraction(28), Fraction(60), washed=measured))
    said = section(written(replace(design, gauge=swatch)), "piece")
    assert "Gauge 28 stitches and 40 rows per 10 cm (7.11 and 10.16 per inch), from the washed swatch." in said
    assert "The odd needle lies on the right." in said
    left = section(written(lopsided(odd_needle="L")), "piece")
    assert "Needles L31 to R30, 61 needles." in left
    assert "The odd needle lies on the left." in left


def test_yarns_with_base_rows_and_their_tension() -> None:
    design = diamond()
    first, *others = design.yarns
    plan = plan_piece(replace(design, yarns=(replace(first, tension=Fraction(71, 10)), *others)))
    judged = replay_plan(plan)
    said = section(instructions(plan, judged), "yarns").splitlines()
    count = judged.stitches["a"] + 4 * 48
    assert said == [f"Chalk: {count} stitches, tension T 7.1.", f"Slate: {judged.stitches['b']} stitches."]


def test_the_usual_cautions() -> None:
    said = section(written(diamond()), "cautions")
    for words in ("sharp", "Weights fall", "strain", "infant's sleeping place", "local safety guidance"):
        assert words in said


def test_a_diamond_is_knitted_in_a_few_sentences() -> None:
    found = written(diamond())
    rows = [
        words
        for words in next(part.sentences for part in found.sections if part.key == "b2")
        if (" RC " in words and "Knit" in words) or "times" in words
    ]
    assert len(rows) <= 6
    assert "Hold 1 needle at the carriage, knit 2 rows, 22 times (R2 to R23). COL. RC 045." in section(found, "b3")


def test_positions_by_the_person_s_own_names() -> None:
    design = diamond()
    own = replace(design, bed=replace(design.bed, machine=Machine(position_names={"holding": "front"})))
    said = section(written(own), "key")
    assert "HP is called front on this machine." in said


def test_what_stays_open_is_closed_in_the_finishing() -> None:
    plan = plan_piece(diamond())
    judged = replay_plan(plan)
    summary = replace(judged.summary, slits=(Slit(-3, 41, 6), Slit(2, 1, 1)), holes=(Hole(4, 12),))
    said = section(instructions(plan, replace(judged, summary=summary)), "finish")
    assert "Sew or link 2 slits: right of L3, 6 rows from row 41; right of R2, 1 row from row 1." in said
    assert "Close 1 hole: beside R4 at row 12." in said
    assert "slit" not in section(written(diamond()), "finish")


def test_steps_are_numbered_in_the_text() -> None:
    text = written(diamond()).as_text()
    assert text.startswith("Test piece\n\nThe piece\n")
    assert "\nStart\n   1. Set the carriage" in text
    assert text.endswith("\n")
    assert "\n\n\n" not in text


@pytest.mark.parametrize("title", ["Two kites", '<script>alert("x")</script> & more'])
def test_markup_is_well_formed_and_shows_every_sentence_as_text(title: str) -> None:
    design = diamond()
    hostile = replace(design, title=title, yarns=(replace(design.yarns[0], name="<b>Chalk</b>"), *design.yarns[1:]))
    found = written(hostile)
    tree = Tree.fromstring(found.as_html())
    items = ["".join(item.itertext()) for item in tree.iter("li")]
    assert items == [words for part in found.sections for words in part.sentences]
    assert {element.tag for element in tree.iter()} == {"div", "section", "details", "summary", "h3", "ol", "ul", "li"}
    assert not [name for element in tree.iter() for name in element.attrib if name == "style" or name.startswith("on")]


def test_no_words_that_mean_something_else_in_the_trade() -> None:
    for design in (diamond(), lopsided(), piece(NamedLayout("nested-diamonds"), 60, 96)):
        text = written(design).as_text()
        assert not re.search(r"\bcard\b|\bturns?\b(?! back)|\bK\d", text, re.I)
        assert not re.search(r"\b1 (rows|needles|stitches|times|ends|blocks)\b", text)
        assert not re.search(r"[{}]|\bNone\b|Fraction", text)
