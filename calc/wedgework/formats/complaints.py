"""Findings to problems: what was found, what is allowed and a way out, in a person's words."""

from __future__ import annotations

import difflib
import json
from collections.abc import Iterable
from fractions import Fraction
from typing import Any

from wedgework.formats.decimals import decimal_text
from wedgework.formats.newer import newer_maker
from wedgework.formats.paths import Path, keys_of, spell
from wedgework.formats.reading import Finding, Schema
from wedgework.formats.text import UnreadableNumber
from wedgework.problems import Problem
from wedgework.say import say, say_n
from wedgework.version import VERSION

__all__ = ["MOST_PROBLEMS", "found_phrase", "newer_problem", "problems_of", "wanted_phrase"]

# A file that is wrong in more places than this is not mended place by place; the rest is counted.
MOST_PROBLEMS = 1000
_LONGEST_SHOWN = 40
_MOST_KEYS = 8
_MORE = {"unknown-key", "not-offered"}
"""What a newer version may have and this one cannot know."""


def problems_of(findings: list[Finding], value: Any, at: str) -> list[Problem]:
    """One problem for each finding in `value`, in the order of the file; paths begin with `at`."""
    problems = [_problem(finding, value, at) for finding in findings[:MOST_PROBLEMS]]
    left = len(findings) - MOST_PROBLEMS
    if left > 0:
        problems.append(Problem(at, "formats.more", say_n("formats.more", left), say("formats.more.way-out")))
    return problems


def _problem(finding: Finding, value: Any, at: str) -> Problem:
    newer = newer_problem(value, finding.path, at) if finding.kind in _MORE else None
    if newer is not None:
        return newer
    words = _WORDS.get(finding.kind, _usual)(finding)
    code = f"formats.{finding.kind}"
    return Problem(spell(finding.path, at), code, say(code, **words), say(f"{code}.way-out", **words))


def newer_problem(value: Any, path: Path, at: str) -> Problem | None:
    """What to say of something unknown at `path` when a newer Wedgework wrote it; None when none did."""
    maker = newer_maker(value, path)
    if maker is None:
        return None
    words = say("formats.newer", maker=shortened(maker), ours=VERSION)
    return Problem(spell(path, at), "formats.newer", words, say("formats.newer.way-out"))


def _usual(finding: Finding) -> dict[str, str]:
    return {"found": found_phrase(finding.value), "wanted": wanted_phrase(finding.schema)}


def _key(finding: Finding) -> str:
    return shortened(str(keys_of(finding.path)[-1]))


def _about_unknown_key(finding: Finding) -> dict[str, str]:
    known = list(finding.schema["properties"])
    free = [key for key in known if key not in finding.value]
    near = difflib.get_close_matches(_key(finding), free, 1)
    hint = say("formats.did-you-mean", key=near[0]) if near else say("formats.take-it-out")
    return {"key": _key(finding), "known": listed(known), "hint": hint}


def _about_key_count(finding: Finding) -> dict[str, str]:
    schema = finding.schema
    if "maxProperties" in schema:
        found, most = len(finding.value), schema["maxProperties"]
        return {"found": say_n("formats.found-keys", found), "wanted": say_n("formats.wanted.at-most-keys", most)}
    required = schema["required"]
    optional = [key for key in schema["properties"] if key not in required]
    wanted = say("formats.wanted.at-least-one-of", keys=listed(required), some=listed(optional))
    return {"found": found_phrase(finding.value), "wanted": wanted}


def _about_choice(finding: Finding) -> dict[str, str]:
    options = [say("formats.keys", keys=listed(each["required"])) for each in finding.schema["oneOf"] if each["type"] == "object"]
    return {"found": found_phrase(finding.value), "wanted": either(options)}


_WORDS = {
    "missing-key": lambda f: {"key": _key(f), "wanted": wanted_phrase(f.schema)},
    "unknown-key": _about_unknown_key,
    "key-twice": lambda f: {"key": _key(f)},
    "key-count": _about_key_count,
    "choose-one": _about_choice,
}


def shortened(text: str) -> str:
    return text if len(text) <= _LONGEST_SHOWN else text[:_LONGEST_SHOWN] + "..."


def listed(parts: Iterable[str]) -> str:
    return ", ".join(parts)


def either(parts: list[str]) -> str:
    """a, b or c."""
    if len(parts) == 1:
        return parts[0]
    return say("formats.either", most=", ".join(parts[:-1]), last=parts[-1])


def found_phrase(value: Any) -> str:
    """What stands in the file, short enough for a sentence."""
    if isinstance(value, str):
        return json.dumps(shortened(value), ensure_ascii=False) + (
            say("formats.found-characters", n=len(value)) if len(value) > _LONGEST_SHOWN else ""
        )
    if isinstance(value, UnreadableNumber):
        return shortened(value.text)
    if isinstance(value, dict):
        return (
            say("formats.found-object", keys=listed(map(shortened, list(value)[:_MOST_KEYS])))
            if value
            else say("formats.found-empty-object")
        )
    if isinstance(value, list):
        return say_n("formats.found-list", len(value))
    if isinstance(value, bool) or value is None:
        return {True: "true", False: "false", None: "null"}[value]
    return decimal_text(value)


def wanted_phrase(schema: Schema) -> str:
    """What may stand there, from the schema alone."""
    if "oneOf" in schema:
        return either([wanted_phrase(each) for each in schema["oneOf"]])
    if "const" in schema or "enum" in schema:
        allowed = [schema["const"]] if "const" in schema else schema["enum"]
        return either([json.dumps(each, ensure_ascii=False) for each in allowed])
    if schema["type"] == "object":
        required = schema.get("required")
        return say("formats.wanted.object-with", keys=listed(required)) if required else say("formats.wanted.object")
    if "title" in schema:
        return str(schema["title"])
    if schema["type"] in ("integer", "number"):
        kind = "whole" if schema["type"] == "integer" else "number"
        if "exclusiveMinimum" in schema:
            least, most = _plain(schema["exclusiveMinimum"]), _plain(schema["maximum"])
            return say("formats.wanted.number-above", least=least, most=most)
        return say(f"formats.wanted.{kind}", least=_plain(schema["minimum"]), most=_plain(schema["maximum"]))
    if schema["type"] == "string":
        return _span("text", schema.get("minLength", 0), schema["maxLength"])
    return _span("list", schema.get("minItems", 0), schema["maxItems"])


def _span(what: str, least: int, most: int) -> str:
    if least == most:
        return say(f"formats.wanted.{what}-of", n=most)
    return say(f"formats.wanted.{what}-from" if least else f"formats.wanted.{what}", least=least, most=most)


def _plain(bound: int | float) -> str:
    return decimal_text(bound if isinstance(bound, int) else Fraction(repr(bound)))
