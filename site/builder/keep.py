"""What is kept for offline use: every file of the built folder, with its sha-256, in front of the offline worker.

    kept/<sha-256>.gz       a compressed twin of every page and script, which is what the offline worker loads

Run last of all, since a hash of what changes afterwards would shut the worker out.
"""

from __future__ import annotations

import gzip
import hashlib
import json
from pathlib import Path

from builder.embed import EMBED
from builder.languages import LANGUAGES
from builder.packing import packed
from builder.scripts import APP
from wedgework.version import VERSION

__all__ = ["LEFT_OUT", "TWINS", "kept_files", "ship_worker", "twin"]

# For search engines, and the worker itself, which the browser keeps in its own way.
LEFT_OUT = ("sw.js", "sitemap.xml", "sitemap.xml.gz", *(f"{language}/sitemap.xml" for language in LANGUAGES))
# Pages that stand in the pages of others, in every language: whoever opens these pages for themselves never needs them.
FOR_OTHERS = EMBED
TWINS = "kept"
WORKER = ("store.js", "versions.js", "serve.js")
PACKED = {".css", ".html", ".js", ".json", ".mjs", ".svg", ".txt", ".webmanifest"}


def address(folder: Path, file: Path) -> str:
    """Below the site's first page, as a link names it: ``plan/``, not ``plan/index.html``."""
    path = file.relative_to(folder).as_posix()
    return path.removesuffix("index.html") if path == "index.html" or path.endswith("/index.html") else path


def twin(digest: str) -> str:
    """The address of the compressed twin of a file with this sha-256."""
    return f"{TWINS}/{digest[:20]}.gz"


def _compressed(file: Path, data: bytes) -> bytes | None:
    smaller = packed(data) if file.suffix in PACKED else data
    return smaller if len(smaller) < len(data) else None


def kept_files(folder: Path) -> list[tuple[str, str, int]]:
    """Address, sha-256 in hexadecimal and bytes to load of each file, small ones first: pages are there before the engine is."""
    return [(address, digest, size) for address, digest, size, _ in _listed(folder)]


def _listed(folder: Path) -> list[tuple[str, str, int, bytes | None]]:
    found = []
    for file in folder.rglob("*"):
        path = file.relative_to(folder)
        if file.is_file() and path.as_posix() not in LEFT_OUT and path.parts[0] != TWINS and FOR_OTHERS not in path.parts[:-1]:
            data = file.read_bytes()
            smaller = _compressed(file, data)
            size = len(data if smaller is None else smaller)
            found.append((address(folder, file), hashlib.sha256(data).hexdigest(), size, smaller))
    return sorted(found, key=lambda one: (one[2], one[0]))


def ship_worker(folder: Path) -> None:
    """sw.js: the list, and the parts of the worker behind it, one file, so that any change is a new worker; and the twins."""
    files = []
    (folder / TWINS).mkdir(exist_ok=True)
    for where, digest, size, smaller in _listed(folder):
        if smaller is not None:
            (folder / twin(digest)).write_bytes(smaller)
        files.append((where, digest, size, int(smaller is not None)))
    version = hashlib.sha256(json.dumps(files).encode()).hexdigest()[:16]
    inside = {
        where: hashlib.sha256(gzip.decompress((folder / where).read_bytes())).hexdigest()
        for where, *_ in files
        if where.endswith(".gz")
    }
    kept = {"version": version, "made_by": VERSION, "files": files, "inside": inside}
    listed = json.dumps(kept, separators=(",", ":"))
    worker = "\n".join((APP / "sw" / part).read_text(encoding="utf-8") for part in WORKER)
    (folder / "sw.js").write_text(f"// The list is made by the build.\nconst KEPT = {listed};\n{worker}", encoding="utf-8")
