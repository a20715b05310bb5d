"""Make what the recipes need, and say in one sentence what is missing, with the line to type.

    python3 site/builder/environment.py site node          # an environment that builds and serves the pages
    python3 site/builder/environment.py site tests node pyodide browser     # and one that can run every suite

Standard library only, and run by any Python from 3.11 on: nothing else is there yet. Installs again only when a
lock file (or the Python, or the folder) has changed.
"""

from __future__ import annotations

import hashlib
import os
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterable
from importlib.util import find_spec
from pathlib import Path

__all__ = ["Missing", "find_chromium", "find_firefox", "find_webkit", "main", "node_problem"]

TOP = Path(__file__).resolve().parents[2]
VENV = TOP / ".venv"
PYTHON = VENV / "bin" / "python"
LOCKS = {"site": TOP / "site" / "requirements.txt", "tests": TOP / "tests" / "requirements.txt"}
NODE_AT_LEAST = 20
# What the suites need inside Pyodide: pure wheels, unpacked there by the runner, installed nowhere here.
PYODIDE_LOCK = TOP / "tests" / "pyodide" / "requirements.txt"
PYODIDE_WHEELS = VENV / "pyodide-wheels"

# Where an installed Chromium or Chrome lies: names on the path first, then the places of a Mac's applications.
CHROMIUM_NAMES = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome")
CHROMIUM_APPLICATIONS = ("Chromium.app/Contents/MacOS/Chromium", "Google Chrome.app/Contents/MacOS/Google Chrome")
# The three engines of the browser tests, and the screen that WebKitGTK wants; what Debian calls them.
CHROMIUM_PACKAGES = ("chromium", "fonts-dejavu-core")
FIREFOX_NAMES = ("firefox-esr", "firefox")
FIREFOX_APPLICATION = "Firefox.app/Contents/MacOS/firefox"
FIREFOX_PACKAGES = ("firefox-esr",)
WEBKIT_PACKAGES = ("webkit2gtk-driver", "xvfb", "xauth", "dbus-x11")
WEBKIT_BROWSERS = ("lib/*/webkit2gtk-4.1/MiniBrowser", "libexec/webkit2gtk-4.1/MiniBrowser")


class Missing(Exception):
    """Something is not there; the text is one sentence with the line to type."""


def in_ci() -> bool:
    """Whether a missing engine fails the run, and root may install system packages."""
    return os.environ.get("CI") == "true"


def run(*command: str | Path, cwd: Path = TOP) -> None:
    """Run a command quietly; its words are shown only when it fails."""
    done = subprocess.run([str(c) for c in command], cwd=cwd, stdin=subprocess.DEVNULL, capture_output=True, text=True)
    if done.returncode:
        sys.stdout.write(done.stdout + done.stderr)
        raise Missing(f"This step failed, its own words stand above: {' '.join(str(c) for c in command)}")


def digest(*parts: Path | str) -> str:
    """One fingerprint of files and words."""
    total = hashlib.sha256()
    for part in parts:
        total.update(part.read_bytes() if isinstance(part, Path) else part.encode())
        total.update(b"\0")
    return total.hexdigest()


def once(name: str, fingerprint: str, make: Callable[[], None]) -> None:
    """Call `make` unless it was done before for the same fingerprint."""
    stamp = VENV / "stamps" / name
    if stamp.is_file() and stamp.read_text() == fingerprint:
        return
    make()
    stamp.parent.mkdir(parents=True, exist_ok=True)
    stamp.write_text(fingerprint)


def make_venv() -> None:
    """The environment itself, of the Python that runs this; made anew when Python or the folder has changed."""
    if find_spec("venv") is None or find_spec("ensurepip") is None:
        raise Missing("This Python cannot make an environment; on Debian type: sudo apt install python3-venv")
    wanted = digest(sys.version, str(TOP))
    stamp = VENV / "stamps" / "venv"
    if PYTHON.exists() and stamp.is_file() and stamp.read_text() == wanted:
        return
    print("Making the environment in .venv (once) ...", flush=True)
    if VENV.exists():
        shutil.rmtree(VENV)
    run(sys.executable, "-m", "venv", VENV)
    once("venv", wanted, lambda: None)


def pip(*arguments: str | Path) -> None:
    run(PYTHON, "-m", "pip", "--quiet", "--disable-pip-version-check", "--no-input", "install", "--no-deps", *arguments)


def install(names: Iterable[str]) -> None:
    """The pinned parts of each lock file, then the project itself, editable and without a look at the network."""
    for name in names:

        def from_lock(lock: Path = LOCKS[name]) -> None:
            print(f"Installing what {lock.relative_to(TOP)} pins ...", flush=True)
            pip("--require-hashes", "--requirement", lock)

        once(name, digest(LOCKS[name]), from_lock)
    once(
        "project",
        digest(TOP / "pyproject.toml"),
        lambda: pip("--no-index", "--no-build-isolation", "--editable", TOP),
    )


def node_problem() -> str:
    """What is wrong with Node here, in one sentence; empty if nothing is."""
    advice = f"install Node {NODE_AT_LEAST} or newer, on a Mac for instance with: brew install node"
    node = shutil.which("node")
    if node is None or shutil.which("npm") is None:
        return f"Node and its npm are not there; {advice}"
    said = subprocess.run([node, "--version"], capture_output=True, text=True, check=False).stdout.strip()
    major = said.lstrip("v").split(".")[0]
    if not major.isdigit() or int(major) < NODE_AT_LEAST:
        return f"Node is {said or 'broken'} here; {advice}"
    return ""


def install_node_parts() -> None:
    """The Python that the pages bring along, and what they are checked with, from site/package-lock.json."""
    problem = node_problem()
    if problem:
        raise Missing(problem)
    here = TOP / "site"
    once("node", digest(here / "package-lock.json", here / "package.json"), lambda: run("npm", "ci", cwd=here))
    if not (here / "node_modules").is_dir():  # swept away by hand
        run("npm", "ci", cwd=here)


def fetch_pyodide_wheels() -> None:
    """The pure wheels of tests/pyodide/requirements.txt, checked against its hashes."""

    def fetch() -> None:
        shutil.rmtree(PYODIDE_WHEELS, ignore_errors=True)
        run(
            *(PYTHON, "-m", "pip", "--quiet", "--disable-pip-version-check", "--no-input", "download", "--no-deps"),
            *("--require-hashes", "--requirement", PYODIDE_LOCK, "--dest", PYODIDE_WHEELS),
            *("--python-version", "3.14", "--platform", "any", "--only-binary", ":all:"),
        )

    once("pyodide", digest(PYODIDE_LOCK), fetch)


def find_chromium() -> str | None:
    """An installed Chromium or Chrome; None where there is none outside the test tool's own folder."""
    named = os.environ.get("WEDGEWORK_CHROMIUM")
    if named:
        return named
    for name in CHROMIUM_NAMES:
        found = shutil.which(name)
        if found:
            return found
    for folder in (Path("/Applications"), Path.home() / "Applications"):
        for application in CHROMIUM_APPLICATIONS:
            if (folder / application).is_file():
                return str(folder / application)
    return None


def own_download() -> bool:
    """Whether the test tool's own browser was downloaded before."""
    ask = "from playwright.sync_api import sync_playwright as p\nwith p() as q: print(q.chromium.executable_path)"
    said = subprocess.run([str(PYTHON), "-c", ask], capture_output=True, text=True, check=False).stdout.strip()
    return bool(said) and Path(said).is_file()


def find_firefox() -> str | None:
    """An installed Firefox, or None."""
    for name in FIREFOX_NAMES:
        found = shutil.which(name)
        if found:
            return found
    installed = Path("/Applications") / FIREFOX_APPLICATION
    return str(installed) if installed.is_file() else None


def find_webkit() -> tuple[str, str] | None:
    """The driver of WebKitGTK and the small browser that comes with it, or None where one of them, or a screen, is missing."""
    driver = shutil.which("WebKitWebDriver")
    browsers = [str(found) for pattern in WEBKIT_BROWSERS for found in Path("/usr").glob(pattern)]
    if driver and browsers and (shutil.which("Xvfb") or os.environ.get("DISPLAY")):
        return driver, browsers[0]
    return None


def look_for_browsers() -> None:
    """Find the engines; in CI fetch or fail, elsewhere say in one line for each what will be skipped."""
    wanted = (
        ("Chromium or Chrome", lambda: find_chromium() or own_download(), CHROMIUM_PACKAGES),
        ("Firefox", find_firefox, FIREFOX_PACKAGES),
        ("WebKitGTK with its driver and a screen", find_webkit, WEBKIT_PACKAGES),
    )
    lacking = [packages for _, find, packages in wanted if not find()]
    if lacking and in_ci() and os.geteuid() == 0 and shutil.which("apt-get"):
        print("Installing the engines of the browser tests ...", flush=True)
        run("apt-get", "update")
        run("apt-get", "install", "-y", "--no-install-recommends", *(name for packages in lacking for name in packages))
    for title, find, packages in wanted:
        if find():
            continue
        missing = f"No {title} is here; on Debian type: sudo apt install {' '.join(packages)}"
        if packages is CHROMIUM_PACKAGES:
            missing += ", elsewhere: .venv/bin/playwright install chromium"
        if in_ci():
            raise Missing(missing)
        print(f"{missing} (its browser tests are skipped)", flush=True)


def main(wanted: list[str]) -> int:
    """Make each wanted part: ``site``, ``tests``, ``node``, ``pyodide``, ``browser``."""
    try:
        if sys.version_info < (3, 11):  # noqa: UP036 - a person may name an older one
            raise Missing("Python 3.11 or newer is needed; name one with: make PYTHON=/path/to/python3.11")
        make_venv()
        install(name for name in LOCKS if name in wanted)
        if "node" in wanted:
            install_node_parts()
        if "pyodide" in wanted:
            fetch_pyodide_wheels()
        if "browser" in wanted:
            look_for_browsers()
    except Missing as missing:
        print(missing, file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
