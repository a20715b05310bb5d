"""The pages of yarn: the fabric is the core's, sliding asks nobody, what is saved is whole, the shelf fills other pages."""

from __future__ import annotations

import json
import struct
import xml.etree.ElementTree as ET
import zlib
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page

from barriers import SIZES, barriers
from visiting import answer_html, settled
from wedgework.calculators import stripes
from wedgework.calculators.stripes_view import inks_of
from wedgework.declare.calculator import read_all
from wedgework.formats import read_project
from wedgework.yarn.fabric import colours_of

SMALL = {"size_in": "counts", "needles": "24", "rows": "48", "layout": "diamond-in-corners"}
FILL = """(typed) => {
    const form = document.querySelector('form[data-calculator]');
    for (const [name, text] of Object.entries(typed)) form.elements[name].value = text;
    form.elements.rows.dispatchEvent(new Event('input', {bubbles: true}));
}"""
SMALL_THERE = "() => document.querySelector('.ww-fabric-canvas')?.getAttribute('aria-label').includes('24 stitches')"


def striped(one: Any, served: str) -> Page:
    """The page of the stripes with the small piece in its window, and how often the core was asked."""
    page: Page = one.open(f"{served}calculators/stripes/", live=True)
    page.wait_for_selector(".ww-fabric-canvas")
    page.evaluate(FILL, SMALL)
    page.wait_for_function(SMALL_THERE)
    settled(page)
    return page


def slide(page: Page, to: int) -> None:
    page.eval_on_selector(
        "#fabric-offset", f"s => {{ s.value = '{to}'; s.dispatchEvent(new Event('input', {{bubbles: true}})); }}"
    )
    page.evaluate("() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))")


def svg_cells(text: str, width: int, height: int, inks: list[str]) -> bytes:
    """The stitches of a saved drawing, as indices of its own colours."""
    found = bytearray(width * height)
    for path in ET.fromstring(text).iter("{http://www.w3.org/2000/svg}path"):
        ink = inks.index(path.get("fill") or "")
        for run in (path.get("d") or "").split("M")[1:]:
            start, _, rest = run.partition("h")
            if "V" in start:  # drawn on above a needle that ends a row early: no stitch of its own
                continue
            x, y = map(int, start.split())
            for column in range(x, x + int(rest.partition("v")[0])):
                found[y * width + column] = ink + 1
    return bytes(found)


def saved(page: Page, button: str, folder: Path) -> Path:
    with page.expect_download() as taken:
        page.click(f"text={button}")
    path = folder / taken.value.suggested_filename
    taken.value.save_as(path)
    return path


def test_what_is_seen_is_what_the_core_counted_wherever_the_slider_stands(served: str, visitor, tmp_path: Path) -> None:
    with visitor() as one:
        page = striped(one, served)
        for place, offset in ((0, "0 m"), (60, "6 m"), (210, "21 m")):
            slide(page, place)
            found = stripes.striping(read_all(stripes.CALCULATOR, SMALL | {"offset": offset}))
            inks, by_yarn, own = inks_of(found.plan.design, found.colours)
            fabric = colours_of(found.laid, by_yarn, found.striped, own)
            drawn = saved(page, "Save as drawing", tmp_path).read_text(encoding="utf-8")
            assert svg_cells(drawn, fabric.width, fabric.height, [ink.colour for ink in inks]) == fabric.cells
        page.click(".ww-fabric button:text-is('Back')")
        mirrored = saved(page, "Save as drawing", tmp_path).read_text(encoding="utf-8")
        rows = [fabric.cells[y * fabric.width : (y + 1) * fabric.width][::-1] for y in range(fabric.height)]
        assert svg_cells(mirrored, fabric.width, fabric.height, [ink.colour for ink in inks]) == b"".join(rows)


def test_sliding_asks_nobody_until_it_is_let_go(served: str, visitor) -> None:
    with visitor() as one:
        page = striped(one, served)
        page.evaluate(
            "() => { window.asked = 0; document.querySelector('form').addEventListener('input', () => { window.asked += 1; }); }"
        )
        before = answer_html(page)
        slide(page, 120)
        assert "12.00 m" in page.inner_text(".ww-fabric-slide")
        assert page.evaluate("window.asked") == 0
        assert page.input_value("[name=offset]") == "0 m"
        page.eval_on_selector("#fabric-offset", "s => s.dispatchEvent(new Event('change', {bubbles: true}))")
        assert page.input_value("[name=offset]") == "12 m"
        settled(page)
        assert answer_html(page) != before
        page.click("button:text-is('Defaults')")
        settled(page)
        page.wait_for_function("() => document.querySelector('#fabric-offset').value === '0'")


def test_a_block_is_begun_with_a_colour(served: str, visitor) -> None:
    with visitor() as one:
        page = striped(one, served)
        block, colour = page.query_selector_all(".ww-fabric-begin select")
        numbers = [option.get_attribute("value") for option in block.query_selector_all("option")]
        block.select_option(numbers[1])
        assert "m to wind off" in colour.inner_text()
        colour.select_option("4")
        page.click("text=Do so")
        assert page.input_value("[name=begins]") == f"{numbers[1]}: 4"
        settled(page)
        assert "Clay, after" in page.inner_text("output")


def test_the_saved_picture_is_whole_and_in_proportion(served: str, visitor, tmp_path: Path) -> None:
    with visitor() as one:
        page = striped(one, served)
        picture = saved(page, "Save as picture", tmp_path).read_bytes()
        assert picture.startswith(b"\x89PNG")
        width, height = struct.unpack(">II", picture[16:24])
        # 24 stitches and 52 rows at 14 by 19 to 10 cm
        assert width / height == pytest.approx((24 / 14) / (52 / 19), rel=0.01)
        assert width >= 24 * 8, "each stitch can be seen"
        length, kind = struct.unpack(">I4s", picture[8:16])
        assert zlib.crc32(picture[12 : 16 + length]) == struct.unpack(">I", picture[16 + length : 20 + length])[0]
        assert kind == b"IHDR"


def test_nearer_shows_more_and_the_keyboard_scrolls(served: str, visitor) -> None:
    with visitor() as one:
        page = striped(one, served)
        size = "() => document.querySelector('.ww-fabric-room').clientWidth"
        before = page.evaluate(size)
        page.click(".ww-fabric button:text-is('Nearer')")
        page.click(".ww-fabric button:text-is('Nearer')")
        assert page.evaluate(size) > before
        page.focus(".ww-fabric-window")
        page.keyboard.press("ArrowDown")
        page.wait_for_function("() => document.querySelector('.ww-fabric-window').scrollTop > 0")
        page.click(".ww-fabric button:text-is('Whole piece')")
        assert page.evaluate(size) == before


def test_the_shelf_is_kept_taken_along_and_fills_other_pages(served: str, visitor, tmp_path: Path) -> None:
    with visitor() as one:
        page = one.open(f"{served}calculators/shelf/", live=True)
        page.click("text=Put on the shelf")
        page.wait_for_selector("text=Rust is on the shelf")
        page.fill("[name=name]", "Moss & <i>more</i>")
        page.fill("[name=ball_m]", "75 m")
        settled(page)
        page.click("text=Put on the shelf")
        page.wait_for_function("() => document.querySelectorAll('.ww-shelf li').length === 2")
        file = saved(page, "Save as a file", tmp_path)
        assert [yarn.name for yarn in read_project(file.read_text(encoding="utf-8")).yarns] == ["Moss & <i>more</i>", "Rust"]
        page.click(".ww-shelf button:text-is('Take away') >> nth=1")
        page.wait_for_function("() => document.querySelectorAll('.ww-shelf li').length === 1")
        page.click("text=Put it back")
        page.wait_for_function("() => document.querySelectorAll('.ww-shelf li').length === 2")
        page.reload()
        page.wait_for_function("() => document.querySelectorAll('.ww-shelf li').length === 2")

        plan = one.open(f"{served}plan/", live=True)
        plan.select_option("#shelf-pick-yarn-2", label="Rust (wool, 50 g with 60 m, 175 g on hand)")
        assert plan.input_value("[name=yarn_2_name]") == "Rust"
        assert plan.input_value("[name=yarn_2_colour]") == "#b4533f"
        scraps = one.open(f"{served}calculators/scraps/", live=True)
        scraps.click("text=Take all from the shelf")
        assert "#b4533f Rust, 175 g, 1.2 m/g, wool" in scraps.input_value("[name=leftovers]").splitlines()
    with visitor() as other:
        page = other.open(f"{served}calculators/shelf/", live=True)
        page.set_input_files("input[type=file]", file)
        page.wait_for_selector("text=2 yarns came from the file")
        page.set_input_files(
            "input[type=file]", {"name": "no.json", "mimeType": "application/json", "buffer": b'{"format": "other"}'}
        )
        page.wait_for_function("() => document.querySelector('.ww-notes').textContent.includes('wedgework-project')")
        assert len(page.query_selector_all(".ww-shelf li")) == 2


def test_a_plan_goes_on_to_its_yarn(served: str, visitor) -> None:
    with visitor() as one:
        page = one.open(f"{served}plan/", live=True)
        page.fill("[name=title]", "Onward")
        settled(page)
        page.click("text=How much yarn")
        page.wait_for_url("**/yarn-needs/")
        page.wait_for_function("() => document.querySelector('[name=title]').value === 'Onward'")


@pytest.mark.parametrize(
    ("address", "scheme"), [("stripes", "light"), ("scraps", "dark"), ("yarn-needs", "light"), ("shelf", "dark")]
)
def test_no_barriers(address: str, scheme: str, served: str, visitor) -> None:
    with visitor(color_scheme=scheme) as one:
        page = one.open(f"{served}calculators/{address}/", live=True)
        if address == "stripes":
            page.wait_for_selector(".ww-fabric-canvas")
        if address == "shelf":
            page.click("text=Put on the shelf")
            page.wait_for_selector(".ww-shelf-colour")
        for details in page.query_selector_all("details.ww-folded"):
            details.evaluate("d => { d.open = true; }")
        wrong = []
        for width, height in SIZES:
            page.set_viewport_size({"width": width, "height": height})
            page.wait_for_timeout(100)
            wrong += [f"{width}x{height} {found}" for found in barriers(page)]
        assert wrong == [], "\n".join(wrong)
        assert json.loads(page.get_attribute("[data-answer]", "data-answer") or "")["answer"]["problems"] == []
