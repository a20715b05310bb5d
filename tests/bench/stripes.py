"""Stripe colours of 200 needles by 1,200 rows: on CPython, in Pyodide, and the slider that moves them, in a browser.

make bench
"""

from __future__ import annotations

import json
import subprocess
import sys
import tempfile
from pathlib import Path

from in_worker import WHERE, in_worker
from playwright.sync_api import sync_playwright
from told import line

from builder.build import build
from builder.environment import find_chromium
from builder.serve import serving
from chromium import QUIET

HERE = Path(__file__).resolve().parent
LARGE = {
    "bed": "own", "bed_pitch": "4.5", "bed_needles": "200", "size_in": "counts", "needles": "200", "rows": "1200",
    "stitches_per_10cm": "28", "rows_per_10cm": "40", "bands": "12",
}  # fmt: skip
FILL = """(typed) => {
    const form = document.querySelector('form[data-calculator]');
    for (const [name, text] of Object.entries(typed)) if (form.elements[name]) form.elements[name].value = text;
    form.elements.rows.dispatchEvent(new Event('input', {bubbles: true}));
}"""
THERE = "() => document.querySelector('.ww-fabric-canvas')?.getAttribute('aria-label').includes('200 stitches')"
# From the move to the frame in which it is painted.
SLIDE = """async () => {
    const slider = document.querySelector('#fabric-offset');
    const times = [];
    for (let i = 0; i < 100; i += 1) {
        slider.value = String((i * 37) % 240);
        const begin = performance.now();
        slider.dispatchEvent(new Event('input', {bubbles: true}));
        await new Promise((done) => requestAnimationFrame(() => setTimeout(done, 0)));
        times.push(performance.now() - begin);
    }
    times.sort((a, b) => a - b);
    return [times[50], times[95]];
}"""


STRIPES = "stripes"


def pythons() -> None:
    done = subprocess.run([sys.executable, HERE / "colouring.py"], capture_output=True, text=True, check=True)
    found = json.loads(done.stdout)
    line(
        STRIPES,
        "stripe colours of 200 x 1,200 as a picture : a plain loop",
        f"{found['colours'] / found['loop']:.2f}",
        "at most 1",
    )
    line(STRIPES, "the path of the yarn itself : the same loop", f"{found['path'] / found['loop']:.2f}", "once for each plan")
    if inside := in_worker("colouring"):
        line(STRIPES, f"the same in {WHERE}", f"{inside['colours']:.2f} s", "under 1 s")


def slider() -> None:
    chromium = find_chromium()
    if chromium is None:
        print("stripes: no Chromium here")
        return
    with tempfile.TemporaryDirectory() as made, sync_playwright() as tool:
        folder = Path(made) / "site"
        build(folder)
        with serving(folder) as address:
            browser = tool.chromium.launch(executable_path=chromium, args=QUIET)
            page = browser.new_page(viewport={"width": 1024, "height": 768})
            page.set_default_timeout(120_000)
            page.goto(f"{address}calculators/stripes/")
            page.wait_for_selector(".ww-fabric-canvas")
            page.evaluate(FILL, LARGE)
            page.wait_for_function(THERE)
            middle, most = page.evaluate(SLIDE)
            browser.close()
    line(
        STRIPES,
        "the slider moves the stripes of it, 95th percentile",
        f"{most:.0f} ms",
        f"at most 100 ms (median {middle:.0f} ms)",
    )


if __name__ == "__main__":
    pythons()
    slider()
