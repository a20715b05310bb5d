"""The page about this copy, and what becomes of what is stored: tested, lost, mended, carried over an update, refused."""

from __future__ import annotations

import subprocess
import sys
import zipfile
from pathlib import Path

import pytest
from playwright.sync_api import Page

from boarding import opened
from builder.fingerprint import named
from builder.serve import listen
from builder.stick import pack
from pieces import diamond
from versions import SECOND, change, few_pages
from visiting import GONE, LIVE, STORED, figures, gone_and_live, settled
from wedgework.formats import write_design

GAUGE = "calculators/gauge/"
ABOUT = "reference/copy/"
READY = "() => document.documentElement.dataset.offline === 'ready'"
# Takes one stored page away, or changes it, behind the back of the offline worker.
LOSE = """async (wanted) => {
    for (const name of await caches.keys()) {
        const cache = await caches.open(name);
        for (const request of await cache.keys()) if (request.url.endsWith(wanted)) await cache.delete(request);
    }
}"""
SPOIL = """async (wanted) => {
    for (const name of await caches.keys()) {
        const cache = await caches.open(name);
        const kept = await cache.match(new URL(wanted, document.baseURI).href);
        if (kept) await cache.put(kept.url || wanted, new Response('other words', {headers: kept.headers}));
    }
}"""
# Counts how often the browser is asked.
ASKED_TO_KEEP = """if (navigator.storage) navigator.storage.persist = async () => {
    localStorage.setItem('test.asked', +localStorage.getItem('test.asked') + 1);
    return true;
}"""


def run_test(page: Page) -> list[str]:
    page.click("text=Test this copy")
    page.wait_for_function("() => document.querySelectorAll('.ww-copy-result :is(.ww-good, .ww-bad)').length === 3")
    return page.eval_on_selector_all(".ww-copy-result :is(.ww-good, .ww-bad)", "all => all.map(one => one.className)")


@pytest.mark.fault
def test_a_host_that_unpacks_what_is_packed_is_as_good(host, visitor) -> None:
    here = host()
    here.unpacks = True
    with visitor(allow=GONE) as one:
        page = gone_and_live(one, here, GAUGE)
        page.goto(f"{here.address}{ABOUT}")
        page.wait_for_selector("[data-copy] table")
        assert "Quick, from the stored picture of memory." in page.inner_text("[data-copy]")
        assert run_test(page) == ["ww-good"] * 3


def test_it_says_what_is_stored_and_tests_it_with_the_server_gone(host, visitor) -> None:
    here = host()
    with visitor(allow=GONE) as one:
        one.open(f"{here.address}{GAUGE}", live=True, stored=True).close()
        here.stop()
        page = one.open(f"{here.address}{ABOUT}", stored=True)
        page.wait_for_selector("[data-copy] table")
        told = page.inner_text("[data-copy]")
        assert "Quick, from the stored picture of memory." in told
        assert "age in days: 0" in told
        assert "The browser" in told
        files = page.eval_on_selector_all("[data-copy] li", "all => all.length")
        assert f"{files} of {files} files" in told
        assert run_test(page) == ["ww-good"] * 3


@pytest.mark.fault
def test_a_changed_file_is_found_and_loaded_again(host, visitor) -> None:
    here = host()
    with visitor(allow=GONE) as one:
        page = one.open(f"{here.address}{ABOUT}", stored=True)
        page.evaluate(SPOIL, f"{here.address}reference/words/")
        assert run_test(page) == ["ww-bad", "ww-good", "ww-good"]
        assert "reference/words/" in page.inner_text(".ww-copy-result")
        page.reload()
        page.wait_for_function(READY)
        page.wait_for_selector("[data-copy] table")
        assert run_test(page) == ["ww-good"] * 3


@pytest.mark.fault
@pytest.mark.parametrize(
    ("falls", "lines", "words"),
    [
        ("true", ["ww-bad"] * 3, ["Nothing is stored", "gives no right answer", "No piece can be worked out"]),
        (
            "asked.question?.includes('piece')",
            ["ww-bad", "ww-good", "ww-bad"],
            ["Nothing is stored", "answers a known question rightly", "No piece can be worked out"],
        ),
    ],
    ids=["the engine", "the cue"],
)
def test_what_does_not_work_is_a_bad_line(
    falls: str, lines: list[str], words: list[str], built: Path, served: str, visitor
) -> None:
    script = (named(built, "app") / "worker.js").read_text(encoding="utf-8")
    asked = "const answer = await starting;"
    assert asked in script
    script = script.replace(asked, f"{asked} if ({falls}) throw new Error('for the test');")
    noise = ("console: Service Worker registration blocked",)
    with visitor(allow=noise, service_workers="block") as one:
        one.context.route("**/app-*/worker.js", lambda route: route.fulfill(body=script, content_type="text/javascript"))
        page = one.open(f"{served}{ABOUT}")
        assert run_test(page) == lines
        told = page.inner_text(".ww-copy-result")
        assert all(part in told for part in words)


@pytest.mark.fault
def test_what_the_browser_threw_away_is_noticed_and_loaded_again(host, visitor) -> None:
    here = host()
    with visitor(allow=GONE) as one:
        page = one.open(f"{here.address}{GAUGE}", stored=True)
        page.evaluate(LOSE, "/reference/words/")
        here.stop()
        page.reload()
        page.wait_for_function("() => document.documentElement.dataset.offline === 'paused'")
        assert "It goes on when the network is back" in page.inner_text(".ww-offline")
        here.start()
        page.evaluate("dispatchEvent(new Event('online'))")  # as the browser says it
        page.wait_for_function(READY)
        here.stop()
        assert one.open(f"{here.address}reference/words/").title().startswith("Needles and words")


def test_what_is_typed_is_kept_over_an_update(built: Path, tmp_path: Path, host, visitor) -> None:
    copy = few_pages(built, tmp_path / "site")
    here = host(copy)
    with visitor(allow=GONE) as one:
        page = one.open(f"{here.address}{GAUGE}", live=True, stored=True)
        page.wait_for_function(READY)
        change(copy, SECOND)
        page.reload()
        page.wait_for_selector(".ww-update")
        page.wait_for_function(LIVE)
        page.fill("[name=stitches]", "44")
        page.fill("[name=width]", "10 cm")
        page.click("text=Use it now")
        page.wait_for_selector(".ww-update", state="detached")
        page.wait_for_function("() => document.readyState === 'complete'")
        page.wait_for_function(LIVE)
        settled(page)
        assert page.input_value("[name=stitches]") == "44"
        assert figures(page)["stitches_per_10cm"] == "44.00"


def test_the_browser_is_asked_once_to_keep_it_after_the_first_saved_piece(host, visitor) -> None:
    here = host()
    with visitor(allow=GONE) as one:
        one.context.add_init_script(ASKED_TO_KEEP)
        page = one.open(f"{here.address}plan/", live=True)
        asked = "localStorage.getItem('test.asked')"
        assert page.evaluate(asked) is None
        page.click("text=Open at the machine")
        page.wait_for_url(f"{here.address}machine/**")
        page.wait_for_function(f"() => {asked} === '1'")
        page.reload()
        page.wait_for_timeout(300)
        assert page.evaluate(asked) == "1"


def test_the_browser_is_asked_to_keep_a_first_drawing_too(served: str, visitor) -> None:
    with visitor() as one:
        one.context.add_init_script(ASKED_TO_KEEP)
        page = one.open(f"{served}board/")
        sheet = opened(page)
        asked = "localStorage.getItem('test.asked')"
        assert page.evaluate(asked) is None, "nothing was drawn yet"
        sheet.open(write_design(diamond()))
        page.wait_for_function(f"() => {asked} === '1'")


@pytest.mark.fault
def test_no_room_is_a_sentence_and_nothing_is_lost(host, visitor) -> None:
    here = host()
    with visitor(allow=GONE) as one:
        page = one.context.new_page()
        session = one.context.new_cdp_session(page)
        session.send("Storage.overrideQuotaForOrigin", {"origin": here.address.rstrip("/"), "quotaSize": 3_000_000})
        page.goto(f"{here.address}{GAUGE}")
        page.wait_for_function(STORED)
        assert page.get_attribute("html", "data-offline") == "paused"
        assert "there is no room left on this device" in page.inner_text(".ww-offline")
        page.wait_for_function(LIVE)
        page.fill("[name=stitches]", "40")
        page.fill("[name=width]", "10 cm")
        settled(page)
        assert figures(page)["stitches_per_10cm"] == "40.00"


def test_a_zip_on_a_stick_is_served_by_the_smallest_server(built: Path, tmp_path: Path, visitor) -> None:
    pack(built, tmp_path / "one.zip")
    with zipfile.ZipFile(tmp_path / "one.zip") as archive:
        archive.extractall(tmp_path)
    with listen(tmp_path, 0) as free:
        port = free.server_port
    command = [sys.executable, "-m", "http.server", "--bind", "127.0.0.1", "--directory", tmp_path / "wedgework", str(port)]
    server = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, env={"PYTHONUNBUFFERED": "1"})
    try:
        assert server.stdout is not None
        assert "Serving" in server.stdout.readline()
        with visitor() as one:
            page = one.open(f"http://127.0.0.1:{port}/{GAUGE}", live=True, stored=True)
            assert (page.get_attribute("html", "data-engine"), page.get_attribute("html", "data-offline")) == ("ready", "ready")
    finally:
        server.kill()
        server.communicate()


@pytest.mark.fault
def test_over_plain_http_from_elsewhere_it_says_so(served: str, visitor) -> None:
    """A page that is no secure place has no service worker at all."""
    with visitor() as one:
        one.context.add_init_script(
            "delete Navigator.prototype.serviceWorker; Object.defineProperty(window, 'isSecureContext', {value: false})"
        )
        page = one.open(f"{served}{GAUGE}", live=True, stored=True)
        assert page.get_attribute("html", "data-engine") == "ready"
        assert "needs a secure address" in page.inner_text(".ww-offline")
