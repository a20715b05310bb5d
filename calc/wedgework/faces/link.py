"""A link in which the whole input lives: what follows the ``#`` of a page's address.

    make_link("gauge", {"stitches": "38"})     # 'w1.q1ZKVrJSSk8sTU9V0lHKVLKqViouySxJzkgtBoobWyjV6iiVAVkGekCoVAsA'
    read_link(fragment)                        # Opened(slug="gauge", inputs={"stitches": "38"}, ...)

``w1.`` and then, in base64url without padding, raw deflate of canonical JSON: ``c`` the calculator, ``i`` the inputs as
typed where they differ from the defaults, ``v`` the version of Wedgework that made it, and for a plan ``d``, the digest
of its steps. A link is a stranger's text: it is measured before it is unpacked, and unpacked before it is read. Links
are compared unpacked, since one build of deflate packs otherwise than the next.
"""

from __future__ import annotations

import base64
import re
import zlib
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, NoReturn

from wedgework.catalogue import calculator
from wedgework.formats import canonical
from wedgework.formats.brief import brief_value
from wedgework.formats.design import Design
from wedgework.formats.newer import is_newer
from wedgework.formats.text import KeysTwice, parse
from wedgework.problems import Problem, Refused
from wedgework.say import say
from wedgework.version import VERSION

__all__ = ["BOARD", "MOST_BYTES", "MOST_CHARACTERS", "Opened", "make_design_link", "make_link", "read_link", "unknown_problem"]

BOARD = "board"
"""The layout board's links hold a whole design file instead of fields; it stands where others name their calculator."""

MOST_CHARACTERS = 4_096
"""Of a fragment; some programs that pass addresses on cut them not far above."""
MOST_BYTES = 32_768
"""Of the JSON inside: a few kilobytes can be packed so that they unpack to gigabytes."""

_KEYS = {"c", "i", "v", "d"}
_FRAGMENT = re.compile(r"w([0-9]{1,4})\.([A-Za-z0-9_-]*)")
_NAME = re.compile(r"[a-z][a-z0-9_]{0,39}")
_VERSION = re.compile(r"[0-9]{1,4}(\.[0-9]{1,4}){1,3}[0-9a-z.+-]{0,20}")
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
        _refuse("fields", names=_named(strange))
    value: dict[str, Any] = {
        "c": slug,
        "i": {name: text for name, text in inputs.items() if text != defaults[name]},
        "v": VERSION,
    }
    if digest:
        value["d"] = digest
    return _packed(value)


def make_design_link(design: Design) -> str:
    """The fragment for a whole design, opened by the layout board. Raises Refused when it grows too long."""
    return _packed({"c": BOARD, "i": {"design": canonical(brief_value(design))}, "v": VERSION})


def _packed(value: dict[str, Any]) -> str:
    try:
        data = canonical(value).encode()
    except UnicodeEncodeError:  # half a character, as a program may pass it on
        _refuse("broken")
    packer = zlib.compressobj(9, zlib.DEFLATED, -15)
    packed = packer.compress(data) + packer.flush()
    fragment = "w1." + base64.urlsafe_b64encode(packed).decode().rstrip("=")
    if len(fragment) > MOST_CHARACTERS or len(data) > MOST_BYTES:
        _refuse("much", most=MOST_CHARACTERS)
    return fragment


def read_link(fragment: str) -> Opened:
    """What the fragment says, without a ``#``. Raises Refused with one sentence for anything that is no whole link."""
    if len(fragment) > MOST_CHARACTERS:
        _refuse("long", most=MOST_CHARACTERS)
    match = _FRAGMENT.fullmatch(fragment)
    if match is None:
        _refuse("broken")
    if match[1] != "1":
        _refuse("newer" if int(match[1]) > 1 else "broken", version=VERSION)
    value = _value(_unpacked(match[2]))
    made_by = value["v"]
    newer = is_newer(made_by)
    found = calculator(value["c"])
    if value["c"] == BOARD and value.keys() <= _KEYS and value["i"].keys() == {"design"}:
        return Opened(BOARD, value["i"], made_by, newer)
    if found is None or not value.keys() <= _KEYS:
        _refuse("newer" if newer else "calculator" if found is None else "broken", version=VERSION)
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


def _unpacked(packed: str) -> str:
    try:
        data = base64.b64decode(packed + "=" * (-len(packed) % 4), altchars="-_", validate=True)
        unpacker = zlib.decompressobj(-15)
        unpacked = unpacker.decompress(data, MOST_BYTES + 1)
        if len(unpacked) > MOST_BYTES or not unpacker.eof or unpacker.unused_data or unpacker.unconsumed_tail:
            _refuse("broken")
        return unpacked.decode()
    except (zlib.error, UnicodeDecodeError, ValueError) as error:
        if isinstance(error, Refused):
            raise
        _refuse("broken")


def _value(text: str) -> dict[str, Any]:
    """The object inside, each known key of its kind; unknown keys are left for the caller to judge."""
    try:
        value = parse(text, MOST_BYTES)
    except Refused:
        _refuse("broken")
    if not isinstance(value, dict) or not isinstance(value.get("i"), dict):
        _refuse("broken")
    inputs = value["i"]
    whole = (
        not isinstance(value, KeysTwice)
        and not isinstance(inputs, KeysTwice)
        and isinstance(value.get("c"), str)
        and isinstance(value.get("v"), str)
        and _VERSION.fullmatch(value["v"])
        and isinstance(value.get("d", ""), str)
        and _DIGEST.fullmatch(value.get("d", "0"))
        and all(isinstance(text, str) for text in inputs.values())
    )
    if not whole:
        _refuse("broken")
    return value


def _named(names: Mapping[str, str] | list[str] | tuple[str, ...]) -> str:
    """Names of fields for a sentence; what could be no name is a stranger's text and only counted as one."""
    shown = [name if _NAME.fullmatch(name) else "?" for name in names]
    return ", ".join(dict.fromkeys(shown[:10])) + (", \u2026" if len(shown) > 10 else "")


def _refuse(what: str, **values: object) -> NoReturn:
    code = f"faces.link-{what}"
    raise Refused([Problem("", code, say(code, **values), say(f"{code}.way-out", **values))])
