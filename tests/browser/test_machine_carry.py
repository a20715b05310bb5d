"""At the machine, carrying on from what is there: the believed bed, the new plan, the way back, and accidents between."""

from __future__ import annotations

import random
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, ViewportSize

from barriers import found_by_axe
from machine_people import at_the_machine, kill_browser
from stepping import CUES, HURRY, PIECE, READY, SIZES, at, stand_at, step_to
from wedgework.calculators import panel_plan
from wedgework.declare.calculator import read_all
from wedgework.faces.piece import piece_of
from wedgework.formats import read_state_value
from wedgework.formats.plan import Knit
from wedgework.replay import state_at

SMALL = """() => [...document.querySelectorAll('dialog[open] :is(button, select, textarea, summary, input, label:has(input))')]
    .filter((e) => e.checkVisibility() && !e.matches('label > input') && e.getBoundingClientRect().height < 44)
    .map((e) => e.outerHTML.slice(0, 80))"""
STEP = next(cue["index"] for cue in CUES if cue["kind"] == "knit" and cue["row_before"] > 200 and cue["rows"] == 2)


@pytest.fixture
def machine(served: str) -> str:
    return f"{served}machine/"


def planned_anew(page: Page, changes: str = "R25: 3 more") -> None:
    page.click("[data-opens=trouble]")
    page.click(".m-trouble [data-opens=carry]")
    page.fill("#m-changes", changes)
    page.click(".m-carry [type=submit]")
    page.wait_for_selector(".m-carry-after:visible", timeout=60_000)


def carried_on(page: Page) -> None:
    planned_anew(page)
    page.click(".m-carry-go")
    page.wait_for_selector(".m-carry", state="hidden")
    at(page, 0)


def rows_done(page: Page) -> int:
    return int(page.get_attribute("[data-row]", "data-row") or -1)


def pieces(page: Page) -> list[str]:
    page.click("[data-opens=more]")
    page.wait_for_selector(".m-pieces li")
    found = [one.split("\n")[0] for one in page.locator(".m-pieces [data-piece]").all_inner_texts()]
    page.keyboard.press("Escape")
    return found


@pytest.mark.parametrize(
    "inputs", [{}, {"layout": "chevron-bands", "size_in": "counts", "needles": "60", "rows": "110"}], ids=["diamonds", "bands"]
)
def test_the_bed_is_believed_to_be_what_the_model_bed_has(machine: str, visitor, inputs: dict[str, str]) -> None:
    """No Python runs here: rows, held needles, carriage and yarns are read off the record, and held against the replay."""
    plan, _ = panel_plan.planned(read_all(panel_plan.CALCULATOR, inputs))
    piece: dict[str, Any] = piece_of(inputs)
    cues, chance = piece["cues"], random.Random(11)
    places = []
    for cue in chance.sample([cue for cue in cues if cue["kind"] in ("knit", "block-change")], min(150, len(cues) - 20)):
        places.append((cue["index"], chance.randrange(max(1, cue["rows"]))))
    script = """async ([piece, places]) => {
        const { believed, canCarryOn } = await import(scriptAt('machine-state.js'));
        return places.map(([index, done]) => canCarryOn(piece, { index, done }) ? believed(piece, { index, done }) : null);
    }"""
    with visitor() as one:
        page = one.open(machine)
        page.wait_for_selector(READY)
        found = page.evaluate(script, [piece, places])
    compared = 0
    for (index, done), value in zip(places, found, strict=True):
        if value is None:
            assert cues[index]["block"].startswith(("base", "hem")), "only there nothing is planned anew"
            continue
        cue = cues[index]
        steps = cue["last_step"] + 1 - cue["rows"] + done if done else cue["first_step"]
        wanted, believed = state_at(plan, steps), read_state_value(value)
        compared += 1
        for field in ("first_needle", "rows", "held", "carriage", "mast"):
            assert getattr(believed, field) == getattr(wanted, field), (index, done, field)
        assert (believed.feeder and believed.feeder.yarn) == (wanted.feeder and wanted.feeder.yarn)
        if isinstance(plan.steps[steps - 1], Knit):
            assert believed.feeder == wanted.feeder
    assert compared > 40


def test_notes_of_the_plan_before_are_still_read_and_an_undo_leads_back(machine: str, visitor) -> None:
    row = CUES[STEP]["row_before"]
    with visitor() as one:
        one.context.add_init_script(HURRY)
        page = one.open(machine)
        stand_at(page, STEP)
        page.click("[data-opens=more]")
        page.fill("#m-note", "loose end at R3")
        page.keyboard.press("Escape")
        page.wait_for_selector(".m-note:visible")
        carried_on(page)
        page.click("[data-opens=more]")
        page.wait_for_selector("dialog.m-more[open]")
        assert f"step {STEP + 1}: loose end at R3" in (page.locator(".m-notes").text_content() or "")
        page.keyboard.press("Escape")
        assert rows_done(page) == row
        page.click("[data-notice=undo] button")
        at(page, STEP)
        assert page.inner_text(".m-where") == CUES[STEP]["where"]
        assert "loose end" in page.inner_text(".m-note")


def test_a_slip_is_told_and_nothing_is_planned(machine: str, visitor) -> None:
    with visitor() as one:
        page = one.open(machine)
        stand_at(page, STEP)
        page.click("[data-opens=trouble]")
        page.click(".m-trouble [data-opens=carry]")
        page.fill("#m-changes", "R25: 3 mroe")
        page.click(".m-carry [type=submit]")
        page.wait_for_selector("#m-changes[aria-invalid]", timeout=60_000)
        assert "says no change" in page.inner_text(".m-carry [data-said]")
        assert page.locator(".m-carry-after").is_hidden()


@pytest.mark.parametrize("size", [SIZES[0], SIZES[2]], ids=["tablet", "telephone"])
def test_what_comes_of_it_can_be_read_and_reached(machine: str, visitor, size: ViewportSize) -> None:
    with visitor(viewport=size) as one:
        page = one.open(machine)
        stand_at(page, STEP)
        planned_anew(page)
        page.click(".m-carry details summary")
        assert found_by_axe(page) == []
        assert page.evaluate(SMALL) == []
        wide = "() => { const d = document.querySelector('.m-carry'); return d.scrollWidth <= d.clientWidth; }"
        assert page.evaluate(wide), "nothing scrolls sideways"
        assert "What stays visible" in page.inner_text(".m-carry-found")


def test_base_rows_are_not_planned_anew(machine: str, visitor) -> None:
    with visitor() as one:
        page = one.open(machine)
        stand_at(page, 1)
        page.click("[data-opens=trouble]")
        page.click(".m-trouble [data-opens=carry]")
        assert page.locator(".m-carry form").is_hidden()
        assert "not planned anew" in page.inner_text(".m-carry [data-said]")


def test_a_browser_killed_before_and_after_loses_neither_plan(browser: Browser, tmp_path: Path, machine: str) -> None:
    folder, row = tmp_path / "person", CUES[STEP]["row_before"]
    with at_the_machine(browser, folder, machine) as (_, page):
        stand_at(page, STEP)
        planned_anew(page)
        kill_browser(folder)  # planned, and not yet gone on from there
    with at_the_machine(browser, folder, machine) as (_, page):
        at(page, STEP)
        assert rows_done(page) == row
        carried_on(page)
        kill_browser(folder)
    with at_the_machine(browser, folder, machine) as (_, page):
        at(page, 0)
        assert rows_done(page) == row, "the rows of the piece are counted on"
        for step in (1, 2, 3):
            step_to(page, step, "Space")
        there = rows_done(page)
        kill_browser(folder)
    with at_the_machine(browser, folder, machine) as (_, page):
        at(page, 3)
        assert rows_done(page) == there
        assert pieces(page) == [PIECE["title"]], "one piece, however many plans it had"
        page.click("[data-opens=trouble]")
        page.click(".m-carried button")
        at(page, STEP)
        kill_browser(folder)  # just gone back
    with at_the_machine(browser, folder, machine) as (_, page):
        at(page, STEP)
        page.click("[data-opens=trouble]")
        assert "Take up the plan of the rest" in page.inner_text(".m-carried")
        page.click(".m-carried button")
        at(page, 3)


def test_another_window_is_told(machine: str, visitor) -> None:
    with visitor() as one:
        page = one.open(machine)
        stand_at(page, STEP)
        other = one.context.new_page()
        other.goto(machine)
        other.wait_for_selector(READY)
        at(other, STEP)
        carried_on(page)
        told = other.locator("[data-notice=carried]")
        told.wait_for()
        assert "in another window" in told.inner_text().lower()
        told.locator("button").click()
        at(other, 0)
        assert other.locator("[data-notice=carried]").count() == 0


def test_storage_that_is_full_keeps_the_plan_as_it_is(machine: str, visitor) -> None:
    full = """globalThis.fillUp = () => {
        const fail = () => { throw new DOMException('full', 'QuotaExceededError'); };
        Storage.prototype.setItem = fail; IDBObjectStore.prototype.put = fail;
    };"""
    with visitor(allow=("error: full",)) as one:
        one.context.add_init_script(full)
        page = one.open(machine)
        stand_at(page, STEP)
        planned_anew(page)
        page.evaluate("() => fillUp()")
        page.click(".m-carry-go")
        page.wait_for_function("() => document.querySelector('.m-carry [data-said]').textContent.includes('could not be stored')")
        page.keyboard.press("Escape")
        at(page, STEP)
