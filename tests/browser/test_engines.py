"""The same visit in Firefox and in WebKitGTK, which is nearest to the tablet of most knitters. Chromium has all other tests."""

from __future__ import annotations

import io
import json
import shutil
from collections.abc import Callable, Iterator
from contextlib import suppress
from pathlib import Path

import pytest
from pypdf import PdfReader

from builder.environment import in_ci
from builder.keep import kept_files, twin
from engines import ENGINES, Tab, Told, engine_missing, open_engine
from versions import FIRST, GAUGE, SECOND, change, few_pages
from visiting import SCRIPTS, Host
from wedgework.faces.link import make_link
from wedgework.faces.piece import piece_of
from wedgework.faces.wire import answer

LIVE = "['ready', 'failed'].includes(document.documentElement.dataset.engine)"
ANSWERED = "document.querySelector('form[data-live]').dataset.live === 'answered'"
STORED = "['ready', 'paused', 'impossible'].includes(document.documentElement.dataset.offline)"
AT_MACHINE = "document.querySelector('.machine[data-ready]') !== null"
PLAN, MACHINE, WORDS = "plan/", "machine/", "reference/words/"
START = "JSON.parse(localStorage.getItem(Object.keys(localStorage).find((key) => key.startsWith('wedgework.start '))))"
# Whether a script inside the page may run, and whether anything came from elsewhere.
INLINE = """
    const script = document.createElement('script');
    script.textContent = 'document.documentElement.dataset.bad = "yes"';
    document.body.append(script);
    return document.documentElement.dataset.bad ?? '';
"""
# The same for a handler written into the page and for a question to another host.
HANDLER = """
    const box = document.createElement('div');
    box.innerHTML = '<button onclick="document.documentElement.dataset.bad = `yes`">x</button>';
    document.body.append(box);
    box.firstChild.click();
    box.remove();
    const refused = new Promise((done) => {
        const heard = ({effectiveDirective}) => effectiveDirective === 'connect-src' && done('');
        document.addEventListener('securitypolicyviolation', heard);
        setTimeout(() => done('it was not refused'), 5_000);
    });
    fetch('http://localhost:9/').catch(() => 0);
    return (document.documentElement.dataset.bad ?? '') + (await refused);
"""
FOREIGN = "performance.getEntriesByType('resource').map((one) => one.name).filter((name) => new URL(name).host !== location.host)"


@pytest.fixture(scope="module", params=ENGINES)
def engine(request: pytest.FixtureRequest) -> Iterator[Tab]:
    """One browser for all tests of an engine; each test has an address, and so a storage, of its own."""
    missing = engine_missing(request.param)
    if missing and not in_ci():
        pytest.skip(missing)
    assert not missing
    with open_engine(request.param) as tab:
        yield tab


@pytest.fixture(scope="module")
def home(engine: Tab, built: Path) -> Iterator[Host]:
    """Where this engine has been before, so that everything is stored there."""
    here = Host(built)
    live(engine, f"{here.address}{GAUGE}")
    assert engine.value("document.documentElement.dataset.engine") == "ready"
    assert engine.value(START)["way"] == "quick"
    right(engine)
    assert engine.run(INLINE) == "", "the policy is in force"
    assert engine.value(FOREIGN) == []
    engine.wait(STORED)
    assert engine.value("document.documentElement.dataset.offline") == "ready"
    yield here
    here.stop()


def live(tab: Tab, address: str) -> None:
    tab.go(address)
    tab.wait(LIVE)


def right(tab: Tab, fill: Callable[[Tab, str, str], None] = Tab.type) -> None:
    """40 stitches over 10 cm are 40 per 10 cm, whoever counts."""
    fill(tab, "[name=stitches]", "40")
    fill(tab, "[name=width]", "10 cm")
    tab.wait(ANSWERED)
    tab.wait("document.querySelector('[data-result=stitches_per_10cm]').textContent === '40.00'")


def plan_small(tab: Tab, title: str, needles: str = "24", rows: str = "48") -> dict[str, str]:
    typed = {"title": title, "size_in": "counts", "needles": needles, "rows": rows}
    fill = """
        const form = document.querySelector('form[data-calculator=panel-plan]');
        for (const [name, text] of Object.entries(a)) form.elements[name].value = text;
        form.elements.title.dispatchEvent(new Event('input', {bubbles: true}));
    """
    tab.run(fill, typed)
    tab.wait(ANSWERED)
    return typed


def to_the_machine(tab: Tab) -> None:
    with suppress(Told):  # another page comes
        tab.run("[...document.querySelectorAll('button')].find((one) => one.textContent === 'Open at the machine').click();")
    tab.wait(AT_MACHINE)


# WebKitGTK's driver has a session without a disk, which forgets a store while no page of it is open: that is said, and true.
NOTICED = """
    const all = [...document.querySelectorAll('.m-notices > *')].filter((one) => a !== 'webkit' || !one.matches('.ww-lost'));
    return all.map((one) => one.textContent).join(' ');
"""


def opened(tab: Tab) -> str:
    """The title of the piece at the machine."""
    return tab.text(".m-title")


def test_it_works_with_the_server_gone(engine: Tab, home: Host) -> None:
    home.stop()
    try:
        live(engine, f"{home.address}{GAUGE}")
        assert engine.value("document.documentElement.dataset.engine") == "ready"
        assert engine.value(START)["way"] == "quick"
        right(engine)
        engine.go(f"{home.address}{MACHINE}")
        engine.wait(AT_MACHINE)
        engine.go(f"{home.address}reference/words")
        assert engine.value("location.pathname") == "/reference/words/"
    finally:
        home.start()


@pytest.mark.parametrize("times", [2, pytest.param(25, marks=pytest.mark.long)])
def test_ready_is_said_only_when_a_reload_without_the_server_works(times: int, engine: Tab, host: Callable[[], Host]) -> None:
    """Each time a first visit; the server goes in the moment in which the word stands there."""
    for _ in range(times):
        here = host()
        engine.go(f"{here.address}{WORDS}")
        engine.wait("document.documentElement.dataset.offline === 'ready'")
        here.stop()
        for _ in range(2):
            engine.reload()
            engine.wait("document.documentElement.dataset.offline === 'ready'")
            assert engine.text("h1").startswith("Needles and words")


# Keeps what is stored open, from outside the copy: see NOTICED above. No page of the copy is open when this one alone is.
OUTSIDE = """<!doctype html><meta charset="utf-8"><title>Outside</title><script>
    const held = new Map();
    setInterval(async () => { for (const name of await caches.keys()) held.set(name, await caches.open(name)); }, 100);
</script>"""


def test_a_new_version_waits_until_it_is_wanted(engine: Tab, host: Callable[[Path], Host], built: Path, tmp_path: Path) -> None:
    """Every page is closed, so that the browser begins the newer worker; it serves what was in use until a person wants it."""
    copy = few_pages(built, tmp_path / "guild")
    (tmp_path / "outside.html").write_text(OUTSIDE, encoding="utf-8")
    here = host(tmp_path)
    address = f"{here.address}guild/{GAUGE}"
    offered = "document.querySelector('.ww-update') !== null"
    serves = "(await navigator.serviceWorker.getRegistration()).waiting === null"
    engine.go(f"{here.address}outside.html")
    with engine.beside(address) as page:
        page.wait("document.documentElement.dataset.offline === 'ready'")
    change(copy, SECOND, "links.js")
    with engine.beside(address) as page:
        page.wait(offered)
        assert page.text("h1").startswith(FIRST)
    engine.run("await new Promise((done) => setTimeout(done, 2_000));")
    here.stop()
    with engine.beside(address) as page:
        page.wait(offered)
        page.wait(serves)
        assert page.text("h1").startswith(FIRST)
        right(page, Tab.choose)  # WebKitGTK's driver types into the first tab only
        page.click(".ww-update .ww-button")
        page.wait("document.querySelector('h1')?.textContent.startsWith(a)", SECOND)
        page.wait(LIVE)
        right(page, Tab.choose)


@pytest.mark.fault
@pytest.mark.parametrize("every", [60, pytest.param(1, marks=pytest.mark.long)])
def test_a_first_install_that_is_cut_is_taken_up(
    every: int, engine: Tab, host: Callable[[], Host], built: Path, record_property: Callable[[str, object], None]
) -> None:
    """Up to a file, and there it is refused or the line drops: a working page, and later, by itself, a whole copy."""
    here = host()
    files = kept_files(built)
    cuts = range(0, len(files), every)
    for turn, first in enumerate(cuts):
        here.drops = turn % 2 == 1
        here.cut = {path for address, digest, _ in files[first:] for path in (address, twin(digest))}
        engine.go(f"{here.address}{WORDS}")
        engine.wait(f"document.querySelector('.ww-offline')?.textContent.includes('({first} of {len(files)})')")
        assert engine.value("document.documentElement.dataset.offline") == "paused"
        assert "could not be stored for offline use" in engine.text(".ww-offline")
        assert engine.text("h1").startswith("Needles and words")
    here.cut = set()
    engine.run("dispatchEvent(new Event('online'));")  # as the browser says it; nobody loads the page again
    engine.wait("document.documentElement.dataset.offline === 'ready'")
    here.stop()
    engine.reload()
    live(engine, f"{here.address}{GAUGE}")
    assert engine.value(START)["way"] == "quick"
    right(engine)
    record_property("faults", len(cuts))


def test_without_the_picture_of_memory_it_starts_the_plain_way(engine: Tab, host: Callable[[], Host], built: Path) -> None:
    here = host()
    here.refused = {file.relative_to(built).as_posix() for file in built.glob("runtime/start/*")}
    live(engine, f"{here.address}{GAUGE}")
    assert engine.value("document.documentElement.dataset.engine") == "ready"
    assert engine.value(START)["way"] == "plain"
    assert engine.value(START)["fault"]
    right(engine)


def test_planner_machine_reload_and_link(engine: Tab, home: Host) -> None:
    live(engine, f"{home.address}{PLAN}")
    typed = plan_small(engine, "Kites <b>here</b>")
    expected = json.loads(answer(json.dumps({"calculator": "panel-plan", "inputs": typed})))["answer"]["result"]
    assert engine.text("output [data-result=blocks]") == str(expected["blocks"])
    to_the_machine(engine)
    assert engine.value("document.querySelector('[data-machine]').dataset.machine") == expected["steps_digest"]
    cues = piece_of(typed)["cues"]
    for place in (1, 2):
        engine.click("[data-action=forward]")
        engine.wait("document.querySelector('[data-cue]').dataset.cue === a", str(place))
        engine.run("await new Promise((done) => setTimeout(done, 400));")  # a tap right after the last one is a bounce
    engine.reload()
    engine.wait(AT_MACHINE)
    engine.wait("document.querySelector('[data-cue]').dataset.cue === '2'")
    assert engine.text(".m-where") == cues[2]["where"]
    with engine.beside(f"{home.address}{PLAN}#{make_link('panel-plan', typed)}") as other:
        opened = "document.querySelector('.ww-notes:not(.ww-lost)')?.textContent.startsWith('Opened from a link')"
        other.wait(f"{opened} || document.querySelector('.ww-first[open]') !== null")
        if other.value("document.querySelector('.ww-first[open]') !== null"):  # it was typed here: then it is asked first
            other.click(".ww-first[open] .ww-button")
        other.wait(opened)
        assert other.value("document.querySelector('[name=title]').value") == typed["title"]
        assert other.text("output [data-result=blocks]") == str(expected["blocks"])


@pytest.mark.parametrize("address", [PLAN, MACHINE, "board/", "reference/copy/", "reference/saving/", WORDS])
def test_the_policy_is_strict_and_nothing_is_foreign(address: str, engine: Tab, home: Host) -> None:
    engine.go(f"{home.address}{address}")
    engine.wait("document.documentElement.dataset.scripts === 'run'")
    assert engine.run(INLINE) == ""
    assert engine.run(HANDLER) == ""
    assert engine.value(FOREIGN) == []


# In front of the offline worker, which sees what pages and their workers ask of any host; behind an answer nothing is heard.
LISTENS = """
const asked = [];
self.addEventListener('fetch', ({request}) => asked.push(request.url));
self.addEventListener('message', ({data, ports: [port]}) => data === 'asked' && port.postMessage(asked));
"""
ELSEWHERE = "http://elsewhere.invalid/asked-by-a-worker"  # no host has this name (RFC 2606)
HEARD = """
    const {port1, port2} = new MessageChannel();
    const told = new Promise((done) => (port1.onmessage = ({data}) => done(data)));
    (await navigator.serviceWorker.ready).active.postMessage('asked', [port2]);
    return told;
"""


def test_no_worker_asks_another_host(engine: Tab, host: Callable[[Path], Host], built: Path, tmp_path: Path) -> None:
    """The policy of a page does not hold in its workers: they are watched. One that does ask elsewhere is seen."""
    copy = Path(shutil.copytree(built, tmp_path / "site"))
    (copy / "elsewhere.js").write_text(
        f"fetch('{ELSEWHERE}').catch(() => 0).then(() => self.postMessage('asked'));", encoding="utf-8"
    )
    worker = copy / "sw.js"
    worker.write_text(LISTENS + worker.read_text(encoding="utf-8"), encoding="utf-8")
    here = host(copy)
    live(engine, f"{here.address}{GAUGE}")
    engine.wait("document.documentElement.dataset.offline === 'ready'")
    for address in (PLAN, f"de/{PLAN}", "board/"):
        engine.go(f"{here.address}{address}")
        engine.wait(LIVE)
        assert engine.value("document.documentElement.dataset.engine") == "ready"
    asked = engine.run(HEARD)
    assert any(url.endswith("/worker.js") for url in asked)
    assert any("/runtime/" in url for url in asked), "what a worker asks is heard"
    assert [url for url in asked if not url.startswith(here.address)] == []
    engine.run("await new Promise((done) => (new Worker('../elsewhere.js').onmessage = done));")
    assert ELSEWHERE in engine.run(HEARD)


def test_what_is_kept_can_be_read_at_once_on_the_next_page(engine: Tab, home: Host) -> None:
    """What a page begins to write while it is left must not stand in the way of the next one (seen in WebKitGTK)."""
    for title in ("One", "Two"):
        live(engine, f"{home.address}{PLAN}")
        plan_small(engine, title)
        to_the_machine(engine)
        assert engine.run(NOTICED, engine.name) == ""
        assert opened(engine) == title
    live(engine, f"{home.address}{PLAN}")
    plan_small(engine, "Three")  # an answer that the page keeps while it is left
    engine.go(f"{home.address}{MACHINE}")
    engine.wait(AT_MACHINE)
    read = (
        f"{SCRIPTS}\n"
        + """
        const store = await import(scriptAt('store.js'));
        const piece = await store.getPiece(await store.openedPiece());
        const { kept } = await store.keepNote('for-the-test', {});
        return [piece?.title ?? null, kept];
    """
    )
    assert engine.run(read) == ["Two", "both"]


# The page of a guild, on a host of its own: it keeps its frame as high as the calculator in it.
GUILD = """<!doctype html><html lang="en"><meta charset="utf-8"><title>Guild</title>
<iframe title="Calculator" src="ADDRESS" width="600" height="300" sandbox="allow-scripts allow-same-origin"></iframe>
<script>
    const frame = document.querySelector('iframe');
    addEventListener('message', ({data}) => { frame.height = data; });
    frame.addEventListener('load', () => frame.contentWindow.postMessage(1, '*'));
</script>"""


def test_one_calculator_in_the_page_of_somebody_else(
    engine: Tab, home: Host, host: Callable[[Path], Host], tmp_path: Path
) -> None:
    kept = "Object.keys(localStorage).length"
    shown = "document.querySelector('[data-result=stitches_per_10cm]').textContent"
    engine.go(f"{home.address}{WORDS}")
    before = engine.value(kept)
    (tmp_path / "index.html").write_text(GUILD.replace("ADDRESS", f"{home.address}embed/gauge/"), encoding="utf-8")
    there = host(tmp_path)
    engine.go(there.address)
    engine.wait("Number(document.querySelector('iframe').height) > 400")
    with engine.inside() as frame:
        assert frame.value(shown) == "14.04", "the true answer before any engine"
        frame.choose("[name=stitches]", "40")  # not every driver gives keys to a frame
        frame.choose("[name=width]", "10 cm")
        frame.wait(f"{ANSWERED} && {shown} === '40.00'")
        assert frame.run(INLINE) == "", "the policy holds in a frame too"
        assert frame.value(FOREIGN) == []
    engine.go(f"{home.address}{WORDS}")
    assert engine.value(kept) == before, "a frame keeps nothing"


def test_it_prints(engine: Tab, home: Host) -> None:
    live(engine, f"{home.address}{PLAN}")
    try:
        paper = engine.printed()
    except Told as told:
        pytest.skip(f"{engine.name} prints for no driver: {told}")
    pages = PdfReader(io.BytesIO(paper)).pages
    assert 1 <= len(pages) < 13
    assert "Lap blanket" in pages[0].extract_text()


@pytest.mark.long
def test_what_an_earlier_version_kept_is_found(engine: Tab, home: Host) -> None:
    piece = piece_of({"title": "From before", "size_in": "counts", "needles": "20", "rows": "40"})
    engine.go(f"{home.address}reference/words/")
    former = """
        for (const key of Object.keys(localStorage)) localStorage.removeItem(key);
        for (const { name } of await indexedDB.databases()) indexedDB.deleteDatabase(name);
        const note = { digest: a.digest, key: 'open', n: 3, at: 1 };
        localStorage.setItem('wedgework.open', JSON.stringify(note));
        await new Promise((done, fail) => {
            const asked = indexedDB.open('wedgework', 1);
            asked.onerror = fail;
            asked.onupgradeneeded = () => {
                asked.result.createObjectStore('pieces', { keyPath: 'digest' }).put(a);
                const place = { key: `place.${a.digest}`, index: 4, n: 2, at: 1 };
                asked.result.createObjectStore('notes', { keyPath: 'key' }).put(place);
            };
            asked.onsuccess = () => { asked.result.close(); done(); };
        });
    """
    engine.run(former, piece)
    engine.go(f"{home.address}{MACHINE}")
    engine.wait(AT_MACHINE)
    assert opened(engine) == "From before"
    assert engine.value("document.querySelector('[data-cue]').dataset.cue") == "4"
