"""A class: made on a device, kept there, shared as a link, a code or a file, opened by others, and never more than text."""

from __future__ import annotations

import base64
import json
import re
import zlib
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page

from scanning import scanned
from visiting import settled
from wedgework.faces.class_link import make_class_link, read_class_link
from wedgework.faces.link import make_link, read_link
from wedgework.formats import Class, ClassEntry, read_class, read_project, write_class

HOSTILE = "<img src=x onerror=alert(1)>\"'</script><script>alert(2)</script>"
GAUGE = make_link("gauge", {"stitches": "41"})
SMALL = make_link("panel-plan", {"title": "Small", "size_in": "counts", "needles": "40", "rows": "60"})
READY = "() => document.querySelector('[data-class]')?.dataset.ready === ''"
DRAWN = ".ww-class-sheet[data-drawn]"


def opened(one: Any, address: str) -> Page:
    page: Page = one.open(address)
    page.wait_for_function(READY)
    return page


def titles(page: Page, count: int) -> list[str]:
    """Of the entries that are being written, once there are so many."""
    page.wait_for_function("n => document.querySelectorAll('.ww-class-entries input').length === n", arg=count)
    found: list[str] = page.locator(".ww-class-entries input").evaluate_all("all => all.map(one => one.value)")
    return found


def drawn(page: Page, words: str) -> str:
    """The sheet, once these words are on it."""
    page.wait_for_function("words => document.querySelector('.ww-class-sheet').textContent.includes(words)", arg=words)
    page.wait_for_selector(DRAWN)
    return page.inner_text(".ww-class-sheet")


def test_a_class_is_made_kept_shared_and_opened_elsewhere(served: str, visitor) -> None:
    with visitor(permissions=["clipboard-read", "clipboard-write"]) as teacher, visitor() as learner:
        plan = teacher.open(f"{served}plan/", live=True)
        plan.fill("[name=title]", "Harvest")
        settled(plan)
        plan.click("text=Put into a class")
        plan.wait_for_selector(".ww-tools .ww-notes a")
        assert "Put into: My class" in plan.inner_text(".ww-tools .ww-notes")
        plan.click(".ww-tools .ww-notes a")
        plan.wait_for_function(READY)
        page = plan
        assert titles(page, 1) == ["Harvest"]
        page.get_by_label("Title").first.fill(f"Evening {HOSTILE}")
        page.get_by_label("What you say first").fill("One.\n\nTwo.")
        page.get_by_label("A link").fill(f"https://elsewhere.invalid/#{GAUGE} and #{SMALL}")
        page.click("text=Add the link")
        page.wait_for_function("() => document.querySelectorAll('.ww-class-entries input').length === 3")
        page.get_by_role("button", name="Entry 2 up", exact=True).click()
        page.get_by_role("button", name="Take out entry 2", exact=True).click()
        assert titles(page, 2) == ["Gauge", "Small"]
        assert "Stitches: 41" in drawn(page, "40 stitches, 60 rows")
        assert page.query_selector(".ww-class img") is None
        # Over a reload: it is kept.
        page.wait_for_timeout(400)
        page.reload()
        page.wait_for_function(READY)
        assert titles(page, 2) == ["Gauge", "Small"]
        page.click("text=Copy link")
        page.wait_for_function("() => /link is copied/.test(document.querySelector('.ww-class .ww-notes').textContent)")
        assert "whole class" in page.inner_text(".ww-class .ww-notes")
        link = page.evaluate("navigator.clipboard.readText()")
        found = read_class_link(link.partition("#")[2]).found
        assert (found.title, found.text) == (f"Evening {HOSTILE}", "One.\n\nTwo.")

        other = opened(learner, link)
        assert "Nothing of it is kept" in other.inner_text(".ww-class .ww-notes")
        assert HOSTILE in drawn(other, "40 stitches, 60 rows")
        assert other.locator(".ww-class-sheet .ww-entry-picture svg").count() == 1
        assert other.query_selector(".ww-class img, .ww-class-sheet script") is None
        with other.expect_navigation():
            other.click("text=Open: Panel plan")
        assert "Opened from a link" in other.wait_for_selector(".ww-notes:has-text('Opened')").inner_text()
        assert other.input_value("[name=title]") == "Small"
        # Kept only when that is wanted; opened again, it is known.
        other = opened(learner, link)
        other.click("text=Keep it on this device")
        other.wait_for_selector(".ww-class-editor")
        again = opened(learner, f"{served}class/")
        assert titles(again, 2) == ["Gauge", "Small"]
        again.goto(link)
        again.reload()
        again.wait_for_function(READY)
        again.click("text=Keep it on this device")
        again.wait_for_selector("text=It was kept on this device already")


def test_the_code_of_a_class_is_read_by_a_decoder(served: str, visitor) -> None:
    found = Class("Guild evening", "Bring yarn.", (ClassEntry(GAUGE, "Swatch"), ClassEntry(SMALL, "Small")))
    with visitor(viewport={"width": 768, "height": 1024}) as one:
        page = opened(one, f"{served}class/#{make_class_link(found)}")
        page.click("text=Show as code")
        page.wait_for_selector(".ww-code[open] svg")
        (code,) = scanned(page, ".ww-code")
        assert code.text.startswith(f"{served}class/#c1.")
        assert read_class_link(code.text.partition("#")[2]).found.title == found.title
        page.keyboard.press("Escape")
        page.evaluate("() => { window.print = () => { window.printed = true; }; }")
        page.click("text=Print the sheet")
        page.wait_for_function("() => window.printed")
        page.emulate_media(media="print")
        (code,) = scanned(page, ".ww-class-paper")
        assert code.text.startswith(f"{served}class/#c1.")
        assert not page.locator(".ww-class-tools").is_visible()
        assert page.locator(".ww-sheet h3").first.is_visible()


def packed(value: Any) -> str:
    packer = zlib.compressobj(9, zlib.DEFLATED, -15)
    data = value if isinstance(value, bytes) else json.dumps(value).encode()
    return "c1." + base64.urlsafe_b64encode(packer.compress(data) + packer.flush()).decode().rstrip("=")


ALERT = {
    "v": "0.1.0",
    "t": HOSTILE,
    "x": HOSTILE,
    "e": [{"t": HOSTILE, "x": HOSTILE, "l": {"c": "gauge", "i": {}, "v": "0.1.0"}}],
}
BROKEN = {
    "c1.AAAA": "This link is broken",
    "c1." + "A" * 5000: "longer than 4096 characters",
    "c2.AAAA": "made by a newer Wedgework",
    "c1.<script>alert(1)</script>": "This link is broken",
    packed(b"[" * 15_000): "This link is broken",
    packed(b" " * 40_000): "This link is broken",
    packed({"v": "0.1.0", "e": [{"l": "https://elsewhere.invalid/"}]}): "entries[0].link",
    packed({"v": "0.1.0", "e": [{"l": "javascript:alert(1)"}] * 3}): "entries[2].link",
    packed({"v": "0.1.0", "e": [{"l": GAUGE}] * 25}): "entries",
    packed({"v": "0.1.0", "t": "x" * 500}): "title",
}


@pytest.mark.fault
def test_a_hostile_class_is_a_sentence_or_text(served: str, visitor, record_property) -> None:
    record_property("faults", len(BROKEN) + 1)
    with visitor() as one:
        page = opened(one, f"{served}class/#{packed(ALERT)}")
        assert HOSTILE in drawn(page, "alert(2)")
        assert page.query_selector(".ww-class-sheet :is(img, script)") is None
        hrefs = page.locator(".ww-class-sheet a").evaluate_all("all => all.map(one => one.href)")
        assert [href.partition("#")[0] for href in hrefs] == [f"{served}calculators/gauge/"]
        page.click("text=Keep it on this device")
        page.wait_for_selector(".ww-class-editor")
        for fragment, says in BROKEN.items():
            page.evaluate("fragment => { location.hash = fragment; }", fragment)
            page.wait_for_function("says => document.querySelector('.ww-class .ww-notes').textContent.includes(says)", arg=says)
            # What is being written stays as it is.
            assert page.locator(".ww-class-editor input").first.input_value() == HOSTILE


@pytest.mark.fault
def test_a_link_of_another_kind_is_shown_the_way(served: str, visitor) -> None:
    with visitor() as one:
        page = opened(one, f"{served}class/#{GAUGE}")
        page.wait_for_selector(".ww-class .ww-notes a")
        assert page.get_attribute(".ww-class .ww-notes a", "href") == f"{served}calculators/gauge/#{GAUGE}"
        gauge = one.open(f"{served}calculators/gauge/#{packed(ALERT)}", live=True)
        gauge.click(".ww-notes:not(:empty) a")
        gauge.wait_for_function(READY)
        assert HOSTILE in drawn(gauge, "alert(2)")


def test_a_class_is_saved_and_opened_as_a_file_and_goes_into_the_project(served: str, visitor, tmp_path: Path) -> None:
    found = Class("Second evening", "Tea.", (ClassEntry(GAUGE, "Swatch"),))
    with visitor() as one:
        page = opened(one, f"{served}class/")
        assert "Guild evening" in page.inner_text(".ww-class-example")
        page.set_input_files(
            ".ww-class > input[type=file]",
            {"name": "a.json", "mimeType": "application/json", "buffer": b'{"format": "wedgework-class"}'},
        )
        page.wait_for_selector(".ww-class .ww-notes:has-text('version')")
        page.set_input_files(
            ".ww-class > input[type=file]",
            {"name": "a.json", "mimeType": "application/json", "buffer": write_class(found).encode()},
        )
        page.click("text=Keep it on this device")
        with page.expect_download() as waiting:
            page.click("text=Save as a file")
        assert waiting.value.suggested_filename == "second-evening.json"
        assert read_class(Path(waiting.value.path()).read_text(encoding="utf-8")) == found
        keep = one.open(f"{served}reference/saving/")
        keep.wait_for_selector("text=1 class.")
        with keep.expect_download() as waiting:
            keep.click("text=Save all to a file")
        saved = Path(waiting.value.path()).read_text(encoding="utf-8")
        assert read_project(saved).classes == (found,)
        # Put back unasked over nothing: here it was changed, so it stays as it is.
        page.get_by_label("What you say first").fill("Coffee.")
        page.wait_for_timeout(500)
        keep.set_input_files(
            "[data-keep] input[type=file]", {"name": "p.json", "mimeType": "application/json", "buffer": saved.encode()}
        )
        line = keep.locator(".ww-keep-things li", has_text="Second evening")
        line.wait_for()
        assert "otherwise than here" in line.inner_text()
        assert not line.locator("input").is_checked()
    with visitor() as other:
        keep = other.open(f"{served}reference/saving/")
        keep.set_input_files(
            "[data-keep] input[type=file]", {"name": "p.json", "mimeType": "application/json", "buffer": saved.encode()}
        )
        keep.click("text=Put what is ticked on this device")
        keep.wait_for_selector("text=1 class.")
        page = opened(other, f"{served}class/")
        page.click("text=Second evening")
        assert titles(page, 1) == ["Swatch"]


def test_what_is_removed_can_be_put_back_and_what_is_kept_can_be_added(served: str, visitor) -> None:
    with visitor() as one:
        gauge = one.open(f"{served}calculators/gauge/", live=True)
        gauge.fill("[name=stitches]", "39")
        settled(gauge)
        page = opened(one, f"{served}class/")
        gauge.goto(f"{served}reference/words/")
        page.click("text=Begin with the example")
        page.wait_for_selector(".ww-class-editor")
        page.reload()
        page.wait_for_function(READY)
        page.select_option(".ww-class-editor select", label="Last typed: Gauge")
        page.click("text=Add it")
        page.wait_for_function("() => document.querySelectorAll('.ww-class-entries input').length === 4")
        drawn(page, "Stitches: 39")
        link = page.locator(".ww-class-sheet [data-link]").last.get_attribute("data-link")
        assert read_link(link).inputs["stitches"] == "39"
        page.click("text=Remove this class")
        page.click("text=Put it back")
        page.wait_for_function("() => document.querySelectorAll('.ww-class-entries input').length === 4")
        assert re.search("Guild evening", drawn(page, "Guild evening"))
