"""What the page of a class asks: sheets in which text stays text, links out of what was pasted, codes of our own addresses."""

from __future__ import annotations

import json
import re
from typing import Any

import pytest

from pieces import lopsided
from wedgework.board import surface
from wedgework.catalogue import calculator
from wedgework.draw.qr import MOST_BYTES
from wedgework.faces.about import about
from wedgework.faces.link import make_design_link, make_link, read_link
from wedgework.faces.wire import answer

HOSTILE = "<img src=x onerror=alert(1)>\"'</script><script>alert(2)</script>"
GAUGE = make_link("gauge", {"stitches": "41"})
PIECE = make_link("panel-plan", {"title": HOSTILE, "size_in": "counts", "needles": "40", "rows": "60"})
ADDRESS = f"https://guild.example/pages/plan/#{PIECE}"


def told(ask: str, **asked: str) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(answer(json.dumps({"ask": ask, **asked})))
    return found


def a_class(*entries: dict[str, str], **more: str) -> str:
    return json.dumps({"format": "wedgework-class", "version": 1, **more, "entries": entries})


def test_a_link_is_told_by_title_and_size_before_it_is_opened() -> None:
    title, size = told("open", fragment=PIECE)["about"]
    assert title == f"{HOSTILE[:60]}\u2026"
    assert size == "29 cm (11 1/4 in) wide and 32 cm (12 3/8 in) high: 40 stitches, 60 rows."
    assert told("open", fragment=GAUGE)["about"] == ["Stitches: 41"]
    assert told("open", fragment="w1.")["about"] == []


def test_a_drawing_is_told_by_title_and_size() -> None:
    found = about(read_link(make_design_link(surface(lopsided()).design)))
    assert (found.what, found.page) == ("Layout board", "board/")
    assert "stitches" in found.lines[0]


def test_a_piece_that_cannot_be_read_is_told_by_its_title() -> None:
    found = about(read_link(make_link("stripes", {"title": "Broken", "needles": "many", "size_in": "counts"})))
    assert (found.title, found.lines) == ("Broken", ())


def test_many_fields_and_long_texts_are_cut() -> None:
    defaults = calculator("time").defaults
    lines = about(read_link(make_link("time", dict.fromkeys(defaults, "1" * 90)))).lines
    assert len(lines) == 7
    assert lines[-1] == f"and {len(defaults) - 6} more fields"
    assert len(max(lines, key=len)) < 150


def test_a_sheet_shows_text_and_leads_only_to_our_pages() -> None:
    entries = [{"title": HOSTILE, "text": HOSTILE, "link": link} for link in (GAUGE, PIECE, "w2.AAAA", "w1.AAAA")]
    found = told("class-sheet", **{"class": a_class(*entries, title=HOSTILE, text=f"{HOSTILE}\n\nhttps://elsewhere.invalid/")})
    assert found["problems"] == []
    assert re.findall(r"<(?:img|script)", found["html"]) == []
    assert re.findall(r'href="([^"]*)"', found["html"]) == [f"../calculators/gauge/#{GAUGE}", f"../plan/#{PIECE}"]
    assert "made by a newer Wedgework" in found["html"]
    assert "This link is broken" in found["html"]
    assert "https://elsewhere.invalid/" in found["html"], "as words"


def test_a_picture_is_drawn_where_there_is_a_design() -> None:
    assert "<svg" in told("class-picture", link=PIECE, prefix="entry-2")["html"]
    assert told("class-picture", link=GAUGE, prefix="entry-1")["html"] == ""
    assert told("class-picture", link=make_link("panel-plan", {"needles": "x", "size_in": "counts"}), prefix="a")["html"] == ""
    assert told("class-picture", link="w1.", prefix="a")["problems"]
    assert "answer" in told("class-picture", link=PIECE, prefix='a"><script>'), "a misshapen question"


def test_links_are_found_in_whatever_is_pasted_and_where_they_led_does_not_matter() -> None:
    pasted = f"Look: https://elsewhere.invalid/evil?x#{PIECE}\n{GAUGE} and again #{GAUGE} or javascript:alert(1)"
    entries = told("class-entries", text=pasted)["entries"]
    assert [entry["link"] for entry in entries] == [PIECE, GAUGE]
    assert entries[1]["title"] == "Gauge"
    assert told("class-entries", text="https://elsewhere.invalid/")["problems"][0]["code"] == "faces.class-no-link"
    assert told("class-entries", text="#w1.AAAA")["problems"][0]["code"] == "faces.link-broken"
    many = " ".join(make_link("gauge", {"stitches": str(n)}) for n in range(30))
    assert told("class-entries", text=many)["problems"][0]["code"] == "faces.class-full"


def test_a_class_there_and_back_by_file_and_by_link() -> None:
    text = a_class({"title": "One", "text": "", "link": GAUGE}, title="Evening", text="")
    written = told("class-write", **{"class": text})["text"]
    assert told("class-read", text=written)["class"] == json.loads(text)
    fragment = told("class-link", **{"class": text})["fragment"]
    assert told("class-open", fragment=fragment)["class"] == json.loads(text)
    assert told("class-read", text='{"format": "wedgework-class"}')["problems"][0]["where"] == "version"


def test_a_code_is_made_of_our_own_addresses_only() -> None:
    found = told("code", address=ADDRESS, title=HOSTILE)
    assert "<svg" in found["svg"]
    assert "<img" not in found["svg"]
    assert found["characters"] == len(ADDRESS)
    for address in (
        "https://elsewhere.invalid/",
        "javascript:alert(1)#w1.AAAA",
        f"https://x/ #{GAUGE}",
        f"https://x/#{GAUGE}<b>",
        "",
    ):
        assert told("code", address=address, title="")["problems"][0]["code"] == "faces.code-foreign"


def test_a_link_too_long_for_the_wall_says_how_long_it_is() -> None:
    long = f"https://guild.example/#w1.{'A' * MOST_BYTES}"
    (problem,) = told("code", address=long, title="")["problems"]
    assert problem["code"] == "faces.code-long"
    assert f"{len(long)} characters" in problem["sentence"]
    assert problem["way_out"]


@pytest.mark.parametrize("ask", ["class-link", "class-write", "class-sheet"])
def test_what_is_no_class_is_refused(ask: str) -> None:
    for text in ("7", "{}", "[" * 15_000, a_class({"link": "https://elsewhere.invalid/"})):
        assert told(ask, **{"class": text})["problems"]
