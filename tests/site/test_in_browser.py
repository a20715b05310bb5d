"""The pages in a browser, at the three sizes, in light and dark: nothing foreign, no error, no sideways scrolling, no barrier."""

from __future__ import annotations

from pathlib import Path
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Browser, Page, ViewportSize

from barriers import found_by_axe

TOP = Path(__file__).resolve().parents[2]
SIZES: list[ViewportSize] = [{"width": 1024, "height": 768}, {"width": 768, "height": 1024}, {"width": 390, "height": 844}]
ZOOMED: ViewportSize = {"width": 512, "height": 384}
"""A zoom of 200 % at 1024 x 768."""
CONTRAST = "color-contrast"
# One visit of a page for several looks at it: the colours; the sizes, of which the first is where barriers are looked for; and
# which ones. In the light all, in the dark those that lie in colours, and on every third page: all have the same colours. The
# rest in `make long`.
Look = tuple[str, list[ViewportSize], dict[str, object] | None]
SOME = 3
LIGHT: Look = ("light", [SIZES[0], SIZES[2], ZOOMED], {})
DARK: Look = ("dark", [SIZES[1]], {"runOnly": [CONTRAST]})
REST: list[Look] = [
    *(("light", [size], {}) for size in (SIZES[1], SIZES[2])),
    *(("dark", [size], {}) for size in SIZES),
]
GERMAN: Look = ("dark", [SIZES[0], SIZES[2]], {"rules": {CONTRAST: {"enabled": False}}})
WIDTHS: Look = (*GERMAN[:2], None)
DRESSED = "(scheme) => (document.body.dataset.mdColorScheme ?? scheme) === scheme"
# Colours that change by and by, in parts that are out of sight and not laid out, would still be those of the look before.
AT_ONCE = """() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync('* { transition: none !important; content-visibility: visible !important }');
    document.adoptedStyleSheets = [sheet];
}"""
TOO_WIDE = """() => [...document.querySelectorAll('body *')]
    .filter(e => e.getBoundingClientRect().right > innerWidth + 1 && getComputedStyle(e).position !== 'fixed')
    .map(e => e.outerHTML.slice(0, 100))"""
SMALL_TARGETS = """() => [...document.querySelectorAll(
    'article :is(input, select, textarea, button, summary, a.go)')]
    .filter(e => e.checkVisibility() && !['hidden', 'checkbox', 'radio', 'color'].includes(e.type))
    .filter(e => e.getBoundingClientRect().height < 44)
    .map(e => e.outerHTML.slice(0, 100))"""


def test_every_page(browser: Browser, served: str, pages) -> None:
    look_at(browser, served, {address: [LIGHT] if n % SOME else [LIGHT, DARK] for n, address in enumerate(pages)})


@pytest.mark.long
def test_every_page_in_the_other_looks(browser: Browser, served: str, pages) -> None:
    look_at(browser, served, dict.fromkeys(pages, REST))


def test_every_german_page(browser: Browser, served: str, german_pages) -> None:
    """The same forms in the same colours with longer words: the wide screen and the narrow one show where they do not fit.
    Barriers are looked for on every third, since the English pages of the same forms have none."""
    look_at(browser, served, {address: [WIDTHS if n % SOME else GERMAN] for n, address in enumerate(german_pages)})


def look_at(browser: Browser, served: str, pages: dict[str, list[Look]]) -> None:
    page = browser.new_page()
    wrong: list[str] = []
    page.on("console", lambda said: wrong.append(f"console: {said.text}") if said.type in ("error", "warning") else None)
    page.on("pageerror", lambda error: wrong.append(f"error: {error}"))
    page.on("request", lambda asked: wrong.append(f"foreign: {asked.url}") if foreign(asked.url) else None)
    for address, looks in pages.items():
        before = len(wrong)
        page.emulate_media(color_scheme=looks[0][0])  # type: ignore[arg-type]
        page.set_viewport_size(looks[0][1][0])
        page.goto(served + address, wait_until="load")
        page.wait_for_function(
            "() => document.documentElement.classList.contains('js') && !document.querySelector('form noscript')"
        )
        for number, (scheme, sizes, how) in enumerate(looks):
            if number == 1:
                page.evaluate(AT_ONCE)
            page.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]
            page.wait_for_function(DRESSED, arg={"light": "default", "dark": "slate"}[scheme])
            for size in sizes:
                page.set_viewport_size(size)
                if page.evaluate("() => document.documentElement.scrollWidth > innerWidth"):
                    wrong.append(f"sideways at {size['width']}: {page.evaluate(TOO_WIDE)}")
                wrong += [f"small at {size['width']}: {target}" for target in page.evaluate(SMALL_TARGETS)]
            if how is None:
                continue
            page.set_viewport_size(sizes[0])
            wrong += [f"{scheme} {finding}" for finding in found_by_axe(page, how)]
        wrong[before:] = [f"{address or 'home'} {finding}" for finding in wrong[before:]]
    page.close()
    assert wrong == [], "\n".join(wrong)


def foreign(url: str) -> bool:
    there = urlsplit(url)
    return there.scheme in ("http", "https", "ws", "wss") and there.hostname != "127.0.0.1"


def test_the_look_for_barriers_can_find_one(browser: Browser) -> None:
    page = browser.new_page()
    page.set_content("<html lang=en><title>x</title><main><h1>x</h1><input name=nameless></main>")
    assert any(finding.startswith("label:") for finding in found_by_axe(page))
    page.close()


@pytest.fixture
def open_page(browser: Browser, served: str):
    page = browser.new_page(viewport=SIZES[0])
    page.goto(served)
    yield page
    page.close()


def test_search_finds_a_word_without_a_server_behind_it(open_page: Page) -> None:
    open_page.click("input[name=query]")
    open_page.keyboard.type("holding position")
    open_page.wait_for_selector(".md-search-result__link")
    links = open_page.eval_on_selector_all(".md-search-result__link", "all => all.map(a => a.getAttribute('href'))")
    assert any("reference/" in link for link in links)


def test_search_in_german_finds_german_pages(browser: Browser, served: str) -> None:
    page = browser.new_page(viewport=SIZES[0])
    page.goto(f"{served}de/")
    page.click("input[name=query]")
    page.keyboard.type("Haltestellung")
    page.wait_for_selector(".md-search-result__link")
    links = page.eval_on_selector_all(".md-search-result__link", "all => all.map(a => a.getAttribute('href'))")
    assert all("/de/" in link for link in links)
    page.close()


def test_the_colours_follow_the_system_and_can_be_changed(browser: Browser, served: str) -> None:
    context = browser.new_context(viewport=SIZES[0], color_scheme="dark")
    page = context.new_page()
    page.goto(served)
    body = page.locator("body")
    assert body.get_attribute("data-md-color-scheme") == "slate"
    page.locator("label[title='Light colours']").click()
    assert body.get_attribute("data-md-color-scheme") == "default"
    context.close()


def test_everything_can_be_read_without_scripts(browser: Browser, served: str, pages) -> None:
    context = browser.new_context(viewport=SIZES[1], java_script_enabled=False)
    page = context.new_page()
    for address in ("calculators/gauge/", "plan/"):
        page.goto(served + address)
        assert page.locator("output").first.is_visible()
    context.close()
