"""Drawing never waits: no task of the page's own thread is long, slowed down as a weak tablet is, while the judgement comes."""

from __future__ import annotations

import json
from typing import Any

from playwright.sync_api import Browser

from boarding import Sheet, opened
from tasks_of_a_page import LONGEST, tasks
from wedgework.board import judge, surface
from wedgework.formats import read_design
from wedgework.formats.plan import is_edge

BLOCKS = 40
TRIES = 3  # other work on the machine only ever makes a task longer

FORTY = {
    "format": "wedgework-design",
    "version": 1,
    "title": "Forty blocks",
    "bed": {"pitch_mm": 4.5, "needles": 200},
    "gauge": {"stitches_per_10cm": 28, "rows_per_10cm": 40},
    "panel": {"width": {"needles": 160}, "height": {"rows": 320}},
    "yarns": [
        {"id": "a", "name": "Chalk", "colour": "#f2efe6"},
        {"id": "b", "name": "Slate", "colour": "#3f5566"},
        {"id": "c", "name": "Rust", "colour": "#a0522d"},
    ],
    "layout": {"name": "diamond-lattice", "parameters": {"across": 4, "up": 4}},
}


def draw_about(sheet: Sheet) -> None:
    """A corner and a shape are dragged, a shape is drawn, steps are undone, the sheet is moved, scaled and turned over."""
    shape = [(float(x), float(y)) for x, y in sheet.first]
    middle = sum(x for x, _ in shape) / len(shape), sum(y for _, y in shape) / len(shape)
    sheet.tap(*middle)
    x, y = shape[0]
    sheet.drag((x, y), (x + 6, y + 20), (x - 4, y + 8))
    sheet.drag(middle, (middle[0] + 10, middle[1] + 16))
    sheet.keys("n")
    for place in ((20, 40), (40, 80), (20, 120), (20, 40)):
        sheet.tap(*place)
    sheet.keys("ArrowLeft", "Control+z", "Control+z", "+", "-", "p", "g", "0")
    # The judgement of all this comes in between, and is shown.
    sheet.page.wait_for_selector("[data-board][data-judged=done]", timeout=60_000)
    sheet.page.wait_for_timeout(500)


def test_no_long_task_while_one_draws(browser: Browser, visitor: Any, served: str) -> None:
    blocks = judge(surface(read_design(json.dumps(FORTY))).design).plan.blocks
    assert sum(not is_edge(block.id) for block in blocks) >= BLOCKS
    with visitor(has_touch=True) as one:
        sheet = opened(one.open(f"{served}board/", live=True, stored=True))
        sheet.open(json.dumps(FORTY))
        sheet.judged()
        sheet.first = sheet.saved()["layout"]["shapes"][5]["points"]
        found = []
        for _ in range(TRIES):
            took = tasks(browser, sheet.page, lambda: draw_about(sheet))
            found.append([task for task in took if task > LONGEST])
            if not found[-1]:
                break
    assert [] in found, found


def test_the_look_for_long_tasks_can_find_one(browser: Browser, visitor: Any, served: str) -> None:
    busy = "() => setTimeout(() => { let s = 0; for (let i = 0; i < 3e8; i += 1) s += i % 7; window.s = s; }, 20)"
    with visitor() as one:
        page = one.open(f"{served}board/")
        opened(page)

        def act() -> None:
            page.evaluate(busy)
            page.wait_for_function("() => window.s > 0")
            page.wait_for_timeout(100)

        assert tasks(browser, page, act)[0] > LONGEST
