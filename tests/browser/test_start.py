"""The engine starts from a picture of memory; whatever is wrong with it, it starts the plain way and says why."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Page, Route

from builder.budgets import first_answer
from builder.fingerprint import named
from visiting import LIVE, STORED, answer_html, right

ALONE = {"service_workers": "block"}
NO_COPY = "console: Service Worker registration blocked"
NOISE = (NO_COPY, "console: Failed to load resource", "console: Failed to find a valid digest")


def way(page: Page) -> dict[str, str]:
    """How the engine started: quick or plain, and why plain."""
    noted = page.evaluate("localStorage.getItem(Object.keys(localStorage).find(key => key.startsWith('wedgework.start ')))")
    return json.loads(noted)


def about(page: Page, served: str) -> str:
    """What the page about this copy says of it."""
    page.goto(f"{served}reference/copy/")
    page.wait_for_selector("[data-copy] table")
    return page.inner_text("[data-copy]")


def test_it_starts_the_quick_way(served: str, built: Path, visitor) -> None:
    with visitor(allow=NOISE, **ALONE) as one:
        asked: list[str] = []
        one.context.on("request", lambda request: asked.append(request.url))
        page = one.open(f"{served}calculators/gauge/", live=True)
        right(page)
        assert way(page)["way"] == "quick"
        assert not any("python_stdlib" in url or "/runtime/core-" in url for url in asked), "nothing is imported again"
        # The budget of a first answer counts every script of the pages; a page asks for some of them.
        paths = {urlsplit(url).path.removeprefix("/") for url in asked if url.startswith(served)}
        files = [built / (f"{path}index.html" if path.endswith("/") else path) for path in paths]
        assert 0.9 * first_answer(built) < sum(file.stat().st_size for file in files) <= first_answer(built)


def cut(route: Route) -> None:
    body = route.fetch().body()
    route.fulfill(body=body[: len(body) // 2])


def flip(route: Route) -> None:
    body = bytearray(route.fetch().body())
    body[len(body) // 2] ^= 1
    route.fulfill(body=bytes(body))


def another(route: Route) -> None:
    """A picture that another core left, which is whole in itself."""
    text = route.fetch().text()
    before, _, rest = text.partition("export default ")
    runtime = json.loads(rest.rstrip().removesuffix(";"))
    runtime["smoke"]["answer"] = "{}"
    route.fulfill(body=f"{before}export default {json.dumps(runtime)};", content_type="text/javascript")


def another_build(route: Route) -> None:
    """The head says that another build of the runtime made it."""
    text = route.fetch().text()
    before, _, rest = text.partition('"head": "')
    head, _, rest = rest.partition('"')
    route.fulfill(body=f'{before}"head": "{head[:20]}{head[24:28]}{head[24:]}"{rest}', content_type="text/javascript")


@pytest.mark.fault
@pytest.mark.parametrize(
    ("address", "break_it", "said"),
    [
        pytest.param("**/runtime/start/*", lambda route: route.abort(), "fetch", id="not there"),
        pytest.param("**/runtime/start/*", cut, "", id="truncated", marks=pytest.mark.long),
        pytest.param("**/runtime/start/*", flip, "", id="a bit flipped", marks=pytest.mark.long),
        pytest.param("**/app-*/runtime.js", another_build, "build id", id="of another build"),
    ],
)
def test_a_broken_picture_is_left_for_the_plain_way(
    address: str, break_it: Callable[[Route], None], said: str, served: str, visitor
) -> None:
    with visitor(allow=NOISE, **ALONE) as one:
        one.context.route(address, break_it)
        page = one.open(f"{served}calculators/gauge/", live=True)
        right(page)
        assert way(page)["way"] == "plain"
        assert said in way(page)["fault"]
        assert way(page)["fault"]
        assert "Plain, because the quick start failed: " in about(page, served)


@pytest.mark.fault
def test_a_wrong_answer_to_the_known_question_is_never_shown(served: str, visitor) -> None:
    with visitor(allow=NOISE, **ALONE) as one:
        one.context.route("**/app-*/runtime.js", another)
        page = one.open(f"{served}calculators/gauge/")
        static = answer_html(page)
        page.wait_for_function(LIVE)
        assert page.get_attribute("html", "data-engine") == "failed"
        assert answer_html(page) == static
        assert way(page)["way"] == "none"
        assert "It did not start, neither way: Error: the question with a known answer" in about(page, served)


@pytest.mark.fault
def test_a_picture_that_answers_wrongly_is_left_for_the_plain_way(built: Path, served: str, visitor) -> None:
    """All its parts are right and it starts, but to the question with a known answer it gives another."""
    script = (named(built, "app") / "worker.js").read_text(encoding="utf-8")
    quick = 'await Promise.race([way === "plain" ? startPlain() : startQuick(), gone])'
    assert quick in script
    wrong = "startQuick().then((door) => ({ ...door, answer: (asked) => door.answer(asked).replace('37', '38') }))"
    script = script.replace(quick, quick.replace("startQuick()", wrong))
    with visitor(allow=NOISE, **ALONE) as one:
        one.context.route("**/app-*/worker.js", lambda route: route.fulfill(body=script, content_type="text/javascript"))
        page = one.open(f"{served}calculators/gauge/", live=True)
        right(page)
        assert way(page)["way"] == "plain"
        assert "the question with a known answer was answered wrongly" in about(page, served)


@pytest.mark.fault
def test_a_silent_start_is_left_for_the_plain_way(served: str, visitor) -> None:
    with visitor(allow=NOISE, **ALONE) as one:
        held: list[Route] = []
        one.context.route("**/runtime/start/*", lambda route: held.append(route))
        page = one.context.new_page()
        page.clock.install()
        page.goto(f"{served}calculators/gauge/")
        page.wait_for_function("() => document.documentElement.dataset.engine === 'booting'")
        page.wait_for_timeout(500)
        page.clock.run_for(21_000)
        page.clock.resume()
        page.wait_for_function(LIVE)
        assert page.get_attribute("html", "data-engine") == "ready"
        assert "nothing was heard" in way(page)["fault"]
        for route in held:
            route.abort()


@pytest.mark.fault
def test_a_stored_part_that_has_changed_is_thrown_away_and_loaded_again(served: str, visitor) -> None:
    with visitor() as one:
        page = one.open(f"{served}calculators/gauge/", live=True, stored=True)
        spoil = """async () => {
            for (const name of await caches.keys()) {
                const cache = await caches.open(name);
                for (const request of await cache.keys()) {
                    if (!request.url.includes('/runtime/start/')) continue;
                    const kept = await cache.match(request);
                    const bytes = new Uint8Array(await kept.arrayBuffer());
                    bytes[bytes.length >> 1] ^= 1;
                    await cache.put(request, new Response(bytes, {headers: kept.headers}));
                    return request.url;
                }
            }
        }"""
        spoilt = page.evaluate(spoil)
        page.reload()
        page.wait_for_function(LIVE)
        right(page)
        assert way(page)["way"] == "plain"
        assert "has changed since it was stored" in way(page)["fault"]
        page.wait_for_function(STORED)
        page.wait_for_function("url => caches.match(url).then(kept => kept !== undefined)", arg=spoilt)
        page.reload()
        page.wait_for_function(LIVE)
        assert way(page)["way"] == "quick"


def test_the_first_worker_begins_in_the_head_when_all_is_stored(served: str, visitor) -> None:
    with visitor() as one:
        page = one.open(f"{served}calculators/gauge/", live=True, stored=True)
        assert page.get_attribute("html", "data-offline") == "ready"
        page.add_init_script(
            "window.begun = []; window.Worker = class extends Worker {"
            "constructor(...how) { super(...how); begun.push(document.readyState); } }"
        )
        page.reload()
        page.wait_for_function(LIVE)
        assert page.evaluate("begun")[0] == "loading"
        assert len(page.evaluate("begun")) <= 2, "one engine, and the search's own"
        right(page)
