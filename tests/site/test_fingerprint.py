"""Scripts and styles lie in folders named after their content: a name never changes what it holds."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from builder.fingerprint import fingerprint, named

PAGE = """<!doctype html><link href="../assets/look.css"><link href='/guild/assets/look.css'>
<script src="../app/main.js"></script><script data-worker="../app/worker.js"></script>
<p>the folder app/ and <a href="../my-app/">an app</a>, <code>app/worker.js</code></p>
<script id="__config" type="application/json">{"search": "../assets/search.js", "base": ".."}</script>
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A site of one page."""
    for name, text in {
        "app/main.js": "import './parts/one.js';",
        "app/parts/one.js": "1",
        "app/own.webmanifest": '{"src": "../assets/mark.svg"}',
        "assets/look.css": "p { color: red; }",
        "plan/index.html": PAGE,
    }.items():
        file = tmp_path / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, encoding="utf-8")
    return tmp_path


def everything(folder: Path) -> dict[str, bytes]:
    return {file.relative_to(folder).as_posix(): file.read_bytes() for file in folder.rglob("*") if file.is_file()}


def test_a_page_names_the_folders_it_was_built_with_and_nothing_else_is_touched(folder: Path) -> None:
    fingerprint(folder)
    app, assets = named(folder, "app").name, named(folder, "assets").name
    assert re.fullmatch(r"app-[0-9a-f]{12}", app)
    assert assets == app.replace("app", "assets")
    html = (folder / "plan" / "index.html").read_text(encoding="utf-8")
    assert html.count(f'"../{app}/') == html.count(f'"../{assets}/') == 2
    assert f"'/guild/{assets}/look.css'" in html
    assert html.replace(app, "app").replace(assets, "assets") == PAGE
    assert (folder / app / "own.webmanifest").read_text() == f'{{"src": "../{assets}/mark.svg"}}'


@pytest.mark.parametrize("name", ["app/parts/one.js", "app/own.webmanifest", "assets/look.css"])
def test_another_content_has_another_name_and_the_same_has_the_same(name: str, folder: Path) -> None:
    fingerprint(folder)
    first = everything(folder)
    fingerprint(folder)
    assert everything(folder) == first
    where, _, path = name.partition("/")
    file = named(folder, where) / path
    before = file.read_bytes()
    file.write_bytes(before + b" ")
    fingerprint(folder)
    assert not set(first) & set(everything(folder)) - {"plan/index.html"}
    (named(folder, where) / path).write_bytes(
        before.replace(named(folder, "assets").name.encode(), b"assets")  # whatever fingerprint the manifest speaks of
    )
    fingerprint(folder)
    assert everything(folder) == first


def test_a_file_more_or_under_another_name_is_another_content(folder: Path) -> None:
    fingerprint(folder)
    first = named(folder, "app").name
    (named(folder, "app") / "main.js").rename(named(folder, "app") / "first.js")
    fingerprint(folder)
    assert named(folder, "app").name != first


def test_whatever_a_built_page_loads_from_there_is_there(built: Path) -> None:
    folders = {name: named(built, name).name for name in ("app", "assets")}
    seen = set()
    for page in built.rglob("*.html"):
        html = page.read_text(encoding="utf-8")
        for where, name, path in re.findall(r"""["']([./]*)(app|assets)(?:-[^"'/]*)?/([^"']+)["']""", html):
            place = built if where.startswith("/") else page.parent / where
            assert (place / folders[name] / path).is_file(), f"{page}: {where}{name}/{path}"
            assert f"{where}{folders[name]}/{path}" in html
            seen.add(name)
    assert seen == {"app", "assets"}
