"""Everything that a device keeps goes into a file and comes back on another one; nothing is written over unasked."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page

from stepping import CUES, HURRY, PIECE, READY, at, stand_at, step_to
from wedgework.formats import read_project, steps_digest
from wedgework.replay import replay_plan

STEP = next(cue["index"] for cue in CUES if cue["kind"] == "knit" and cue["row_before"] > 200 and cue["rows"] == 2)
RUST = {
    "name": "Rust",
    "colour": "#b4533f",
    "kind": "wool",
    "known": "ball",
    "ball_g": "50 g",
    "ball_m": "60 m",
    "on_hand_g": "175 g",
}
# What is kept for a report to the designer: in the pace of a plan, and beside it.
NOON = 1_800_000_000_000
REPORTED = {
    "pace": {
        **{"begun": NOON, "ended": NOON, "all": 186_000, "breaks": [1, 600_000]},
        "spent": {PIECE["blocks"][0]["id"]: [186_000, 9]},
    },
    "note": {
        "mishaps": [{"kind": "jam", "index": 3}],
        "counts": [{"planned": 20, "counted": 21, "index": 5}],
        "typed": {"report-name": "Ann", "report-text": "A pleasure.", "grams-0": "87.5"},
    },
}
STORE = "const s = await import(scriptAt('store.js'));"


REPORT_HERE = f"""async (digest) => {{ {STORE}
    const {{ begun, ended, all, breaks, spent }} = (await s.place(digest)).pace;
    const noon = (ms) => (new Date(ms).toDateString() === new Date({NOON}).toDateString() ? {NOON} : ms);
    const {{ mishaps, counts, typed }} = await s.readNote(`report.${{digest}}`);
    return {{ pace: {{ begun: noon(begun), ended: noon(ended), all, breaks, spent }}, note: {{ mishaps, counts, typed }} }};
}}"""


@pytest.fixture
def saving(served: str) -> str:
    return f"{served}reference/saving/"


def lived_in(page: Page, machine: str) -> None:
    """A piece carried on from what was there, a note, a yarn, a swatch in the fields."""
    page.goto(machine)
    stand_at(page, STEP)
    page.click("[data-opens=more]")
    page.fill("#m-note", "loose end at R3")
    page.keyboard.press("Escape")
    page.wait_for_selector(".m-note:visible")
    page.click("[data-opens=trouble]")
    page.click(".m-trouble [data-opens=carry]")
    page.fill("#m-changes", "R25: 3 more")
    page.click(".m-carry [type=submit]")
    page.wait_for_selector(".m-carry-after:visible", timeout=60_000)
    page.click(".m-carry-go")
    page.wait_for_selector(".m-carry", state="hidden")
    for step in (1, 2, 3):
        step_to(page, step, "Space")
    keep = "async (yarn) => { const s = await import(scriptAt('store.js'));"
    keep += " await s.keepNote('shelf', { yarns: [yarn] });"
    keep += " await s.keepNote('last.gauge', { inputs: { stitches: '40', width: '28.5 cm', rows: '60', height: '31.6 cm' } }); }"
    page.evaluate(keep, {**RUST, "rate": "1.2"})
    report = f"""async ([digest, {{pace, note}}]) => {{ {STORE}
        const {{ index, key, n, at, ...more }} = await s.place(digest);
        await s.setPlace(digest, index, {{ ...more, pace: {{ ...more.pace, ...pace }} }});
        await s.keepNote(`report.${{digest}}`, note);
    }}"""
    page.evaluate(report, [PIECE["digest"], REPORTED])


def saved(page: Page, saving: str, folder: Path) -> Path:
    page.goto(saving)
    with page.expect_download(timeout=60_000) as found:
        page.click("text=Save all to a file")
    path = folder / found.value.suggested_filename
    found.value.save_as(path)
    page.wait_for_function("() => document.querySelector('.ww-keep-said').textContent.startsWith('Saved as')")
    return path


def opened(page: Page, path: Path | None, text: str = "") -> str:
    """What the page says of a file."""
    given = str(path) if path else {"name": "x.json", "mimeType": "application/json", "buffer": text.encode()}
    page.set_input_files("[data-keep] [type=file]", given)  # type: ignore[arg-type]
    page.wait_for_function(
        "() => { const said = document.querySelector('.ww-keep-said').textContent;"
        " return said !== 'Working.' && (said || document.querySelector('.ww-keep-found').textContent); }",
        timeout=60_000,
    )
    return page.inner_text(".ww-keep-said") or page.inner_text(".ww-keep-found")


def take(page: Page) -> None:
    page.click("text=Put what is ticked on this device")
    page.wait_for_function(
        "() => document.querySelector('.ww-keep-said').textContent.includes('on this device now')", timeout=60_000
    )


def test_everything_goes_to_another_device_and_nothing_is_written_over(served: str, saving: str, visitor, tmp_path: Path) -> None:
    machine = f"{served}machine/"
    with visitor() as one:
        one.context.add_init_script(HURRY)
        page = one.open(machine)
        page.wait_for_selector(READY)
        lived_in(page, machine)
        row = page.get_attribute("[data-row]", "data-row")
        path = saved(page, saving, tmp_path)
        assert "Last saved" in page.inner_text("[data-keep]")
    project = read_project(path.read_text(encoding="utf-8"))
    first, rest = project.progress
    assert rest.carried_from == 0
    assert [note.text for note in first.step_notes] == ["loose end at R3"]
    assert replay_plan(first.plan).problems == ()
    assert rest.plan.state is not None
    assert [yarn.name for yarn in project.yarns] == ["Rust"]
    assert project.swatches[0].swatch.stitches == 40
    assert project.machines[0].needles == 110

    with visitor() as one:  # another device
        one.context.add_init_script(HURRY)
        page = one.open(saving)
        found = opened(page, path)
        assert found.count("not on this device yet") == 4, "two plans of a piece, a yarn, the fields of the gauge"
        take(page)
        assert "All of it is here already" in opened(page, path)
        assert page.evaluate(REPORT_HERE, PIECE["digest"]) == REPORTED
        # Moved on meanwhile: the place here stays unless the file's is asked for.
        rest_here = f"{steps_digest(rest.plan.steps)}.1"
        move = f"async (index) => {{ {STORE} await s.setPlace('{rest_here}', index); }}"
        there = f"async () => {{ {STORE} return (await s.place('{rest_here}')).index; }}"
        page.evaluate(move, 4)
        assert "otherwise than here" in opened(page, path)
        box = page.locator(".ww-keep-things [type=checkbox]")
        assert box.count() == 1
        assert not box.is_checked()
        take(page)
        assert page.evaluate(there) == 4
        opened(page, path)
        page.check(".ww-keep-things [type=checkbox]")
        take(page)
        page.goto(machine)
        page.wait_for_selector(READY)
        at(page, 3)  # it is the planner's first piece, so it is open already
        assert page.get_attribute("[data-row]", "data-row") == row
        page.click("[data-opens=trouble]")
        page.click(".m-carried button")
        at(page, STEP)
        page.wait_for_selector(".m-note:visible")
        assert "loose end" in page.inner_text(".m-note")


def test_a_damaged_or_foreign_file_is_refused_in_one_sentence_with_its_place(saving: str, visitor) -> None:
    good: dict[str, Any] = {"format": "wedgework-project", "version": 1, "progress": [{"plan": PIECE["plan"], "steps_done": 3}]}
    broken = json.loads(json.dumps(good))
    broken["progress"][0]["plan"]["steps"][70] = {"do": "purl"}
    spoiled = json.loads(json.dumps(good))
    del spoiled["progress"][0]["plan"]["steps"][40]
    with visitor() as one:
        page = one.open(saving)
        assert opened(page, None, "").startswith("There is nothing in this file")
        assert "line 1" in opened(page, None, '{"format": ')
        assert opened(page, None, '{"format": "something-else", "version": 1}').startswith("format:")
        assert opened(page, None, json.dumps(broken)).startswith("progress[0].plan.steps[70]")
        # Whole as a file, yet no plan that can be knitted: the model bed says so before anything is kept.
        assert "not on this device yet" in opened(page, None, json.dumps(spoiled))
        take(page)
        assert "0 of them" in page.inner_text(".ww-keep-said")
        assert "progress[0].plan" in page.inner_text(".ww-keep-said")


def test_what_the_browser_promises_is_said(saving: str, visitor) -> None:
    with visitor() as one:
        one.context.add_init_script(
            "Object.defineProperty(Navigator.prototype, 'standalone', { get: () => false });"
            "if (globalThis.StorageManager) StorageManager.prototype.persisted = async () => false;"
        )
        page = one.open(saving)
        page.wait_for_selector(".ww-keep-risk")
        text = page.inner_text("[data-keep]")
        assert "may throw away" in text
        assert "after seven days" in text
        assert "home screen" in text


def test_after_long_work_the_machine_reminds_of_a_copy(served: str, visitor) -> None:
    stop = next(cue["index"] for cue in CUES if cue["good_to_stop"] and cue["row_before"] >= 300)
    with visitor() as one:
        one.context.add_init_script(HURRY)
        page = one.open(f"{served}machine/")
        stand_at(page, stop - 1)
        step_to(page, stop, "Space")
        told = page.locator("[data-notice=backup]")
        told.wait_for()
        assert f"{CUES[stop]['row_before']} rows" in told.inner_text()
        told.locator("button").click()
        told.wait_for(state="detached")
        step_to(page, stop - 1, "PageUp")
        step_to(page, stop, "Space")
        page.wait_for_timeout(300)
        assert told.count() == 0, "put off"
