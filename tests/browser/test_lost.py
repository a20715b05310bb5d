"""What the browser threw away is said, with what is still there, as long as one of the three places is left to remember."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page

from builder.keep import ship_worker
from stepping import PIECE
from versions import few_pages
from visiting import GONE, Host, Visitor

WORDS = "reference/words/"
READY = "() => document.documentElement.dataset.offline === 'ready'"
LOOKED = f"{READY} && document.documentElement.dataset.marked === 'yes'"
SAVE = "async (piece) => (await import(scriptAt('store.js'))).putPiece(piece)"
MARKED = """async () => {
    const name = (await caches.keys())[0];
    const mark = await (await (await caches.open(name)).match(new URL('../../app/mark.json', location.href)))?.json();
    return mark?.pieces === 1 && mark.places.length === 3;
}"""
# A page is left after so many writings of marks: what it began then never comes to its end.
LEFT_AFTER = """(() => {
    let done = 0;
    const cut = (at, name, isMark, never) => {
        const own = at.prototype[name];
        at.prototype[name] = function (...given) {
            if (!isMark(...given)) return own.apply(this, given);
            if (done === TIMES) document.documentElement.dataset.left = 'yes';
            done += 1;
            return done > TIMES ? never() : own.apply(this, given);
        };
    };
    const never = () => new Promise(() => {});
    cut(Storage, 'setItem', (key) => key.startsWith('wedgework.mark'), () => { throw new Error('left'); });
    cut(IDBObjectStore, 'put', (value) => value.key === 'mark', () => { throw new Error('left'); });
    cut(Cache, 'put', (address) => String(address).endsWith('app/mark.json'), never);
})()"""
WRITINGS = 6  # one that is the first and one with all that is known, in each of three places
NOTES, BASE, COPY = "local_storage", "indexeddb", "cache_storage,service_workers"


def at_home(one: Visitor, here: Host) -> Page:
    """One piece is kept, everything is stored, and each place has its mark."""
    page = one.open(f"{here.address}{WORDS}")
    page.wait_for_function(LOOKED)
    page.evaluate(SAVE, PIECE)
    page.reload()
    page.wait_for_function(LOOKED)
    assert page.evaluate(MARKED)
    assert page.query_selector(".ww-lost") is None
    return page


def throw_away(page: Page, here: Host, what: str) -> None:
    page.goto("about:blank")
    session = page.context.new_cdp_session(page)
    session.send("Storage.clearDataForOrigin", {"origin": here.address.rstrip("/"), "storageTypes": what})
    session.detach()


def said(page: Page, here: Host, place: str = WORDS) -> str:
    page.goto(f"{here.address}{place}")
    page.wait_for_selector(".ww-lost")
    return page.inner_text(".ww-lost p")


@pytest.mark.fault
@pytest.mark.parametrize(
    ("what", "lost", "left", "more"),
    [
        (COPY, ["the copy for offline use"], ["the quick notes", "pieces in it now: 1"], "The copy has been loaded again."),
        (BASE, ["pieces that it held: 1"], ["the quick notes", "the copy for offline use"], "Places and notes are kept twice"),
        pytest.param(
            NOTES,
            ["the quick notes"],
            ["pieces in it now: 1", "the copy for offline use"],
            "Places and notes are kept twice",
            marks=pytest.mark.long,
        ),
        pytest.param(
            f"{NOTES},{BASE}",
            ["the quick notes", "pieces that it held: 1"],
            ["the copy for offline use"],
            "A piece comes back",
            marks=pytest.mark.long,
        ),
        (
            f"{BASE},{COPY}",
            ["pieces that it held: 1", "the copy for offline use"],
            ["the quick notes"],
            "A piece comes back",
        ),
    ],
    ids=["copy", "base", "notes", "all that is mine", "all but the notes"],
)
def test_it_is_said_what_was_lost_and_what_is_left(what: str, lost: list[str], left: list[str], more: str, host, visitor) -> None:
    here = host()
    with visitor() as one:
        page = at_home(one, here)
        throw_away(page, here, what)
        words = said(page, here)
        gone, _, rest = words.partition("Still there: ")
        there, _, after = rest.partition(".")
        for part in lost:
            assert part in gone
        assert gone.count(";") == len(lost) - 1
        for part in left:
            assert part in there
        assert there.count(";") == len(left) - 1
        assert more in after
        # It stays until a person has read it, and comes once.
        assert said(page, here, "machine/") == words
        page.click("text=I have read it")
        page.wait_for_selector(".ww-lost", state="detached")
        for _ in range(2):
            page.goto(f"{here.address}{WORDS}")
            page.wait_for_function(LOOKED)
            assert page.query_selector(".ww-lost") is None


@pytest.mark.fault
@pytest.mark.parametrize("times", [pytest.param(n, marks=pytest.mark.long if n % 2 else []) for n in range(WRITINGS)])
def test_a_page_that_is_left_while_it_marks_has_lost_nothing(times: int, host, visitor) -> None:
    here = host()
    with visitor() as one:
        page = one.context.new_page()
        page.add_init_script(LEFT_AFTER.replace("TIMES", str(times)))
        page.goto(f"{here.address}{WORDS}")
        page.wait_for_function("() => document.documentElement.dataset.left === 'yes'")
        page.close()
        for _ in range(2):
            page = one.open(f"{here.address}{WORDS}")
            page.wait_for_function(LOOKED)
            assert page.query_selector(".ww-lost") is None
            page.close()


@pytest.mark.fault
def test_where_nothing_is_left_to_remember_nothing_is_made_up(host, visitor) -> None:
    here = host()
    with visitor() as one:
        page = at_home(one, here)
        throw_away(page, here, "all")
        page.goto(f"{here.address}{WORDS}")
        page.wait_for_function(LOOKED)
        assert page.query_selector(".ww-lost") is None


def test_a_new_version_and_a_deleted_piece_are_no_loss(built, tmp_path, host, visitor) -> None:
    folder = few_pages(built, tmp_path / "site")
    here = host(folder)
    with visitor(allow=GONE) as one:
        page = at_home(one, here)
        about = folder / WORDS / "index.html"
        about.write_text(about.read_text(encoding="utf-8").replace("</title>", ", the second</title>"), encoding="utf-8")
        ship_worker(folder)
        page.reload()
        page.click("text=Use it now")
        page.wait_for_function("() => document.title.endsWith('the second')")
        page.wait_for_function(LOOKED)
        assert page.evaluate(MARKED)
        assert page.query_selector(".ww-lost") is None
        delete = "async (digest) => (await import(scriptAt('store.js'))).deletePiece(digest)"
        page.evaluate(delete, PIECE["digest"])
        page.reload()
        page.wait_for_function(LOOKED)
        assert page.query_selector(".ww-lost") is None
