"""A new version is stored beside the one in use, is used whole, and only when a person wants it; what is broken is never used."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page

from builder.fingerprint import named
from builder.keep import kept_files, twin
from stepping import HURRY, READY, at, step_to
from versions import FIRST, GAUGE, SECOND, change, few_pages
from visiting import GONE, LIVE, PATIENCE, STORED, Host, right

WHOLE = "() => document.documentElement.dataset.offline === 'ready'"
MACHINE, WORDS = "machine/", "reference/words/"
THIRD = "Gauge, the third"
STORES = "async () => (await caches.keys()).length"
UPDATE = ".ww-update"


@pytest.fixture
def copy(built: Path, tmp_path: Path) -> Path:
    """A copy of the pages that a test may change."""
    return few_pages(built, tmp_path / "site")


def twin_of(folder: Path, wanted: str) -> str:
    """The compressed file that is loaded for the page at this address."""
    (digest,) = [digest for address, digest, _ in kept_files(folder) if address == wanted]
    return twin(digest)


def heading(page: Page) -> str:
    return page.inner_text("h1").replace("\u00b6", "").strip()


def come_back(one, address: str) -> Page:
    """Every page is closed, long enough for the browser to begin what waits; then one is opened."""
    for page in one.context.pages:
        page.close()
    blank = one.context.new_page()
    blank.wait_for_timeout(1_500)
    blank.close()
    return one.open(address)


LOSE = """async (endings) => {
    for (const name of await caches.keys()) {
        const cache = await caches.open(name);
        for (const {url} of await cache.keys()) if (endings.some((ending) => url.endsWith(ending))) await cache.delete(url);
    }
}"""
# Changes them behind the back of the offline worker, which has checked them when it stored them.
SPOIL = """async (endings) => {
    for (const name of await caches.keys()) {
        const cache = await caches.open(name);
        for (const request of await cache.keys()) {
            if (!endings.some((ending) => request.url.endsWith(ending))) continue;
            const { headers } = await cache.match(request);
            await cache.put(request, new Response('other words', { headers }));
        }
    }
}"""
# A worker that waits does not serve yet.
WAITS = "async () => Boolean((await navigator.serviceWorker.getRegistration()).waiting)"
UNTIL_IT_WAITS = """async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    while (!registration.waiting) await new Promise((done) => setTimeout(done, 50));
}"""


def test_a_new_version_is_used_with_consent_and_fetches_what_changed(copy: Path, host, visitor) -> None:
    here: Host = host(copy)
    with visitor(allow=GONE) as one:
        page = one.open(f"{here.address}{GAUGE}", stored=True)
        assert heading(page) == FIRST
        change(copy, SECOND)
        here.asked.clear()
        page.reload()
        page.wait_for_selector(UPDATE)
        assert here.asked.count("sw.js") >= 1
        assert [path for path in here.asked if path != "sw.js"] == [twin_of(copy, GAUGE)], "one compressed page"
        assert heading(page) == FIRST
        page.click("text=Later")
        assert page.query_selector(UPDATE) is None
        page.reload()
        page.wait_for_selector(UPDATE)
        assert heading(page) == FIRST, "still the old one"
        assert page.get_attribute("html", "data-offline") == "ready"
        page.click("text=Use it now")
        page.wait_for_function("words => document.querySelector('h1').textContent.startsWith(words)", arg=SECOND)
        page.wait_for_function(WHOLE)
        here.stop()
        page.reload()
        assert heading(page) == SECOND
        page = come_back(one, f"{here.address}{GAUGE}")
        page.wait_for_function(WHOLE)
        assert heading(page) == SECOND
        assert page.evaluate(STORES) == 1


def test_that_every_page_was_closed_is_no_consent(copy: Path, host, visitor) -> None:
    """A tablet is put away in the middle of a piece. The browser then begins the newer worker: it serves what was in use."""
    here: Host = host(copy)
    with visitor(allow=GONE) as one:
        one.context.add_init_script(HURRY)
        page = one.open(f"{here.address}{MACHINE}", stored=True)
        page.wait_for_selector(READY)
        step_to(page, 1)
        step_to(page, 2)
        change(copy, SECOND, "machine.js")
        here.asked.clear()
        page.reload()
        page.wait_for_selector(UPDATE)
        assert page.evaluate(WAITS)
        for _ in range(2):
            page = come_back(one, f"{here.address}{MACHINE}")
            at(page, 2)
            page.wait_for_selector(UPDATE)
            assert not page.evaluate(WAITS), "the new one serves"
            assert "second" not in page.evaluate("fetch(scriptAt('machine.js')).then((one) => one.text())")
            page.wait_for_function(WHOLE)
            here.stop()
        assert heading(one.open(f"{here.address}{GAUGE}")) == FIRST
        about = one.open(f"{here.address}reference/copy/")
        about.wait_for_selector("[data-copy] table")
        assert "A newer version is stored too" in about.inner_text("[data-copy]")
        about.click("text=Test this copy")
        about.wait_for_selector(".ww-copy-result :nth-child(3)")
        assert "unchanged" in about.inner_text(".ww-copy-result")
        step_to(page, 3)
        page.click("text=Use it now")
        page.wait_for_selector(UPDATE, state="detached")
        at(page, 3)
        assert "second" in page.evaluate("fetch(scriptAt('machine.js')).then((one) => one.text())")
        assert page.query_selector("[data-notice]") is None
        page = come_back(one, f"{here.address}{GAUGE}")
        page.wait_for_function(LIVE)
        assert heading(page) == SECOND
        page.wait_for_function(WHOLE)
        assert page.query_selector(UPDATE) is None
        assert page.query_selector(".ww-lost") is None
        assert page.evaluate(STORES) == 1


@pytest.mark.long
def test_what_was_never_wanted_goes_when_a_newer_one_comes(copy: Path, host, visitor) -> None:
    here: Host = host(copy)
    with visitor(allow=GONE) as one:
        page = one.open(f"{here.address}{GAUGE}", stored=True)
        for words in (SECOND, THIRD):
            change(copy, words, "links.js")
            page.reload()
            page.evaluate(UNTIL_IT_WAITS)
            page = come_back(one, f"{here.address}{GAUGE}")
            page.wait_for_selector(UPDATE)
            assert heading(page) == FIRST
            assert page.evaluate(STORES) == 2
        here.stop()
        page.click("text=Use it now")
        page.wait_for_function("words => document.querySelector('h1')?.textContent.startsWith(words)", arg=THIRD)
        page.wait_for_function(LIVE)


def test_a_page_that_stays_open_over_an_update_loads_what_belongs_to_it(copy: Path, host, visitor) -> None:
    here: Host = host(copy)
    script = "import(scriptAt('copy.js')).then(() => fetch(scriptAt('copy.js'))).then((one) => one.text())"
    with visitor(allow=GONE) as one:
        old = one.open(f"{here.address}{WORDS}", stored=True)
        change(copy, SECOND, "copy.js")
        page = one.open(f"{here.address}{GAUGE}", live=True)
        page.click("text=Use it now")
        page.wait_for_function("words => document.querySelector('h1')?.textContent.startsWith(words)", arg=SECOND)
        here.stop()
        assert SECOND not in old.evaluate(script)
        assert SECOND in page.evaluate(script)
        assert old.query_selector(UPDATE) is not None, "it may be loaded again"


def test_a_copy_from_before_copies_said_what_is_in_use_gives_way_and_nothing_is_missed(copy: Path, host, visitor) -> None:
    here: Host = host(copy)
    marked = "() => document.documentElement.dataset.marked === 'yes'"
    with visitor(allow=GONE) as one:
        page = one.open(f"{here.address}{GAUGE}", stored=True)
        page.wait_for_function(marked)
        page.evaluate(LOSE, ["/app/in-use.json", "/app/list.json"])
        change(copy, SECOND, "links.js")
        page.reload()
        page.click("text=Use it now")
        page.wait_for_function("words => document.querySelector('h1')?.textContent.startsWith(words)", arg=SECOND)
        page.wait_for_function(marked)
        assert page.query_selector(".ww-lost") is None
        assert page.evaluate(STORES) == 1


@pytest.mark.fault
def test_what_is_in_use_and_lost_a_file_gives_way_to_the_new_version(copy: Path, host, visitor) -> None:
    """The host has another by then, and the new one is whole on the device."""
    here: Host = host(copy)
    with visitor(allow=(*GONE, "console: Failed to find a valid digest")) as one:
        page = one.open(f"{here.address}{GAUGE}", stored=True)
        change(copy, SECOND, "links.js")
        page.reload()
        page.wait_for_selector(UPDATE)
        page = come_back(one, f"{here.address}{GAUGE}")
        page.wait_for_selector(UPDATE)
        page.evaluate(LOSE, [f"/{GAUGE}"])
        page = one.open(f"{here.address}{GAUGE}", live=True)
        assert heading(page) == SECOND
        page.wait_for_function(WHOLE)
        assert page.query_selector(UPDATE) is None


@pytest.mark.fault
def test_what_has_changed_in_the_store_is_not_handed_on_to_a_new_version(copy: Path, host, visitor) -> None:
    here: Host = host(copy)
    changed = [f"/{WORDS}", "pyodide.asm.wasm.gz"]
    with visitor(allow=GONE) as one:
        page = one.open(f"{here.address}{GAUGE}", stored=True)
        page.evaluate(SPOIL, changed)
        change(copy, SECOND)
        here.asked.clear()
        page.reload()
        page.wait_for_selector(UPDATE)
        assert twin_of(copy, WORDS) in here.asked
        assert any(path.endswith(changed[1]) for path in here.asked), "loaded anew"
        page.click("text=Use it now")
        page.wait_for_function("words => document.querySelector('h1')?.textContent.startsWith(words)", arg=SECOND)
        page.wait_for_function(WHOLE)
        here.stop()
        assert heading(one.open(f"{here.address}{WORDS}")).startswith("Needles and words")
        page = one.open(f"{here.address}{GAUGE}", live=True)
        right(page)


@pytest.mark.fault
def test_a_broken_new_version_is_refused_and_the_old_one_serves_on(copy: Path, host, visitor) -> None:
    here: Host = host(copy)
    with visitor(allow=(*GONE, "console: Failed to find a valid digest")) as one:
        page = one.open(f"{here.address}{GAUGE}", stored=True)
        change(copy, SECOND)
        packed = copy / twin_of(copy, GAUGE)
        whole = (copy / GAUGE / "index.html").read_text(encoding="utf-8")
        (copy / GAUGE / "index.html").write_text(whole[: len(whole) // 2], encoding="utf-8")
        packed.write_bytes(packed.read_bytes()[: packed.stat().st_size // 2])
        page.reload()
        page.wait_for_function(STORED)
        page.wait_for_timeout(1_500)
        assert page.query_selector(UPDATE) is None
        assert heading(page) == FIRST
        (copy / GAUGE / "index.html").write_text(whole, encoding="utf-8")
        page.reload()
        page.wait_for_selector(UPDATE, timeout=PATIENCE)


@pytest.mark.fault
@pytest.mark.parametrize(
    "stays", [pytest.param(True, marks=pytest.mark.long, id="under its name"), pytest.param(False, id="under another name")]
)
def test_what_the_store_has_lost_comes_as_it_was_or_not_at_all(stays: bool, copy: Path, host, visitor) -> None:
    """A page of one version never runs with a script of another: it says that one did not come, and the next page is whole."""
    here: Host = host(copy)
    with visitor(allow=(*GONE, "console: Failed to find a valid digest", "console: Failed to load resource")) as one:
        page = one.open(f"{here.address}{GAUGE}", stored=True)
        page.evaluate(LOSE, ["/links.js"])
        page.reload()
        page.wait_for_function(LIVE)
        assert page.query_selector(".ww-broken") is None, "the host has it still"
        page.wait_for_function(WHOLE)
        page.evaluate(LOSE, ["/links.js"])
        if stays:
            script = named(copy, "app") / "links.js"
            script.write_text(f"{script.read_text(encoding='utf-8')}\n// {SECOND}\n", encoding="utf-8")
        change(copy, SECOND, "" if stays else "links.js")
        page.reload()
        page.wait_for_selector(".ww-broken")
        assert heading(page) == FIRST
        page.reload()
        page.wait_for_function(LIVE)
        assert page.query_selector(".ww-broken") is None
        assert heading(page) == SECOND
        assert SECOND in page.evaluate("fetch(scriptAt('links.js')).then((one) => one.text())")
        right(page)
