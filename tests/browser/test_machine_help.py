"""At the machine when something happens: lost places, rows to take back, notes, time, sound, several pieces."""

from __future__ import annotations

import random
from typing import Any

import pytest

from stepping import CUES, FORWARD, HURRY, PIECE, READY, at, stand_at, step_to
from wedgework.bed import across
from wedgework.calculators import panel_plan
from wedgework.declare.calculator import read_all
from wedgework.faces.machine_windows import MISHAPS
from wedgework.formats.plan import Hold, Knit, Plan, Set, Work
from wedgework.whereabouts import Seen, find, sights

YARNS = [yarn["id"] for yarn in PIECE["yarns"]]
# A clock that only a test puts forward: `skip` is in milliseconds.
SKIP = "globalThis.skip = 0; Date.now = () => 1.8e12 + globalThis.skip;"


@pytest.fixture
def machine(served: str) -> str:
    return f"{served}machine/"


@pytest.fixture(scope="module")
def plan() -> Plan:
    return panel_plan.planned(read_all(panel_plan.CALCULATOR, {}))[0]


def opened(page, *windows: str) -> None:
    for which in windows:
        page.locator(f"[data-opens={which}]").first.click()
        page.wait_for_selector(f"dialog.m-{which}[open]")


# --- one row at a time --------------------------------------------------------------------------------------------------


def test_a_step_is_opened_into_rows_and_closed_again(machine: str, visitor) -> None:
    two = next(cue for cue in CUES if cue["rows"] == 2 and cue["now"] and CUES[cue["index"] + 1]["rows"] == 2)
    first, second = two["passes"]
    with visitor() as one:
        one.context.add_init_script(HURRY)
        page = one.open(machine)
        stand_at(page, two["index"])
        page.click(".m-single")
        page.wait_for_selector(".m-single[aria-pressed=true]")
        assert page.inner_text(".m-rows-now") == first["knit"]
        assert page.inner_text(".m-where") == two["where"]
        assert "row 1 of 2" in page.inner_text(".m-run")
        page.keyboard.press("PageDown")
        page.wait_for_selector("[data-done='1']")
        assert page.inner_text(".m-rows-now") == second["knit"]
        assert page.inner_text(".m-where") == second["where"]
        assert page.locator(".m-move").count() == 0, "the needles are moved already"
        assert page.get_attribute("[data-row]", "data-row") == str(two["row_before"] + 1)
        assert page.get_attribute(".m-single", "aria-pressed") == "true"
        page.reload()
        page.wait_for_selector(f"{READY} [data-done='1']")
        page.keyboard.press("PageUp")
        page.wait_for_selector("[data-done='0']")
        page.keyboard.press("PageDown")
        page.wait_for_selector("[data-done='1']")
        page.keyboard.press("PageDown")
        at(page, two["index"] + 1)
        page.keyboard.press("PageUp")
        page.wait_for_selector("[data-done='1']")
        page.click(".m-single")
        page.wait_for_selector(".m-single[aria-pressed=false]")
        page.keyboard.press("Space")  # a pedal goes on, though a finger was on that button last
        at(page, two["index"] + 1)
        assert page.inner_text(".m-rows-now") == CUES[two["index"] + 1]["knit"]


# --- where am I? ----------------------------------------------------------------------------------------------------------


def looks(plan: Plan, count: int) -> list[Seen]:
    """What people say: true, half told, or misread by a needle."""
    chance = random.Random(20)
    said = []
    for one in chance.sample(sights(plan), count):
        colour, open_ = one.colour or "none", one.open or "none"
        if isinstance(open_, tuple) and chance.random() < 0.3:
            open_ = (open_[0], open_[1] + 1 or 1)
        told = {"yarn": one.yarn, "colour": colour, "open": open_, "carriage": one.carriage, "wrapped": one.wrapped}
        told["counter"] = one.counter + chance.choice((0, 0, 1))
        keep = {key: value for key, value in told.items() if chance.random() < 0.75} or {"carriage": one.carriage}
        said.append(Seen(**keep))  # type: ignore[arg-type]
    return said


def for_the_page(seen: Seen) -> dict[str, Any]:
    def ends(told):
        return [0, 0] if told == "none" else told

    return {
        "yarn": None if seen.yarn is None else YARNS.index(seen.yarn) if seen.yarn else -1,
        "colour": ends(seen.colour),
        "open": ends(seen.open),
        "carriage": None if seen.carriage is None else 1 if seen.carriage == "R" else -1,
        "wrapped": None if seen.wrapped is None else int(seen.wrapped),
        "counter": seen.counter,
    }


def test_the_page_finds_what_the_core_finds(machine: str, visitor, plan: Plan) -> None:
    """No Python runs on this page; its comparison is held against the core's, places and sentences."""
    places, said = sights(plan), looks(plan, 150)
    wanted = []
    for near, seen in enumerate(said):
        answer = find(places, seen, near=near)
        fits = [[f.sight.cue, f.sight.part, f.sight.done, [str(d) for d in f.differs if d.what != "yarn"]] for f in answer.fits]
        wanted.append([answer.alike, fits])
    script = """async ([sights, said]) => {
        const { findPlaces, differenceText } = await import(scriptAt('machine-find.js'));
        return said.map((seen, near) => {
            const { fits, alike } = findPlaces(sights, seen, near, 3);
            const words = (fit) => fit.differs.filter(([what]) => what !== 'yarn').map((one) => differenceText(one, [], 3));
            return [alike, fits.map((f) => [f.cue, ['before', 'resting', 'made'][f.part], f.done, words(f)])];
        });
    }"""
    with visitor() as one:
        page = one.open(machine)
        page.wait_for_selector(READY)
        assert page.evaluate(script, [PIECE["sights"], [for_the_page(seen) for seen in said]]) == wanted


def test_what_is_seen_leads_to_the_place(machine: str, visitor, plan: Plan) -> None:
    true = next(one for one in sights(plan) if one.row > 150 and one.done == 1 and one.counter > 20)
    assert true.colour
    assert true.open

    def needle(n: int) -> str:
        return f"{'l' if n < 0 else 'R'}{abs(n)}"

    with visitor() as one:
        page = one.open(machine)
        stand_at(page, 3)
        opened(page, "trouble", "find")
        page.click(".m-find [type=submit]")
        assert "at least one thing" in page.inner_text(".m-find [data-said]")
        page.select_option("#m-find-yarn", str(YARNS.index(true.yarn)))
        page.fill("[name=open-from]", "12")
        page.click(".m-find [type=submit]")
        assert "L12 or R3" in page.inner_text(".m-find [data-said]")
        for which, ends in (("colour", true.colour), ("open", true.open)):
            page.fill(f"[name={which}-from]", needle(ends[0]))
            page.fill(f"[name={which}-to]", needle(ends[1]))
        page.check(f"[name=carriage][value={true.carriage}]")
        page.fill("[name=find-counter]", str(true.counter))
        page.click(".m-find [type=submit]")
        first = page.locator(".m-fits button").first
        assert f"Step {true.cue + 1}," in first.inner_text()
        assert "Row 1 of" in first.inner_text()
        first.click()
        page.wait_for_selector(f"[data-cue='{true.cue}'][data-done='1']")
        assert "You were at step 4" in page.inner_text(".m-notices"), "a jump can be undone"
        page.click(".m-notices [data-undo]")
        at(page, 3)


# --- taking rows back -----------------------------------------------------------------------------------------------------


def open_needles(plan: Plan) -> list[tuple[list[int], str]]:
    """By hand: the needles that are not held, and the carriage's side, after each pass and before the needles move."""
    first, last = plan.start.working
    held: set[int] = set()
    lever = "knit"
    found = [(list(across(first, last)), str(plan.start.carriage))]
    for step in plan.steps:
        if isinstance(step, Set):
            lever = step.hold_lever or lever
        elif isinstance(step, Hold):
            held |= set(step.needles)
        elif isinstance(step, Work):
            held -= set(step.needles)
        elif isinstance(step, Knit):
            if lever == "knit":
                held.clear()
            found.append(([n for n in across(first, last) if n not in held], step.to))
    return found


def test_rows_taken_back_lead_to_the_bed_as_it_was(machine: str, visitor, plan: Plan) -> None:
    truth = open_needles(plan)
    chance = random.Random(7)
    asked = []
    for cue in chance.sample([cue for cue in CUES if cue["rows"] and cue["kind"] == "knit" and cue["counter_before"] > 1], 60):
        done = chance.randrange(cue["rows"])
        asked.append([cue["index"], done, chance.randint(1, min(12, cue["counter_before"] + done - 1))])
    script = """async ([cues, asked]) => {
        const back = await import(scriptAt('machine-back.js'));
        return asked.map(([index, done, n]) => {
            const { to, steps } = back.takeBack(cues, { index, done }, n);
            return [to, steps, back.bedAt(cues, to).open, back.mostRows(cues, { index, done })];
        });
    }"""
    with visitor() as one:
        page = one.open(machine)
        page.wait_for_selector(READY)
        for (index, done, n), (to, steps, runs, most) in zip(asked, page.evaluate(script, [CUES, asked]), strict=True):
            cue, target = CUES[index], CUES[to["index"]]
            row = cue["row_before"] + done - n
            assert target["row_before"] + to["done"] == row
            assert most == cue["counter_before"] + done
            needles, side = truth[row]
            assert [m for first, last in runs for m in across(first, last)] == needles
            text = " ".join(steps)
            assert ("free pass" in text) == bool(n % 2)
            assert f"Carriage {'left' if side == 'L' else 'right'}, just clear" in text
            assert f"Counter to {target['counter_before'] + to['done']:03}." in text
            if index != to["index"] and n % 2 == 0:
                now = set(truth[row + n][0])
                assert ("Then to UWP" in text) == bool(set(needles) - now)
                assert ("Then to HP" in text) == bool(now - set(needles))


def test_taking_back_is_shown_in_steps_and_goes_there(machine: str, visitor) -> None:
    cue = next(cue for cue in CUES if cue["rows"] == 2 and cue["counter_before"] > 8 and cue["now"])
    with visitor() as one:
        page = one.open(machine)
        stand_at(page, cue["index"])
        opened(page, "trouble", "back")
        page.fill("#m-back-count", "999")
        page.click(".m-back [type=submit]")
        assert f"type 1 to {cue['counter_before']}" in page.inner_text(".m-back [data-said]")
        page.fill("#m-back-count", "3")
        page.click(".m-back [type=submit]")
        text = page.inner_text(".m-back-steps")
        assert "If the needles of this step are moved already" in text
        assert "one free pass" in text
        assert "UWP" in text
        page.click(".m-back-go")
        page.wait_for_function(f"() => document.querySelector('[data-row]').dataset.row === '{cue['row_before'] - 3}'")


def test_every_mishap_has_its_steps(machine: str, visitor) -> None:
    with visitor() as one:
        page = one.open(machine)
        page.wait_for_selector(READY)
        opened(page, "trouble")
        for key in MISHAPS:
            page.click(f"[data-mishap={key}] summary")
            steps = page.locator(f"[data-mishap={key}] li")
            assert steps.count() >= 3
            assert steps.first.is_visible()
        assert "card" not in page.inner_text(".m-trouble").lower()


# --- time -------------------------------------------------------------------------------------------------------------------


def test_time_for_a_row_and_time_left(machine: str, visitor) -> None:
    begin = next(cue["index"] for cue in CUES if cue["nth"] == 1 and all(one["rows"] == 2 for one in CUES[cue["index"] :][:8]))
    with visitor() as one:
        one.context.add_init_script(HURRY + SKIP)
        page = one.open(machine)
        stand_at(page, begin)
        for step, seconds in enumerate((28, 28, 900, 30, 26, 60, 28), 1):
            page.evaluate(f"() => globalThis.skip += {seconds * 1000}")
            step_to(page, begin + step, "Space")
        # Six steps of two rows: 14, 14, 15, 13, 30 and 14 s a row; the quarter of an hour was a pause.
        rows = PIECE["rows"] - CUES[begin + 7]["row_before"]
        hours, minutes = divmod(round(rows * 14 / 60), 60)
        assert page.inner_text(".m-pace") == f"14 s a row, {hours} h {minutes} min left"
        page.reload()
        page.wait_for_selector(READY)
        opened(page, "more")
        assert "the median of the last 6 steps" in page.inner_text(".m-times")
        assert "Pauses so far: 1, together 15 min" in page.inner_text(".m-times")


def test_leafing_is_not_knitting(machine: str, visitor) -> None:
    with visitor() as one:
        one.context.add_init_script(HURRY)
        page = one.open(machine)
        stand_at(page, 20)
        for step in range(21, 33):
            step_to(page, step, "Space")
        assert page.locator(".m-pace").is_hidden()


# --- notes and the gauge ------------------------------------------------------------------------------------------------------


def test_a_note_stays_with_its_step(machine: str, visitor) -> None:
    with visitor() as one:
        one.context.add_init_script(HURRY)
        page = one.open(machine)
        stand_at(page, 12)
        opened(page, "more")
        page.fill("#m-note", "knot in the yarn <b>here</b>")
        page.keyboard.press("Escape")  # closing loses nothing
        page.wait_for_selector(".m-note:visible")
        assert page.inner_text(".m-note") == "Note: knot in the yarn <b>here</b>"
        step_to(page, 13, "PageDown")
        assert page.locator(".m-note").is_hidden()
        page.reload()
        page.wait_for_selector(READY)
        opened(page, "more")
        page.click(".m-more details summary")
        page.click(".m-notes button")
        at(page, 12)
        assert "knot in the yarn" in page.inner_text(".m-note")
        opened(page, "more")
        page.fill("#m-note", "")
        page.click(".m-note-save")
        page.wait_for_function("() => document.querySelector('.m-note-said').textContent === 'Kept.'")
        assert page.inner_text(".m-notes") == "" or "None yet" in page.locator(".m-notes").text_content()


def test_the_gauge_in_the_middle_is_compared_with_the_plan(machine: str, visitor) -> None:
    with visitor() as one:
        page = one.open(machine)
        stand_at(page, 50)
        opened(page, "more")
        for name, typed in (("stitches", "30"), ("width", "20 cm"), ("rows", "38")):
            page.fill(f"#m-gauge-{name}", typed)
        page.click(".m-gauge [type=submit]")
        assert "All four are needed" in page.inner_text(".m-gauge-said")
        page.fill("#m-gauge-height", "200")
        page.click(".m-gauge [type=submit]")
        page.wait_for_function("() => document.querySelector('.m-gauge-said').textContent.includes('Measured')", timeout=60_000)
        assert "Measured: 15.0 stitches and 19.0 rows per 10 cm" in page.inner_text(".m-gauge-said")


# --- several pieces -----------------------------------------------------------------------------------------------------------


def test_a_piece_is_removed_with_a_question_and_can_be_put_back(machine: str, visitor) -> None:
    other = {**PIECE, "title": "Scarf of three", "digest": "0123456789ab", "cues": CUES[:40]}
    line = "[data-piece='0123456789ab']"
    with visitor() as one:
        page = one.open(machine)
        page.wait_for_selector(READY)
        page.evaluate(
            "async (piece) => { const s = await import(scriptAt('store.js'));"
            " await s.putPiece(piece); await s.setPlace(piece.digest, 7); }",
            other,
        )
        opened(page, "more")
        page.click(f"li:has({line}) >> text=Remove")
        assert "Remove Scarf of three?" in page.inner_text(".m-pieces")
        page.click("text=Keep it")
        page.click(f"li:has({line}) >> text=Remove")
        page.click("text=Yes, remove")
        page.wait_for_selector(".m-removed li")
        assert page.locator(line).count() == 0
        page.reload()
        page.wait_for_selector(READY)
        opened(page, "more")
        page.click("text=Put it back")
        page.wait_for_selector(line)
        assert "Step 8 of 40" in page.inner_text(".m-pieces")
        page.click(f"li:has({line}) >> text=Remove")
        page.click("text=Yes, remove")
        page.click("text=Delete for good")
        page.wait_for_selector(".m-removed li", state="detached")
        left = "async () => (await (await import(scriptAt('store.js'))).getPiece('0123456789ab'))"
        assert page.evaluate(left) is None
        assert page.evaluate("() => Object.keys(localStorage).filter((key) => key.includes('0123456789ab'))") == []


# --- sound, vibration, voice ----------------------------------------------------------------------------------------------------


def test_aids_are_off_and_say_what_the_device_lacks(machine: str, visitor) -> None:
    none = "delete Navigator.prototype.vibrate; delete globalThis.AudioContext; delete globalThis.speechSynthesis;"
    none += "Object.defineProperty(globalThis, 'speechSynthesis', { get: () => ({ getVoices: () => [] }) });"
    with visitor() as one:
        one.context.add_init_script(none)
        page = one.open(machine)
        page.wait_for_selector(READY)
        opened(page, "more")
        for key, words in (("sound", "no sound"), ("shake", "does not vibrate"), ("speak", "no English voice of its own")):
            assert page.get_attribute(f"[data-aid={key}]", "aria-pressed") == "false"
            page.click(f"[data-aid={key}]")
            page.wait_for_function(f"() => document.querySelector('[data-aid-said={key}]').textContent.includes('{words}')")
            assert page.get_attribute(f"[data-aid={key}]", "aria-pressed") == "false"


def test_aids_act_at_every_step_once_asked_for(machine: str, visitor) -> None:
    """Stand-ins for the device's own parts; a voice that needs a network is never taken."""
    parts = """
        globalThis.done = [];
        Navigator.prototype.vibrate = (ms) => done.push('shake');
        AudioContext.prototype.createOscillator = function () { done.push('sound'); throw new Error('no sound today'); };
        globalThis.SpeechSynthesisUtterance = class { constructor(text) { this.text = text; } };
        const voices = [{ localService: false, lang: 'en-GB', name: 'far' }, { localService: true, lang: 'en-US', name: 'near' }];
        Object.defineProperty(globalThis, 'speechSynthesis', { get: () => ({ getVoices: () => voices, cancel() {},
            speak(said) { done.push(`${said.voice.name}: ${said.text}`); } }) });
    """
    with visitor() as one:
        one.context.add_init_script(HURRY + parts)
        page = one.open(machine)
        stand_at(page, 4)
        step_to(page, 5, "Space")
        assert page.evaluate("() => done") == [], "off until asked for"
        opened(page, "more")
        for key in ("shake", "speak"):
            page.click(f"[data-aid={key}]")
            page.wait_for_selector(f"[data-aid={key}][aria-pressed=true]")
        page.keyboard.press("Escape")
        page.evaluate("() => { done.length = 0; }")
        step_to(page, 6, "Space")
        cue = CUES[6]
        done = page.evaluate("() => done")
        assert done[0] == "shake"
        assert done[1].startswith("near: ")
        assert cue["knit"] in done[1]
        page.reload()
        page.wait_for_selector(READY)
        opened(page, "more")
        page.wait_for_selector("[data-aid=shake][aria-pressed=true]")
        page.keyboard.press("Escape")
        step_to(page, 7, "Space")
        assert "shake" in page.evaluate("() => done")


# --- faults of the page itself ------------------------------------------------------------------------------------------------


def test_a_script_that_fails_ends_in_a_sentence(machine: str, visitor) -> None:
    with visitor() as one:
        one.context.add_init_script(
            HURRY + "globalThis.breakNow = () => { document.createElementNS = () => { throw new Error('broken'); }; };"
        )
        page = one.open(machine)
        stand_at(page, 30)
        page.evaluate("() => breakNow()")
        page.click(FORWARD)
        page.wait_for_selector("[data-notice=failed]")
        assert "Something in this page failed" in page.inner_text(".m-notices")
        page.click("[data-notice=failed] button")
        page.wait_for_selector(READY)
        at(page, 31)  # it was stored before it failed to be drawn


def test_a_script_that_never_comes_ends_in_a_sentence(machine: str, visitor) -> None:
    with visitor(allow=("console: Failed to load resource",)) as one:
        one.context.route("**/machine-show.js", lambda route: route.abort())
        page = one.open(machine)
        page.wait_for_load_state()
        stuck = page.locator(".m-stuck")
        assert stuck.evaluate("(e) => getComputedStyle(e).visibility") == "hidden"
        page.evaluate("() => document.getAnimations().forEach((one) => one.finish())")
        assert stuck.evaluate("(e) => getComputedStyle(e).visibility") == "visible"
        assert "has not started" in stuck.inner_text()


def test_on_a_telephone_the_start_does_not_scroll(machine: str, visitor) -> None:
    for size in ({"width": 390, "height": 844}, {"width": 375, "height": 667}):
        with visitor(viewport=size) as one:
            page = one.open(machine)
            page.wait_for_selector(READY)
            tall = page.evaluate("() => { const c = document.querySelector('.m-cue'); return [c.scrollHeight, c.clientHeight]; }")
            assert tall[0] <= tall[1] + 1
            page.click(".m-cautions-short button")
            assert "Needle hooks" in page.inner_text(".m-before")
