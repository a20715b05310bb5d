"""The Markdown extension alone: which lines it takes, what it leaves alone, what stops the build."""

from __future__ import annotations

import pytest
from markdown import Markdown

from builder import extension
from builder.parts import PARTS


@pytest.fixture
def told(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """A part that remembers what it was asked, in place of all others."""
    asked: list[str] = []

    def echo(argument: str) -> str:
        asked.append(argument)
        return f"<form><p>*{argument}*</p></form>"

    monkeypatch.setattr(extension, "PARTS", {"echo": echo})
    return asked


def html(text: str) -> str:
    return Markdown(extensions=["builder.extension", "fenced_code", "tables", "md_in_html"]).convert(text)


def test_a_line_becomes_what_the_part_says(told: list[str]) -> None:
    done = html("Before\n::: echo one\nafter")
    assert told == ["one"]
    assert '<div class="core core-echo">\n<form><p>*one*</p></form>\n</div>' in done, "and no Markdown touches it"
    assert done.startswith("<p>Before</p>")
    assert done.endswith("<p>after</p>")


def test_a_part_may_stand_inside_a_frame(told: list[str]) -> None:
    assert "<form><p>*two*</p></form>" in html('<div class="frame" markdown>\n\n::: echo two\n\n</div>')


@pytest.mark.parametrize("line", ["a ::: echo one", "::: echo one two", "`::: echo one`", "    ::: echo one"])
def test_other_lines_are_left_alone(told: list[str], line: str) -> None:
    html(line)
    assert told == []


def test_an_unknown_part_stops_the_build(told: list[str]) -> None:
    with pytest.raises(ValueError, match="no part is called 'nothing'; there are: echo"):
        html("::: nothing")


@pytest.mark.parametrize(("name", "argument"), [("calculator", "nothing"), ("drawing", "nothing"), ("piece", "nothing")])
def test_an_unknown_name_stops_the_build(name: str, argument: str) -> None:
    with pytest.raises((LookupError, OSError)):
        PARTS[name](argument)


def test_the_table_of_usual_beds_has_the_distance_of_the_needles() -> None:
    """First to last needle is (N - 1) x pitch: 9 mm x 110 needles are 98.1 cm, counted by hand."""
    assert "<td>98.1 cm</td>" in PARTS["beds"]("")
    assert PARTS["beds"]("").count("<tr>") == 8
