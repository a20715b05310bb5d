"""What this device keeps is its copy's own, is found again after earlier versions, and is put back when it was cleared."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from playwright.sync_api import Page

from stepping import CUES, HURRY, PIECE, READY, at, step_to
from visiting import Host, settled

STORE = "const s = await import(scriptAt('store.js'));"
# As a version kept it that did not tell the copies on one host apart.
FORMER = """async (piece) => {
    const note = (key, value) => ({...value, key, n: 7, at: 1_700_000_000_000});
    const open = note('open', {digest: piece.digest});
    const place = note(`place.${piece.digest}`, {index: 3, done: 0});
    const about = note(`about.${piece.digest}`, {title: piece.title, steps: piece.cues.length, rows: piece.rows});
    for (const one of [open, place, about]) localStorage.setItem(`wedgework.${one.key}`, JSON.stringify(one));
    await new Promise((done, fail) => {
        const asked = indexedDB.open('wedgework', 1);
        asked.onerror = fail;
        asked.onupgradeneeded = () => {
            asked.result.createObjectStore('pieces', {keyPath: 'digest'});
            asked.result.createObjectStore('notes', {keyPath: 'key'});
        };
        asked.onsuccess = () => {
            const writing = asked.result.transaction(['pieces', 'notes'], 'readwrite');
            writing.objectStore('pieces').put(piece);
            for (const one of [place, about]) writing.objectStore('notes').put(one);
            writing.objectStore('notes').put(note('notes.' + piece.digest, {notes: {2: 'a knot'}}));
            writing.oncomplete = () => { asked.result.close(); done(); };
        };
    });
}"""
OWN = {**PIECE, "digest": "0123456789ab", "title": "Kept by an earlier version"}
TITLE = "() => document.querySelector('.m-title').textContent"


def machine(page: Page, address: str) -> None:
    page.goto(f"{address}machine/")
    page.wait_for_selector(READY)


def run(page: Page, body: str, *given: object) -> object:
    return page.evaluate(f"async (a) => {{ {STORE} {body} }}", list(given))


@pytest.fixture
def two(built: Path, tmp_path: Path, host) -> tuple[Host, list[str]]:
    """Two copies on one host, one inside the other's path."""
    shutil.copytree(built, tmp_path / "knit")
    shutil.copytree(built, tmp_path / "knit" / "guild")
    here = host(tmp_path)
    return here, [f"{here.address}knit/", f"{here.address}knit/guild/"]


def test_what_an_earlier_version_kept_belongs_to_the_first_copy_that_looks(two: tuple[Host, list[str]], visitor) -> None:
    here, (first, second) = two
    with visitor(service_workers="block", allow=("console: Service Worker", "console: Failed to load resource")) as one:
        one.context.add_init_script(HURRY)
        page = one.open(f"{here.address}knit/pieces/leaning-kite.json")  # no script of ours has looked yet
        page.evaluate(FORMER, OWN)
        machine(page, first)
        at(page, 3)
        assert page.evaluate(TITLE) == OWN["title"]
        assert run(page, "return (await s.readNote('notes.' + a[0])).notes", OWN["digest"]) == {"2": "a knot"}
        step_to(page, 4)
        machine(page, first)
        at(page, 4)
        # A window of the earlier version is still open, and moves on.
        note = {"key": f"place.{OWN['digest']}", "n": 99, "at": 1, "index": 6, "done": 0}
        page.evaluate("(note) => localStorage.setItem(`wedgework.${note.key}`, JSON.stringify(note))", note)
        machine(page, first)
        at(page, 6)
        machine(page, second)
        at(page, 0)
        assert page.evaluate(TITLE) == PIECE["title"]
        assert run(page, "return (await s.listPieces()).length") == 0
        # Deleted is deleted.
        machine(page, first)
        run(page, "await s.deletePiece(a[0])", OWN["digest"])
        machine(page, first)
        assert page.evaluate(TITLE) == PIECE["title"]
        assert page.evaluate("(digest) => Object.keys(localStorage).filter((key) => key.includes(digest))", OWN["digest"]) == []


def test_two_copies_on_one_host_do_not_touch_each_other(two: tuple[Host, list[str]], visitor) -> None:
    _, (first, second) = two
    with visitor() as one:
        one.context.add_init_script(HURRY)
        outer, inner = one.open(f"{first}machine/", stored=True), one.context.new_page()
        told = "window.told = []; addEventListener('DOMContentLoaded', () => new MutationObserver(() => told.push("
        told += "document.querySelector('.ww-offline')?.textContent)).observe(document.body, {subtree: true, childList: true}));"
        inner.add_init_script(told)
        inner.goto(f"{second}machine/")
        for page, steps in ((outer, 2), (inner, 1)):
            page.wait_for_selector(READY)
            for index in range(steps):
                step_to(page, index + 1)
        outer.reload()
        at(outer, 2)
        inner.reload()
        at(inner, 1)
        assert outer.query_selector("[data-notice=elsewhere]") is None
        inner.wait_for_function("() => document.documentElement.dataset.offline === 'ready'")
        assert inner.query_selector(".ww-update") is None, "another copy's worker is no new version"
        assert len(inner.evaluate("indexedDB.databases()")) == 2
        for page, path in ((outer, "/knit/"), (inner, "/knit/guild/")):
            run(page, "await s.deletePiece(a[0])", PIECE["digest"])
            kept = page.evaluate("Object.keys(localStorage).filter((key) => key.includes('place.'))")
            assert not any(f" {path} " in key for key in kept)


def test_two_pieces_of_the_same_steps_are_two_pieces(served: str, visitor) -> None:
    """They differ in their title only, so their steps have one digest; each keeps its title and its place."""
    with visitor() as one:
        one.context.add_init_script(HURRY)
        page = one.open(f"{served}plan/", live=True)
        page.fill("[name=title]", "One cushion")  # the steps are those of the piece that the page at the machine has of its own
        settled(page)
        page.click("text=Open at the machine")
        page.wait_for_url(f"{served}machine/**")
        page.wait_for_selector(READY)
        step_to(page, 1)
        machine(page, served)
        at(page, 1)
        assert page.evaluate(TITLE) == "One cushion"
        hand_over = """
            const made = await s.apart(a[0], {digest: a[1], title: a[2]});
            await s.putPiece(made);
            await s.openPiece(made.digest);
        """
        for title, place in (("The other cushion", 0), (PIECE["title"], 0), ("One cushion", 1)):
            run(page, hand_over, {**PIECE, "title": title}, PIECE["digest"], PIECE["title"])
            machine(page, served)
            assert page.evaluate(TITLE) == title
            at(page, place)
        listed = run(page, "return (await s.listPieces()).map((one) => [one.title, one.index])")
        assert sorted(listed) == [[PIECE["title"], None], ["One cushion", 1], ["The other cushion", None]]


@pytest.mark.fault
def test_cleared_while_the_page_is_open_it_is_put_back_and_said(host, visitor) -> None:
    here = host()
    with visitor() as one:
        one.context.add_init_script(HURRY)
        page = one.open(f"{here.address}reference/words/")
        machine(page, here.address)
        run(page, "await s.putPiece(a[0]); await s.openPiece(a[0].digest)", OWN)
        machine(page, here.address)
        step_to(page, 1)
        session = one.context.new_cdp_session(page)
        session.send("Storage.clearDataForOrigin", {"origin": here.address.rstrip("/"), "storageTypes": "all"})
        step_to(page, 2)
        page.wait_for_selector("[data-notice=cleared]")
        assert "cleared while this page was open" in page.inner_text("[data-notice=cleared]")
        machine(page, here.address)
        at(page, 2)
        assert page.evaluate(TITLE) == OWN["title"]


@pytest.mark.fault
def test_a_piece_that_the_device_threw_away_is_said_and_its_place_kept(served: str, visitor) -> None:
    with visitor() as one:
        one.context.add_init_script(HURRY)
        page = one.open(f"{served}reference/words/")
        machine(page, served)
        run(page, "await s.putPiece(a[0]); await s.openPiece(a[0].digest); await s.setPlace(a[0].digest, 5)", OWN)
        drop = """new Promise((done) => {
            const asked = indexedDB.open(`wedgework ${new URL('../', location.href).pathname}`);
            asked.onsuccess = () => {
                const writing = asked.result.transaction('pieces', 'readwrite');
                writing.objectStore('pieces').clear();
                writing.oncomplete = () => { asked.result.close(); done(); };
            };
        })"""
        page.evaluate(drop)
        machine(page, served)
        assert "cannot be read on this device any more" in page.inner_text("[data-notice=opened]")
        page.click("[data-opens=more]")
        page.wait_for_selector(".m-pieces >> text=has thrown the piece away")
        assert f"Step 6 of {len(CUES)}" in page.inner_text(".m-pieces")
        run(page, "await s.putPiece(a[0]); await s.openPiece(a[0].digest)", OWN)
        machine(page, served)
        at(page, 5)


FULL = """
    const put = IDBObjectStore.prototype.put, set = Storage.prototype.setItem;
    const full = () => { throw new DOMException('full', 'QuotaExceededError'); };
    IDBObjectStore.prototype.put = full;
    Storage.prototype.setItem = function (key, text) { return this === localStorage ? full() : set.call(this, key, text); };
"""
REFUSED = """
    for (const name of ['localStorage', 'sessionStorage']) {
        Object.defineProperty(window, name, {get() { throw new DOMException('no', 'SecurityError'); }, configurable: true});
    }
    IDBFactory.prototype.open = () => { throw new DOMException('no', 'SecurityError'); };
"""


@pytest.mark.fault
@pytest.mark.parametrize(
    ("script", "says"), [(FULL, "there is no room left"), (REFUSED, "switched off")], ids=["full", "refused"]
)
def test_a_piece_that_cannot_be_kept_is_a_sentence(script: str, says: str, served: str, visitor) -> None:
    with visitor() as one:
        one.context.add_init_script(script)
        page = one.open(f"{served}plan/", live=True)
        page.click("text=Open at the machine")
        page.wait_for_function("() => document.querySelector('.ww-notes')?.textContent.includes('could not be kept')")
        assert says in page.inner_text(".ww-notes")
        assert page.url.endswith("/plan/")
        page.fill("[name=title]", "Still answers")
        settled(page)
        assert page.query_selector(".ww-old") is None
