"""The frame of the pages does what it did with the theme's own script: colours, search, contents, drawer, keys."""

from __future__ import annotations

from typing import Any

import pytest
from playwright.sync_api import Page

from visiting import host, visitor  # noqa: F401 - fixtures

SCHEME = "() => document.body.dataset.mdColorScheme"
FOUND = ".md-search-result__link"


@pytest.fixture
def open_page(served: str, visitor: Any):  # noqa: F811 - the fixture
    """`open_page(address, **settings)`; nothing may go wrong in it."""
    held = []

    def opened(address: str, **settings: Any) -> Page:
        held.append(visitor(**settings))
        return held[-1].__enter__().open(served + address)

    yield opened
    for one in held:
        one.__exit__(None, None, None)


def test_colours_are_those_of_the_system_until_chosen(open_page: Any) -> None:
    page = open_page("", color_scheme="dark")
    assert page.evaluate(SCHEME) == "slate"
    page.emulate_media(color_scheme="light")
    page.wait_for_function(f"() => ({SCHEME})() === 'default'")
    page.click("label[title='Dark colours']")
    assert page.evaluate(SCHEME) == "slate"
    page.reload()
    assert page.evaluate(SCHEME) == "slate"
    # As the theme keeps it, so that either can read the other's.
    kept = page.evaluate("() => JSON.parse(Object.entries(localStorage).find(([key]) => key.endsWith('.__palette'))[1])")
    assert kept["index"] == 1
    assert kept["color"]["scheme"] == "slate"
    page.emulate_media(color_scheme="light")
    page.wait_for_timeout(100)
    assert page.evaluate(SCHEME) == "slate", "a choice stays"
    page.focus("input[name=__palette]:checked")
    page.keyboard.press("Enter")
    assert page.evaluate(SCHEME) == "default"


def test_search_by_keys_alone(open_page: Any) -> None:
    page = open_page("reference/words/")
    page.wait_for_function("() => document.documentElement.classList.contains('js')")
    assert page.evaluate("() => performance.getEntriesByType('resource').every(one => !one.name.includes('search'))")
    page.keyboard.press("/")
    page.keyboard.type("holding position")
    page.wait_for_selector(FOUND)
    assert "matching" in page.inner_text(".md-search-result__meta")
    assert page.locator(f"{FOUND} mark").count() > 0
    page.keyboard.press("ArrowDown")
    assert page.evaluate("() => document.activeElement.matches('.md-search-result__link')")
    page.keyboard.press("ArrowUp")
    assert page.evaluate("() => document.activeElement.name") == "query"
    page.keyboard.press("Escape")
    assert not page.is_checked("#__search", timeout=1_000)
    page.keyboard.press("s")
    page.keyboard.press("Enter")
    page.wait_for_url(lambda url: not url.endswith("/words/"))


def test_search_on_a_small_screen_and_by_address(open_page: Any) -> None:
    page = open_page("?q=gauge", viewport={"width": 390, "height": 844})
    page.wait_for_selector(FOUND)
    assert page.is_checked("#__search")
    page.locator(".md-search__form label").click()
    assert not page.is_checked("#__search")
    page.wait_for_function("() => !location.search")
    page.wait_for_timeout(400)
    page.locator("header label[for=__search]").first.click()
    page.wait_for_timeout(100)
    assert page.is_checked("#__search")
    page.keyboard.type(" swatch")
    page.wait_for_function("() => document.querySelector('.md-search-result mark')?.textContent")
    page.fill("input[name=query]", "zzzzz")
    page.wait_for_function("() => document.querySelector('.md-search-result__meta').textContent.startsWith('No ')")


def test_the_contents_show_where_one_is(open_page: Any) -> None:
    page = open_page("reference/short-rows/", viewport={"width": 1400, "height": 700})
    last = page.locator("[data-md-component=toc] .md-nav__link").last
    page.evaluate("() => scrollTo(0, document.body.scrollHeight)")
    page.wait_for_function("() => document.querySelectorAll('[data-md-component=toc] .md-nav__link--active').length === 1")
    page.wait_for_function("() => document.querySelector('.md-header__title--active')")
    last.click()
    page.evaluate("() => scrollTo(0, 0)")
    page.wait_for_function("() => !document.querySelector('.md-header__title--active')")
    # Both lists stay within the screen, however far one scrolls.
    page.evaluate("() => scrollTo(0, 900)")
    tall = "all => all.every(one => one.getBoundingClientRect().bottom <= innerHeight && one.getBoundingClientRect().top > 40)"
    assert page.eval_on_selector_all(".md-sidebar__scrollwrap", tall)


def test_the_drawer_opens_and_the_keyboard_stays_out_of_it_before(open_page: Any) -> None:
    page = open_page("reference/words/", viewport={"width": 768, "height": 1024})
    link = page.locator(".md-sidebar--primary a", has_text="Planner").first
    assert link.evaluate("one => { one.focus(); return document.activeElement !== one; }")
    page.locator("header label[for=__drawer]").click()
    page.wait_for_timeout(400)
    assert link.evaluate("one => { one.focus(); return document.activeElement === one; }")
    part = page.locator(".md-sidebar--primary label[tabindex='0']").first
    part.focus()
    before = part.evaluate("one => document.getElementById(one.htmlFor).checked")
    page.keyboard.press("Enter")
    assert part.evaluate("one => document.getElementById(one.htmlFor).checked") is not before
    page.evaluate("() => { location.hash = '#__top'; }")
    page.wait_for_function("() => !document.querySelector('#__drawer').checked")


def test_keys_lead_to_the_neighbours_but_not_out_of_a_field(open_page: Any) -> None:
    page = open_page("calculators/gauge/")
    page.wait_for_function("() => document.querySelector('[data-live]')")
    page.focus("[name=stitches]")
    page.keyboard.type("n/")
    assert page.url.endswith("calculators/gauge/")
    page.evaluate("() => document.activeElement.blur()")
    page.keyboard.press("n")
    page.wait_for_url("**/calculators/tension/")


def test_what_an_address_leads_to_is_unfolded_and_so_is_all_on_paper(open_page: Any) -> None:
    page = open_page("reference/licences/")
    folds = page.locator(".md-content details")
    folds.nth(1).evaluate("one => { one.querySelector('pre').id = 'there'; location.hash = '#there'; }")
    page.wait_for_function("() => document.querySelectorAll('.md-content details[open]').length === 1")
    page.evaluate("() => dispatchEvent(new Event('beforeprint'))")
    assert folds.count() == page.locator(".md-content details[open]").count()
    page.evaluate("() => dispatchEvent(new Event('afterprint'))")
    assert page.locator(".md-content details[open]").count() == 1
