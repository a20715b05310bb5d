"""The layout board, drawn on with fingers and keys: what is drawn is the file, what was done can be undone."""

from __future__ import annotations

import json
import random
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

import pytest
from playwright.sync_api import Locator, Page

from barriers import SIZES, barriers
from boarding import Sheet, opened
from wedgework.board import surface
from wedgework.formats import design_value, read_design, steps_digest
from wedgework.plan import plan_piece

GIVEN = {
    "format": "wedgework-design",
    "version": 1,
    "title": "Two kites and a wedge",
    "bed": {"pitch_mm": 9, "needles": 110},
    "gauge": {"stitches_per_10cm": 14, "rows_per_10cm": 19},
    "panel": {"width": {"needles": 60}, "height": {"rows": 100}},
    "yarns": [
        {"id": "yarn-1", "name": "Chalk", "colour": "#efe8d8"},
        {"id": "yarn-2", "name": "Slate", "colour": "#3f5566"},
        {"id": "yarn-3", "name": "Rust", "colour": "#b4533f"},
    ],
    "layout": {
        "background": "yarn-1",
        "shapes": [
            {"yarn": "yarn-2", "points": [[0.1, 0.5], [0.3, 0.1], [0.5, 0.5], [0.3, 0.9]]},
            {"yarn": "yarn-3", "points": [[0.6, 0.3], [0.75, 0.0], [0.9, 0.3], [0.75, 0.7]]},
            {"yarn": "yarn-2", "points": [[0.5, 1], [1, 0.6], [1, 1]]},
        ],
    },
}


@pytest.fixture
def boarded(visitor: Any, served: str) -> Any:
    """`with boarded() as sheet:` a tablet with the board open."""

    @contextmanager
    def visit(**settings: Any) -> Iterator[Sheet]:
        with visitor(has_touch=True, **settings) as one:
            yield opened(one.open(f"{served}board/"))

    return visit


def empty(sheet: Sheet) -> None:
    """The sheet of `GIVEN` with nothing on it."""
    sheet.open(json.dumps({**GIVEN, "layout": {"background": "yarn-1"}}))


def same_plan(design: dict[str, Any], wanted: dict[str, Any]) -> None:
    one, other = (plan_piece(read_design(json.dumps(each))) for each in (design, wanted))
    assert one.steps == other.steps
    assert steps_digest(one.steps) == steps_digest(other.steps)


def test_a_given_layout_is_drawn_from_nothing_with_a_finger(boarded: Any) -> None:
    with boarded() as sheet:
        empty(sheet)
        for shape in GIVEN["layout"]["shapes"]:
            number = shape["yarn"][-1]
            sheet.page.locator(f".lb-yarns [data-yarn=yarn-{number}]").tap()
            sheet.button("Draw")
            for x, y in [*shape["points"], shape["points"][0]]:
                sheet.tap(60 * x, 100 * y)
        sheet.judged()
        made = sheet.saved()
    same_plan(made, GIVEN)
    points = [[[x / 60, y / 100] for x, y in shape["points"]] for shape in made["layout"]["shapes"]]
    for drawn, wanted in zip(points, GIVEN["layout"]["shapes"], strict=True):
        assert drawn == [pytest.approx(point) for point in wanted["points"]]


def test_the_same_layout_is_drawn_with_keys_alone(boarded: Any) -> None:
    """Tab reaches the sheet and every button; nothing here is clicked."""
    with boarded() as sheet:
        empty(sheet)
        page = sheet.page
        page.locator("body").press("Tab")
        for _ in range(200):
            if page.evaluate("() => document.activeElement.classList.contains('lb-surface')"):
                break
            sheet.keys("Tab")
        assert page.evaluate("() => document.activeElement.classList.contains('lb-surface')"), "Tab comes to the sheet"
        for shape in GIVEN["layout"]["shapes"]:
            sheet.keys("Escape", "Escape", shape["yarn"][-1], "n")
            # The cursor begins in the middle of the sheet.
            x, y = 30, 50
            for to_x, to_y in [*shape["points"], shape["points"][0]]:
                x, y = walk(sheet, x, y, round(60 * to_x), round(100 * to_y))
                sheet.keys("Enter")
        sheet.page.wait_for_function("() => document.querySelectorAll('.lb-shapes li').length === 3")
        made = sheet.saved()
    same_plan(made, GIVEN)


def walk(sheet: Sheet, x: int, y: int, to_x: int, to_y: int) -> tuple[int, int]:
    """Arrow keys from one place to another; Shift makes ten of them."""
    for now, there, back, on, unit in ((x, to_x, "ArrowLeft", "ArrowRight", 1), (y, to_y, "ArrowDown", "ArrowUp", 2)):
        way, left = (on, there - now) if there > now else (back, now - there)
        sheet.keys(*[f"Shift+{way}"] * (left // 10), *[way] * (left % 10 // unit))
    return to_x, to_y


def test_corners_shapes_and_everything_done_with_one(boarded: Any) -> None:
    with boarded() as sheet:
        sheet.open(json.dumps(GIVEN))
        sheet.tap(18, 50)
        assert "needles 6 to 30" in sheet.page.inner_text(".lb-status")
        sheet.drag((30, 50), (34, 54))
        assert sheet.saved()["layout"]["shapes"][0]["points"][2] == [34, 54]
        sheet.drag((16, 50), (16, 60))
        assert sheet.saved()["layout"]["shapes"][0]["points"][0] == [6, 60]
        sheet.keys("Control+z", "Control+z", "m")
        assert sheet.saved()["layout"]["shapes"][0]["points"] == [[30, 50], [18, 10], [6, 50], [18, 90]]
        sheet.keys("o")
        assert sheet.saved()["layout"]["shapes"][1]["points"][0] == [30, 50]
        sheet.keys("c", "ArrowUp", "3")
        copy = sheet.saved()["layout"]["shapes"][3]
        assert copy["points"][0] == [34, 60]
        assert copy["yarn"] == "yarn-3"
        sheet.keys("Delete", "Control+z", "Control+z", "Control+z", "Control+z")
        assert len(sheet.saved()["layout"]["shapes"]) == 3


def test_a_shape_is_cut_and_repeated(boarded: Any) -> None:
    with boarded() as sheet:
        sheet.open(json.dumps(GIVEN))
        sheet.tap(18, 50)
        sheet.button("Cut")
        sheet.drag((0, 50), (40, 50))
        shapes = sheet.saved()["layout"]["shapes"]
        assert [sorted(map(tuple, shape["points"])) for shape in shapes[:2]] == [
            [(6, 50), (18, 10), (30, 50)],
            [(6, 50), (18, 90), (30, 50)],
        ] or [sorted(map(tuple, shape["points"])) for shape in shapes[:2]] == [
            [(6, 50), (18, 90), (30, 50)],
            [(6, 50), (18, 10), (30, 50)],
        ]
        same_plan(sheet.saved(), GIVEN)
        # The same by two taps, and by keys: from the middle of the sheet, where the cursor begins, to the left.
        once = sheet.saved()
        sheet.button("Undo")
        sheet.tap(18, 50)
        sheet.button("Cut")
        sheet.tap(2, 50)
        sheet.tap(34, 50)
        assert sheet.saved()["layout"] == once["layout"]
        sheet.button("Undo")
        sheet.button("Choose")
        sheet.tap(18, 50)
        sheet.keys("x", "ArrowLeft", "Enter", "Shift+ArrowLeft", "Shift+ArrowLeft", "Shift+ArrowLeft", "Enter")
        assert len(sheet.saved()["layout"]["shapes"]) == 4
        same_plan(sheet.saved(), GIVEN)
        sheet.button("Choose")
        sheet.tap(18, 30)
        sheet.button("Repeat")
        form = sheet.page.locator(".lb-repeat")
        for name, value in {"across": "2", "up": "2", "needles": "24", "rows": "40", "lean": "3"}.items():
            form.locator(f"[name={name}]").fill(value)
        form.get_by_role("button", name="Repeat it").tap()
        shapes = sheet.saved()["layout"]["shapes"]
        assert len(shapes) == 7
        lowest = {min(map(tuple, shape["points"]), key=lambda point: point[1]) for shape in shapes[4:]}
        assert lowest == {(42, 10), (21, 50), (45, 50)}


def test_the_purl_side_is_the_mirror_image_and_is_drawn_on_rightly(boarded: Any) -> None:
    with boarded() as sheet:
        sheet.open(json.dumps(GIVEN))
        left, right = sheet.at(0, 0)[0], sheet.at(60, 0)[0]
        sheet.button("Purl side")
        sheet.page.wait_for_function("() => document.querySelector('.lb-frame').getScreenCTM().a < 0")
        assert sheet.at(0, 0)[0] == pytest.approx(right)
        assert sheet.at(60, 0)[0] == pytest.approx(left)
        sheet.tap(18, 50)
        sheet.drag((6, 50), (10, 50))
        assert sheet.saved()["layout"]["shapes"][0]["points"][0] == [10, 50]
        sheet.keys("ArrowRight")
        assert sheet.saved()["layout"]["shapes"][0]["points"][0] == [9, 50], "to the right as one sees it"


def test_two_fingers_move_and_scale_the_sheet_and_draw_nothing(boarded: Any) -> None:
    with boarded() as sheet:
        sheet.open(json.dumps(GIVEN))
        before, place = sheet.saved(), sheet.at(30, 50)
        wide = sheet.at(60, 0)[0] - sheet.at(0, 0)[0]
        x, y = place
        sheet.fingers("touchStart", (x - 40, y))
        sheet.fingers("touchStart", (x - 40, y), (x + 40, y))
        for step in range(1, 9):
            sheet.fingers("touchMove", (x - 40 - 5 * step, y), (x + 40 + 5 * step, y))
        sheet.fingers("touchEnd")
        sheet.page.wait_for_timeout(50)
        assert sheet.at(60, 0)[0] - sheet.at(0, 0)[0] == pytest.approx(2 * wide, rel=0.02)
        assert sheet.at(30, 50) == pytest.approx(place, abs=2)
        assert sheet.saved() == before
        sheet.button("Whole")
        sheet.page.wait_for_timeout(50)
        assert sheet.at(60, 0)[0] - sheet.at(0, 0)[0] == pytest.approx(wide, rel=0.001)


def test_two_hundred_random_edits_and_all_of_them_undone_over_a_reload(boarded: Any) -> None:
    rnd = random.Random(7)
    with boarded() as sheet:
        sheet.open(json.dumps(GIVEN))
        begun = sheet.saved()
        page = sheet.page
        page.focus(".lb-surface")
        for _ in range(200):
            edit(sheet, rnd)
        ended = sheet.saved()
        assert ended != begun
        page.wait_for_timeout(600)  # the last edits are stored a moment later
        page.reload()
        sheet = opened(page)
        assert sheet.saved() == ended, "kept over a reload"
        undo = page.locator(".lb").get_by_role("button", name="Undo", exact=True)
        redo = page.locator(".lb").get_by_role("button", name="Redo", exact=True)
        while undo.is_enabled():
            pressed(page, undo, 60)
        page.focus(".lb-surface")
        sheet.keys("Control+y")
        assert sheet.saved() == begun, "the step before the last one opened the file"
        while redo.is_enabled():
            pressed(page, redo, 60)
        assert sheet.saved() == ended


def pressed(page: Page, button: Locator, times: int) -> None:
    """A button, again and again; beyond the end it only says so."""
    button.evaluate("(button, times) => { for (let i = 0; i < times; i += 1) button.click(); }", times)
    page.wait_for_timeout(80)


def edit(sheet: Sheet, rnd: random.Random) -> None:
    """Some edit of some shape by keys, as a restless person makes it."""
    sheet.keys(*["PageDown"] * rnd.randint(1, 2))
    what = rnd.choice(("corner", "corner", "shape", "turn", "yarn", "order", "copy", "gone", "more"))
    arrows = ("ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown")
    if what == "corner":
        sheet.keys(*["."] * rnd.randint(1, 4), rnd.choice(arrows))
    elif what == "shape":
        sheet.keys(rnd.choice(arrows))
    elif what == "turn":
        sheet.keys(rnd.choice("muh"))
    elif what == "yarn":
        sheet.keys(rnd.choice("123"))
    elif what == "order":
        sheet.keys(rnd.choice("oi"))
    elif what == "copy":
        sheet.keys("c")
    elif what == "gone" and len(sheet.shapes()) > 2:
        sheet.keys("Delete")
    elif what == "more":
        sheet.keys(".", "a")


def test_the_judgement_follows_and_an_offer_is_taken_with_a_tap(boarded: Any) -> None:
    upright = {
        **GIVEN,
        "layout": {"background": "yarn-1", "shapes": [{"yarn": "yarn-2", "points": [[0, 0], [0.5, 0], [0.5, 1], [0, 1]]}]},
    }
    with boarded() as sheet:
        sheet.open(json.dumps(upright))
        sheet.judged()
        assert sheet.figure("slits") == "1"
        assert sheet.page.locator(".lb-slit").count() >= 1
        before = sheet.saved()
        take = sheet.page.locator(".lb-offers li[data-offer=lean], .lb-offers li[data-offer=bend]").first
        take.get_by_role("button", name="Do it").tap(timeout=40_000)
        sheet.judged()
        assert sheet.figure("slits") == "0"
        assert sheet.saved() != before
        sheet.button("Undo")
        assert sheet.saved() == before


def test_a_slope_that_leaves_a_slit_shows_so_while_it_is_dragged(boarded: Any) -> None:
    with boarded() as sheet:
        sheet.open(
            json.dumps(
                {
                    **GIVEN,
                    "layout": {
                        "background": "yarn-1",
                        "shapes": [{"yarn": "yarn-2", "points": [[0.25, 0.2], [0.75, 0.2], [0.5, 0.6]]}],
                    },
                }
            )
        )
        sheet.page.locator(".lb").get_by_role("button", name="Judgement", exact=True).click()
        sheet.tap(30, 30)
        assert sheet.page.locator(".lb-over .lb-slit").count() == 0
        sheet.fingers("touchStart", sheet.at(30, 60))
        for step in range(1, 7):
            x, y = sheet.at(30 - 2 * step, 60 + 4 * step)
            sheet.fingers("touchMove", (x, y))
        sheet.page.wait_for_function("() => document.querySelectorAll('.lb-over .lb-slit').length >= 1")
        sheet.fingers("touchEnd")


def test_drawing_and_saving_need_no_engine(visitor: Any, host: Any) -> None:
    """Neither way of starting it gets its parts; what the page holds is enough."""
    files = host()
    with visitor(allow=("console: Failed to load", "console: Fetch API", "error:"), has_touch=True) as one:
        one.context.route("**/runtime/**", lambda route: route.abort())
        sheet = opened(one.open(f"{files.address}board/"))
        assert sheet.figure("blocks") == "15", "the first drawing is judged before anything runs"
        sheet.button("Draw")
        for x, y in ((2, 70), (8, 70), (8, 90), (2, 70)):
            sheet.tap(x, y)
        sheet.page.wait_for_function("() => document.querySelectorAll('.lb-shapes li').length === 5")
        assert sheet.saved()["layout"]["shapes"][4]["points"] == [[2, 70], [8, 70], [8, 90]]
        sheet.page.wait_for_function(
            "() => /no judgement here/.test(document.querySelector('.lb-state').textContent)", timeout=60_000
        )
        sheet.button("Undo")
        assert len(sheet.saved()["layout"]["shapes"]) == 4


@pytest.mark.long
def test_layouts_letters_and_links_come_in(boarded: Any, visitor: Any) -> None:
    with boarded() as sheet:
        page = sheet.page
        sheet.open(json.dumps(GIVEN))
        sheet.button("Begin from ...")
        page.select_option(".lb-dialog select", "kites")
        page.locator(".lb-dialog").get_by_role("button", name="Make it mine").click()
        page.wait_for_function("() => document.querySelectorAll('.lb-shapes li').length === 6")
        named = {**GIVEN, "layout": {"name": "kites"}}
        same_plan(sheet.saved(), named)
        sheet.button("Begin from ...")
        page.fill(".lb-dialog textarea", "aaab\naabb\nabbb")
        page.locator(".lb-dialog").get_by_role("button", name="Draw it", exact=True).click()
        page.wait_for_function("() => document.querySelector('.lb-figures') && !document.querySelector('.lb-dialog').open")
        made = sheet.saved()
        assert made["panel"]["width"] == {"needles": 4}
        assert made["panel"]["height"] == {"rows": 6}
        page.evaluate("() => { navigator.clipboard.writeText = () => Promise.reject(new Error('no')); }")
        sheet.button("Copy link")
        address = page.locator(".lb .ww-link").input_value(timeout=30_000)
        with visitor() as other:
            there = opened(other.open(address))
            there.page.wait_for_function(
                "() => /link was opened/.test(document.querySelector('.lb-status').textContent)", timeout=60_000
            )
            assert there.saved()["layout"] == made["layout"]
            there.button("Undo")
            assert there.saved()["title"] == "Lantern"


def test_a_drawing_goes_to_the_planner_and_comes_back(boarded: Any) -> None:
    with boarded() as sheet:
        page = sheet.page
        sheet.open(json.dumps(GIVEN))
        sheet.judged()
        blocks = sheet.figure("blocks")
        sheet.button("Knit this")
        page.wait_for_url("**/plan/")
        page.wait_for_function("() => document.querySelector('[name=layout]').value === 'drawn'")
        page.wait_for_function(
            """() => document.querySelector('form[data-live]').dataset.live === 'answered'
                && document.querySelector('[name=title]').value.startsWith('Two kites')""",
            timeout=60_000,
        )
        page.wait_for_function(f"() => document.querySelector('[data-result=blocks]').textContent === '{blocks}'", timeout=60_000)
        page.get_by_role("button", name="Layout board").click()
        page.wait_for_url("**/board/")
        sheet = opened(page)
        page.wait_for_function("() => /design was opened/.test(document.querySelector('.lb-status').textContent)", timeout=60_000)
        same_plan(sheet.saved(), GIVEN)


@pytest.mark.parametrize("scheme", ["light", pytest.param("dark", marks=pytest.mark.long)])
def test_nothing_stands_in_the_way(boarded: Any, scheme: str) -> None:
    with boarded(color_scheme=scheme) as sheet:
        page = sheet.page
        sheet.judged()
        sheet.tap(32, 52)
        page.locator(".lb-side summary").first.click()
        found = []
        for width, height in SIZES:
            page.set_viewport_size({"width": width, "height": height})
            found += [f"{width}x{height} {one}" for one in barriers(page) + small(page)]
        sheet.button("Begin from ...")
        found += barriers(page) + small(page)
    assert found == [], "\n".join(found)


def small(page: Page) -> list[str]:
    """What is pressed and is lower than a finger."""
    found: list[str] = page.eval_on_selector_all(
        ".lb :is(button, select, summary, input, textarea)",
        "all => all.filter(e => e.checkVisibility() && e.getBoundingClientRect().height < 44).map(e => `small: ${e.outerHTML}`)",
    )
    return found


@pytest.mark.long
def test_the_board_of_the_core_and_the_file_are_one(boarded: Any) -> None:
    """What Save writes is what the core would write, drawn out and counted."""
    with boarded() as sheet:
        sheet.open(json.dumps(GIVEN))
        made = sheet.saved()
    assert read_design(json.dumps(made)) == surface(read_design(json.dumps(GIVEN))).design
    assert set(made) == set(design_value(read_design(json.dumps(made))))
