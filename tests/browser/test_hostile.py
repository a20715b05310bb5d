"""Hostile links and files in the pages themselves: no script, no dialog, no other host, no wait, nothing of one's own lost."""

from __future__ import annotations

import json
import random
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page

from hostile import SCRIPTS, hostile_files, hostile_links, packed
from pieces import diamond
from stepping import PIECE
from visiting import script_at
from wedgework.faces.link import make_design_link, make_link
from wedgework.formats import write_design

pytestmark = pytest.mark.fault

GOLDEN = Path(__file__).resolve().parents[1] / "golden" / "formats"
LONGEST_S = 5.0
"""A second is promised; the machine that runs the tests does other things meanwhile. The core alone is measured in tests/laws."""
OWN = {**PIECE, "digest": "0123456789ab", "title": "Mine"}
STORE = "const s = await import(scriptAt('store.js'));"
KEEP = """async (piece) => {{ {store}
    await s.putPiece(piece);
    await s.keepNote(`notes.${{piece.digest}}`, {{ notes: {{ 3: 'mine' }} }});
}}"""
KEPT = """async (digest) => {{ {store}
    const listed = (await s.listPieces()).filter((one) => one.title === 'Mine').length;
    return [JSON.stringify(await s.getPiece(digest)), (await s.readNote(`notes.${{digest}}`)).notes, listed];
}}"""
# What would be more of if a text had become more than text.
SCRIPTED = (
    "main :is(script:not([type='application/json']), iframe, object, embed, [onload], [onerror], img[src=x], [href^=javascript])"
)
# Each waits for a question behind it: the page asks one after the other.
OPEN_ALL = """async ([engine, fragments]) => {
    const { askText } = await import(engine);
    let slowest = 0;
    for (const fragment of fragments) {
        const begun = performance.now();
        location.hash = fragment;
        await new Promise((done) => setTimeout(done, 0));
        await askText('behind', JSON.stringify({ask: 'open', fragment: ''}));
        slowest = Math.max(slowest, performance.now() - begun);
    }
    return slowest / 1000;
}"""
FILES_IN = """async ([engine, selector, busy, texts]) => {
    const { askText } = await import(engine);
    let slowest = 0;
    for (const text of texts) {
        const input = document.querySelector(selector);
        const list = new DataTransfer();
        list.items.add(new File([text], `${text.slice(0, 20)}.json`));
        input.files = list.files;
        const begun = performance.now();
        input.dispatchEvent(new Event('change'));
        do await new Promise((done) => setTimeout(done, 5)); while (document.querySelector(busy)?.matches(':disabled'));
        await askText('behind', JSON.stringify({ask: 'open', fragment: ''}));
        slowest = Math.max(slowest, performance.now() - begun);
    }
    return slowest / 1000;
}"""
Record = Callable[[str, object], None]


def keep_own(page: Page, top: str) -> list[Any]:
    store = STORE.format(top=top)
    page.evaluate(KEEP.format(store=store), OWN)
    return own(page, top)


def own(page: Page, top: str) -> list[Any]:
    found: list[Any] = page.evaluate(KEPT.format(store=STORE.format(top=top)), OWN["digest"])
    return found


def engines(page: Page) -> None:
    """Notes every other state than ready: an engine that fell is a hang for whoever waits."""
    seen = "new MutationObserver(() => states.push(document.documentElement.dataset.engine))"
    page.evaluate(
        f"() => {{ window.states = []; {seen}.observe(document.documentElement, {{attributeFilter: ['data-engine']}}); }}"
    )


def kept(name: str) -> str:
    return (GOLDEN / f"{name}.json").read_text(encoding="utf-8")


def scripted(whole: str) -> list[str]:
    """The file with a script in every text that it has."""

    def put(value: Any, script: str) -> Any:
        if isinstance(value, dict):
            return {key: each if key in ("format", "kind", "do") else put(each, script) for key, each in value.items()}
        if isinstance(value, list):
            return [put(each, script) for each in value]
        return script if isinstance(value, str) else value

    return [json.dumps(put(json.loads(whole), script)) for script in SCRIPTS]


@pytest.mark.parametrize("count", [150, pytest.param(2_000, marks=pytest.mark.long)])
def test_hostile_links_in_one_page(count: int, served: str, visitor, record_property: Record) -> None:
    whole = [make_link("gauge", {"stitches": "37"}), make_link("yarn-count", {}), make_design_link(diamond(20, 40))]
    links = [fragment for _, fragment in hostile_links(random.Random(count), whole, count)]
    for script in SCRIPTS:
        inside = {"c": "gauge", "i": {"stitches": script, "width": script}, "v": "0.1.0"}
        links += [packed(json.dumps(inside)), packed(json.dumps({**inside, "i": {script: "1"}})), f"w1.{script}"]
    # A page's address holds no half characters.
    links = [link.encode("utf-8", "replace").decode()[:20_000] for link in links]
    with visitor() as one:
        page = one.open(f"{served}calculators/gauge/", live=True)
        before = keep_own(page, "../../")
        engines(page)
        scripts = len(page.query_selector_all(SCRIPTED))
        slowest = page.evaluate(OPEN_ALL, [script_at(page, "engine.js"), links])
        assert slowest < LONGEST_S
        assert len(page.query_selector_all(SCRIPTED)) == scripts
        assert page.evaluate("[...states]") == []
        assert page.evaluate("performance.getEntriesByType('navigation').length") == 1
        assert own(page, "../../") == before
        page.evaluate("() => { location.hash = ''; }")
        page.fill("[name=stitches]", "40")
        page.fill("[name=width]", "10 cm")
        page.wait_for_function("() => document.querySelector('[data-result=stitches_per_10cm]').textContent === '40.00'")
    record_property("faults", len(links))


PLACES = [
    ("reference/saving/", "[data-keep] input[type=file]", "[data-keep] .ww-button:nth-of-type(2)", "everything-kept"),
    ("reference/reports/", "[data-reports] input[multiple]", "nothing", "test-knitted"),
    ("calculators/shelf/", "input[type=file]", "nothing", "everything-kept"),
    ("board/", "input[accept^='.json']", "nothing", "design"),
]


@pytest.mark.parametrize("count", [36, pytest.param(600, marks=pytest.mark.long)])
@pytest.mark.parametrize(("address", "selector", "busy", "name"), PLACES, ids=[place[0] for place in PLACES])
def test_hostile_files_in_one_page(
    address: str, selector: str, busy: str, name: str, count: int, served: str, visitor, record_property: Record
) -> None:
    whole = write_design(diamond(12, 24)) if name == "design" else kept(name)
    files = [text for _, text in hostile_files(random.Random(f"{address} {count}"), whole, count)] + scripted(whole)
    files = [text.encode("utf-8", "replace").decode() for text in files if len(text) < 1_000_000]
    top = "../" * address.count("/")
    with visitor() as one:
        page = one.open(f"{served}{address}")
        page.wait_for_selector(selector, state="attached")
        before = keep_own(page, top)
        page.evaluate("async () => (await import(scriptAt('engine.js'))).start()")
        page.wait_for_function("() => document.documentElement.dataset.engine === 'ready'")
        engines(page)
        scripts = len(page.query_selector_all(SCRIPTED))
        slowest = page.evaluate(FILES_IN, [script_at(page, "engine.js"), selector, busy, files])
        assert slowest < LONGEST_S
        ask = "async (engine) => (await import(engine)).askText('last', JSON.stringify({ask: 'open', fragment: ''}))"
        assert "problems" in page.evaluate(ask, script_at(page, "engine.js")), "the engine of the first question answers the last"
        assert len(page.query_selector_all(SCRIPTED)) == scripts
        assert page.evaluate("[...states]") == []
        assert own(page, top) == before
    record_property("faults", len(files))
