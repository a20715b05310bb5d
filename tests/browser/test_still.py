"""Nothing that is seen moves when the scripts begin: what they put in has had its room before."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser, ViewportSize

SIZES: list[ViewportSize] = [{"width": 412, "height": 823}, {"width": 1024, "height": 768}]
# Layout shift as the browser counts it; at most 0.1 is called good (the Web Vitals initiative, web.dev/articles/cls).
PAGES = {"calculators/gauge/": 0.01, "machine/": 0.01, "plan/": 0.01, "board/": 0.01}
WATCH = """window.moved = 0;
new PerformanceObserver((list) => { for (const one of list.getEntries()) moved += one.value; })
    .observe({type: 'layout-shift', buffered: true});"""
BEGUN = "() => document.documentElement.dataset.scripts === 'run' && !('stage' in document.documentElement.dataset)"


@pytest.mark.parametrize("size", SIZES, ids=lambda size: str(size["width"]))
def test_nothing_moves_while_a_page_begins(browser: Browser, served: str, size: ViewportSize) -> None:
    """As a first visitor, with nothing stored."""
    found = {}
    for address in PAGES:
        context = browser.new_context(viewport=size)
        context.add_init_script(WATCH)
        page = context.new_page()
        page.goto(served + address, wait_until="load")
        page.wait_for_function(BEGUN)
        page.wait_for_timeout(1_000)
        found[address] = page.evaluate("moved")
        context.close()
    assert {address: moved for address, moved in found.items() if moved > PAGES[address]} == {}, found


def test_the_watch_sees_what_moves(browser: Browser, served: str) -> None:
    page = browser.new_page(viewport=SIZES[1])
    page.add_init_script(WATCH)
    page.goto(f"{served}calculators/gauge/")
    page.wait_for_timeout(700)
    page.evaluate("() => { document.querySelector('h1').style.marginTop = '300px'; }")
    page.wait_for_function("() => moved > 0.03")
    page.close()


def test_the_first_step_is_shown_at_once_but_where_a_place_may_be_kept(browser: Browser, served: str) -> None:
    """The script is held up: what stands there meanwhile is true, or it is not shown."""
    context = browser.new_context(viewport=SIZES[1])
    page = context.new_page()
    page.route("**/app-*/machine.js", lambda route: None)
    seen = "() => ['.m-cue', '.m-block', '.m-rows'].map((part) => getComputedStyle(document.querySelector(part)).visibility)"
    page.goto(f"{served}machine/", wait_until="commit")
    page.wait_for_selector(".m-cautions")
    assert page.evaluate(seen) == ["visible"] * 3
    page.evaluate("() => localStorage.setItem('wedgework / open', '{}')")
    page.reload(wait_until="commit")
    page.wait_for_selector(".m-cautions", state="attached")
    assert page.evaluate(seen) == ["hidden"] * 3
    page.wait_for_timeout(1_600)
    assert page.evaluate(seen) == ["visible"] * 3  # no script came; the first step, and buttons that do nothing yet
    context.close()
