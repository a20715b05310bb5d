"""The pages in another language: the same calculators and tools below ``de/``, spoken by the same core.

Made by a second run of mkdocs over `languages/<language>/pages`, in which every sentence of the core is said in that
language. A calculator that has no page of its own there gets the plain one of ``_calculator.md``. What such a page
refers to and the language does not have is taken from the English site: the pages of the reference, style sheets, scripts.
"""

from __future__ import annotations

import posixpath
import re
import shutil
import tempfile
from collections.abc import Callable
from pathlib import Path
from typing import Any

from mkdocs.commands.build import build as mkdocs_build
from mkdocs.config import load_config
from mkdocs.utils.yaml import yaml_load

from builder.languages import FOLDER, LANGUAGES
from builder.pieces import write_pieces
from wedgework.catalogue import CALCULATORS
from wedgework.say import say

__all__ = ["frame_words", "join_languages", "ship_translated"]

TOP = Path(__file__).resolve().parents[2]
PLAIN = "_calculator.md"
# Attributes that hold an address, and the address itself up to what follows a ? or #.
_ADDRESS = re.compile(r'\b((?:href|src|data-worker)=")(?![a-z][a-z0-9+.-]*:|#|//)([^"#?]*)')
_SEARCH = re.compile(r'("search": ?")([^"]+)')
_OTHER = re.compile(r'(<(?:a|link)\b[^>]*?\bhref=")[^"]*("[^>]*?\bhreflang="([a-z-]+)")')


def frame_words() -> dict[str, str]:
    """What the frame of the pages says, in the language that is spoken."""
    return {name: say(f"site.frame-{name}") for name in ("broken", "cautions", "licences", "changelog", "copy")}


def ship_translated(target: Path, language: str) -> None:
    """The pages of the language that is spoken, below the built English site."""
    with tempfile.TemporaryDirectory() as made:
        docs = Path(made) / "pages"
        _write_pages(FOLDER / language / "pages", docs)
        write_pieces(docs / "pieces")
        _build(language, docs, target)
    _from_english(target, target / language)


def _write_pages(source: Path, docs: Path) -> None:
    shutil.copytree(source, docs)
    plain = (docs / PLAIN).read_text(encoding="utf-8")
    (docs / PLAIN).unlink()
    for calculator in CALCULATORS:
        page = docs / "calculators" / f"{calculator.slug}.md"
        if not page.exists():
            words = {"title": calculator.title, "what": say(f"calculators.{calculator.slug}.what"), "slug": calculator.slug}
            text = plain
            for name, said in words.items():
                text = text.replace(f"[[{name}]]", said)
            page.write_text(text, encoding="utf-8")


def _build(language: str, docs: Path, target: Path) -> None:
    with (TOP / "mkdocs.yml").open(encoding="utf-8") as file:
        raw = yaml_load(file)
    palettes = [
        {**palette, "toggle": {**palette["toggle"], "name": say(f"site.frame-{name}")}}
        for palette, name in zip(raw["theme"]["palette"], ("dark", "light"), strict=True)
    ]
    config = load_config(
        str(TOP / "mkdocs.yml"),
        docs_dir=str(docs),
        site_dir=str(target.resolve() / language),
        site_url=f"{raw['site_url'].rstrip('/')}/{language}/",
        theme={**raw["theme"], "language": language, "palette": palettes},
        nav=_navigation(raw["nav"], docs),
        # What lies on the English site is looked up afterwards.
        validation={**raw["validation"], "unrecognized_links": "ignore"},
        extra={**raw["extra"], "words": frame_words()},
        strict=True,
    )
    config.plugins.on_startup(command="build", dirty=False)
    try:
        mkdocs_build(config)
    finally:
        config.plugins.on_shutdown()


def _navigation(english: list[dict[str, Any]], docs: Path) -> list[Any]:
    """The same order, without what this language does not have; pages bring their own titles."""
    made: list[Any] = []
    for entry in english:
        for title, what in entry.items():
            if isinstance(what, list):
                inside = _navigation(what, docs)
                if inside:
                    made.append({say(f"site.nav-{title.lower()}"): inside})
            elif (docs / what).is_file():
                made.append(what)
    return made


def _from_english(site: Path, own: Path) -> None:
    """What this language has twice is thrown away, and its pages take it from the English site."""
    shutil.rmtree(own / "assets")
    for name in ("404.html", "sitemap.xml.gz"):
        (own / name).unlink(missing_ok=True)
    for page in own.rglob("*.html"):
        here = page.parent.relative_to(site).as_posix()

        def led(found: re.Match[str], here: str = here) -> str:
            return found[1] + _nearest(site, own.name, here, found[2])

        text = page.read_text(encoding="utf-8")
        page.write_text(_SEARCH.sub(led, _ADDRESS.sub(led, text)), encoding="utf-8")


def _nearest(site: Path, language: str, here: str, address: str) -> str:
    """`address` as a page in the folder `here` names it, led to the English site where its own has no such file."""
    if not address:
        return address
    wanted = posixpath.normpath(posixpath.join(here, address))
    english = posixpath.normpath(posixpath.relpath(wanted, language))
    if (site / wanted).exists() or english.startswith("..") or not (site / english).exists():
        return address
    return posixpath.relpath(english, here) + ("/" if address.endswith("/") else "")


def join_languages(target: Path) -> None:
    """Each page's choice of languages leads to the same page in the other one, else to that language's first page."""
    for page in target.rglob("*.html"):
        where = page.parent.relative_to(target).as_posix()
        language = where.split("/")[0] if where.split("/")[0] in LANGUAGES else "en"
        inside = posixpath.relpath(where, language) if language != "en" else where
        text = page.read_text(encoding="utf-8")
        led = _OTHER.sub(_leading(target, where, inside), text)
        if led != text:
            page.write_text(led, encoding="utf-8")


def _leading(target: Path, where: str, inside: str) -> Callable[[re.Match[str]], str]:
    def lead(found: re.Match[str]) -> str:
        top = "" if found[3] == "en" else found[3]
        there = posixpath.normpath(posixpath.join(top, inside))
        if not (target / there / "index.html").is_file():
            there = top or "."
        address = posixpath.relpath(there, where)
        return f"{found[1]}{'./' if address == '.' else address + '/'}{found[2]}"

    return lead
