"""Runs `times()` of a module of this folder in a bare, pinned Pyodide in a worker of Chromium, as the pages have their Python."""

from __future__ import annotations

import json
import shutil
import tempfile
from pathlib import Path
from typing import Any

from playwright.sync_api import sync_playwright

from builder.environment import find_chromium
from builder.runtime import NODE_PYODIDE, build_core
from builder.serve import serving
from chromium import QUIET

__all__ = ["WHERE", "in_worker"]

WHERE = "Pyodide, in a worker of the browser"
HERE = Path(__file__).resolve().parent
RUNTIME = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip", "pyodide-lock.json")
WORKER = """
import {loadPyodide} from './pyodide.mjs';
self.onmessage = async ({data: {module, modules}}) => {
  const python = await loadPyodide({indexURL: new URL('./', location).href});
  python.unpackArchive(await (await fetch('core.zip')).arrayBuffer(), 'wheel');
  for (const name of modules) python.FS.writeFile(name, await (await fetch(name)).text());
  python.runPython("import sys; sys.path.insert(0, '.')");
  self.postMessage(python.runPython(`import json, ${module}; json.dumps(${module}.times())`));
};
"""
RUN = """(question) => new Promise((done, fail) => {
  const worker = new Worker('worker.js', {type: 'module'});
  worker.onmessage = (event) => done(event.data);
  worker.onerror = (event) => fail(new Error(event.message));
  worker.postMessage(question);
})"""


def in_worker(module: str) -> Any:
    """What `times()` gives there; None, and a word about it, where there is no Chromium or no Pyodide."""
    chromium = find_chromium()
    if chromium is None or not NODE_PYODIDE.is_dir():
        print(f"{module}: no Chromium, or no Pyodide here")
        return None
    with tempfile.TemporaryDirectory() as made, sync_playwright() as tool:
        folder = Path(made)
        for name in RUNTIME:
            shutil.copyfile(NODE_PYODIDE / name, folder / name)
        build_core(folder).rename(folder / "core.zip")
        modules = [shutil.copy(file, folder / file.name).name for file in HERE.glob("*.py")]
        (folder / "index.html").write_text("<!doctype html><title>bench</title>", encoding="utf-8")
        (folder / "worker.js").write_text(WORKER, encoding="utf-8")
        with serving(folder) as address:
            browser = tool.chromium.launch(executable_path=chromium, args=QUIET)
            page = browser.new_page()
            page.goto(address)
            found = page.evaluate(RUN, {"module": module, "modules": modules})
            browser.close()
    return json.loads(found)
