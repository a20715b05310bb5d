"""What the tests of the page at the machine share: its record, how one steps, how one is put at a step."""

from __future__ import annotations

from typing import Any

from playwright.sync_api import Page, ViewportSize

from wedgework.faces.piece import piece_of

SIZES: list[ViewportSize] = [{"width": 1024, "height": 768}, {"width": 768, "height": 1024}, {"width": 390, "height": 844}]
READY = ".machine[data-ready]"
FORWARD, BACK = "[data-action=forward]", "[data-action=back]"
# The page's own clock a hundred times as fast: what has to wait for a finger waits no longer than the test needs.
HURRY = "const real = performance.now.bind(performance); performance.now = () => real() * 100;"
PIECE: dict[str, Any] = piece_of({})
CUES: list[dict[str, Any]] = PIECE["cues"]


def cue_of(page: Page) -> int:
    return int(page.get_attribute("[data-cue]", "data-cue") or -1)


def at(page: Page, index: int) -> None:
    page.wait_for_function(f"() => document.querySelector('[data-cue]').dataset.cue === '{index}'")


def step_to(page: Page, index: int, how: str = "tap") -> None:
    """One step, then wait until it is shown."""
    if how == "tap":
        page.click(FORWARD if index > cue_of(page) else BACK)
    else:
        page.keyboard.press(how)
    at(page, index)


def stand_at(page: Page, index: int) -> None:
    """Put the piece there and load the page again."""
    page.evaluate(
        "async (index) => (await import(scriptAt('store.js')))"
        ".setPlace(document.querySelector('[data-machine]').dataset.machine, index)",
        index,
    )
    page.reload()
    page.wait_for_selector(READY)
    at(page, index)
