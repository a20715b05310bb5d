"""At the machine: one step at a time, with keys and touches; whatever happens, the place is right or the person is told."""

from __future__ import annotations

import io
import os
import signal
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Error, Page, ViewportSize
from pypdf import PdfReader

from builder.environment import find_chromium
from chromium import QUIET
from wedgework.faces.piece import piece_of

TOP = Path(__file__).resolve().parents[2]
AXE = (TOP / "site" / "node_modules" / "axe-core" / "axe.min.js").read_text(encoding="utf-8")
FINDINGS = "() => axe.run().then(r => r.violations.flatMap(v => v.nodes.map(n => `${v.id}: ${n.html.slice(0, 120)}`)))"
SIZES: list[ViewportSize] = [{"width": 1024, "height": 768}, {"width": 768, "height": 1024}, {"width": 390, "height": 844}]
READY = ".machine[data-ready]"
FORWARD, BACK = "[data-action=forward]", "[data-action=back]"
# The page's own clock a hundred times as fast: what has to wait for a finger waits no longer than the test needs.
HURRY = "const real = performance.now.bind(performance); performance.now = () => real() * 100;"
NO_LOCAL = "Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); };"
NO_BASE = "IDBFactory.prototype.open = () => { throw new DOMException('refused', 'SecurityError'); };"
PIECE = piece_of({})
CUES: list[dict] = PIECE["cues"]  # type: ignore[assignment]


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
        "async (index) => (await import(new URL('../app/store.js', location.href)))"
        ".setPlace(document.querySelector('[data-machine]').dataset.machine, index)",
        index,
    )
    page.reload()
    page.wait_for_selector(READY)
    at(page, index)


@pytest.fixture
def machine(served: str) -> str:
    return f"{served}machine/"


@pytest.fixture
def person(browser: Browser, tmp_path: Path, machine: str):
    """`with person() as (context, page):` is a browser with a disk of its own; the next one finds what the last one kept."""

    @contextmanager
    def visit() -> Iterator[tuple[BrowserContext, Page]]:
        context = browser.browser_type.launch_persistent_context(
            str(tmp_path / "person"),
            executable_path=find_chromium(),
            args=QUIET,
            viewport=SIZES[0],
        )
        context.add_init_script(HURRY)
        page = context.pages[0]
        page.goto(machine)
        page.wait_for_selector(READY)
        try:
            yield context, page
        finally:
            with suppress(Error):  # a browser that was killed cannot be closed
                context.close()

    return visit


# --- before any script, and against it ------------------------------------------------------------------------------


def test_the_first_step_stands_before_any_script(browser: Browser, machine: str) -> None:
    context = browser.new_context(java_script_enabled=False, viewport=SIZES[0])
    page = context.new_page()
    page.goto(machine)
    text = page.inner_text(".machine")
    for words in (CUES[0]["where"], *CUES[0]["before"], CUES[0]["check"], CUES[0]["next"], "Needle hooks"):
        assert words in text
    assert cue_of(page) == 0
    assert page.get_attribute("[data-row]", "data-row") == "0"
    assert page.locator(FORWARD).is_disabled()
    assert "Without scripts" in text
    context.close()


def test_the_script_makes_of_the_first_step_what_the_build_made(browser: Browser, machine: str, visitor) -> None:
    context = browser.new_context(java_script_enabled=False)
    built = context.new_page()
    built.goto(machine)
    with visitor() as one:
        live = one.open(machine)
        live.wait_for_selector(READY)
        for part in (".m-cue", ".m-bar"):
            assert live.inner_text(part) == built.inner_text(part)
    context.close()


def test_every_step_is_shown_whole_and_in_the_words_of_the_trade(machine: str, visitor) -> None:
    """Ten from the beginning, and one of each kind: nothing of the record is missing on the screen."""
    kinds = {cue["kind"]: cue["index"] for cue in CUES}
    with visitor() as one:
        page = one.open(machine)
        for index in sorted({*range(10), *kinds.values()}):
            stand_at(page, index)
            cue = CUES[index]
            shown = " ".join(page.inner_text(".machine").split())
            moves = [f"{now['where']} {now['what']}".strip() for now in cue["now"]] or cue["before"]
            for words in (cue["where"], *moves, cue["knit"], cue["run"], cue["check"], cue["next"], cue["block_name"]):
                assert words in shown, index
            assert page.get_attribute("[data-row]", "data-row") == str(cue["row_before"])
            assert not {"card", "cards", "turn", "turns"} & set(shown.lower().replace(".", " ").split())


def test_every_needle_in_use_is_drawn_once(machine: str, visitor) -> None:
    count = """() => [...document.querySelectorAll('.m-bed-drawing [data-needles]')]
        .map(path => [path.dataset.needles, path.getAttribute('d').match(/M/g).length])"""
    with visitor() as one:
        page = one.open(machine)
        for index in (1, 4, 14, 150, len(CUES) - 2):
            stand_at(page, index)
            bed = CUES[index]["bed"]
            wanted = {
                kind: sum(1 for first, last in bed[kind] for n in range(first, last + 1) if n)
                for kind in ("knitting", "held", "returning", "holding")
                if bed[kind]
            }
            assert dict(page.evaluate(count)) == wanted
            assert sum(wanted.values()) == 106


# --- moving -----------------------------------------------------------------------------------------------------------


def test_keys_and_touches_go_forward_and_back(machine: str, visitor) -> None:
    with visitor() as one:
        one.context.add_init_script(HURRY)
        page = one.open(machine)
        page.wait_for_selector(READY)
        assert page.locator(BACK).is_disabled(), "before the first step there is none"
        for index, how in enumerate(("tap", "Space", "Enter", "ArrowRight", "ArrowDown", "PageDown", "tap"), 1):
            step_to(page, index, how)
        for index, how in zip((6, 5, 4, 3), ("tap", "ArrowLeft", "ArrowUp", "PageUp"), strict=True):
            step_to(page, index, how)
        page.click(BACK)
        at(page, 2)
        page.keyboard.press("Space")
        at(page, 3)  # a pedal goes on, though a finger was on the other button last


def test_a_double_tap_counts_once(machine: str, visitor) -> None:
    """The guard alone, with a clock that the test holds."""
    with visitor() as one:
        page = one.open(machine)
        page.wait_for_selector(READY)
        counted = page.evaluate(
            """async () => {
                const { guard, TAP_MS } = await import(new URL('../app/machine-taps.js', location.href));
                let now = 0;
                const counts = guard(TAP_MS, () => now);
                return [0, 120, 249, 250, 400, 499, 500, 5000].map((at) => { now = at; return counts(); });
            }"""
        )
        assert counted == [True, False, False, True, False, False, True, True]
        # And the page: two taps without a pause between are one step.
        page.evaluate(f"() => {{ const b = document.querySelector('{FORWARD}'); b.click(); b.click(); }}")
        at(page, 1)
        page.wait_for_timeout(300)
        assert cue_of(page) == 1
        assert page.evaluate("async () => (await import(new URL('../app/machine-taps.js', location.href))).TAP_MS") == 250


def test_a_key_held_down_or_meant_for_something_else_moves_nothing(machine: str, visitor) -> None:
    with visitor() as one:
        one.context.add_init_script(HURRY)
        page = one.open(machine)
        page.wait_for_selector(READY)
        page.keyboard.down("ArrowRight")
        at(page, 1)
        for _ in range(5):
            page.keyboard.down("ArrowRight")  # repeats, as of a key that is not let go
        page.keyboard.up("ArrowRight")
        page.keyboard.press("Control+ArrowRight")
        page.click("[data-opens=go]")
        page.fill("#m-row", "12")
        for key in ("ArrowLeft", "Space", "PageDown"):
            page.locator("#m-row").press(key)
        page.keyboard.press("Escape")
        page.wait_for_timeout(100)
        assert cue_of(page) == 1


def test_a_jump_and_its_undo(machine: str, visitor) -> None:
    with visitor() as one:
        one.context.add_init_script(HURRY)
        page = one.open(machine)
        page.wait_for_selector(READY)
        stand_at(page, 57)
        page.click("[data-opens=go]")
        page.click(".m-go-blocks li:nth-child(5) button")
        fifth = next(cue for cue in CUES if cue["block"] == "b4")
        at(page, fifth["index"])
        assert "You were at step 58" in page.inner_text(".m-notices")
        page.click(".m-notices button")
        at(page, 57)
        assert page.inner_text(".m-notices") == ""
        # By the rows that are done; a number that is none is answered, and nothing moves.
        page.click("[data-opens=go]")
        page.fill("#m-row", "123456")
        page.click(".m-go-row button")
        assert "0 to" in page.inner_text("#m-row-said")
        page.fill("#m-row", "500")
        page.click(".m-go-row button")
        page.wait_for_function("() => document.querySelector('[data-cue]').dataset.cue !== '57'")
        cue = CUES[cue_of(page)]
        assert cue["row_before"] <= 500 < cue["row_after"]
        # The offer is still there after the page was closed, in the window.
        page.reload()
        page.wait_for_selector(READY)
        page.click("[data-opens=go]")
        page.click(".m-go [data-undo]")
        at(page, 57)


def test_a_check_list_keeps_its_ticks(machine: str, visitor) -> None:
    with visitor() as one:
        page = one.open(machine)
        page.wait_for_selector(READY)
        lines = page.locator(".m-list label")
        lines.nth(0).click()
        lines.nth(1).click()
        assert page.locator(".m-list .is-now").inner_text() == CUES[0]["before"][2]
        page.wait_for_timeout(100)
        page.reload()
        page.wait_for_selector(READY)
        assert page.locator(".m-list :checked").count() == 2
        page.keyboard.press("Space")
        at(page, 1)  # not the line that was touched last


# --- the place --------------------------------------------------------------------------------------------------------


def test_25_steps_then_closed_then_the_same_place(person) -> None:
    with person() as (_, page):
        for index in range(1, 26):
            step_to(page, index, "tap" if index % 2 else "Space")
    with person() as (_, page):
        at(page, 25)
        assert page.get_attribute("[data-row]", "data-row") == str(CUES[25]["row_before"])


def test_a_killed_browser_loses_nothing(person, tmp_path: Path) -> None:
    """Killed the moment a step is shown, with no time to tidy up."""
    with person() as (_, page):
        for index in range(1, 8):
            step_to(page, index, "Space")
        kill_browser(tmp_path / "person")
    with person() as (_, page):
        at(page, 7)


def kill_browser(folder: Path) -> None:
    """Every process of the browser that this test started, by its id: its command names the folder that only it has."""
    listed = subprocess.run(["ps", "-axww", "-o", "pid=,command="], capture_output=True, text=True, check=True).stdout
    found = [int(line.split()[0]) for line in listed.splitlines() if f"--user-data-dir={folder}" in line]
    assert found
    for process in found:
        try:
            os.kill(process, signal.SIGKILL)
        except ProcessLookupError:
            continue


def test_storage_that_refuses_is_said_and_the_work_goes_on(machine: str, visitor) -> None:
    with visitor() as one:
        one.context.add_init_script(HURRY + NO_LOCAL + NO_BASE)
        page = one.open(machine)
        page.wait_for_selector(READY)
        for index in range(1, 6):
            step_to(page, index)
        assert "does not keep the place" in page.inner_text(".m-notices")
        assert "Note the step: 6" in page.inner_text(".m-notices")


@pytest.mark.parametrize("refuses", [NO_LOCAL, NO_BASE], ids=["localStorage", "IndexedDB"])
def test_one_storage_of_the_two_is_enough(machine: str, visitor, refuses: str) -> None:
    with visitor() as one:
        one.context.add_init_script(HURRY + refuses)
        page = one.open(machine)
        page.wait_for_selector(READY)
        for index in range(1, 6):
            step_to(page, index)
        assert "in one way instead of two" in page.inner_text(".m-notices")
        page.reload()
        page.wait_for_selector(READY)
        at(page, 5)


def test_two_windows_on_one_piece(machine: str, visitor) -> None:
    with visitor() as one:
        one.context.add_init_script(HURRY)
        first, second = one.open(machine), one.open(machine)
        for page in (first, second):
            page.wait_for_selector(READY)
        for index in range(1, 4):
            step_to(first, index)
        second.wait_for_selector("[data-notice=elsewhere]")
        assert "to step 4" in second.inner_text(".m-notices")
        assert cue_of(second) == 0, "it is told, not moved"
        second.click("[data-notice=elsewhere] button")
        at(second, 3)
        step_to(second, 4)
        first.wait_for_selector("[data-notice=elsewhere]")
        step_to(first, 4)
        first.reload()
        first.wait_for_selector(READY)
        at(first, 4)


def test_several_pieces_each_with_its_place(machine: str, visitor) -> None:
    other = {**PIECE, "title": "Scarf of three", "digest": "0123456789ab", "cues": CUES[:40]}
    with visitor() as one:
        one.context.add_init_script(HURRY)
        page = one.open(machine)
        page.wait_for_selector(READY)
        step_to(page, 1)
        page.evaluate(
            "async (piece) => { const s = await import(new URL('../app/store.js', location.href));"
            " await s.putPiece(piece); await s.openPiece(piece.digest); }",
            other,
        )
        page.reload()
        page.wait_for_selector(READY)
        assert page.get_attribute("[data-machine]", "data-machine") == other["digest"]
        at(page, 0)
        for index in range(1, 4):
            step_to(page, index)
        page.click("[data-opens=more]")
        page.wait_for_selector(".m-more[open]")
        text = page.inner_text(".m-pieces")
        assert "Scarf of three" in text
        assert "Step 4 of 40" in text
        assert PIECE["title"] in text
        page.click(f".m-pieces [data-piece='{PIECE['digest']}']")
        at(page, 1)
        page.click("[data-opens=more]")
        page.click(f".m-pieces [data-piece='{other['digest']}']")
        at(page, 3)
        page.reload()
        page.wait_for_selector(READY)
        at(page, 3)


def test_a_piece_from_a_newer_version_is_refused_in_words(machine: str, visitor) -> None:
    with visitor() as one:
        page = one.open(machine)
        page.wait_for_selector(READY)
        page.evaluate(
            "async (piece) => { const s = await import(new URL('../app/store.js', location.href));"
            " await s.putPiece(piece); await s.openPiece(piece.digest); }",
            {**PIECE, "version": 99, "made_by": "9.9.9", "digest": "fedcba987654"},
        )
        page.reload()
        page.wait_for_selector(READY)
        assert "newer Wedgework, 9.9.9" in page.inner_text(".m-notices")
        assert page.get_attribute("[data-machine]", "data-machine") == PIECE["digest"]


def test_it_works_while_the_engine_does_not(machine: str, visitor) -> None:
    with visitor(allow=("console: Failed to load resource",)) as one:
        one.context.add_init_script(HURRY)
        one.context.route("**/worker.js", lambda route: route.abort())
        one.context.route("**/*.wasm*", lambda route: route.abort())
        page = one.open(machine)
        page.wait_for_selector(READY)
        for index in range(1, 4):
            step_to(page, index)


def grown(page: Page, steps: int) -> tuple[int, int]:
    """Elements before and after so many steps, there and back, as fast as the page stores them."""
    return tuple(
        page.evaluate(
            """async (steps) => {
                const cue = document.querySelector('[data-cue]');
                const go = (key) => new Promise((shown) => {
                    const seen = new MutationObserver(() => { seen.disconnect(); shown(); });
                    seen.observe(cue, { attributes: true, attributeFilter: ['data-cue'] });
                    dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
                });
                const count = () => document.querySelectorAll('*').length;
                for (let i = 0; i < 30; i += 1) await go('ArrowRight');
                const before = count();
                for (let i = 0; i < steps / 20; i += 1) {
                    for (let n = 0; n < 10; n += 1) await go('ArrowRight');
                    for (let n = 0; n < 10; n += 1) await go('ArrowLeft');
                }
                return [before, count()];
            }""",
            steps,
        )
    )


@pytest.mark.parametrize("steps", [200, pytest.param(2000, marks=pytest.mark.long)])
def test_the_page_does_not_grow(machine: str, visitor, steps: int) -> None:
    with visitor() as one:
        one.context.add_init_script(HURRY.replace("* 100", "* 1000"))
        page = one.open(machine)
        page.wait_for_selector(READY)
        before, after = grown(page, steps)
        assert after == before


# --- looks ------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size['width']}x{size['height']}")
def test_it_can_be_read_and_touched(machine: str, visitor, size: ViewportSize, scheme: str) -> None:
    """The main job fits the screen; nothing stands in the way of those who see, hear or press otherwise."""
    longest = max(CUES, key=lambda cue: sum(map(len, cue["before"])))["index"]
    kinds = {cue["kind"]: cue["index"] for cue in CUES}
    measure = """() => {
        const box = (s) => document.querySelector(s).getBoundingClientRect().toJSON();
        const size = (s) => [...document.querySelectorAll(s)].filter((e) => e.checkVisibility())
            .map((e) => parseFloat(getComputedStyle(e).fontSize))[0];
        return { forward: box('[data-action=forward]'), back: box('[data-action=back]'), cue: box('.m-cue'),
                 main: size('.m-move strong') ?? size('.is-now label') ?? size('.m-rows-now'), where: size('.m-where'),
                 wide: document.documentElement.scrollWidth, tall: document.documentElement.scrollHeight };
    }"""
    with visitor(viewport=size, color_scheme=scheme) as one:
        page = one.open(machine)
        page.wait_for_selector(READY)
        for index in (0, 4, longest, kinds["end"]):
            stand_at(page, index)
            seen = page.evaluate(measure)
            assert seen["wide"] <= size["width"]
            assert seen["tall"] <= size["height"], "nothing has to be scrolled"
            for button in (seen["forward"], seen["back"]):
                assert min(button["width"], button["height"]) >= 64
                assert button["left"] >= 12
                assert button["right"] <= size["width"] - 12
                assert button["bottom"] <= size["height"] - 8
            areas = [seen[name]["width"] * seen[name]["height"] for name in ("forward", "back")]
            assert areas[0] > 1.9 * areas[1]
            if size["width"] >= 700:
                assert seen["main"] >= 32
                assert seen["where"] >= 32
            page.evaluate(AXE)
            assert page.evaluate(FINDINGS) == []
        for which in ("go", "more"):
            page.click(f"[data-opens={which}]")
            assert page.evaluate(FINDINGS) == []
            page.keyboard.press("Escape")


def test_contrast_is_for_a_metre(machine: str, visitor) -> None:
    """7:1 for all words of the step (WCAG 2.2, 1.4.6), as axe measures it."""
    rule = """() => axe.run('.machine', {runOnly: {type: 'rule', values: ['color-contrast-enhanced']}})
        .then(r => r.violations.flatMap(v => v.nodes.map(n => n.html)))"""
    for scheme in ("light", "dark"):
        with visitor(color_scheme=scheme) as one:
            page = one.open(machine)
            page.wait_for_selector(READY)
            for index in (0, 16):
                stand_at(page, index)
                page.evaluate(AXE)
                assert page.evaluate(rule) == []


def test_at_a_great_zoom_nothing_scrolls_sideways(machine: str, visitor) -> None:
    """200 % at 1024 x 768 is a viewport of 512 x 384."""
    with visitor(viewport={"width": 512, "height": 384}, reduced_motion="reduce", forced_colors="active") as one:
        page = one.open(machine)
        page.wait_for_selector(READY)
        for index in (0, 4):
            stand_at(page, index)
            assert page.evaluate("() => document.documentElement.scrollWidth") <= 512
            page.locator(FORWARD).scroll_into_view_if_needed()
            assert page.locator(FORWARD).is_visible()


def test_the_screen_can_be_kept_on_or_it_is_said(machine: str, visitor) -> None:
    with visitor() as one:
        one.context.add_init_script("delete Navigator.prototype.wakeLock")
        page = one.open(machine)
        page.wait_for_selector(READY)
        page.click("[data-opens=more]")
        page.click(".m-awake")
        assert "cannot keep the screen on" in page.inner_text(".m-awake-said")
        assert page.get_attribute(".m-awake", "aria-pressed") == "false"


def test_all_steps_on_paper(browser: Browser, machine: str) -> None:
    context = browser.new_context()
    page = context.new_page()
    page.goto(machine)
    page.wait_for_selector(READY)
    sheets = PdfReader(io.BytesIO(page.pdf(format="A4"))).pages
    text = " ".join(" ".join(sheet.extract_text() for sheet in sheets).split())
    assert 3 <= len(sheets) <= 14
    for cue in CUES:
        for words in cue["before"] if not cue["now"] else [now["what"] for now in cue["now"]]:
            assert words in text
    assert "Done, next step" not in text
    assert page.locator(".m-paper").count() == 0, "gone when it is printed"
    boxes = page.evaluate(
        "async (piece) => (await import(new URL('../app/machine-paper.js', location.href)))"
        ".paperList(piece).querySelectorAll('li').length",
        PIECE,
    )
    assert boxes == sum(1 if cue["knit"] else len(cue["before"]) for cue in CUES), "one a step, one a line of a check list"
    context.close()
