"""What stands in the built pages."""

from __future__ import annotations

import re

import pytest

from pieces import diamond
from wedgework.catalogue import CALCULATORS
from wedgework.faces.form import fields_html
from wedgework.faces.page import calculator_html, layouts_html, piece_html
from wedgework.formats import write_design
from wedgework.layout.library import LAYOUTS
from wedgework.problems import Refused


def test_a_slug_that_is_not_there_is_an_authors_mistake() -> None:
    with pytest.raises(LookupError):
        calculator_html("nothing")


def test_a_field_that_hangs_on_a_choice_says_so() -> None:
    html = calculator_html("panel-plan")
    assert 'data-only="bed=own"' in html
    assert "Counts only with Bed: Another one." in html


def test_what_is_not_seen_at_first_stands_in_a_noscript_and_none_in_another() -> None:
    """A ``noscript`` ends at the first end tag: one in another one would spill."""
    for calculator in CALCULATORS:
        html = fields_html(calculator, calculator.defaults)
        later = re.findall(r"<noscript>(.*?)</noscript>", html, re.DOTALL)
        assert len(later) == html.count("<noscript>") == html.count("</noscript>"), calculator.slug
        assert not any("<noscript>" in part for part in later), calculator.slug
        at_once = re.sub(r"<noscript>.*?</noscript>", "", html, flags=re.DOTALL)
        seen = {
            field.name
            for group in calculator.groups
            if not group.folded
            for field in group.fields
            if not field.only or calculator.defaults[field.only.field] in field.only.values
        }
        assert set(re.findall(r' name="(\w+)"', at_once)) == seen, calculator.slug
        assert set(re.findall(r' name="(\w+)"', html)) == {field.name for field in calculator.fields}, calculator.slug


def test_choices_offer_their_words_and_have_the_default_chosen() -> None:
    html = calculator_html("panel-plan")
    assert '<option value="bulky-9" selected>9 mm, 110 needles</option>' in html
    assert '<option value="own">Another one</option>' in html
    assert '<option value="" selected>not chosen</option>' in html


def test_colours_are_picked() -> None:
    html = calculator_html("panel-plan")
    assert '<input type="color" id="panel-plan-yarn_1_colour" name="yarn_1_colour" value="#efe8d8"' in html


def test_the_layouts_are_listed_with_their_pictures_and_parameters() -> None:
    html = layouts_html()
    assert html.count("<svg") == len(LAYOUTS)
    for layout in LAYOUTS:
        assert f'data-layout="{layout.name}"' in html
        assert f'<h2 id="{layout.name}">{layout.title}</h2>' in html
        assert html.count(f'id="{layout.name}-title"') == 1, "each drawing has ids of its own"
        for parameter in layout.parameters:
            assert f'<th scope="row"><code>{parameter.name}</code></th>' in html
    assert len(html) < 600_000


def test_a_piece_is_drawn_with_its_figures() -> None:
    html = piece_html(write_design(diamond()))
    assert html.startswith('<figure class="ww-piece"><svg')
    assert "48 needles, 96 rows, 5 blocks" in html


def test_a_title_is_text_and_nothing_else() -> None:
    text = write_design(diamond()).replace("Test piece", "<img src=x onerror=alert(1)>")
    html = piece_html(text)
    assert "<img" not in html
    assert "&lt;img src=x" in html


def test_a_piece_that_cannot_be_knitted_is_refused() -> None:
    with pytest.raises(Refused):
        piece_html(write_design(diamond(400)))
