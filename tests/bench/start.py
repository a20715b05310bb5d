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
from typing import Any

from playwright.sync_api import Browser, sync_playwright
from told import line

from builder.build import build
from builder.environment import find_chromium
from builder.fingerprint import named
from builder.keep import ship_worker
from builder.runtime import NODE_PYODIDE
from chromium import QUIET
from engines import ENGINES, Tab, engine_missing, open_engine
from visiting import PATIENCE, Host
from wedgework.faces.wire import answer

TIMES = 7
TITLES = {"firefox": "Firefox", "webkit": "WebKitGTK"}
INPUTS = {"stitches": "37"}
RIGHT = json.loads(answer(json.dumps({"calculator": "gauge", "inputs": INPUTS})))["answer"]["result"]["stitches_per_10cm"]

# In our page: type as soon as there is a field, look at every change of the answer.
OURS = """
addEventListener('DOMContentLoaded', () => {
  const output = document.querySelector('output');
  new MutationObserver(() => {
    const shown = output.querySelector('[data-result=stitches_per_10cm]')?.textContent;
    const { dataset } = document.documentElement;
    if (shown === RIGHT && !dataset.done) dataset.done = performance.now();
  }).observe(output, {childList: true, subtree: true, characterData: true});
  setTimeout(() => {
    const field = document.querySelector('[name=stitches]');
    field.value = '37';
    field.dispatchEvent(new Event('input', {bubbles: true}));
  }, 0);
});
"""
DONE = "document.documentElement.dataset.done"
STOCK_PAGE = """<!doctype html><meta charset="utf-8"><title>stock</title><script type="module" src="stock.js"></script>"""
STOCK_JS = """
const worker = new Worker('stock-worker.js', {type: 'module'});
worker.onmessage = (event) => {
  const {answer} = JSON.parse(event.data);
  if (answer.result.stitches_per_10cm === RIGHT) document.documentElement.dataset.done = performance.now();
};
worker.postMessage(QUESTION);
"""
STOCK_WORKER = """
import runtime from './APP/runtime.js';
const starting = (async () => {
  const {loadPyodide} = await import('./' + runtime.pyodide + 'pyodide.mjs');
  const python = await loadPyodide({indexURL: new URL(runtime.pyodide, location).href});
  python.unpackArchive(await (await fetch(runtime.core)).arrayBuffer(), 'wheel');
  return python.pyimport('wedgework.faces.wire').answer;
})();
self.onmessage = async (event) => self.postMessage((await starting)(event.data));
"""


def add_pages(folder: Path) -> None:
    """Ours with the clock in it, and beside it a page with nothing but Pyodide in a worker."""
    page = (folder / "calculators" / "gauge" / "index.html").read_text(encoding="utf-8")
    ours = folder / "calculators" / "timed"
    ours.mkdir()
    (ours / "timed.js").write_text(OURS.replace("RIGHT", json.dumps(f"{RIGHT:.2f}")), encoding="utf-8")
    timed = page.replace("</head>", '<script src="timed.js"></script></head>', 1)
    (ours / "index.html").write_text(timed, encoding="utf-8")
    question = json.dumps({"calculator": "gauge", "inputs": INPUTS})
    (folder / "stock.html").write_text(STOCK_PAGE, encoding="utf-8")
    script = STOCK_JS.replace("RIGHT", str(RIGHT)).replace("QUESTION", json.dumps(question))
    (folder / "stock.js").write_text(script, encoding="utf-8")
    (folder / "stock-worker.js").write_text(STOCK_WORKER.replace("APP", named(folder, "app").name), encoding="utf-8")
    # As the package brings them: the list of packages, and the program as it is.
    (place,) = folder.glob("runtime/*/pyodide.mjs")
    for name in ("pyodide-lock.json", "pyodide.asm.wasm", "python_stdlib.zip"):
        (place.parent / name).write_bytes((NODE_PYODIDE / name).read_bytes())
    ship_worker(folder)


class InChromium:
    """What this measurement needs of a tab; the other engines' tab has the same (engines.py)."""

    def __init__(self, browser: Browser) -> None:
        self._page = browser.new_context(viewport={"width": 1024, "height": 768}).new_page()
        self._page.set_default_timeout(PATIENCE)

    def go(self, address: str) -> None:
        self._page.goto(address)

    def wait(self, expression: str) -> None:
        self._page.wait_for_function(f"() => {expression}")

    def value(self, expression: str) -> Any:
        return self._page.evaluate(f"() => {expression}")


def milliseconds(tab: InChromium | Tab, host: Host, addresses: list[str]) -> dict[str, list[float]]:
    """The times of each address, taken in turns."""
    host.start()
    tab.go(host.address)
    tab.wait("['ready', 'paused', 'impossible'].includes(document.documentElement.dataset.offline)")
    host.stop()
    taken: dict[str, list[float]] = {address: [] for address in addresses}
    for _ in range(TIMES):
        for address in addresses:
            tab.go("about:blank")
            tab.go(host.address + address)
            tab.wait(f"{DONE} !== undefined")
            taken[address].append(float(tab.value(DONE)))
    return taken


def tell(name: str, tab: InChromium | Tab, host: Host, wanted: str) -> None:
    ours, stock = (statistics.median(times) for times in milliseconds(tab, host, ["calculators/timed/", "stock.html"]).values())
    what = f"{name}, warm, server gone: navigation to the first right live answer : the same in a bare Pyodide"
    line("start", what, f"{ours / stock:.2f}", wanted)


def main() -> int:
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made) / "site"
        build(folder)
        add_pages(folder)
        host = Host(folder)
        host.stop()
        chromium = find_chromium()
        if chromium is None:
            print("start: no Chromium here")
        else:
            with sync_playwright() as tool:
                browser = tool.chromium.launch(executable_path=chromium, args=QUIET)
                tell("Chromium", InChromium(browser), host, "at most 0.35")
                browser.close()
        for name in ENGINES:
            if missing := engine_missing(name):
                print(f"start: {missing}")
                continue
            with open_engine(name) as tab:
                tell(TITLES[name], tab, host, "at most 0.45")
    return 0


if __name__ == "__main__":
    sys.exit(main())
