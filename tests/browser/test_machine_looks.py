"""The page at the machine as it is seen: whole before any script, readable from a metre, on every size, and on paper."""

from __future__ import annotations

import io
import unicodedata

import pytest
from playwright.sync_api import Browser, ViewportSize
from pypdf import PdfReader

from barriers import found_by_axe, with_axe
from stepping import CUES, FORWARD, HURRY, PIECE, READY, SIZES, cue_of, stand_at, step_to
from visiting import SCRIPTS

# Whatever a finger has to meet in an open window, and is smaller than 44 px; a box is met through its label.
SMALL = """() => [...document.querySelectorAll('dialog[open] :is(button, select, textarea, summary, input, label:has(input))')]
    .filter((e) => e.checkVisibility() && !e.matches('label > input') && e.getBoundingClientRect().height < 44)
    .map((e) => e.outerHTML.slice(0, 80))"""


@pytest.fixture
def machine(served: str) -> str:
    return f"{served}machine/"


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
    kinds = {cue["kind"]: cue["index"] for cue in CUES if cue["index"] > 9}
    with visitor() as one:
        one.context.add_init_script(HURRY)
        page = one.open(machine)
        page.wait_for_selector(READY)
        for index in (*range(10), *sorted(kinds.values())):
            if 0 < index < 10:
                step_to(page, index, "Space")
            elif index:
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
        last_on_the_bed = next(cue["index"] for cue in CUES if cue["kind"] == "end") - 1
        for index in (1, 4, 14, 150, last_on_the_bed):
            stand_at(page, index)
            bed = CUES[index]["bed"]
            wanted = {
                kind: sum(1 for first, last in bed[kind] for n in range(first, last + 1) if n)
                for kind in ("knitting", "held", "returning", "holding")
                if bed[kind]
            }
            assert dict(page.evaluate(count)) == wanted
            assert sum(wanted.values()) == 106


# --- looks ------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("scheme", "size"),
    [
        pytest.param(
            scheme,
            size,
            id=f"{size['width']}x{size['height']}-{scheme}",
            marks=pytest.mark.long if scheme == "dark" and i else [],
        )
        for scheme in ("light", "dark")
        for i, size in enumerate(SIZES)
    ],
)
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
        for index in (0, 4, longest, kinds["end"], kinds["finish"]):
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
            assert found_by_axe(page) == []
        if (scheme, size) not in (("light", SIZES[0]), ("dark", SIZES[0]), ("light", SIZES[2])):
            return  # the windows are the same on a tablet held upright
        for which in ("go", "trouble", "find", "trouble", "back", "more"):
            page.click(f"[data-opens={which}]:visible")
            page.wait_for_selector(f"dialog.m-{which}[open]")
            assert found_by_axe(page) == []
            assert page.evaluate(SMALL) == []
            if which != "trouble":
                page.keyboard.press("Escape")
        page.click("[data-opens=trouble]:visible")
        page.click("[data-mishap=jam] summary")
        assert found_by_axe(page) == []


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
                with_axe(page)
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
    context.add_init_script(SCRIPTS)
    page = context.new_page()
    page.goto(machine)
    page.wait_for_selector(READY)
    sheets = PdfReader(io.BytesIO(page.pdf(format="A4"))).pages
    # some fonts print "ff" and "fi" as one sign
    text = unicodedata.normalize("NFKC", " ".join(" ".join(sheet.extract_text() for sheet in sheets).split()))
    assert 3 <= len(sheets) <= 14
    for cue in CUES:
        for words in cue["before"] if not cue["now"] else [now["what"] for now in cue["now"]]:
            assert words in text
    assert "Done, next step" not in text
    assert page.locator(".m-paper").count() == 0, "gone when it is printed"
    boxes = page.evaluate(
        "async (piece) => (await import(scriptAt('machine-paper.js'))).paperList(piece).querySelectorAll('li').length",
        PIECE,
    )
    assert boxes == sum(1 if cue["knit"] else len(cue["before"]) for cue in CUES), "one a step, one a line of a check list"
    context.close()
