"""Scripts and styles in folders named after what is in them, so that a name never changes its content.

    app/        becomes app-<fingerprint>/
    assets/     becomes assets-<fingerprint>/

One fingerprint for both: a page names the scripts and the styles that it was built with and no others, whatever a host or a
network in between keeps of the version before. Both lie as deep as they did, so what they say of each other stays true.
"""

from __future__ import annotations

import hashlib
import re
from pathlib import Path

__all__ = ["fingerprint", "named"]

FOLDERS = ("app", "assets")
DIGITS = 12
_NAME = rf"({'|'.join(FOLDERS)})(?:-[0-9a-f]{{{DIGITS}}})?"
# An address in quotes, from the site's first page or from its own place.
_ADDRESS = re.compile(rf"""(["'](?:/(?:[^"'\s]*/)?|(?:\.\./)*)){_NAME}(?=/)""")
# Where such an address stands.
WHERE = ("*.html", "*.webmanifest")


def named(folder: Path, name: str) -> Path:
    """Where the folder called `name` by its makers, "app" or "assets", lies in the built folder."""
    (found,) = (one for one in folder.glob(f"{name}*") if re.fullmatch(_NAME, one.name))
    return found


def _digest(folder: Path) -> str:
    """Of every file in both, whatever fingerprint they have now."""
    found = hashlib.sha256()
    for name in FOLDERS:
        place = named(folder, name)
        for file in sorted(place.rglob("*")):
            if file.is_file():
                data = file.read_bytes()
                if file.suffix == ".webmanifest":
                    data = _ADDRESS.sub(r"\1\2", data.decode()).encode()
                found.update(f"{name}/{file.relative_to(place).as_posix()} {hashlib.sha256(data).hexdigest()}\n".encode())
    return found.hexdigest()[:DIGITS]


def fingerprint(folder: Path) -> None:
    """Rename both and say so in every page. What has a fingerprint already gets the one that is right now."""
    digest = _digest(folder)
    for name in FOLDERS:
        named(folder, name).rename(folder / f"{name}-{digest}")
    for pattern in WHERE:
        for file in folder.rglob(pattern):
            text = file.read_text(encoding="utf-8")
            file.write_text(_ADDRESS.sub(rf"\1\2-{digest}", text), encoding="utf-8")
