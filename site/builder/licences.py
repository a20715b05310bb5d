"""What the built pages carry beside our own work, with the licence of each part, whole.

The theme and its icons bring their texts with the installed package; the libraries bound into what we carry of
the theme's scripts do not, so their texts lie in ``notices/``. A test reads the theme's source maps and fails when a library is
bound in that this list does not name.
"""

from __future__ import annotations

from dataclasses import dataclass
from html import escape
from importlib.metadata import distribution
from pathlib import Path

from builder.runtime import pyodide_info, pyodide_version
from wedgework.say import say
from wedgework.version import VERSION

__all__ = ["BOUND_IN", "INSIDE_PYTHON", "Shipped", "licences_html", "shipped"]

HERE = Path(__file__).resolve().parent
TOP = HERE.parents[1]


@dataclass(frozen=True, slots=True)
class Shipped:
    """One part of the built pages."""

    name: str
    version: str
    """Empty where the part comes bound into another."""
    licence: str
    """SPDX expression where there is one."""
    what: str
    """Key of the sentence that says what it does here."""
    text: str


# Libraries inside the one script of the theme that the pages carry, the search's: name as in its source map, licence.
BOUND_IN = {"lunr": "MIT"}

# What is compiled into the Python that the pages bring along, beside Python itself. Two parts of it need no notice:
# liblzma (0BSD) and SQLite (public domain).
INSIDE_PYTHON = {
    "bzip2": "bzip2-1.0.6",
    "emscripten": "MIT",
    "expat": "MIT",
    "hacl": "MIT",
    "libffi": "MIT",
    "mpdecimal": "BSD-2-Clause",
    "zlib": "Zlib",
    "zstd": "BSD-3-Clause",
}


def _theme_file(*parts: str) -> str:
    found = distribution("mkdocs-material").locate_file(Path("material", "templates", *parts))
    return Path(str(found)).read_text(encoding="utf-8")


def _of_package(package: str) -> str:
    text = distribution(package).read_text("licenses/LICENSE")
    if text is None:
        raise FileNotFoundError(f"the package {package} does not bring its licence")
    return text


def _notice(name: str) -> str:
    file = HERE / "notices" / f"{name}.txt"
    return file.read_text(encoding="utf-8") if file.is_file() else ""


def shipped() -> tuple[Shipped, ...]:
    """Every part, our own first."""
    theme, segno = (distribution(package).version for package in ("mkdocs-material", "segno"))
    return (
        Shipped("Wedgework", VERSION, "MIT", "site.ships-own", (TOP / "LICENSE").read_text(encoding="utf-8")),
        Shipped("segno", segno, "BSD-3-Clause", "site.ships-segno", _of_package("segno")),
        Shipped("Pyodide", pyodide_version(), "MPL-2.0", "site.ships-pyodide", _notice("pyodide")),
        Shipped("Python", pyodide_info()["python"], "PSF-2.0", "site.ships-python", _notice("python")),
        *(Shipped(name, "", licence, "site.ships-in-python", _notice(name)) for name, licence in INSIDE_PYTHON.items()),
        Shipped("Material for MkDocs", theme, "MIT", "site.ships-theme", _of_package("mkdocs-material")),
        Shipped("Material Design Icons", "", "Apache-2.0", "site.ships-icons", _theme_file(".icons", "material", "LICENSE")),
        *(Shipped(name, "", licence, f"site.ships-{name}", _notice(name)) for name, licence in BOUND_IN.items()),
    )


def licences_html() -> str:
    """A list: name, licence, what it does here; the licence's own words behind a fold."""
    items = []
    for part in shipped():
        name = f"{part.name} {part.version}".rstrip()
        head = f"<strong>{escape(name)}</strong>, {escape(part.licence)}. {escape(say(part.what))}"
        fold = ""
        if part.text:
            summary = escape(say("site.ships-text", name=part.name))
            fold = f"<details><summary>{summary}</summary><pre>{escape(part.text.strip())}</pre></details>"
        items.append(f"<li>{head}{fold}</li>")
    return f'<ul class="shipped">{"".join(items)}</ul>'
