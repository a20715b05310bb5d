"""One calculator in the page of somebody else, on another origin: it answers, and nothing else of the site is in it."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import Frame, Page

from barriers import barriers
from builder.embed import EMBED
from builder.keep import kept_files
from visiting import LIVE, Host, settled
from wedgework.catalogue import CALCULATORS
from wedgework.faces.about import page_of
from wedgework.faces.link import make_link

GAUGE = "embed/gauge/"
OPEN = "allow-scripts allow-same-origin allow-popups allow-popups-to-escape-sandbox"
# What a browser that refuses storage to frames does; and a page that tried to keep or to register anything would throw.
REFUSED = """if (self !== top) for (const [of, name] of [[window, 'localStorage'], [window, 'sessionStorage'],
        [window, 'indexedDB'], [Navigator.prototype, 'serviceWorker']]) {
    Object.defineProperty(of, name, { get() { throw new DOMException('refused', 'SecurityError'); } });
}"""
ASKING = """addEventListener('message', ({data}) => (window.told ??= []).push(data));"""
FITTING = """addEventListener('message', ({data}) => { document.querySelector('iframe').height = data; });
    document.querySelector('iframe').addEventListener('load', ({target}) => target.contentWindow.postMessage(1, '*'));"""


def guild(folder: Path, address: str, width: int = 480, sandbox: str = OPEN, script: str = ASKING) -> Path:
    """A page of a guild with one calculator in a frame."""
    frame = f'<iframe title="Calculator" src="{address}" width="{width}" height="700" sandbox="{sandbox}"></iframe>'
    page = f'<!doctype html><html lang="en"><link rel="icon" href="data:,"><title>Guild</title><body><h1>Guild</h1>{frame}'
    (folder / "index.html").write_text(f"{page}<script>{script}</script>", encoding="utf-8")
    return folder


def frame_of(page: Page) -> Frame:
    page.wait_for_function("() => document.querySelector('iframe')")
    (frame,) = [one for one in page.frames if one.parent_frame]
    frame.wait_for_load_state()
    return frame


def answered(frame: Frame, words: str) -> None:
    frame.wait_for_function("words => document.querySelector('output').textContent.includes(words)", arg=words, timeout=30_000)


def test_it_answers_on_another_origin_and_needs_no_storage(host, visitor, tmp_path: Path) -> None:
    site: Host = host()
    there: Host = host(guild(tmp_path, f"{site.address}{GAUGE}"))
    assert site.address != there.address
    with visitor() as one:
        one.context.add_init_script(REFUSED)
        page = one.open(there.address)
        frame = frame_of(page)
        assert frame.evaluate("self.origin") != page.evaluate("self.origin")
        assert "14.04" in frame.text_content("output"), "the true answer stands there before any engine"
        frame.wait_for_timeout(300)
        assert not [path for path in site.asked if path.startswith("runtime/")], "who only reads loads no engine"
        frame.fill("[name=stitches]", "40")
        frame.fill("[name=width]", "10 cm")
        answered(frame, "40.00")
        # Nothing else of the site: no frame of the theme, no way on but the one line, in a new tab, with what is in the fields.
        assert "/javascripts/" not in " ".join(site.asked)
        assert "sw.js" not in site.asked
        assert [a.get_attribute("href") for a in frame.query_selector_all("a:not([href^='#'])")] == [
            frame.get_attribute("[data-full]", "href")
        ]
        buttons = frame.eval_on_selector_all(".ww-actions button", "all => all.map((one) => one.textContent)")
        assert buttons == ["Defaults"]
        frame.wait_for_function("() => document.querySelector('[data-full]').href.includes('#w1.')")
        with one.context.expect_page() as opened:
            frame.click("[data-full]")
        full = opened.value
        full.wait_for_function(LIVE)
        full.wait_for_function("() => document.querySelector('[name=width]').value === '10 cm'")
        assert full.url.startswith(f"{site.address}{page_of('gauge')}#w1.")
        assert full.evaluate("opener") is None


def test_it_begins_with_the_values_of_a_link(host, visitor, tmp_path: Path) -> None:
    site: Host = host()
    link = make_link("gauge", {"stitches": "40", "width": "10 cm"})
    there: Host = host(guild(tmp_path, f"{site.address}{GAUGE}#{link}"))
    with visitor() as one:
        answered(frame_of(one.open(there.address)), "40.00")


@pytest.mark.fault
def test_a_frame_that_is_shut_off_says_so_and_shows_its_first_answer(host, visitor, tmp_path: Path) -> None:
    site: Host = host()
    there: Host = host(guild(tmp_path, f"{site.address}{GAUGE}", sandbox="allow-scripts"))
    with visitor(allow=("console: Access to script", "console: Failed to load resource")) as one:
        frame = frame_of(one.open(there.address))
        frame.wait_for_selector(".embed-still:visible")
        assert "allow-same-origin" in frame.inner_text(".embed-still")
        assert "14.04" in frame.text_content("output")


def test_its_height_is_told_to_who_asks_as_a_plain_number(host, visitor, tmp_path: Path) -> None:
    site: Host = host()
    there: Host = host(guild(tmp_path, f"{site.address}{GAUGE}"))
    with visitor() as one:
        page = one.open(there.address)
        frame = frame_of(page)
        frame.wait_for_function("() => document.documentElement.dataset.scripts === 'run'")
        send = "what => document.querySelector('iframe').contentWindow.postMessage(what, '*')"
        for what in ("1", "height", {"height": 1}, [1], None, True, 2, -1, 1.5, "<img src=x onerror=alert(1)>"):
            page.evaluate(send, what)
        page.wait_for_timeout(300)
        assert page.evaluate("window.told ?? []") == [], "nothing unasked, and nothing to what is no such question"
        page.evaluate(send, 1)
        page.wait_for_function("() => window.told?.length === 1")
        frame.fill("[name=stitches]", "none")
        page.wait_for_function("() => window.told.length > 1")
        page.evaluate(send, 0)
        before = page.evaluate("told.length")
        frame.fill("[name=stitches]", "40")
        frame.wait_for_function("() => !document.querySelector('.ww-problem')")
        told = page.evaluate("told")
        assert len(told) == before
        assert all(type(each) is int and 300 < each < 10_000 for each in told)


@pytest.mark.parametrize("width", [320, 480, 760])
def test_no_barrier_at_any_size(width: int, host, visitor, tmp_path: Path) -> None:
    site: Host = host()
    there: Host = host(guild(tmp_path, f"{site.address}{GAUGE}", width, script=FITTING))
    schemes = ("light", "dark") if width == 480 else ("light",)
    for scheme in schemes:
        with visitor(viewport={"width": width + 20, "height": 900}, color_scheme=scheme) as one:
            page = one.open(there.address)
            frame = frame_of(page)
            frame.wait_for_function("() => document.documentElement.dataset.scripts === 'run'")
            frame.fill("[name=stitches]", "none")
            frame.wait_for_selector(".ww-problem")
            assert barriers(frame) == []
            page.wait_for_function("() => document.querySelector('iframe').height > 1000")


def test_every_calculator_stands_there_whole(built: Path, visitor, served: str) -> None:
    """At its narrowest; each has its form, its answer, its language and the way to its page, and none is in the offline copy."""
    assert not [address for address, _, _ in kept_files(built) if EMBED in address.split("/")]
    wrong = []
    with visitor(viewport={"width": 320, "height": 700}, java_script_enabled=True) as one:
        page = one.context.new_page()
        for calculator in CALCULATORS:
            page.goto(f"{served}embed/{calculator.slug}/")
            page.wait_for_function("() => document.documentElement.dataset.scripts === 'run'")
            assert page.get_attribute("html", "lang") == "en"
            assert page.inner_text("h1") == calculator.title
            assert page.text_content("output")
            assert (built / page_of(calculator.slug) / "index.html").is_file()
            assert page.evaluate("document.querySelector('[data-full]').href") == f"{served}{page_of(calculator.slug)}"
            assert page.query_selector_all("nav, header, .md-search, .md-tabs, [class*=md-nav], [class*=md-header]") == []
            if page.evaluate("document.documentElement.scrollWidth > innerWidth"):
                wrong.append(calculator.slug)
    assert wrong == []


def test_the_page_for_webmasters_makes_a_snippet_that_works(host, visitor, tmp_path: Path) -> None:
    site: Host = host()
    with visitor() as one:
        page = one.open(f"{site.address}reference/embedding/")
        page.select_option("#embed-slug", "yarn-count")
        page.select_option("#embed-width", "480")
        page.fill("#embed-link", f"elsewhere#{make_link('yarn-count', {})}")
        page.wait_for_function("() => /height=\"[0-9]{3,5}\"/.test(document.querySelector('#embed-snippet').value)")
        page.wait_for_function("() => Number(document.querySelector('#embed-height').value) > 900")
        snippet = page.input_value("#embed-snippet")
        page.fill("#embed-address", 'javascript:alert("1")')
        assert "javascript" not in page.input_value("#embed-snippet")
    assert re.match(
        rf'<iframe src="{site.address}embed/yarn-count/#w1\.[\w-]+" title="Yarn count" width="480" height="\d+" ', snippet
    )
    (tmp_path / "index.html").write_text(f'<!doctype html><link rel="icon" href="data:,">{snippet}', encoding="utf-8")
    with visitor() as one:
        frame = frame_of(one.open(host(tmp_path).address))
        frame.wait_for_function(LIVE)
        assert frame.inner_text("h1") == "Yarn count"
        settled(frame)
