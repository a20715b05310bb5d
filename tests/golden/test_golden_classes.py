"""Links and files of classes that were made once are opened forever, and say the same."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from goldens import Goldens
from wedgework.faces.class_link import make_class_link, read_class_link
from wedgework.faces.link import make_link, read_link
from wedgework.formats import Class, ClassEntry, class_value, read_class, write_class
from wedgework.version import VERSION

HERE = Path(__file__).parent
FILE = HERE / "links" / "classes.json"
OLD = json.loads(FILE.read_text(encoding="utf-8")) if FILE.exists() else []
EVENING = Class(
    "Guild evening",
    "Open these one after the other.\n\nBring your swatch.",
    (
        ClassEntry(make_link("gauge", {"stitches": "41", "rows": "61"}), "First: your swatch", "Type your own figures.\nTwice."),
        ClassEntry(
            make_link("panel-plan", {"title": "One diamond", "layout": "diamond-in-corners"}, "0a1b2c"), "Then: a diamond"
        ),
        ClassEntry("w2.AAAA", "", "From a later version."),
    ),
)


def inside(found: Class) -> list[object]:
    """With links unpacked: one build of deflate packs otherwise than the next."""
    entries = [(one.title, one.text, one.link if one.link.startswith("w2") else read_link(one.link)) for one in found.entries]
    return [found.title, found.text, entries]


@pytest.mark.parametrize("old", OLD, ids=lambda old: old["fragment"][:16])
def test_an_old_link_opens_as_it_did(old: dict) -> None:
    assert inside(read_class_link(old["fragment"]).found) == inside(read_class(json.dumps(old["class"])))


def test_a_link_is_kept(golden: Goldens) -> None:
    """The file is only added to: WEDGEWORK_ACCEPT=1 makes its first link."""
    if golden.accept and not OLD:
        OLD.append({"fragment": make_class_link(EVENING), "class": class_value(EVENING)})
        FILE.write_text(json.dumps(OLD, ensure_ascii=False, indent=1) + "\n", encoding="utf-8", newline="\n")
    assert OLD, "WEDGEWORK_ACCEPT=1 adds a link of today"


def test_a_file_is_written_as_it_was_read(golden: Goldens) -> None:
    path = HERE / "formats" / "guild-evening.json"
    if golden.accept and not path.exists():
        path.write_text(write_class(EVENING), encoding="utf-8", newline="\n")
    text = path.read_text(encoding="utf-8")
    found = read_class(text)
    assert write_class(found).replace(f'"made_by": "{VERSION}"', '"made_by": "0.1.0"') == text
    assert [entry.title for entry in found.entries] == ["First: your swatch", "Then: a diamond", ""]
