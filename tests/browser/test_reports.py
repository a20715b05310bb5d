"""A test knitter knits a little and saves her report; the designer opens it beside the plan."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from barriers import barriers
from stepping import CUES, HURRY, PIECE, READY, step_to
from wedgework.formats import read_report

# A clock that only a test puts forward: `skip` is in milliseconds.
SKIP = "globalThis.skip = 0; Date.now = () => 1.8e12 + globalThis.skip;"
MINUTE = 60_000
# How the engine started is no thing of hers.
KEPT = "() => Object.fromEntries(Object.entries(localStorage).filter(([key]) => !key.includes('wedgework.start')))"


def opened(page, *windows: str) -> None:
    for which in windows:
        page.locator(f"[data-opens={which}]").first.click()
        page.wait_for_selector(f"dialog.m-{which}[open]")


def knitted(page, steps: int, ms: int) -> None:
    """So many steps forward from the beginning, each after so long."""
    for step in range(1, steps + 1):
        page.evaluate(f"() => {{ globalThis.skip += {ms}; }}")
        step_to(page, step)


def test_the_report_of_a_knitter_stands_beside_the_plan(served: str, visitor, tmp_path: Path) -> None:
    steps, ms = 12, 90_000
    with visitor() as one:
        one.context.add_init_script(HURRY + SKIP)
        page = one.open(f"{served}machine/")
        page.wait_for_selector(READY)
        knitted(page, steps, ms)
        page.evaluate(f"() => {{ globalThis.skip += {40 * MINUTE}; }}")
        step_to(page, steps + 1)  # after a pause
        here = CUES[steps + 1]
        opened(page, "more")
        page.fill(".m-note-text", "tight <b>here</b>")
        page.click(".m-note-save")
        page.click("dialog.m-more [data-close]")
        opened(page, "trouble")
        page.click("[data-mishap=jam] summary")
        page.click("[data-mishap=jam] .m-mishap-note")
        page.wait_for_selector(f"text=Noted at step {steps + 2}.")
        page.click("text=The needles do not come out as the step says")
        page.fill("#m-count-planned", "20")
        page.fill("#m-count-counted", "apples")
        page.click(".m-count-off button")
        page.wait_for_selector("text=Type two whole numbers of needles")
        page.fill("#m-count-counted", "21")
        page.click(".m-count-off button")
        page.click("dialog.m-trouble [data-close]")
        opened(page, "more", "report")
        page.fill("#m-report-name", "Ann")
        page.fill("#m-grams-0", "many")
        page.click("dialog.m-report [type=submit]")
        page.wait_for_selector("text=Grams: type a number")
        page.fill("#m-grams-0", "87,5")
        page.fill("#m-report-text", "A pleasure.")
        assert barriers(page) == []
        # What was typed is there again after the window, and the page, were closed.
        page.reload()
        page.wait_for_selector(READY)
        opened(page, "more", "report")
        page.wait_for_selector("#m-report-text:enabled")
        assert page.input_value("#m-report-text") == "A pleasure."
        with page.expect_download() as saved:
            page.click("dialog.m-report [type=submit]")
        file = tmp_path / saved.value.suggested_filename
        saved.value.save_as(file)
    assert file.name == "lap-blanket-report-ann.json"
    report = read_report(file.read_text(encoding="utf-8"))
    assert (report.title, report.knitter, report.text) == (PIECE["title"], "Ann", "A pleasure.")
    assert report.digest == PIECE["digest"]
    assert float(report.minutes) == pytest.approx(steps * ms / MINUTE, abs=0.1)
    assert (report.interruptions, float(report.interruption_minutes)) == (1, pytest.approx(40, abs=0.1))
    assert float(sum(each.minutes for each in report.blocks)) == pytest.approx(float(report.minutes), abs=0.1)
    assert {each.block for each in report.blocks} == {cue["block"] for cue in CUES[:steps]}
    assert [(note.steps_done, note.block, note.text) for note in report.notes] == [
        (here["first_step"], here["block"], "tight <b>here</b>")
    ]
    assert [(mishap.kind, mishap.block) for mishap in report.mishaps] == [("jam", here["block"])]
    assert [(count.planned, count.counted) for count in report.counts] == [(20, 21)]
    assert float(report.yarns[0].grams) == 87.5
    assert report.begun == report.ended == "2027-01-15"

    second = tmp_path / "bea.json"
    hostile = {
        **json.loads(file.read_text(encoding="utf-8")),
        "knitter": "<img src=x onerror=alert(1)>",
        "text": "<script>alert(1)</script>",
    }
    second.write_text(json.dumps(hostile), encoding="utf-8")
    other = tmp_path / "other.json"
    other.write_text(json.dumps({**hostile, "knitter": "Cleo", "digest": "0" * 12}), encoding="utf-8")
    with visitor() as one:
        page = one.open(f"{served}plan/", live=True)
        page.fill("[name=title]", "Mine")
        page.wait_for_selector("output >> text=Mine")
        page.goto(f"{served}reference/reports/")
        page.wait_for_selector("#reports-with")
        page.wait_for_function("() => document.documentElement.dataset.marked === 'yes'")  # marks.js has been here
        before = page.evaluate(KEPT)
        assert any("last.panel-plan" in key for key in before)
        page.set_input_files(".ww-reports input[multiple]", [file, second, other])
        page.wait_for_selector(".ww-reports-found table")
        words = page.text_content(".ww-reports-found") or ""
        assert "Cleo: this report is of another plan" in words
        assert "Ann: tight <b>here</b>" in words
        assert "The carriage is stuck" in words
        assert "<script>alert(1)</script>" in words
        assert page.query_selector(".ww-reports-found :is(img, script, b)") is None
        heads = page.eval_on_selector_all(".ww-reports-found thead tr", "all => [...all[0].cells].map((one) => one.textContent)")
        assert heads == ["What", "Plan", "Ann", "<img src=x onerror=alert(1)>"]
        for width, height in ((1024, 768), (390, 844)):
            page.set_viewport_size({"width": width, "height": height})
            assert barriers(page) == []
        assert page.evaluate(KEPT) == before, "nothing of the designer's is changed, and nothing of a report is kept"
