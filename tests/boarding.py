"""What a person does on the layout board, for tests: taps and keys at places of the sheet, files in and out."""

from __future__ import annotations

import itertools
import json
from pathlib import Path
from typing import Any

from playwright.sync_api import CDPSession, Page

__all__ = ["Sheet", "opened"]

READY = "() => document.querySelector('[data-board]').dataset.ready === ''"


def opened(page: Page) -> Sheet:
    """The board on a page that has just been loaded, ready to be drawn on."""
    page.wait_for_function(READY)
    return Sheet(page)


class Sheet:
    """Places are in needles and rows, as the front is seen; the whole sheet lies in the window."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.touching: CDPSession | None = None
        self.first: list[Any] = []

    def button(self, words: str) -> None:
        self.page.locator(".lb").get_by_role("button", name=words, exact=True).first.click()

    def at(self, x: float, y: float) -> tuple[float, float]:
        """Pixels of a place, read from the drawing itself."""
        found = self.page.evaluate(
            """([x, y]) => {
                const frame = document.querySelector('.lb-frame');
                const place = frame.ownerSVGElement.createSVGPoint();
                place.x = x;
                place.y = y;
                const there = place.matrixTransform(frame.getScreenCTM());
                return [there.x, there.y];
            }""",
            [x, y],
        )
        return found[0], found[1]

    def tap(self, x: float, y: float) -> None:
        """With a finger."""
        self.page.touchscreen.tap(*self.at(x, y))

    def drag(self, *places: tuple[float, float]) -> None:
        """With a finger, from the first place over the others to the last."""
        self.fingers("touchStart", self.at(*places[0]))
        for before, after in itertools.pairwise(places):
            (ax, ay), (bx, by) = self.at(*before), self.at(*after)
            for step in (1, 2, 3, 4):
                self.fingers("touchMove", (ax + (bx - ax) * step / 4, ay + (by - ay) * step / 4))
        self.fingers("touchEnd")

    def fingers(self, kind: str, *places: tuple[float, float]) -> None:
        if self.touching is None:
            self.touching = self.page.context.new_cdp_session(self.page)
        points = [{"x": x, "y": y, "id": i} for i, (x, y) in enumerate(places)]
        self.touching.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})

    def keys(self, *names: str) -> None:
        for name in names:
            self.page.keyboard.press(name)

    def saved(self) -> dict[str, Any]:
        """The design as the button Save writes it; the keys go to the sheet again afterwards."""
        had = self.page.evaluate("() => document.activeElement.classList.contains('lb-surface')")
        with self.page.expect_download() as waiting:
            self.button("Save")
        if had:
            self.page.focus(".lb-surface")
        found: dict[str, Any] = json.loads(Path(waiting.value.path()).read_text(encoding="utf-8"))
        return found

    def open(self, text: str) -> None:
        """A design file through the button Open."""
        before = self.shapes()
        self.page.locator(".lb-top > .lb-bar > input[type=file]").set_input_files(
            {"name": "design.json", "mimeType": "application/json", "buffer": text.encode()}
        )
        self.page.wait_for_function("() => /was opened/.test(document.querySelector('.lb-status').textContent)", timeout=40_000)
        assert before is not None

    def shapes(self) -> list[str]:
        """The list of shapes, the lowest first."""
        words: list[str] = self.page.eval_on_selector_all(".lb-shapes button", "all => all.map(one => one.textContent)")
        return words[::-1]

    def judged(self) -> None:
        """Waits until the model bed has judged what is on the sheet."""
        self.page.wait_for_selector("[data-board][data-judged=done]", timeout=60_000)
        self.page.wait_for_function(
            """() => !document.querySelector('.lb-judged').classList.contains('lb-old')
                && /^Planned/.test(document.querySelector('.lb-state').textContent)""",
            timeout=60_000,
        )
        self.page.wait_for_timeout(100)  # the figures come bit by bit

    def figure(self, key: str) -> str:
        return self.page.text_content(f"[data-figure={key}]") or ""
