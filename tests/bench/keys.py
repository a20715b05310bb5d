"""From a key to the new answer on the page, for every calculator, in the browser; the clock runs in the page.

make bench
"""

from __future__ import annotations

import os
import statistics
import sys

from looked_at import looked_at
from playwright.sync_api import Browser
from told import line

from visiting import LIVE, PATIENCE, Host
from wedgework.catalogue import CALCULATORS
from wedgework.faces.sketch import SKETCHED

KEYS = int(os.environ.get("WEDGEWORK_KEYS", "40"))
GOAL_MS = 50
LATER = {**dict.fromkeys(SKETCHED, "picture first"), "practice-piece": "searched for"}
# The last digit of the first number in the form becomes another one, again and again; the page is asked by its own words
# when the answer to that stands there. The first few keys warm the Python. Where a digit makes a number that is refused, the page
# waits with saying so until the typing pauses, on purpose: that is no answer to be timed.
PRESS = """(keys) => new Promise((done) => {
    const form = document.querySelector('form[data-calculator]');
    const isNumber = (one) => one.name && one.type === 'text' && /\\d/.test(one.value) && !one.closest('[hidden]');
    const field = [...form.elements].find(isNumber);
    if (!field) return done([[], []]);
    const was = field.value, taken = [], pictures = [];
    let begun = 0, tried = 0, drawn = false;
    const press = () => {
        if (taken.length === keys + 5 || tried === 3 * keys) return done([taken.slice(5), pictures.slice(5)]);
        tried += 1;
        drawn = false;
        const digit = 1 + (tried % 8);
        begun = performance.now();
        field.value = was.replace(/\\d(?=\\D*$)/, digit);
        field.dispatchEvent(new Event('input', {bubbles: true}));
    };
    new MutationObserver(() => {
        if (form.dataset.live !== 'answered') return;
        if (!form.querySelector('.ww-told li')) taken.push(performance.now() - begun);
        setTimeout(press, 250);
    }).observe(form, {attributeFilter: ['data-live']});
    new MutationObserver(() => {
        if (drawn || form.dataset.live === 'answered' || !form.querySelector('.ww-sketch svg')) return;
        drawn = true;
        pictures.push(performance.now() - begun);
    }).observe(form.querySelector('output'), {childList: true, subtree: true});
    press();
})"""


def milliseconds(browser: Browser, here: Host, slug: str) -> tuple[list[float], list[float]]:
    """To the answer, and to the picture where that comes before."""
    context = browser.new_context(viewport={"width": 1024, "height": 768})
    page = context.new_page()
    page.set_default_timeout(PATIENCE * 4)
    page.goto(f"{here.address}calculators/{slug}/")
    page.wait_for_function(LIVE)
    taken, pictures = page.evaluate(PRESS, KEYS)
    context.close()
    return taken, pictures


def percentile(taken: list[float], percent: int) -> float:
    return statistics.quantiles(taken, n=100)[percent - 1]


def main() -> int:
    with looked_at("keys") as found:
        if found is None:
            return 0
        browser, here = found
        for calculator in CALCULATORS:
            goal = f"at most {GOAL_MS} ms"
            for what, some in zip(("answer", "picture"), milliseconds(browser, here, calculator.slug), strict=True):
                if some:
                    # No picture comes first where the answer is there as soon, nor where the picture itself is searched for.
                    late = what == "answer" and percentile(some, 95) > GOAL_MS
                    wanted = LATER.get(calculator.slug, goal) if late else goal
                    words = f"{calculator.title}: a key to its {what}, 95th percentile"
                    line("keys", words, f"{percentile(some, 95):.0f} ms", wanted)
    return 0


if __name__ == "__main__":
    sys.exit(main())
