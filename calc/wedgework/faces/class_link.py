"""A class in one link: ``c1.`` and the class packed with what its links hold, not with the links, which are packed already.

    make_class_link(Class("Guild evening", "", (ClassEntry("w1.q1ZK...", "Swatch"),)))     # 'c1.q1YqUb...'

Inside stand ``t`` title, ``x`` text, ``v`` the version of Wedgework that made it, and ``e``, a list: of each entry ``t``, ``x``
and ``l``, the object inside its link, or the link itself as text where this copy cannot unpack it. What is empty is left out.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from wedgework.faces.fragment import is_version, packed, refuse, unpacked
from wedgework.faces.link import KIND as LINK
from wedgework.faces.link import checked_link, unpacked_link
from wedgework.formats import Class, ClassEntry, read_class_value
from wedgework.formats.newer import is_newer
from wedgework.formats.text import KeysTwice
from wedgework.problems import Refused
from wedgework.version import VERSION

__all__ = ["KIND", "OpenedClass", "make_class_link", "read_class_link"]

KIND = "c"
_KEYS = {"t", "x", "v", "e"}
_ENTRY_KEYS = {"t", "x", "l"}


@dataclass(frozen=True, slots=True)
class OpenedClass:
    found: Class
    newer: bool
    """Made by a newer Wedgework than this one."""


def make_class_link(found: Class) -> str:
    """The fragment for a whole class. Raises Refused when it grows too long."""
    entries = [_there({"t": entry.title, "x": entry.text, "l": _inside(entry)}) for entry in found.entries]
    return packed(_there({"t": found.title, "x": found.text, "e": entries}) | {"v": VERSION}, KIND, "much-class")


def read_class_link(fragment: str) -> OpenedClass:
    """The class in a fragment without its ``#``. Raises Refused: one sentence for what is no whole link, and for a class that
    is not as it should be everything that is wrong, with its place."""
    value = unpacked(fragment, KIND)
    if not isinstance(value, dict) or isinstance(value, KeysTwice) or not is_version(value.get("v")):
        refuse("broken")
    newer = is_newer(value["v"])
    entries = value.get("e", [])
    if not isinstance(entries, list) or not all(_is_object(entry) for entry in entries):
        refuse("broken")
    if not value.keys() <= _KEYS or not all(entry.keys() <= _ENTRY_KEYS for entry in entries):
        refuse("newer" if newer else "broken", version=VERSION)
    whole = {
        "format": "wedgework-class",
        "version": 1,
        "made_by": value["v"],
        **_named(value),
        "entries": [{**_named(entry), **({"link": _outside(entry["l"])} if "l" in entry else {})} for entry in entries],
    }
    return OpenedClass(read_class_value(whole), newer)


def _there(value: dict[str, Any]) -> dict[str, Any]:
    return {key: each for key, each in value.items() if each}


def _is_object(value: object) -> bool:
    return isinstance(value, dict) and not isinstance(value, KeysTwice)


def _named(value: dict[str, Any]) -> dict[str, Any]:
    return {name: value[key] for key, name in (("t", "title"), ("x", "text")) if key in value}


def _inside(entry: ClassEntry) -> dict[str, Any] | str:
    try:
        return unpacked_link(entry.link)
    except Refused:
        return entry.link


def _outside(link: Any) -> Any:
    """The link of an object; what is none is left for the reader of the class to judge."""
    return packed(checked_link(link), LINK) if isinstance(link, dict) else link
