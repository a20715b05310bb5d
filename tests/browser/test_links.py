"""A link opens the same answer elsewhere; a broken, hostile or newer one gives a sentence and the defaults, never a script."""

from __future__ import annotations

import base64
import json
import re
import zlib

import pytest
from playwright.sync_api import Page

from scanning import scanned
from visiting import answer_html, figures, settled
from wedgework.faces.link import make_link, read_link
from wedgework.formats import canonical

HOSTILE = "<img src=x onerror=alert(1)>\"'</script><script>alert(2)</script>"


def noted(page: Page) -> str:
    """What the page says of the link, once it says more than that it is starting."""
    said = ".ww-notes:not(:empty)"
    page.wait_for_function("said => /^(?!.*starting)./s.test(document.querySelector(said)?.textContent ?? '')", arg=said)
    return page.inner_text(said)


def test_a_copied_link_opens_the_same_answer_elsewhere(served: str, visitor) -> None:
    with visitor(permissions=["clipboard-read", "clipboard-write"]) as sender, visitor() as receiver:
        page = sender.open(f"{served}plan/", live=True)
        page.fill("[name=title]", f"Kites {HOSTILE}")
        page.select_option("[name=size_in]", "counts")
        page.fill("[name=needles]", "40")
        page.fill("[name=rows]", "80")
        settled(page)
        page.click("text=Copy link")
        assert "Whoever has the link has everything" in noted(page)
        link = page.evaluate("navigator.clipboard.readText()")
        assert link.startswith(f"{served}plan/#w1.")
        other = receiver.open(link, live=True)
        assert "Opened from a link" in noted(other)
        assert other.input_value("[name=title]") == f"Kites {HOSTILE}"
        assert answer_html(other) == answer_html(page)
        assert other.query_selector("output img, output script") is None
        # What is typed now is no longer the sender's.
        other.fill("[name=title]", "Mine")
        assert other.evaluate("location.hash") == ""


def test_a_field_that_comes_later_takes_what_a_link_holds(served: str, visitor) -> None:
    """One that hangs on a choice, and one that is folded: neither is in the page while it is read."""
    sent = {"bed": "own", "bed_needles": "99", "yarn_1_ball_g": "75 g"}
    with visitor() as one:
        page = one.open(f"{served}plan/#{make_link('panel-plan', sent)}")
        assert "Opened from a link" in noted(page)
        assert page.is_visible("[name=bed_needles]")
        assert {name: page.input_value(f"[name={name}]") for name in sent} == sent


def test_where_copying_is_not_allowed_the_link_is_shown(served: str, visitor) -> None:
    with visitor() as one:
        page = one.open(f"{served}calculators/gauge/", live=True)
        page.evaluate("() => { navigator.clipboard.writeText = () => Promise.reject(new Error('no')); }")
        page.fill("[name=stitches]", "38")
        page.click("text=Copy link")
        page.wait_for_selector(".ww-link")
        assert page.input_value(".ww-link").startswith(f"{served}calculators/gauge/#w1.")


def newer(fields: dict[str, str]) -> str:
    """A link as a later version might make it, packed in the same way."""
    packer = zlib.compressobj(9, zlib.DEFLATED, -15)
    data = canonical({"c": "gauge", "i": fields, "v": "99.1.0"}).encode()
    return "w1." + base64.urlsafe_b64encode(packer.compress(data) + packer.flush()).decode().rstrip("=")


BROKEN = {
    "w1.": "This link is broken",
    "w1.AAAA": "This link is broken",
    "w1." + "A" * 5000: "longer than 4096 characters",
    "w2.AAAA": "made by a newer Wedgework",
    "w1.<script>alert(1)</script>": "This link is broken",
    "w1.%3Cimg%20src%3Dx%20onerror%3Dalert(1)%3E": "This link is broken",
    "w1." + "_" * 4000: "This link is broken",
}


@pytest.mark.fault
def test_a_broken_link_gives_a_sentence_and_the_defaults(served: str, visitor) -> None:
    with visitor() as one:
        page = one.open(f"{served}calculators/gauge/#{next(iter(BROKEN))}")
        for fragment, says in BROKEN.items():
            page.evaluate("() => document.querySelector('.ww-notes').replaceChildren()")
            page.evaluate("fragment => { location.hash = fragment; }", fragment)
            words = noted(page)
            assert says in words, fragment
            assert "The fields show the defaults" in words
            assert page.input_value("[name=stitches]") == "40"
            assert page.query_selector(".ww-notes img, .ww-notes script") is None


@pytest.mark.fault
def test_a_broken_link_takes_nothing_of_ones_own(served: str, visitor) -> None:
    with visitor() as one:
        page = one.open(f"{served}calculators/gauge/", live=True)
        page.fill("[name=stitches]", "33")
        page.evaluate("fragment => { location.hash = fragment; }", "w1.AAAA")
        assert "What is in the fields stays as it is" in noted(page)
        assert page.input_value("[name=stitches]") == "33"


def test_a_link_shows_what_it_is_before_it_takes_the_place_of_ones_own(served: str, visitor) -> None:
    """In the fields now, and kept by this device from the last visit."""
    link = make_link("panel-plan", {"title": f"Sent {HOSTILE}", "size_in": "counts", "needles": "40", "rows": "60"})
    with visitor() as one:
        page = one.open(f"{served}plan/", live=True)
        page.fill("[name=title]", "My own")
        settled(page)
        page.evaluate("fragment => { location.hash = fragment; }", link)
        page.wait_for_selector(".ww-first[open]")
        words = page.inner_text(".ww-first")
        assert "Panel plan" in words
        assert f"Sent {HOSTILE[:20]}" in words
        assert "40 stitches, 60 rows" in words
        assert page.input_value("[name=title]") == "My own"
        page.click("text=Keep mine")
        page.wait_for_function("() => location.hash === ''")
        assert page.input_value("[name=title]") == "My own"
        assert "What is here stays as it is" in noted(page)
        page.goto(f"{served}calculators/")
        later = one.open(f"{served}plan/#{link}", live=True)
        later.click(".ww-first[open] >> text=Open it")
        later.wait_for_function("() => document.querySelector('[name=title]').value.startsWith('Sent')")
        assert later.query_selector(".ww-first img, .ww-notes img") is None
        # What a link brought is nothing of one's own: the next one is opened at once.
        later.evaluate("fragment => { location.hash = fragment; }", make_link("panel-plan", {"title": "Second"}))
        later.wait_for_function("() => document.querySelector('[name=title]').value === 'Second'")


def test_a_link_is_a_code_that_a_decoder_reads(served: str, visitor) -> None:
    """Judged by zxing-cpp from a picture of the screen, in dark colours too; one too long says its length."""
    with visitor(color_scheme="dark") as one:
        page = one.open(f"{served}plan/", live=True)
        page.fill("[name=title]", "Kites")
        settled(page)
        page.click("text=Show as code")
        page.wait_for_selector(".ww-code[open] svg")
        assert "Whoever has the link" in page.inner_text(".ww-code")
        assert "This copy runs on this device alone" in page.inner_text(".ww-code")
        (found,) = scanned(page, ".ww-code")
        assert found.text.startswith(f"{served}plan/#w1.")
        assert read_link(found.text.partition("#")[2]).inputs == {"title": "Kites"}
        page.keyboard.press("Escape")
        noise = "".join(chr(0x4E00 + (i * 7919) % 20000) for i in range(190))
        page.fill("[name=title]", noise)
        page.fill("[name=yarn_1_name]", noise[:60])
        settled(page)
        page.click("text=Show as code")
        page.wait_for_function("() => document.querySelector('.ww-tools .ww-notes').textContent.includes('scanned from a wall')")
        assert re.search(r"The address has \d{3} characters", page.inner_text(".ww-tools .ww-notes"))
        assert page.query_selector(".ww-code[open]") is None


SHARE = """() => {
    window.shared = [];
    navigator.share = async (what) => {
        window.shared.push(what);
        if (window.refuse) throw Object.assign(new Error(), {name: window.refuse});
    };
}"""


def test_the_device_sends_a_link_where_it_can(served: str, visitor) -> None:
    with visitor() as one:
        one.context.add_init_script(f"({SHARE})()")
        page = one.open(f"{served}calculators/gauge/", live=True)
        page.fill("[name=stitches]", "38")
        page.click(".ww-sharing >> text=Send")
        page.wait_for_function("() => window.shared.length === 1")
        (sent,) = page.evaluate("() => window.shared")
        assert sent["title"] == "Gauge"
        assert sent["url"].startswith(f"{served}calculators/gauge/#w1.")
        assert "Whoever has the link" in noted(page)
        page.evaluate("() => { window.refuse = 'NotAllowedError'; }")
        page.click(".ww-sharing >> text=Send")
        page.wait_for_selector(".ww-link")
    with visitor() as other:
        page = other.open(f"{served}calculators/gauge/", live=True)
        has = page.evaluate("() => Boolean(navigator.share)")
        assert page.locator(".ww-sharing >> text=Send").count() == int(has)


@pytest.mark.fault
def test_a_broken_link_at_the_first_visit(served: str, visitor) -> None:
    with visitor() as one:
        page = one.open(f"{served}plan/#w1.{'A' * 300}")
        assert "This link is broken" in noted(page)
        settled(page)
        assert page.query_selector(".ww-old") is None


@pytest.mark.fault
def test_links_that_can_be_opened_in_part_say_so(served: str, visitor) -> None:
    with visitor() as one:
        page = one.open(f"{served}calculators/gauge/#{newer({'stitches': '37', HOSTILE: 'x', 'drape': '7'})}", live=True)
        words = noted(page)
        assert "newer Wedgework, 99.1.0" in words
        assert "do not count" in words
        assert "drape" in words
        assert page.input_value("[name=stitches]") == "37"
        # Another link in the same page, of another calculator.
        page.evaluate("fragment => { location.hash = fragment; }", make_link("panel-plan", {"title": HOSTILE}))
        page.wait_for_selector(".ww-notes a")
        assert page.get_attribute(".ww-notes a", "href").startswith(f"{served}plan/#w1.")
        page.click(".ww-notes a")
        page.wait_for_selector("form[data-calculator=panel-plan]")
        assert "Opened from a link" in noted(page)
        assert page.input_value("[name=title]") == HOSTILE


@pytest.mark.fault
def test_a_link_with_wrong_inputs_shows_what_is_wrong(served: str, visitor) -> None:
    with visitor() as one:
        page = one.open(f"{served}calculators/gauge/#{make_link('gauge', {'stitches': HOSTILE, 'width': '-1'})}", live=True)
        settled(page)
        page.wait_for_selector(".ww-old")
        assert page.input_value("[name=stitches]") == HOSTILE
        assert page.query_selector(".ww-calculator img") is None


def test_another_plan_than_the_senders_is_said(served: str, visitor) -> None:
    with visitor() as one:
        page = one.open(f"{served}plan/#{make_link('panel-plan', {'title': 'Old'}, digest='000000000000')}", live=True)
        assert "The sender saw another order of steps" in noted(page)
        static = json.loads(page.get_attribute("[data-answer]", "data-answer"))
        digest = static["answer"]["result"]["steps_digest"]
        page.evaluate("fragment => { location.hash = fragment; }", make_link("panel-plan", {"title": "New"}, digest=digest))
        page.wait_for_function("() => document.querySelector('[name=title]').value === 'New'")
        settled(page)
        page.wait_for_function("() => document.querySelector('.ww-notes').textContent.includes('Panel plan, New')")
        assert "another order of steps" not in noted(page)
        assert figures(page)["blocks"] == str(static["answer"]["result"]["blocks"])
