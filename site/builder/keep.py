"""What is kept for offline use: every file of the built folder, with its sha-256, in front of the offline worker.

Run last of all, since a hash of what changes afterwards would shut the worker out.
"""

from __future__ import annotations

import hashlib
import json
from pathlib import Path

from builder.scripts import APP
from wedgework.version import VERSION

__all__ = ["LEFT_OUT", "kept_files", "ship_worker"]

# For search engines, and the worker itself, which the browser keeps in its own way.
LEFT_OUT = ("sw.js", "sitemap.xml", "sitemap.xml.gz")


def address(folder: Path, file: Path) -> str:
    """Below the site's first page, as a link names it: ``plan/``, not ``plan/index.html``."""
    path = file.relative_to(folder).as_posix()
    return path.removesuffix("index.html") if path == "index.html" or path.endswith("/index.html") else path


def kept_files(folder: Path) -> list[tuple[str, str, int]]:
    """Address, sha-256 in hexadecimal and bytes of each file, small ones first: pages are there before the engine is."""
    found = []
    for file in folder.rglob("*"):
        if file.is_file() and file.relative_to(folder).as_posix() not in LEFT_OUT:
            data = file.read_bytes()
            found.append((address(folder, file), hashlib.sha256(data).hexdigest(), len(data)))
    return sorted(found, key=lambda one: (one[2], one[0]))


def ship_worker(folder: Path) -> None:
    """sw.js: the list, and the hand-written worker behind it. One file, so that any change is a new worker."""
    files = kept_files(folder)
    version = hashlib.sha256(json.dumps(files).encode()).hexdigest()[:16]
    kept = {"version": version, "made_by": VERSION, "files": files}
    listed = json.dumps(kept, separators=(",", ":"))
    worker = (APP / "sw.js").read_text(encoding="utf-8")
    (folder / "sw.js").write_text(f"// The list is made by the build.\nconst KEPT = {listed};\n{worker}", encoding="utf-8")
