"""The Python that the pages bring along: the pinned Pyodide and the core, copied into the built folder.

    runtime/<version of Pyodide>/...            from site/node_modules, as npm's lock file pins it; its program compressed
    runtime/core-<digest>/wedgework-...zip      the wheel, built here, and what it imports; another core lies at another address
    runtime/start/...                           the memory of a Python that has imported it (see snapshot.py)
    runtime/words-<digest>/<language>.mo.gz     what it says in other languages than English
    app/runtime.js                              where all that lies, with its sha-256

Nothing of it comes from another host when a page runs.
"""

from __future__ import annotations

import base64
import hashlib
import json
import shutil
import subprocess
import sys
import tempfile
import zipfile
from importlib.metadata import distribution
from pathlib import Path

from builder.keep import TWINS, twin
from builder.languages import LANGUAGES, catalogue
from builder.snapshot import make_image, packed_file, ship_image
from wedgework.faces.wire import answer
from wedgework.version import VERSION

__all__ = ["NODE_PYODIDE", "PYODIDE_FILES", "build_core", "build_wheel", "pyodide_info", "pyodide_version", "ship_runtime"]

TOP = Path(__file__).resolve().parents[2]
NODE_PYODIDE = TOP / "site" / "node_modules" / "pyodide"
# What a start without further packages asks for; the list of packages (pyodide-lock.json) is given in runtime.js, empty.
PYODIDE_FILES = ("pyodide.mjs", "pyodide.asm.mjs", "python_stdlib.zip")
PROGRAM = "pyodide.asm.wasm"
SCRIPT = "pyodide.asm.mjs"

# Asked of every engine before it is called ready; its answer is worked out here, by another Python.
SMOKE = '{"calculator": "gauge", "inputs": {"stitches": "37", "rows": "51"}}'


def pyodide_version() -> str:
    """The version that site/package.json pins; raises FileNotFoundError or ValueError where another or none is installed."""
    wanted: str = json.loads((TOP / "site" / "package.json").read_text(encoding="utf-8"))["dependencies"]["pyodide"]
    installed = json.loads((NODE_PYODIDE / "package.json").read_text(encoding="utf-8"))["version"]
    if installed != wanted:
        raise ValueError(f"Pyodide {installed} is installed, {wanted} is wanted: run npm ci in the folder site")
    return wanted


def pyodide_info() -> dict[str, str]:
    """What the runtime checks of itself before it starts: its Python and its platform."""
    info: dict[str, str] = json.loads((NODE_PYODIDE / "pyodide-lock.json").read_text(encoding="utf-8"))["info"]
    return info


def build_wheel(folder: Path) -> Path:
    """Build our wheel into `folder`, the same bytes each time."""
    folder.mkdir(parents=True, exist_ok=True)
    command = [sys.executable, "-m", "hatchling", "build", "--target", "wheel", "--directory", str(folder)]
    done = subprocess.run(command, cwd=TOP, stdin=subprocess.DEVNULL, capture_output=True, text=True, check=False)
    if done.returncode:
        raise OSError(f"the wheel was not built:\n{done.stdout}{done.stderr}")
    (wheel,) = folder.glob("wedgework-*.whl")
    return wheel


# What the core imports beside the standard library: the parts of the package that are imported with it. The rest of it is a
# command line and helpers.
BESIDE = {"segno": ("__init__.py", "consts.py", "encoder.py", "utils.py", "writers.py")}
_SAME = (1980, 1, 1, 0, 0, 0)


def build_core(folder: Path) -> Path:
    """Our wheel and what it imports in one archive in `folder`, to be unpacked like a wheel. The same bytes each time."""
    with tempfile.TemporaryDirectory() as made:
        wheel = build_wheel(Path(made))
        core = folder / f"{wheel.name.partition('-py3')[0]}.zip"
        shutil.copyfile(wheel, core)
    with zipfile.ZipFile(core, "a", zipfile.ZIP_DEFLATED) as archive:
        for package, modules in BESIDE.items():
            found = distribution(package)
            head = f"{package}-{found.version}.dist-info"
            for name in (*(f"{package}/{module}" for module in modules), f"{head}/licenses/LICENSE"):
                data = Path(str(found.locate_file(name))).read_bytes()
                archive.writestr(zipfile.ZipInfo(name, _SAME), data, zipfile.ZIP_DEFLATED)
    return core


def _ship_words(language: str, folder: Path) -> dict[str, object]:
    """What the core says in this language; other words lie at another address."""
    words = catalogue(language)
    place = folder / "runtime" / f"words-{hashlib.sha256(words).hexdigest()[:16]}"
    place.mkdir(exist_ok=True)
    return packed_file(words, place / f"{language}.mo.gz", folder)


def ship_runtime(folder: Path) -> None:
    """Put both into the built folder, and write the module that says where they lie."""
    version = pyodide_version()
    place = folder / "runtime" / version
    place.mkdir(parents=True)
    for name in PYODIDE_FILES:
        shutil.copyfile(NODE_PYODIDE / name, place / name)
    script = (NODE_PYODIDE / SCRIPT).read_bytes()
    (folder / TWINS).mkdir(exist_ok=True)
    script_twin = packed_file(script, folder / twin(hashlib.sha256(script).hexdigest()), folder)
    program = packed_file((NODE_PYODIDE / PROGRAM).read_bytes(), place / f"{PROGRAM}.gz", folder)
    with tempfile.TemporaryDirectory() as made:
        archive = build_core(Path(made))
        digest = hashlib.sha256(archive.read_bytes()).digest()
        core = folder / "runtime" / f"core-{digest.hex()[:16]}" / archive.name
        core.parent.mkdir()
        shutil.copyfile(archive, core)
        image = ship_image(make_image(NODE_PYODIDE, core), folder)
    words = {language: _ship_words(language, folder) for language in LANGUAGES}
    parts = {
        "version": VERSION,
        "pyodide": f"runtime/{version}/",
        "program": program,
        "script": script_twin,
        "info": pyodide_info(),
        "core": core.relative_to(folder).as_posix(),
        "integrity": "sha256-" + base64.b64encode(digest).decode(),
        "image": image,
        "words": words,
        "smoke": {"question": SMOKE, "answer": answer(SMOKE)},
    }
    about = "// Where the Python of these pages lies, below the site's first page; made by the build."
    (folder / "app" / "runtime.js").write_text(f"{about}\nexport default {json.dumps(parts)};\n", encoding="utf-8")
