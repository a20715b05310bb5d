"""The list of licences is complete: every library that the theme's scripts were made from is on it."""

from __future__ import annotations

import json
import re
from importlib.metadata import distribution
from pathlib import Path

from builder.fingerprint import named
from builder.licences import BOUND_IN, INSIDE_PYTHON, shipped
from builder.runtime import BESIDE, NODE_PYODIDE

THEME = Path(str(distribution("mkdocs-material").locate_file("material/templates")))


def test_every_library_inside_the_scripts_of_the_theme_is_listed(built: Path) -> None:
    """The source maps name what a script was made from."""
    found = set()
    assets = named(built, "assets")
    for script in assets.glob("javascripts/**/*.js"):
        map_file = THEME / "assets" / script.relative_to(assets).with_name(f"{script.name}.map")
        for source in json.loads(map_file.read_text(encoding="utf-8"))["sources"]:
            inside = re.search(r"node_modules/((?:@[^/]+/)?[^/]+)", source)
            if inside:
                found.add(inside.group(1))
    assert found == set(BOUND_IN)


def test_the_runtime_has_the_licence_we_say_and_what_is_compiled_in_is_there() -> None:
    assert json.loads((NODE_PYODIDE / "package.json").read_text(encoding="utf-8"))["license"] == "MPL-2.0"
    compiled = (NODE_PYODIDE / "pyodide.asm.wasm").read_bytes().lower() + (NODE_PYODIDE / "pyodide.asm.mjs").read_bytes().lower()
    trace = {"libffi": "ffi_call"}
    assert [name for name in INSIDE_PYTHON if trace.get(name, name).encode() not in compiled] == []


def test_the_theme_has_the_licence_we_say() -> None:
    assert distribution("mkdocs-material").metadata["License-Expression"] == "MIT"
    icons = (THEME / ".icons" / "material" / "LICENSE").read_text(encoding="utf-8")
    assert "Apache 2.0" in icons


def test_what_the_core_imports_is_listed_with_the_licence_that_it_says() -> None:
    listed = {part.name: part for part in shipped()}
    for package in BESIDE:
        said = distribution(package).metadata
        assert listed[package].version == said["Version"]
        assert "BSD" in (said["License-Expression"] or said["License"] or " ".join(said.get_all("Classifier")))
        assert "Neither the name" in listed[package].text, "the third clause"


def test_each_licence_that_asks_for_its_text_has_it() -> None:
    for part in shipped():
        assert part.text or part.licence == "0BSD", part.name
    words = {"MIT": "Permission is hereby granted", "Apache-2.0": "Apache", "MPL-2.0": "Mozilla Public License", "PSF-2.0": "PSF"}
    for part in shipped():
        assert words.get(part.licence, "") in part.text, part.name


def test_the_icons_in_use_come_from_the_listed_set() -> None:
    """Other icon sets of the theme have other licences; the configuration names only one of them and our own."""
    configuration = (Path(__file__).resolve().parents[2] / "mkdocs.yml").read_text(encoding="utf-8")
    assert set(re.findall(r"(?<!fav)icon: (\w+)/", configuration)) == {"material"}
    assert re.findall(r"logo: (\w+)/", configuration) == ["wedgework"]


def test_the_page_shows_the_whole_list(pages) -> None:
    text = pages["reference/licences/"].text
    for part in shipped():
        assert f"{part.name} {part.version}".rstrip() in text
