"""JSON text to plain values, with every number exact. Text is untrusted: it may come from a link or a stranger.

    >>> parse('{"pitch_mm": 4.5}', 1000)
    {'pitch_mm': Fraction(9, 2)}

The parser is the standard library's; around it stand the limits that it lacks. What is wrong with a single value
(a number too long, a key written twice) is left in place as a mark, so that the reader can report it by its path
beside everything else that is wrong.
"""

from __future__ import annotations

import json
import re
from fractions import Fraction
from typing import Any, NoReturn

from wedgework.formats.decimals import MOST_BEFORE_POINT, exact_number
from wedgework.formats.paths import Path, spell
from wedgework.problems import Problem, Refused
from wedgework.say import say

__all__ = ["MOST_BRACKETS", "KeysTwice", "UnreadableNumber", "exact_value", "parse"]

# A parser that calls itself for each bracket dies of deep nesting, and in a browser takes the page's engine with it.
# The deepest file we write has ten levels.
MOST_BRACKETS = 32

_STRING_OR_FILLING = re.compile(r'"(?:[^"\\]++|\\.)*+(?:"|\\?\Z)|[^][{}"]++', re.DOTALL)
_NEAR = 20
_MOST_HALVES = 100


class UnreadableNumber:
    """Stands where the file has a number that is none (NaN) or that is beyond the limits."""

    def __init__(self, text: str) -> None:
        self.text = text


class KeysTwice(dict[str, Any]):
    """An object in which the keys `twice` were written more than once."""

    twice: tuple[str, ...] = ()


def parse(text: str, most: int) -> Any:
    """The value written in `text`, which may begin with a byte order mark and have `most` characters.

    Objects are dicts, lists lists, numbers int or Fraction. Raises Refused when it is no JSON, too long, too deep,
    or holds half characters (lone surrogates).
    """
    text = text.removeprefix("\ufeff")
    if len(text) > most:
        _refuse("too-long", found=len(text), most=most)
    if not text.strip():
        _refuse("empty")
    _refuse_half_characters(text)
    _refuse_depth(text)
    try:
        value = json.loads(
            text,
            parse_int=_whole,
            parse_float=_number,
            parse_constant=UnreadableNumber,
            object_pairs_hook=_object,
        )
    except json.JSONDecodeError as error:
        _refuse_position(text, error.pos)
    if "\\ud" in text or "\\uD" in text:
        halves = _half_characters(value, None)
        if halves:
            raise Refused(halves[:_MOST_HALVES])
    return value


def exact_value(value: Any) -> Any:
    """`value` as `parse` would have given it: floats, as other JSON readers give them, become exact numbers."""
    if isinstance(value, dict):
        return {key: exact_value(each) for key, each in value.items()}
    if isinstance(value, (list, tuple)):
        return [exact_value(each) for each in value]
    if isinstance(value, float):
        text = repr(value)
        return _number(text) if text[-1].isdigit() else UnreadableNumber(text)
    if isinstance(value, Fraction) and value.denominator == 1:
        return int(value)
    return value


def _whole(text: str) -> int | UnreadableNumber:
    return int(text) if len(text.removeprefix("-")) <= MOST_BEFORE_POINT else UnreadableNumber(text)


def _number(text: str) -> int | Fraction | UnreadableNumber:
    number = exact_number(text)
    return UnreadableNumber(text) if number is None else number


def _object(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    value = dict(pairs)
    if len(value) == len(pairs):
        return value
    seen: set[str] = set()
    twice: dict[str, None] = {}
    for key, _ in pairs:
        if key in seen:
            twice[key] = None
        seen.add(key)
    marked = KeysTwice(value)
    marked.twice = tuple(twice)
    return marked


def _refuse(what: str, **values: object) -> NoReturn:
    raise Refused([Problem("", f"formats.{what}", say(f"formats.{what}", **values), say(f"formats.{what}.way-out", **values))])


def _refuse_depth(text: str) -> None:
    depth = 0
    for bracket in _STRING_OR_FILLING.sub("", text):
        depth += 1 if bracket in "[{" else -1
        if depth > MOST_BRACKETS:
            _refuse("too-deep", most=MOST_BRACKETS)


def _refuse_position(text: str, place: int) -> NoReturn:
    """Say where the text stops being JSON; the parser's own words differ from one Python to the next, so ours stand here."""
    before = text[:place].rstrip()
    if text[place : place + 1] in ("]", "}") and before.endswith(","):
        place = len(before) - 1
    near = text[place : place + _NEAR].split("\n")[0]
    values = {
        "line": text.count("\n", 0, place) + 1,
        "column": place - text.rfind("\n", 0, place),
        "near": json.dumps(near, ensure_ascii=False),
    }
    kind = "not-json"
    if not text[place:].strip():
        kind = "not-json-end"
    elif near.startswith(",") and text[place + 1 :].lstrip()[:1] in ("]", "}"):
        kind = "not-json-comma"
    raise Refused([Problem("", "formats.not-json", say(f"formats.{kind}", **values), say("formats.not-json.way-out"))])


def _refuse_half_characters(text: str) -> None:
    try:
        text.encode()
    except UnicodeEncodeError as error:
        sentence = say("formats.half-character-line", line=text.count("\n", 0, error.start) + 1)
        raise Refused([Problem("", "formats.half-character", sentence, say("formats.half-character.way-out"))]) from None


def _half_characters(value: Any, path: Path) -> list[Problem]:
    """Problems for every text (or key) that holds a lone surrogate, which no file can be written with."""
    if isinstance(value, str):
        if value.isascii() or not any("\ud800" <= c <= "\udfff" for c in value):
            return []
        return [
            Problem(spell(path), "formats.half-character", say("formats.half-character"), say("formats.half-character.way-out"))
        ]
    if isinstance(value, list):
        return [p for i, each in enumerate(value) for p in _half_characters(each, (path, i))]
    if isinstance(value, dict):
        found = [p for key in value for p in _half_characters(key, (path, key))]
        return found + [p for key, each in value.items() for p in _half_characters(each, (path, key))]
    return []
