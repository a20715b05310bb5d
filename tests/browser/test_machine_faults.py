"""A long evening with accidents: after every one the place is right, or the person was told plainly that it was not kept."""

from __future__ import annotations

import random
from collections import Counter
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from machine_people import at_the_machine, kill_browser
from stepping import BACK, FORWARD, HURRY, PIECE, READY, at
from wedgework.faces.piece import piece_of

# Storage that is full from the moment that a test says so.
FULL = """
    globalThis.full = false;
    const fail = () => { throw new DOMException('full', 'QuotaExceededError'); };
    const setItem = Storage.prototype.setItem, put = IDBObjectStore.prototype.put;
    Storage.prototype.setItem = function (...given) { return globalThis.full ? fail() : setItem.apply(this, given); };
    IDBObjectStore.prototype.put = function (...given) { return globalThis.full ? fail() : put.apply(this, given); };
"""
HOWS = ("tap", "Space", "Enter", "ArrowRight", "ArrowDown", "PageDown")
SHORT, LONG = (200, 10), (1500, 50)
"""Passes and faults; the page "How we know" tells of both."""
FAULTS = ("reload", "kill", "full", "windows")


class Evening:
    """Knits on until so many passes are done; `place` is what the person knows, `page` what she sees."""

    def __init__(self, browser: Browser, folder: Path, machine: str, piece: dict[str, Any], seed: int) -> None:
        self.browser, self.folder, self.machine = browser, folder, machine
        self.piece, self.cues = piece, piece["cues"]
        self.chance = random.Random(seed)
        self.place = 0
        self.met: Counter[str] = Counter()

    def knit(self, passes: int, faults: int) -> None:
        """The faults fall on passes chosen by the seed, each kind in turn."""
        when = sorted(self.chance.sample(range(2, passes), faults))
        kinds = [FAULTS[n % len(FAULTS)] for n in range(faults)]
        self.chance.shuffle(kinds)
        due = list(zip(when, kinds, strict=True))
        if self.piece is not PIECE:
            with at_the_machine(self.browser, self.folder, self.machine) as (_, page):
                page.evaluate(
                    "async (piece) => { const s = await import(scriptAt('store.js'));"
                    " await s.putPiece(piece); await s.openPiece(piece.digest); }",
                    self.piece,
                )
        while self.rows() < passes:
            with at_the_machine(self.browser, self.folder, self.machine, HURRY + FULL) as (_, page):
                self.right(page)
                self.until_closed(page, passes, due)

    def until_closed(self, page: Page, passes: int, due: list[tuple[int, str]]) -> None:
        while self.rows() < passes:
            self.step(page)
            if not due or self.rows() < due[0][0]:
                continue
            kind = due.pop(0)[1]
            self.met[kind] += 1
            if kind == "kill":
                kill_browser(self.folder)
                return
            getattr(self, kind)(page)

    def rows(self) -> int:
        return int(self.cues[self.place]["row_before"])

    def step(self, page: Page) -> None:
        """On by a tap or a key; now and then a step back and on again."""
        for by in (1, -1, 1) if self.place > 1 and self.chance.random() < 0.05 else (1,):
            how = self.chance.choice(HOWS)
            if by < 0:
                page.click(BACK)
            elif how == "tap":
                page.click(FORWARD)
            else:
                page.keyboard.press(how)
            self.place += by
            at(page, self.place)

    def right(self, page: Page) -> None:
        at(page, self.place)
        assert page.get_attribute("[data-row]", "data-row") == str(self.rows())
        assert page.inner_text(".m-where") == self.cues[self.place]["where"]

    def reload(self, page: Page) -> None:
        page.reload()
        page.wait_for_selector(READY)
        self.right(page)

    def full(self, page: Page) -> None:
        """It says so while it lasts, with the step to be noted; afterwards all is kept again."""
        page.evaluate("() => { globalThis.full = true; }")
        for _ in range(3):
            self.step(page)
            page.wait_for_function(
                "(step) => document.querySelector('[data-notice=kept]')?.textContent.includes(`Note the step: ${step}.`)",
                arg=self.place + 1,
            )
        page.evaluate("() => { globalThis.full = false; }")
        self.step(page)
        page.wait_for_selector("[data-notice=kept]", state="detached")
        self.reload(page)

    def windows(self, page: Page) -> None:
        """Moved on in a second window; the first is told, and moves only when asked."""
        other = page.context.new_page()
        other.goto(self.machine)
        other.wait_for_selector(READY)
        self.right(other)
        before = self.place
        self.step(other)
        other.close()
        told = page.locator("[data-notice=elsewhere]")
        told.wait_for()
        assert f"to step {self.place + 1}" in told.inner_text()
        at(page, before)
        told.locator("button").click()
        self.right(page)


def test_the_page_tells_of_these_runs(served: str, visitor) -> None:
    with visitor() as one:
        table = one.open(f"{served}reference/how-we-know/").locator("table", has_text="Accidents").inner_text()
    for passes, faults in (SHORT, LONG):
        assert f"{passes:,}\t{faults}\t0" in table


@pytest.mark.fault
@pytest.mark.parametrize(("passes", "faults"), [SHORT, pytest.param(*LONG, marks=pytest.mark.long)])
def test_an_evening_with_accidents(browser: Browser, tmp_path: Path, served: str, passes: int, faults: int) -> None:
    piece = PIECE if passes < PIECE["rows"] else piece_of({"size_in": "counts", "needles": "106", "rows": "330"})
    evening = Evening(browser, tmp_path / "person", f"{served}machine/", piece, seed=passes + faults)
    evening.knit(passes, faults)
    assert evening.rows() >= passes
    assert sum(evening.met.values()) == faults
    assert set(evening.met) == set(FAULTS)
