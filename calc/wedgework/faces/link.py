"""A link in which the whole input lives: what follows the ``#`` of a page's address.

    make_link("gauge", {"stitches": "38"})     # 'w1.q1ZKVrJSSk8sTU9V0lHKVLKqViouySxJzkgtBoobWyjV6iiVAVkGekCoVAsA'
    read_link(fragment)                        # Opened(slug="gauge", inputs={"stitches": "38"}, ...)

``w1.`` and then, in base64url without padding, raw deflate of canonical JSON: ``c`` the calculator, ``i`` the inputs as
typed where they differ from the defaults, ``v`` the version of Wedgework that made it, and for a plan ``d``, the digest
of its steps. A link is a stranger's text: it is measured before it is unpacked, and unpacked before it is read. Links
are compared unpacked, since one build of deflate packs otherwise than the next.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from wedgework.catalogue import calculator
from wedgework.faces.fragment import MOST_BYTES, MOST_CHARACTERS, is_version, packed, refuse, unpacked
from wedgework.formats import canonical
from wedgework.formats.brief import brief_value
from wedgework.formats.design import Design
from wedgework.formats.newer import is_newer
from wedgework.formats.text import KeysTwice
from wedgework.problems import Problem
from wedgework.say import say
from wedgework.version import VERSION

__all__ = [
    "BOARD",
    "KIND",
    "MOST_BYTES",
    "MOST_CHARACTERS",
    "Opened",
    "checked_link",
    "make_design_link",
    "make_link",
    "read_link",
    "unknown_problem",
    "unpacked_link",
]

KIND = "w"
"""The letter that the fragment of one calculator or design begins with."""

BOARD = "board"
"""The layout board's links hold a whole design file instead of fields; it stands where others name their calculator."""

_KEYS = {"c", "i", "v", "d"}
_NAME = re.compile(r"[a-z][a-z0-9_]{0,39}")
_DIGEST = re.compile(r"[0-9a-f]{1,64}")


@dataclass(frozen=True, slots=True)
class Opened:
    """What a link says."""

    slug: str
    inputs: dict[str, str]
    """As typed; a field that is not there has its default."""
    made_by: str
    newer: bool
    """Made by a newer Wedgework than this one."""
    unknown: tuple[str, ...] = ()
    """Fields of the link that the calculator does not have; they do not count."""
    digest: str = ""
    """Of the steps that the sender saw; empty where there are none."""


def make_link(slug: str, inputs: Mapping[str, str], digest: str = "") -> str:
    """The fragment for what was typed. Raises Refused when it grows too long, LookupError for a slug that is not there."""
    found = calculator(slug)
    if found is None:
        raise LookupError(slug)
    defaults = found.defaults
    strange = [name for name in inputs if name not in defaults]
    if strange:
        refuse("fields", names=_named(strange))
    value: dict[str, Any] = {
        "c": slug,
        "i": {name: text for name, text in inputs.items() if text != defaults[name]},
        "v": VERSION,
    }
    if digest:
        value["d"] = digest
    return packed(value, KIND)


def make_design_link(design: Design) -> str:
    """The fragment for a whole design, opened by the layout board. Raises Refused when it grows too long."""
    return packed({"c": BOARD, "i": {"design": canonical(brief_value(design))}, "v": VERSION}, KIND)


def read_link(fragment: str) -> Opened:
    """What the fragment says, without a ``#``. Raises Refused with one sentence for anything that is no whole link."""
    value = unpacked_link(fragment)
    made_by = value["v"]
    newer = is_newer(made_by)
    found = calculator(value["c"])
    if value["c"] == BOARD and value.keys() <= _KEYS and value["i"].keys() == {"design"}:
        return Opened(BOARD, value["i"], made_by, newer)
    if found is None or not value.keys() <= _KEYS:
        refuse("newer" if newer else "calculator" if found is None else "broken", version=VERSION)
    names = found.defaults.keys()
    return Opened(
        slug=found.slug,
        inputs={name: text for name, text in value["i"].items() if name in names},
        made_by=made_by,
        newer=newer,
        unknown=tuple(name for name in value["i"] if name not in names),
        digest=value.get("d", ""),
    )


def unknown_problem(opened: Opened) -> Problem:
    """The sentence about fields that do not count."""
    names = _named(opened.unknown)
    return Problem("", "faces.link-fields", say("faces.link-fields", names=names), say("faces.link-fields.way-out"))


def unpacked_link(fragment: str) -> dict[str, Any]:
    """The object inside, each known key of its kind; unknown keys are left for the caller to judge. Raises Refused."""
    return checked_link(unpacked(fragment, KIND))


def checked_link(value: Any) -> dict[str, Any]:
    """The same for an object that came in another way."""
    if not isinstance(value, dict) or not isinstance(value.get("i"), dict):
        refuse("broken")
    inputs = value["i"]
    whole = (
        not isinstance(value, KeysTwice)
        and not isinstance(inputs, KeysTwice)
        and isinstance(value.get("c"), str)
        and is_version(value.get("v"))
        and isinstance(value.get("d", ""), str)
        and _DIGEST.fullmatch(value.get("d", "0"))
        and all(isinstance(text, str) for text in inputs.values())
    )
    if not whole:
        refuse("broken")
    return value


def _named(names: Mapping[str, str] | list[str] | tuple[str, ...]) -> str:
    """Names of fields for a sentence; what could be no name is a stranger's text and only counted as one."""
    shown = [name if _NAME.fullmatch(name) else "?" for name in names]
    return ", ".join(dict.fromkeys(shown[:10])) + (", \u2026" if len(shown) > 10 else "")
