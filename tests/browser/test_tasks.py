"""A page never holds a weak tablet for long: neither while it loads nor while its answer comes."""

from __future__ import annotations

from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from tasks_of_a_page import LONGEST, tasks
from visiting import LIVE, settled

pytestmark = pytest.mark.alone

TRIES = 4  # other work on the machine only ever makes a task longer
# In ms. The largest pages of each kind, which are painted in steps (see parts.css), and those where a knitter is most. A quiet
# machine has 32 to 46; those with more room have most of it.
PAGES = {
    "": LONGEST,
    "reference/layouts/": LONGEST,
    "machine/": LONGEST,
    "board/": LONGEST,
    "plan/": LONGEST,
    "calculators/yarn-needs/": LONGEST,
    "reference/formats/": LONGEST + 10,
    "calculators/written-pattern/": LONGEST + 10,
}
MORE = {"reference/speed/": LONGEST + 10, "calculators/stripes/": LONGEST + 10}
ANSWERS = {"calculators/gauge/": ("stitches", "37"), "plan/": ("title", "Another one")}


def load(page: Page, address: str) -> None:
    page.goto(address)
    page.wait_for_load_state("load")
    page.wait_for_timeout(1_200)


@pytest.mark.parametrize("pages", [PAGES, pytest.param(MORE, marks=pytest.mark.long)], ids=["most visited", "more"])
def test_no_page_has_a_long_task_while_it_loads(browser: Browser, served: str, visitor: Any, pages: dict[str, float]) -> None:
    """Warm, as all visits but the first are."""
    with visitor() as one:
        one.open(served, stored=True).close()
        found = {}
        for address, most in pages.items():
            page = one.context.new_page()
            for _ in range(TRIES):
                page.goto("about:blank")
                longest = tasks(browser, page, lambda page=page, address=address: load(page, served + address))[0]
                found[address] = min(longest, found.get(address, longest))
                if found[address] <= most:
                    break
            page.close()
    assert {address: took for address, took in found.items() if took > pages[address]} == {}, found


@pytest.mark.parametrize("address", ANSWERS)
def test_no_answer_comes_with_a_long_task(browser: Browser, served: str, visitor: Any, address: str) -> None:
    name, text = ANSWERS[address]
    with visitor() as one:
        page = one.open(served + address, live=True, stored=True)
        page.wait_for_timeout(1_500)  # what was out of sight is brought out
        found = []
        for n in range(TRIES):

            def answer(n: int = n) -> None:
                page.fill(f"[name={name}]", f"{text}{n}")
                page.wait_for_function("() => document.querySelector('form[data-live]').dataset.live === 'asked'")
                settled(page)
                page.wait_for_timeout(300)

            found.append(tasks(browser, page, answer)[0])
            if found[-1] <= LONGEST:
                break
        page.wait_for_function(LIVE)
    assert min(found) <= LONGEST, found
