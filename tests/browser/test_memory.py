"""A page with its Python fits into the memory of a small tablet."""

from __future__ import annotations

import sys
from typing import Any

import pytest
from playwright.sync_api import Browser

from memory_of_a_page import at_rest_mib, highest_mib
from visiting import LIVE, settled

MOST_MIB = 162
"""170 MB, as much as is wanted. The planner has held 135 at its highest while it starts, 125 at rest. A page that is loaded again
in its place holds the one before it too, until the browser sweeps: 235, and some half a minute later 130."""

pytestmark = pytest.mark.skipif(not sys.platform.startswith("linux"), reason="only Linux tells")


def test_the_page_and_its_python_stay_small(browser: Browser, served: str, visitor: Any) -> None:
    """From its start to an answer."""
    with visitor() as one:
        one.open(served, stored=True).close()
        page = one.context.new_page()
        page.goto(f"{served}plan/", wait_until="commit")
        started = highest_mib(browser, page, LIVE)
        page.fill("[name=title]", "Another title")
        page.wait_for_function("() => document.querySelector('form[data-live]').dataset.live === 'asked'")
        answered = highest_mib(browser, page, "() => document.querySelector('form[data-live]').dataset.live === 'answered'")
    assert 50 < started < MOST_MIB, started
    assert 50 < answered < MOST_MIB, answered


@pytest.mark.long
def test_of_a_page_that_was_loaded_again_nothing_stays(browser: Browser, served: str, visitor: Any) -> None:
    with visitor() as one:
        page = one.open(f"{served}plan/", stored=True, live=True)
        page.reload()
        page.wait_for_function("() => document.documentElement.dataset.engine === 'ready'")
        page.fill("[name=title]", "Another title")
        page.wait_for_function("() => document.querySelector('form[data-live]').dataset.live === 'asked'")
        settled(page)
        held = at_rest_mib(browser, page, enough=MOST_MIB)
    assert 50 < held < MOST_MIB, held
