"""From navigation to the first right live answer, against a bare Pyodide that loads the same wheel, in the same browser.

    make bench

Both run warm from the offline copy with the server gone. The question is asked before the engine is ready, and the
clock is stopped in the page when the right figure is there. What is printed is the ratio of the medians.
"""

from __future__ import annotations

import json
import statistics
import sys
import tempfile
from pathlib import Path

from playwright.sync_api import Browser, sync_playwright
from told import line

from builder.build import build
from builder.environment import find_chromium
from builder.keep import ship_worker
from builder.runtime import NODE_PYODIDE
from chromium import QUIET
from visiting import PATIENCE, STORED, Host
from wedgework.faces.wire import answer

TIMES = 7
INPUTS = {"stitches": "37"}
RIGHT = json.loads(answer(json.dumps({"calculator": "gauge", "inputs": INPUTS})))["answer"]["result"]["stitches_per_10cm"]

# In our page: type as soon as there is a field, look at every change of the answer.
OURS = """
    addEventListener('DOMContentLoaded', () => {
        const output = document.querySelector('output');
        if (!output) return;
        new MutationObserver(() => {
            const shown = output.querySelector('[data-result=stitches_per_10cm]')?.textContent;
            if (shown === RIGHT && !window.done) window.done = performance.now();
        }).observe(output, {childList: true, subtree: true, characterData: true});
        setTimeout(() => {
            const field = document.querySelector('[name=stitches]');
            field.value = '37';
            field.dispatchEvent(new Event('input', {bubbles: true}));
        }, 0);
    });
"""
STOCK_PAGE = """<!doctype html><meta charset="utf-8"><title>stock</title><script type="module" src="stock.js"></script>"""
STOCK_JS = """
const worker = new Worker('stock-worker.js', {type: 'module'});
worker.onmessage = (event) => {
  const {answer} = JSON.parse(event.data);
  if (answer.result.stitches_per_10cm === RIGHT) window.done = performance.now();
};
worker.postMessage(QUESTION);
"""
STOCK_WORKER = """
import runtime from './app/runtime.js';
const starting = (async () => {
  const {loadPyodide} = await import('./' + runtime.pyodide + 'pyodide.mjs');
  const python = await loadPyodide({indexURL: new URL(runtime.pyodide, location).href});
  python.unpackArchive(await (await fetch(runtime.core)).arrayBuffer(), 'wheel');
  return python.pyimport('wedgework.faces.wire').answer;
})();
self.onmessage = async (event) => self.postMessage((await starting)(event.data));
"""


def add_stock(folder: Path) -> None:
    """A page beside ours with nothing but Pyodide in a worker."""
    question = json.dumps({"calculator": "gauge", "inputs": INPUTS})
    (folder / "stock.html").write_text(STOCK_PAGE, encoding="utf-8")
    script = STOCK_JS.replace("RIGHT", str(RIGHT)).replace("QUESTION", json.dumps(question))
    (folder / "stock.js").write_text(script, encoding="utf-8")
    (folder / "stock-worker.js").write_text(STOCK_WORKER, encoding="utf-8")
    # As the package brings them: the list of packages, and the program as it is.
    (place,) = folder.glob("runtime/*/pyodide.mjs")
    for name in ("pyodide-lock.json", "pyodide.asm.wasm", "python_stdlib.zip"):
        (place.parent / name).write_bytes((NODE_PYODIDE / name).read_bytes())
    ship_worker(folder)


def milliseconds(browser: Browser, host: Host, addresses: list[str]) -> dict[str, list[float]]:
    """The times of each address, taken in turns."""
    context = browser.new_context(viewport={"width": 1024, "height": 768})
    context.add_init_script(OURS.replace("RIGHT", json.dumps(f"{RIGHT:.2f}")))
    page = context.new_page()
    page.set_default_timeout(PATIENCE)
    page.goto(host.address)
    page.wait_for_function(STORED)
    host.stop()
    taken: dict[str, list[float]] = {address: [] for address in addresses}
    for _ in range(TIMES):
        for address in addresses:
            page.goto("about:blank")
            page.goto(host.address + address)
            page.wait_for_function("() => window.done")
            taken[address].append(page.evaluate("window.done"))
    context.close()
    return taken


def main() -> int:
    chromium = find_chromium()
    if chromium is None:
        print("start: no Chromium here")
        return 0
    with tempfile.TemporaryDirectory() as made, sync_playwright() as tool:
        folder = Path(made) / "site"
        build(folder)
        add_stock(folder)
        host = Host(folder)
        browser = tool.chromium.launch(executable_path=chromium, args=QUIET)
        taken = milliseconds(browser, host, ["calculators/gauge/", "stock.html"])
        ours, stock = (statistics.median(times) for times in taken.values())
        browser.close()
    what = "Chromium, warm, server gone: navigation to the first right live answer : the same in a bare Pyodide"
    line("start", what, f"{ours / stock:.2f}", "at most 0.35")
    return 0


if __name__ == "__main__":
    sys.exit(main())
