"""Elements of drawings: numbers, escaping, colours."""

from __future__ import annotations

import xml.etree.ElementTree as Tree
from fractions import Fraction

import pytest

from wedgework.draw.colours import DARK, LIGHT, ink_on, luminance, mixed
from wedgework.draw.svg import Element, document, label, number


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (3, "3"),
        (Fraction(1, 3), "0.33"),
        (Fraction(2, 3), "0.67"),
        (Fraction(1, 200), "0.01"),
        (Fraction(-1, 200), "-0.01"),
        (Fraction(-1, 1000), "0"),
        (Fraction(25, 10), "2.5"),
        (Fraction(999, 1000), "1"),
        (Fraction(-12345, 1000), "-12.35"),
        (100, "100"),
        (0, "0"),
    ],
)
def test_numbers_have_two_places_at_most(value: int | Fraction, text: str) -> None:
    assert number(value) == text


def test_text_and_attributes_are_escaped() -> None:
    text = Element("text", {"data-name": '"><script>'}, ("a < b & c",)).text()
    assert text == '<text data-name="&quot;&gt;&lt;script&gt;">a &lt; b &amp; c</text>'


def test_a_document_has_a_size_a_title_and_a_description() -> None:
    words = 'Kites & <b>"more"</b>'
    tree = Tree.fromstring(
        document(120, Fraction(605, 10), words, "What it shows.", [label(1, 2, "x", 3)], prefix="p", kind="front")
    )
    assert (tree.get("width"), tree.get("height"), tree.get("viewBox")) == ("120mm", "60.5mm", "0 0 120 60.5")
    assert tree.get("role") == "img"
    title, desc = tree[0], tree[1]
    assert (title.text, desc.text) == (words, "What it shows.")
    assert tree.get("aria-labelledby") == f"{title.get('id')} {desc.get('id')}" == "p-title p-desc"


def _wcag(colour: str) -> float:
    """Relative luminance as WCAG 2.1 defines it (the formula from memory)."""

    def linear(value: int) -> float:
        c = value / 255
        return c / 12.92 if c <= 0.03928 else ((c + 0.055) / 1.055) ** 2.4

    red, green, blue = (linear(int(colour[i : i + 2], 16)) for i in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


COLOURS = [f"#{r:02x}{g:02x}{b:02x}" for r in range(0, 256, 51) for g in range(0, 256, 51) for b in range(0, 256, 51)]


def test_luminance_is_that_of_the_standard() -> None:
    for colour in COLOURS:
        assert abs(float(luminance(colour)) - _wcag(colour)) < 0.003


def test_ink_can_be_read_on_every_colour() -> None:
    """WCAG 2.1, success criterion 1.4.3: a contrast of 4.5 for text (3 for large text); the criterion from memory.
    With two inks the worst grey allows about 4.2, and numbers of blocks are large and bold."""
    for colour in COLOURS:
        low, high = sorted((_wcag(colour), _wcag(ink_on(colour))))
        assert (high + 0.05) / (low + 0.05) >= 4.1, colour
    assert ink_on("#f2efe6") == DARK
    assert ink_on("#3f5566") == LIGHT


def test_mixing_goes_from_one_colour_to_the_other() -> None:
    assert mixed("#000000", "#ffffff", 0) == "#000000"
    assert mixed("#000000", "#ffffff", 100) == "#ffffff"
    assert mixed("#102030", "#304050", 50) == "#203040"
