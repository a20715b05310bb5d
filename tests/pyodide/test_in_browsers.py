"""The suites of the core on the Python of each browser, from the wheel as built. Node runs all of them with every change, each
browser a good part; the whole in each is for `make long`."""

from __future__ import annotations

import json
import shutil
import zipfile
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from builder.environment import PYODIDE_WHEELS, in_ci, node_problem
from builder.runtime import NODE_PYODIDE, build_wheel
from builder.serve import serving
from engines import ENGINES, engine_missing, open_engine

TOP = Path(__file__).resolve().parents[2]
HERE = Path(__file__).resolve().parent
PATIENCE = 1_200
"""Seconds: the slowest engine on a busy machine."""
PAGE = '<!doctype html><meta charset="utf-8"><title>Suites</title><script type="module" src="page.js"></script><pre></pre>'
SCRIPT = """
const worker = new Worker('in_worker.js', {type: 'module', name: decodeURIComponent(location.hash.slice(1))});
worker.onmessage = ({data}) => {
    document.querySelector('pre').textContent = data.told;
    document.documentElement.dataset.status = data.status;
};
worker.onerror = (event) => { document.documentElement.dataset.status = `the worker fell: ${event.message}`; };
"""
PART = " ".join(
    f"calc/{name}"
    for name in (
        *(file.name for file in sorted((TOP / "tests" / "calc").glob("test_*.py"))),
        *("declare", "draw", "finish", "formats", "layout", "practice", "replay", "whereabouts", "words", "yarn"),
    )
)
"""What is quick and holds the numbers, the formats, the model bed and the words; the rest takes five minutes in an engine."""
SUITES = [pytest.param(PART, id="part"), pytest.param("calc every", id="whole", marks=pytest.mark.long)]
DONE = "document.documentElement.dataset.status !== undefined"
SAID = "[document.documentElement.dataset.status, document.querySelector('pre').textContent]"


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Everything that the worker loads, side by side."""
    missing = node_problem() or ("" if NODE_PYODIDE.is_dir() and PYODIDE_WHEELS.is_dir() else "run the suites with: make long")
    if missing and not in_ci():
        pytest.skip(missing)
    assert not missing
    made = tmp_path_factory.mktemp("suites")
    shutil.copytree(NODE_PYODIDE, made / "pyodide", ignore=shutil.ignore_patterns("*.map", "*.d.ts", "node_modules"))
    shutil.copytree(PYODIDE_WHEELS, made / "wheels")
    core = build_wheel(made)
    shutil.copyfile(HERE / "in_worker.js", made / "in_worker.js")
    (made / "index.html").write_text(PAGE, encoding="utf-8")
    (made / "page.js").write_text(SCRIPT, encoding="utf-8")
    with zipfile.ZipFile(made / "tests.zip", "w", zipfile.ZIP_DEFLATED) as archive:
        archive.write(TOP / "pyproject.toml", "pyproject.toml")
        for file in sorted((TOP / "tests").rglob("*")):
            if file.is_file() and "__pycache__" not in file.parts:
                archive.write(file, file.relative_to(TOP))
    wheels = [file.name for file in (made / "wheels").glob("*.whl")]
    (made / "list.json").write_text(json.dumps({"wheels": wheels, "core": core.name}), encoding="utf-8")
    return made


def judge(status: str, told: str) -> None:
    assert status == "0", told[-20_000:]
    assert "emscripten" in told
    assert int(told.rsplit(" passed", 1)[0].split()[-1]) > 500


@pytest.mark.parametrize("suites", SUITES)
@pytest.mark.parametrize("name", ENGINES)
def test_the_suites_in(name: str, suites: str, folder: Path) -> None:
    missing = engine_missing(name)
    if missing and not in_ci():
        pytest.skip(missing)
    assert not missing
    with serving(folder) as address, open_engine(name) as tab:
        tab.go(f"{address}#{suites}")
        tab.wait(DONE, patience=PATIENCE)
        judge(*tab.value(SAID))


@pytest.mark.parametrize("suites", SUITES)
def test_the_suites_in_chromium(suites: str, browser: Browser, folder: Path) -> None:
    with serving(folder) as address:
        page = browser.new_page()
        page.goto(f"{address}#{suites}")
        page.wait_for_function(f"() => {DONE}", timeout=PATIENCE * 1000)
        judge(*page.evaluate(SAID))
        page.close()
