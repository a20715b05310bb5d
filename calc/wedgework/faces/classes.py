"""What the page of a class asks, and every page that shares a link.

    {"ask": "code", "address": "https://...#w1...", "title": "Kites"}   ->  {"svg", "characters", "problems"}
    {"ask": "class-entries", "text": "..."}       ->  {"entries", "problems"}; of every link in what was pasted
    {"ask": "class-open", "fragment": "c1..."}    ->  {"class", "made_by", "newer", "problems"}
    {"ask": "class-link", "class": "{...}"}       ->  {"fragment", "problems"}
    {"ask": "class-read", "text": "..."}          ->  {"class", "problems"}; a file
    {"ask": "class-write", "class": "{...}"}      ->  {"text", "problems"}; a file
    {"ask": "class-sheet", "class": "{...}"}      ->  {"html", "problems"}; the sheet, with room for pictures
    {"ask": "class-picture", "link": "w1...", "prefix": "entry-1"}      ->  {"html", "problems"}

A class goes both ways as the text of a file, or as the object in it; an entry as ``{"title", "text", "link"}``.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from wedgework.draw.qr import MOST_BYTES, qr_svg
from wedgework.faces.about import about
from wedgework.faces.answers import Json, Teller, Told, refusing
from wedgework.faces.class_link import make_class_link, read_class_link
from wedgework.faces.link import read_link
from wedgework.faces.sheet import picture_html, sheet_html
from wedgework.formats import Class, class_value, read_class, write_class
from wedgework.formats.schemas.classes import MOST_ENTRIES
from wedgework.problems import Problem, Refused
from wedgework.say import say

__all__ = ["CLASS_ASKS"]

Asked = dict[str, Any]
MOST_PASTED = 200_000
LONGEST_TITLE = 120
_ADDRESS = re.compile(r"https?://[!-~]+?#[cw][0-9]{1,4}\.[A-Za-z0-9_-]+")
# Behind the sign of an address, or alone.
_LINK = re.compile(r"(?:^|[#\s])(w[0-9]{1,4}\.[A-Za-z0-9_-]+)")
_PREFIX = re.compile(r"[a-z][a-z0-9-]{0,39}")


def _refuse(what: str, where: str = "", **values: object) -> Refused:
    return Refused([Problem(where, f"faces.{what}", say(f"faces.{what}", **values), say(f"faces.{what}.way-out", **values))])


def _code(asked: Asked) -> Told:
    address = asked["address"]
    if len(address) > MOST_BYTES:
        raise _refuse("code-long", found=len(address), most=MOST_BYTES)
    if _ADDRESS.fullmatch(address) is None:
        raise _refuse("code-foreign")
    return {"svg": qr_svg(address, asked["title"][:LONGEST_TITLE], prefix="code"), "characters": len(address)}


def _entries(asked: Asked) -> Told:
    """Only what stands behind the sign of an address is taken; where the address leads does not matter."""
    links = list(dict.fromkeys(_LINK.findall(asked["text"][:MOST_PASTED])))
    if not links:
        raise _refuse("class-no-link")
    if len(links) > MOST_ENTRIES:
        raise _refuse("class-full", most=MOST_ENTRIES)
    entries: list[Json] = []
    problems: list[Problem] = []
    for link in links:
        try:
            what = about(read_link(link))
        except Refused as refused:
            problems += refused.problems
            continue
        entries.append({"title": (what.title or what.what)[:LONGEST_TITLE], "text": "", "link": link})
    if problems:
        raise Refused(problems)
    return {"entries": entries}


def _plain(found: Class) -> Told:
    return {key: each for key, each in class_value(found).items() if key != "made_by"}


def _open(asked: Asked) -> Told:
    opened = read_class_link(asked["fragment"])
    return {"class": _plain(opened.found), "made_by": opened.found.made_by, "newer": opened.newer}


def _link(asked: Asked) -> Told:
    return {"fragment": make_class_link(read_class(asked["class"]))}


def _read(asked: Asked) -> Told:
    return {"class": _plain(read_class(asked["text"]))}


def _write(asked: Asked) -> Told:
    return {"text": write_class(read_class(asked["class"]))}


def _sheet(asked: Asked) -> Told:
    return {"html": sheet_html(read_class(asked["class"]))}


def _picture(asked: Asked) -> Told | None:
    if _PREFIX.fullmatch(asked["prefix"]) is None:
        return None
    return {"html": picture_html(asked["link"], asked["prefix"])}


_CLASS = {"class"}
CLASS_ASKS: Mapping[str, tuple[set[str], set[str], Teller]] = {
    "code": ({"address", "title"}, set(), refusing({"svg": "", "characters": 0}, _code)),
    "class-entries": ({"text"}, set(), refusing({"entries": []}, _entries)),
    "class-open": ({"fragment"}, set(), refusing({"class": None, "made_by": "", "newer": False}, _open)),
    "class-link": (_CLASS, set(), refusing({"fragment": ""}, _link)),
    "class-read": ({"text"}, set(), refusing({"class": None}, _read)),
    "class-write": (_CLASS, set(), refusing({"text": ""}, _write)),
    "class-sheet": (_CLASS, set(), refusing({"html": ""}, _sheet)),
    "class-picture": ({"link", "prefix"}, set(), refusing({"html": ""}, _picture)),
}
"""Keys that must be there, keys that may, and who answers; as `asks` has them."""
