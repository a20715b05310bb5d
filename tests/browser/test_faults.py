"""Whatever goes wrong, a page is left that works and says what is true; the count of all faults stands at the end of the run.

These are the ones that have no better place; others are marked as faults beside what they try.
"""

from __future__ import annotations

import json
import random
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page

from builder.fingerprint import named
from builder.keep import kept_files, twin
from stepping import CUES, HURRY, PIECE, READY, at, step_to
from versions import SECOND, change, few_pages
from visiting import LIVE, STORED, Host, figures, right, script_at, settled
from wedgework.faces.link import make_link
from wedgework.faces.wire import answer

pytestmark = pytest.mark.fault

GAUGE, WORDS, MACHINE = "calculators/gauge/", "reference/words/", "machine/"
ALONE = {"service_workers": "block"}
NOISE = (
    "console: Failed to load resource",
    "console: Failed to find a valid digest",
    "console: Service Worker registration blocked",
    "console: An unknown error occurred when fetching the script",
    "console: wasm",
    "console: WebAssembly",
    "console: TypeError",
)
Record = Callable[[str, object], None]


def true_to_itself(page: Page) -> str:
    """Either it answers rightly, or it says that it does not and marks what it shows as old. Gives which."""
    page.wait_for_function(LIVE)
    state = page.get_attribute("html", "data-engine") or ""
    if state == "ready":
        right(page)
    else:
        before = figures(page)
        page.fill("[name=stitches]", "40")
        page.wait_for_selector(".ww-old")
        assert figures(page) == before
        assert "Live answers cannot start here" in page.inner_text(".ww-told")
    return state


def both(built: Path, addresses: list[str]) -> dict[str, list[str]]:
    """Where a file is loaded from: the file itself and its compressed twin."""
    hashes = {address: digest for address, digest, _ in kept_files(built)}
    return {address: [address, twin(hashes[address])] for address in addresses}


# --- the first visit -------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("every", [40, pytest.param(1, marks=pytest.mark.long)])
def test_the_server_is_cut_at_every_file_of_the_first_install(
    every: int, built: Path, host, visitor, record_property: Record
) -> None:
    """It has been stored up to a file, and there the line breaks; at the next visit, or when it is back, it goes on."""
    files = [address for address, _, _ in kept_files(built)]
    where = both(built, files)
    here: Host = host()
    cuts = range(0, len(files), every)
    with visitor(allow=NOISE) as one:
        page = one.context.new_page()
        for turn, first in enumerate(cuts):
            here.drops = turn % 2 == 1
            here.cut = {path for address in files[first:] for path in where[address]}
            page.goto(f"{here.address}{WORDS}")
            page.wait_for_function(STORED)
            assert page.get_attribute("html", "data-offline") == "paused"
            assert f"({first} of {len(files)})" in page.inner_text(".ww-offline")
            assert page.title().startswith("Needles and words")
        here.cut = set()
        page.evaluate("dispatchEvent(new Event('online'))")  # as the browser says it; nobody loads the page again
        page.wait_for_function("() => document.documentElement.dataset.offline === 'ready'")
        here.stop()
        page.goto(f"{here.address}{GAUGE}")
        page.wait_for_function(LIVE)
        right(page)
    record_property("faults", len(cuts))


HOWS = ("cut", "flipped", "swapped")


@pytest.mark.parametrize("turn", [0, *(pytest.param(turn, marks=pytest.mark.long) for turn in (1, 2))])
def test_a_spoilt_file_is_not_stored(turn: int, built: Path, host, visitor, record_property: Record) -> None:
    files = [address for address, _, _ in kept_files(built)]
    kinds = (GAUGE, f"{named(built, 'app').name}/copy.js", "runtime/start/", "runtime/core-")
    chosen = [next(one for one in files if one.startswith(kind)) for kind in kinds]
    here: Host = host()
    here.spoilt = {path: HOWS[(n + turn) % 3] for n, paths in enumerate(both(built, chosen).values()) for path in paths}
    with visitor(allow=NOISE) as one:
        page = one.open(f"{here.address}{WORDS}", stored=True)
        assert page.get_attribute("html", "data-offline") == "paused"
        assert "is not the one that belongs to this version" in page.inner_text(".ww-offline")
        kept = page.evaluate("async () => (await (await caches.open((await caches.keys())[0])).keys()).map((one) => one.url)")
        assert not [one for one in chosen if here.address + one in kept]
        here.spoilt = {}
        page.reload()
        page.wait_for_function("() => document.documentElement.dataset.offline === 'ready'")
    record_property("faults", len(chosen))


@pytest.mark.parametrize(
    ("script", "how"),
    [
        ("main", "cut"),
        ("forms", "swapped"),
        pytest.param("main", "swapped", marks=pytest.mark.long),
        pytest.param("forms", "cut", marks=pytest.mark.long),
    ],
)
def test_a_spoilt_script_of_the_page_is_said(script: str, how: str, host, visitor) -> None:
    """The page stands as it was built; nothing in it answers, so that is what it says."""
    here: Host = host()
    with visitor(allow=(*NOISE, "error:"), **ALONE) as one:
        here.spoilt = {f"{named(here.folder, 'app').name}/{script}.js": how}
        page = one.open(f"{here.address}{GAUGE}")
        assert "its fields do not answer" in page.inner_text(".ww-broken")
        assert figures(page)["stitches_per_10cm"]
        assert page.query_selector("form noscript") is None  # what was to come later is there
        here.spoilt = {}
        page.reload()
        page.wait_for_function(LIVE)
        assert page.query_selector(".ww-broken") is None
        right(page)


PARTS = ("runtime/start/", "pyodide.asm.wasm.gz", "pyodide.asm.mjs", "pyodide.mjs", "/runtime.js")


@pytest.mark.parametrize(
    ("part", "how"),
    [
        pytest.param(part, how, marks=[] if number == turn else pytest.mark.long)
        for number, part in enumerate(PARTS)
        for turn, how in enumerate(("cut", "flipped", "swapped"))
    ],
)
def test_a_spoilt_part_of_the_engine_never_answers_wrongly(part: str, how: str, built: Path, host, visitor) -> None:
    files = [address for address, _, _ in kept_files(built) if part in address]
    here: Host = host()
    here.spoilt = {path: how for paths in both(built, files).values() for path in paths}
    with visitor(allow=(*NOISE, "error:"), **ALONE) as one:
        page = one.open(f"{here.address}{GAUGE}")
        state = true_to_itself(page)
        assert state == "ready" or part != "runtime/start/", "without the picture of memory it starts the plain way"


# --- while it runs ---------------------------------------------------------------------------------------------------


def test_the_offline_store_is_cleared_while_a_page_is_open(host, visitor) -> None:
    here: Host = host()
    with visitor(allow=NOISE) as one:
        page = one.open(f"{here.address}{GAUGE}", live=True, stored=True)
        page.evaluate("async () => { for (const name of await caches.keys()) await caches.delete(name); }")
        right(page)
        page.reload()
        page.wait_for_function("() => document.documentElement.dataset.offline === 'ready'")
        here.stop()
        page.reload()
        page.wait_for_function(LIVE)
        right(page)


# Python aborts, and the runtime gives itself up, in words of its own.
FATAL = "self.python.runPython('import os; os.abort()')"
LAST_WORDS = ("Aborted", "Pyodide has suffered", "The cause of the fatal error", "RuntimeError", "Stack (most recent", "  File")


@pytest.mark.parametrize("fatal", [FATAL, "self.close()"], ids=["fatal", "killed"])
def test_the_interpreter_dies_over_a_question(fatal: str, built: Path, served: str, visitor) -> None:
    script = (named(built, "app") / "worker.js").read_text(encoding="utf-8")
    deadly, door = "const answer = await starting;", "function doorOf(python) {"
    assert deadly in script
    assert door in script
    script = script.replace(deadly, f"{deadly} if (asked.question?.includes('\"13\"')) {{ {fatal}; return; }}")
    script = script.replace(door, f"{door} self.python = python;")
    last_words = [f"console: {words}" for words in LAST_WORDS]
    with visitor(allow=(*NOISE, *last_words), **ALONE) as one:
        one.context.route("**/app-*/worker.js", lambda route: route.fulfill(body=script, content_type="text/javascript"))
        page = one.context.new_page()
        page.clock.install()
        page.goto(f"{served}{GAUGE}")
        page.clock.resume()
        page.wait_for_function(LIVE)
        right(page)
        before = figures(page)
        page.fill("[name=stitches]", "13")
        page.wait_for_timeout(500)
        page.clock.fast_forward(61_000)
        page.wait_for_selector("text=was started again")
        assert figures(page) == before
        assert page.query_selector(".ww-old") is not None
        page.wait_for_function(LIVE)
        right(page)


def test_the_clock_is_set_back(host, visitor) -> None:
    """A year earlier than when the place was kept: what counts is the number of the note, not its time."""
    here: Host = host()
    back = "const before = Date.now; const isBack = location.protocol === 'http:' && localStorage.getItem('test.back');"
    back += "if (isBack) Date.now = () => before() - 366 * 86_400_000;"
    with visitor() as one:
        one.context.add_init_script(HURRY + back)
        page = one.open(f"{here.address}{MACHINE}", stored=True)
        page.wait_for_selector(READY)
        step_to(page, 1)
        step_to(page, 2)
        page.evaluate("localStorage.setItem('test.back', 'yes')")
        page.reload()
        at(page, 2)
        step_to(page, 3)
        page.reload()
        at(page, 3)
        page.evaluate("localStorage.removeItem('test.back')")
        page.reload()
        at(page, 3)
        page.evaluate("localStorage.setItem('test.back', 'yes')")
        page.goto(f"{here.address}reference/copy/")
        page.wait_for_selector("[data-copy] table")
        assert "age in days: 0" in page.inner_text("[data-copy]")


def test_two_tabs_and_one_of_them_updates(built: Path, tmp_path: Path, host, visitor) -> None:
    copy = few_pages(built, tmp_path / "site")
    here: Host = host(copy)
    with visitor(allow=NOISE) as one:
        one.context.add_init_script(HURRY)
        knitting = one.open(f"{here.address}{MACHINE}", stored=True)
        knitting.wait_for_selector(READY)
        step_to(knitting, 1)
        change(copy, SECOND)
        other = one.open(f"{here.address}{GAUGE}", live=True)
        other.wait_for_selector(".ww-update")
        other.click("text=Use it now")
        other.wait_for_selector(".ww-update", state="detached")
        # The one at the machine goes on in the middle of its piece, and loads again only when it is asked to.
        step_to(knitting, 2)
        step_to(knitting, 3)
        assert knitting.evaluate("() => performance.getEntriesByType('navigation').length") == 1
        here.stop()
        knitting.reload()
        at(knitting, 3)
        assert knitting.query_selector("[data-notice]") is None


def test_a_thousand_hostile_links(served: str, visitor, record_property: Record) -> None:
    """Each is answered with a sentence or with inputs; the engine that answered the first answers the last."""
    chance = random.Random(9)
    letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"
    real = [make_link("gauge", {"stitches": "37"}), make_link("panel-plan", {"title": "A" * 150, "rows": "80"})]
    links = []
    for n in range(1000):
        fragment = list(chance.choice(real))
        match n % 4:
            case 0:  # one letter of a real one is another
                fragment[chance.randrange(3, len(fragment))] = chance.choice(letters)
            case 1:  # its end is missing
                del fragment[chance.randrange(3, len(fragment)) :]
            case 2:  # noise behind the right beginning
                fragment[3:] = chance.choices(letters, k=chance.randrange(1, 4000))
            case 3:  # anything at all
                fragment[:] = [chr(chance.choice([*range(32, 127), 0, 0x202E, 0x1F9F6])) for _ in range(chance.randrange(1, 300))]
        links.append("".join(fragment))
    ask = """async ([address, links]) => {
        const { askText } = await import(address);
        const wrong = [];
        for (const fragment of links) {
            const told = JSON.parse(await askText('hostile', JSON.stringify({ask: 'open', fragment})));
            if (told.calculator === '' && told.problems.length === 0) wrong.push(fragment);
        }
        return wrong;
    }"""
    with visitor() as one:
        page = one.open(f"{served}{GAUGE}", live=True)
        states = "window.states = new Set(); new MutationObserver(() => states.add(document.documentElement.dataset.engine))"
        page.evaluate(f"() => {{ {states}.observe(document.documentElement, {{attributeFilter: ['data-engine']}}); }}")
        assert page.evaluate(ask, [script_at(page, "engine.js"), links]) == []
        for fragment in links[::50]:
            page.evaluate("fragment => { location.hash = fragment; }", fragment)
        page.wait_for_timeout(200)
        assert page.evaluate("[...states]") == []
        page.evaluate("() => { location.hash = ''; }")
        right(page)
        assert page.query_selector(".ww-notes :is(img, script, iframe)") is None
    record_property("faults", len(links))


def test_a_design_of_the_greatest_size_is_answered(served: str, visitor) -> None:
    """As wide and as high as the fields allow, on one's own bed: the plan that another Python finds, and its model bed knits."""
    largest = {"size_in": "counts", "bed": "own", "bed_needles": "1000", "needles": "1000", "rows": "4000"}
    with visitor() as one:
        page = one.open(f"{served}plan/", live=True)
        page.set_default_timeout(120_000)
        page.evaluate(
            """(texts) => {
                const form = document.querySelector('form[data-calculator]');
                for (const [name, text] of Object.entries(texts)) form.elements[name].value = text;
                form.elements.rows.dispatchEvent(new Event('input', {bubbles: true}));
            }""",
            largest,
        )
        page.wait_for_selector(".ww-sketch svg")
        told = json.loads(answer(json.dumps({"calculator": "panel-plan", "inputs": largest})))["answer"]["result"]
        settled(page)
        shown, counted = figures(page), ("blocks", "ends", "free_passes", "slits", "holes")
        assert [shown[name] for name in counted] == [str(told[name]) for name in counted]
        assert (told["rows_min"], told["rows_max"]) == (3999, 4000)
        assert "1000 needles" in page.inner_text("output")
        assert page.query_selector(".ww-old") is None
        page.fill("[name=needles]", "24")
        page.fill("[name=rows]", "48")
        settled(page)
        assert "24 needles" in page.inner_text("output")


def test_no_fault_here_loses_a_saved_piece(host, visitor) -> None:
    """The piece at the machine, its place and its note are there after the store was refused, cleared and filled again."""
    here: Host = host()
    with visitor(allow=NOISE) as one:
        one.context.add_init_script(HURRY)
        page = one.open(f"{here.address}{MACHINE}", stored=True)
        page.wait_for_selector(READY)
        own = {**PIECE, "digest": "0123456789ab", "title": "Mine"}
        store = "const s = await import(scriptAt('store.js'));"
        page.evaluate(f"async (piece) => {{ {store} await s.putPiece(piece); await s.openPiece(piece.digest); }}", own)
        page.reload()
        page.wait_for_selector(READY)
        step_to(page, 1)
        page.evaluate("async () => { for (const name of await caches.keys()) await caches.delete(name); }")
        page.evaluate("() => localStorage.clear()")
        step_to(page, 2)
        page.reload()
        at(page, 2)
        page.evaluate(f"async () => {{ {store} for (let n = 0; n < 40; n += 1) await s.keepNote(`fill.${{n}}`, {{}}); }}")
        page.reload()
        at(page, 2)
        assert page.inner_text(".m-title") == "Mine"
        assert json.loads(page.evaluate("JSON.stringify(document.querySelector('[data-cue]').dataset.cue)")) == "2"
        assert len(CUES) > 3
