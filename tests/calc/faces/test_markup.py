"""HTML is escaped everywhere."""

from __future__ import annotations

from wedgework.faces.markup import Html, element, joined, void

NASTY = "<script>alert('x')</script>&\""
TAME = "&lt;script&gt;alert(&#x27;x&#x27;)&lt;/script&gt;&amp;&quot;"


def test_text_and_attributes_are_escaped() -> None:
    assert element("p", NASTY, title=NASTY) == f'<p title="{TAME}">{TAME}</p>'
    assert joined(NASTY, Html("<b>"), "<") == f"{TAME}<b>&lt;"


def test_finished_markup_is_not_escaped_again() -> None:
    assert element("p", element("b", "x")) == "<p><b>x</b></p>"


def test_attribute_names_and_switches() -> None:
    made = void("input", class_="a", data_only="b", required=True, disabled=False, id=None, value="")
    assert made == '<input class="a" data-only="b" required value="">'
