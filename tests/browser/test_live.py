"""Forms answer as one types; whatever happens to the engine, the page holds a true answer and says how it stands."""

from __future__ import annotations

import json
from html import escape
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, Worker

from visiting import LIVE, answer_html, figures, script_at, settled
from wedgework.catalogue import CALCULATORS
from wedgework.faces.answers import json_text
from wedgework.faces.wire import answer, default_answer

# Without the offline copy, where a test stands between the page and its files.
ALONE = {"service_workers": "block"}
NO_COPY = "console: Service Worker registration blocked"
ASK = """([address, question]) => import(address).then((engine) => {
    engine.start();
    return engine.askText('test', question);
})"""


def engine_of(page: Page) -> Worker:
    """The search has a worker of its own."""
    (found,) = [worker for worker in page.workers if worker.url.endswith("/worker.js")]
    return found


@pytest.fixture
def gauge(served: str) -> str:
    return f"{served}calculators/gauge/"


def test_the_static_page_is_the_live_answer_byte_for_byte(served: str, built: Path, visitor) -> None:
    """For every calculator: what the built page holds, the string of this Python and the string of the browser's."""
    with visitor() as one:
        page = one.open(f"{served}calculators/gauge/", live=True)
        assert page.evaluate("document.documentElement.dataset.engine") == "ready"
        for calculator in CALCULATORS:
            question = json.dumps({"calculator": calculator.slug, "inputs": {}})
            live = page.evaluate(ASK, [script_at(page, "engine.js"), question])
            assert live == default_answer(calculator.slug), calculator.slug
            told = json.loads(live)
            html = (built / "calculators" / calculator.slug / "index.html").read_text(encoding="utf-8")
            assert f'data-answer="{escape(json_text({"answer": told["answer"]}))}"' in html, calculator.slug
            assert f"<output>{told['html']}</output>" in html, calculator.slug


def test_the_states_of_the_engine(gauge: str, served: str, visitor) -> None:
    with visitor() as one:
        page = one.context.new_page()
        page.add_init_script(
            "window.states = []; new MutationObserver(() => states.push(document.documentElement.dataset.engine))"
            ".observe(document, {subtree: true, attributeFilter: ['data-engine']})"
        )
        page.goto(gauge)
        page.wait_for_function(LIVE)
        assert [state for state in page.evaluate("states") if state != "static"] == ["booting", "ready"]
        still = one.open(f"{served}reference/words/")
        still.wait_for_timeout(500)
        assert still.get_attribute("html", "data-engine") == "static", "a page without a form needs no engine"


def test_typing_gives_the_right_figures(gauge: str, visitor) -> None:
    """30 stitches and 39 rows over 10 cm each way are 30 and 39 per 10 cm, whoever counts."""
    with visitor() as one:
        page = one.open(gauge)
        page.fill("[name=stitches]", "30")  # before the engine is ready: taken as soon as it is
        page.fill("[name=width]", "10 cm")
        assert "starting" in page.inner_text(".ww-told")
        page.wait_for_function(LIVE)
        page.fill("[name=rows]", "39")
        page.fill("[name=height]", "100 mm")
        settled(page)
        assert (figures(page)["stitches_per_10cm"], figures(page)["rows_per_10cm"]) == ("30.00", "39.00")
        page.click("button:text-is('Defaults')")
        settled(page)
        static = str(json.loads(default_answer("gauge"))["html"])
        assert answer_html(page) == static.replace("&nbsp;", "\u00a0")


def test_a_wrong_input_keeps_the_last_good_answer_and_marks_it(gauge: str, visitor) -> None:
    with visitor() as one:
        page = one.open(gauge, live=True)
        page.fill("[name=stitches]", "38")
        settled(page)
        good = answer_html(page)
        page.fill("[name=stitches]", "<b>many</b>")
        page.fill("[name=height]", "")
        page.wait_for_selector(".ww-old")
        assert answer_html(page) == good
        told = page.inner_text(".ww-told")
        assert "does not belong to what is in the fields now" in told
        assert '"<b>many</b>" is not a number' in told
        assert page.get_attribute("[name=stitches]", "aria-invalid") == "true"
        described = page.get_attribute("[name=stitches]", "aria-describedby") or ""
        assert "is not a number" in page.inner_text(f"#{described.split()[0]}")
        page.click(".ww-told a >> nth=0")
        assert page.evaluate("document.activeElement.name || location.hash") in ("stitches", "#gauge-stitches")
        page.fill("[name=stitches]", "39")
        page.fill("[name=height]", "31 cm")
        settled(page)
        assert page.query_selector(".ww-old, [aria-invalid], .ww-problem") is None
        assert page.inner_text(".ww-told") == ""
        assert answer_html(page) != good


def test_the_planner_answers_and_shows_only_the_fields_that_count(served: str, visitor) -> None:
    with visitor() as one:
        page = one.open(f"{served}plan/", live=True)
        assert not page.is_visible("[name=swatch_width]")
        page.select_option("[name=gauge_from]", "swatch")
        assert page.is_visible("[name=swatch_width]")
        assert not page.is_visible("[name=stitches_per_10cm]")
        page.select_option("[name=size_in]", "counts")
        page.fill("[name=needles]", "40")
        page.fill("[name=rows]", "80")
        settled(page)
        inputs = page.evaluate("Object.fromEntries(new FormData(document.querySelector('form[data-calculator]')))")
        expected = json.loads(answer(json.dumps({"calculator": "panel-plan", "inputs": inputs})))
        assert inputs["needles"] == "40"
        assert figures(page)["blocks"] == str(expected["answer"]["result"]["blocks"])
        assert "40 needles" in page.inner_text("output")


def test_fields_that_come_later_are_whole(browser: Browser, served: str, visitor) -> None:
    """Without a script every field is seen; with one all are there soon, in the same order, and take what is meant for them."""
    names = "form => [...form.querySelectorAll('[name]')].map((one) => one.name)"
    form = "form[data-calculator]"
    plain = browser.new_context(java_script_enabled=False)
    built = plain.new_page()
    for address in ("plan/", "calculators/written-pattern/"):
        built.goto(served + address)
        for folded in built.query_selector_all(f"{form} .ww-folded > summary"):
            folded.click()
        every = [one.get_attribute("name") for one in built.query_selector_all(f"{form} [name]")]
        assert len(every) > 80
        assert all(built.is_visible(f"{form} [name={name}]") for name in every)
        with visitor() as one:
            page = one.context.new_page()
            page.add_init_script(
                "addEventListener('DOMContentLoaded', () => (window.read = document.querySelectorAll('[name]').length))"
            )
            page.goto(served + address)
            page.wait_for_function(LIVE)
            page.wait_for_selector(f"{form}:not(:has(noscript))")
            assert page.evaluate("read") < len(every) - 40  # not yet there when the browser looks through the fields
            assert page.eval_on_selector(form, names) == every
            shown = [name for name in every if page.is_visible(f"{form} [name={name}]")]
            assert 5 < len(shown) < len(every) - 40
    plain.close()


def test_the_newest_question_wins(served: str, visitor) -> None:
    with visitor() as one:
        page = one.open(f"{served}plan/", live=True)
        told = page.evaluate(
            """async ([address, many]) => {
                const { ask } = await import(address);
                const asked = many.map((title) => ask('same', {calculator: 'panel-plan', inputs: {title}}));
                const other = ask('another', {calculator: 'gauge', inputs: {}});
                const titles = (await Promise.all(asked)).map((one) => one?.answer.inputs.title ?? null);
                return [titles, (await other).answer.calculator];
            }""",
            [script_at(page, "engine.js"), ["first", "second", "third", "last"]],
        )
        assert told == [[None, None, None, "last"], "gauge"]


# Without these neither way of starting leads anywhere.
PARTS = ["**/pyodide.asm.wasm.gz", "**/pyodide.mjs", "**/app-*/runtime.js", "**/app-*/worker.js"]


@pytest.mark.fault
@pytest.mark.parametrize("missing", PARTS)
def test_an_engine_that_cannot_start_leaves_the_static_answer(missing: str, gauge: str, visitor) -> None:
    noise = ("console: Failed to load resource", "console: wasm", "console: TypeError: Failed to fetch", NO_COPY)
    with visitor(allow=noise, **ALONE) as one:
        one.context.route(missing, lambda route: route.abort())
        page = one.open(gauge)
        static = answer_html(page)
        page.wait_for_function(LIVE)
        assert page.get_attribute("html", "data-engine") == "failed"
        assert "could not be loaded" in page.inner_text(".ww-told")
        page.fill("[name=stitches]", "12")
        page.wait_for_selector(".ww-old")
        assert answer_html(page) == static
        assert "does not belong" in page.inner_text(".ww-told")


@pytest.mark.fault
def test_a_changed_wheel_is_not_run(gauge: str, visitor) -> None:
    noise = ("console: Failed to find a valid digest", "console: Failed to load resource", NO_COPY)
    with visitor(allow=noise, **ALONE) as one:
        one.context.route("**/runtime/start/*", lambda route: route.abort())
        one.context.route("**/wedgework-*.zip", lambda route: route.fulfill(body=b"PK another core"))
        page = one.open(gauge, live=True)
        assert page.get_attribute("html", "data-engine") == "failed"


@pytest.mark.fault
def test_a_worker_that_fell_is_started_again(gauge: str, visitor) -> None:
    with visitor() as one:
        page = one.open(gauge, live=True)
        engine_of(page).evaluate("() => setTimeout(() => { throw new Error('for the test'); })")
        page.wait_for_function("() => document.documentElement.dataset.engine === 'booting'")
        page.fill("[name=stitches]", "41")
        settled(page)
        assert page.get_attribute("html", "data-engine") == "ready"
        assert figures(page)["stitches_per_10cm"] == "14.39"  # 41 stitches over 28.5 cm


@pytest.mark.fault
def test_a_worker_that_says_nothing_more_is_started_again(gauge: str, visitor) -> None:
    with visitor() as one:
        page = one.open(gauge, live=True)
        page.clock.install()
        engine_of(page).evaluate("() => { self.onmessage = null; }")
        page.fill("[name=stitches]", "41")
        page.clock.run_for(1_000)
        assert "Working it out" in page.inner_text(".ww-told")
        page.clock.run_for(60_000)
        page.wait_for_selector("text=was started again")
        page.clock.resume()
        page.wait_for_function("() => document.documentElement.dataset.engine === 'ready'")
        page.fill("[name=stitches]", "40")
        settled(page)
        assert page.query_selector(".ww-old") is None


@pytest.mark.fault
def test_a_worker_that_falls_at_every_start_is_given_up(gauge: str, visitor) -> None:
    broken = "self.onmessage = () => { throw new Error('for the test'); }; self.postMessage('{\"state\":\"ready\"}');"
    with visitor(allow=(NO_COPY,), **ALONE) as one:
        one.context.route("**/app-*/worker.js", lambda route: route.fulfill(body=broken, content_type="text/javascript"))
        page = one.open(gauge, live=True)
        for stitches in ("41", "42", "43"):
            page.fill("[name=stitches]", stitches)
            page.wait_for_selector(".ww-old")
            page.wait_for_function(LIVE)
        page.wait_for_function("() => document.documentElement.dataset.engine === 'failed'")
        assert "Live answers" in page.inner_text(".ww-told")


def test_open_at_the_machine_hands_the_piece_over(served: str, visitor) -> None:
    with visitor() as one:
        page = one.open(f"{served}plan/", live=True)
        page.fill("[name=title]", "For the machine")
        page.select_option("[name=size_in]", "counts")
        page.fill("[name=needles]", "24")
        page.fill("[name=rows]", "48")
        settled(page)
        page.click("text=Open at the machine")
        page.wait_for_url(f"{served}machine/**")
        page.wait_for_selector("[data-cue]")
        page.wait_for_selector("text=For the machine", state="attached")
