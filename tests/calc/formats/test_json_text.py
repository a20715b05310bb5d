"""Text that is no file of ours: said in one sentence, with the line and the column."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from wedgework.formats.text import MOST_BRACKETS, exact_value, parse
from wedgework.problems import Problem, Refused


def refused(text: str, most: int = 1000) -> Problem:
    with pytest.raises(Refused) as caught:
        parse(text, most)
    (problem,) = caught.value.problems
    return problem


def test_a_byte_order_mark_is_understood() -> None:
    assert parse('\ufeff{"a": 1.5}', 100) == {"a": Fraction(3, 2)}


@pytest.mark.parametrize("number", [-(10**20) + 1, 10**20 - 1, -1, 0])
def test_whole_numbers_have_up_to_twenty_digits_and_a_sign(number: int) -> None:
    assert parse(str(number), 100) == number


def test_letters_of_every_script_are_kept() -> None:
    assert parse('["Wolle \\u00e4", "糸", "\\ud83e\\uddf6"]', 100) == ["Wolle ä", "糸", "🧶"]


@pytest.mark.parametrize("text", ["", "   \n", "\ufeff"])
def test_nothing(text: str) -> None:
    assert refused(text).code == "formats.empty"


def test_too_many_characters() -> None:
    problem = refused("[1, 2, 3]", most=8)
    assert problem.code == "formats.too-long"
    assert "9 characters" in problem.sentence
    assert "at most 8" in problem.sentence


def test_brackets_may_be_so_deep_and_no_deeper() -> None:
    deep = "[" * MOST_BRACKETS + "]" * MOST_BRACKETS
    assert parse(deep, 1000)
    assert refused(f"[{deep}]").code == "formats.too-deep"
    assert refused("[" * 100_000, most=10**6).code == "formats.too-deep"


def test_brackets_inside_text_do_not_count() -> None:
    text = '[[[[\\"' * 100
    assert parse(f'["{text}"]', 10_000) == [text.replace("\\", "")]


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ('{"a": 1,\n "b": oops}', "line 2, column 7"),
        ("{'a': 1}", "line 1, column 2"),
        ('{"a": 1,}', "line 1, column 8: a comma"),
        ("[1,\n 2,\n]", "line 2, column 3: a comma"),
        ('{"a": [1, 2', "ends at line 1, column 12"),
        ('{"a": 1} {"b": 2}', "line 1, column 10"),
        ("[01]", "line 1, column 3"),
    ],
)
def test_broken_text_is_shown_by_line_and_column(text: str, words: str) -> None:
    problem = refused(text)
    assert problem.code == "formats.not-json"
    assert words in problem.sentence
    assert problem.way_out


@pytest.mark.parametrize("text", ['["\\ud800"]', '{"a": {"b": ["x", "\\uDFFF"]}}', '{"\\udc00": 1}', '["\ud800"]'])
def test_half_characters_are_refused(text: str) -> None:
    assert refused(text).code == "formats.half-character"


def test_half_characters_are_found_by_their_path() -> None:
    assert refused('{"a": {"b": ["x", "\\uDFFF"]}}').where == "a.b[1]"


@pytest.mark.parametrize("filling", ['\\"', '"', "[", '"\\', "\\", '{"a":', "1e", "-", '\\ud800"'])
def test_a_megabyte_of_mischief_is_answered(filling: str) -> None:
    text = '["' + filling * (1_000_000 // len(filling))
    assert refused(text, most=2_000_000).sentence


@pytest.mark.parametrize(
    ("value", "exact"), [(7.1, Fraction(71, 10)), (3.0, 3), ([0.5, {"a": 1e-7}], [Fraction(1, 2), {"a": Fraction(1, 10**7)}])]
)
def test_floats_of_other_readers_become_exact(value: Any, exact: Any) -> None:
    assert exact_value(value) == exact
