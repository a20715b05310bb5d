"""A class in a link: what goes in comes out, a stranger's text is refused, and it is shorter than the links in it."""

from __future__ import annotations

import base64
import json
import zlib
from typing import Any

import pytest

from wedgework.faces.class_link import make_class_link, read_class_link
from wedgework.faces.fragment import MOST_BYTES, MOST_CHARACTERS
from wedgework.faces.link import make_link, read_link
from wedgework.formats import Class, ClassEntry
from wedgework.problems import Refused

LINKS = [
    make_link("gauge", {"stitches": "41"}),
    make_link("panel-plan", {"title": "One diamond", "needles": "40", "size_in": "counts"}),
    make_link("panel-plan", {"title": "Blanket"}, digest="0a1b"),
]
EVENING = Class(
    "Guild evening", "Bring yarn.\n\nAnd tea.", tuple(ClassEntry(link, f"Part {n}", "") for n, link in enumerate(LINKS))
)


def packed(value: Any) -> str:
    data = value if isinstance(value, bytes) else json.dumps(value).encode()
    packer = zlib.compressobj(9, zlib.DEFLATED, -15)
    return "c1." + base64.urlsafe_b64encode(packer.compress(data) + packer.flush()).decode().rstrip("=")


def codes(fragment: str) -> list[str]:
    with pytest.raises(Refused) as refused:
        read_class_link(fragment)
    assert all(problem.sentence and problem.way_out for problem in refused.value.problems)
    return [problem.code for problem in refused.value.problems]


def test_a_class_goes_through_with_what_its_links_hold() -> None:
    opened = read_class_link(make_class_link(EVENING))
    assert (opened.found.title, opened.found.text, opened.newer) == (EVENING.title, EVENING.text, False)
    assert [entry.title for entry in opened.found.entries] == ["Part 0", "Part 1", "Part 2"]
    # Compared unpacked: another build of deflate packs otherwise.
    assert [read_link(entry.link) for entry in opened.found.entries] == [read_link(link) for link in LINKS]


def test_it_is_shorter_than_the_links_in_it() -> None:
    many = Class("", "", tuple(ClassEntry(make_link("panel-plan", {"title": f"Square {n}"})) for n in range(12)))
    assert len(make_class_link(many)) < sum(len(entry.link) for entry in many.entries) / 2


def test_a_link_that_this_copy_cannot_unpack_is_kept_as_it_is() -> None:
    later = Class("", "", (ClassEntry("w2.AAAA", "From tomorrow"),))
    assert read_class_link(make_class_link(later)).found == later


def test_too_much_is_no_link() -> None:
    noise = "".join(chr(0x4E00 + (i * 7919) % 20000) for i in range(4000))
    with pytest.raises(Refused) as refused:
        make_class_link(Class("", noise))
    (problem,) = refused.value.problems
    assert problem.code == "faces.link-much-class"
    assert "file" in problem.way_out


GOOD = {"v": "0.1.0", "t": "x", "e": [{"l": {"c": "gauge", "i": {}, "v": "0.1.0"}}]}


@pytest.mark.parametrize(
    "fragment",
    [
        "",
        "c1.",
        "c0.AAAA",
        LINKS[0],
        "c1.<script>",
        packed(b"[" * 15_000),
        packed(b"\xff\xfe"),
        packed([]),
        packed({}),
        packed({**GOOD, "v": "<b>0.1.0</b>"}),
        packed({**GOOD, "href": "https://elsewhere.invalid"}),
        packed({**GOOD, "e": {}}),
        packed({**GOOD, "e": [7]}),
        packed({**GOOD, "e": [{"href": "https://elsewhere.invalid"}]}),
        packed({**GOOD, "e": [{"l": {"c": 7}}]}),
        packed({**GOOD, "e": [{"l": {"c": "gauge", "i": {"rows": 7}, "v": "0.1.0"}}]}),
        packed(b'{"v":"0.1.0","t":"a","t":"b"}'),
        packed(GOOD)[:-4],
        packed(GOOD) + "AAAA",
        packed(b" " * (MOST_BYTES + 1)),
    ],
)
def test_a_broken_link_of_a_class_is_one_sentence(fragment: str) -> None:
    assert codes(fragment) == ["faces.link-broken"]


def test_what_is_too_long_or_newer_says_so() -> None:
    assert codes("c1." + "A" * MOST_CHARACTERS) == ["faces.link-long"]
    assert codes("c2.AAAA") == ["faces.link-newer"]
    assert codes(packed({**GOOD, "v": "99.0.0", "z": 1})) == ["faces.link-newer"]
    assert read_class_link(packed({**GOOD, "v": "99.0.0"})).newer


def test_a_class_that_is_not_as_it_should_be_is_told_with_every_place() -> None:
    wrong = {**GOOD, "t": 7, "e": [{"l": "https://elsewhere.invalid/"}, {"x": "no link"}, GOOD["e"][0]]}
    with pytest.raises(Refused) as refused:
        read_class_link(packed(wrong))
    assert [problem.where for problem in refused.value.problems] == ["title", "entries[0].link", "entries[1].link"]
