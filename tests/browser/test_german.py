"""German pages live: the engine answers in German, the ways on stay in German, and all of it without a network."""

from __future__ import annotations

import json

from builder.languages import catalogue
from visiting import LIVE, STORED, script_at
from wedgework.catalogue import CALCULATORS
from wedgework.faces.wire import answer, default_answer
from wedgework.say import spoken

ASK = """([address, question]) => import(address).then((engine) => {
    engine.start();
    return engine.askText('test', question);
})"""
GERMAN = catalogue("de")


def test_the_live_answers_are_the_built_ones_and_links_come_over(served: str, visitor) -> None:
    with visitor() as one:
        page = one.open(f"{served}de/calculators/gauge/", live=True)
        with spoken("de", GERMAN):
            for calculator in CALCULATORS:
                question = json.dumps({"calculator": calculator.slug, "inputs": {}})
                assert page.evaluate(ASK, [script_at(page, "engine.js"), question]) == default_answer(calculator.slug), (
                    calculator.slug
                )
        page.fill("[name=width]", "29,5 cm")
        page.wait_for_function("() => document.querySelector('form[data-calculator]').dataset.live === 'answered'")
        with spoken("de", GERMAN):
            wanted = json.loads(answer(json.dumps({"calculator": "gauge", "inputs": {"width": "29,5 cm"}})))["answer"]["result"]
        shown = f"{wanted['stitches_per_10cm']:.2f}".replace(".", ",")
        page.wait_for_function("(shown) => document.querySelector('output').textContent.includes(shown)", arg=shown)
        # The link of this German page says the same on the English one, in English.
        fragment = page.evaluate(
            ASK,
            [script_at(page, "engine.js"), json.dumps({"ask": "link", "calculator": "gauge", "inputs": {"width": "29,5 cm"}})],
        )
        english = one.open(f"{served}calculators/gauge/#{json.loads(fragment)['fragment']}")
        english.wait_for_function(
            "(shown) => document.querySelector('output').textContent.includes(shown)", arg=shown.replace(",", ".")
        )
        assert english.input_value("[name=width]") == "29,5 cm"


def test_from_the_planner_to_the_machine_in_german_with_the_server_gone(host, visitor) -> None:
    here = host()
    with visitor() as one:
        page = one.open(f"{here.address}de/plan/")
        page.wait_for_function(STORED)
        here.stop()
        page.reload()
        page.wait_for_function(LIVE)
        page.fill("[name=title]", "Probe")
        page.get_by_role("button", name="An der Maschine").first.click()
        page.wait_for_url("**/de/machine/")
        page.wait_for_function("() => document.body.textContent.includes('Grundreihen')")
        assert page.evaluate("document.documentElement.lang") == "de"
        page.get_by_role("button", name="Fertig, nächster Schritt").click()
        said = page.inner_text("main")
        assert any(word in said for word in ("Reihenzähler", "stricken", "Haltestellung"))
