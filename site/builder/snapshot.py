"""The start from a picture of memory: made once when the pages are built, read back by every tablet in parts.

    runtime/start/<sha-256>.gz       two MiB of changed memory each, compressed

Importing the core takes a tablet seconds, and it ends in the same memory every time. snapshot.mjs imports it once and keeps
that memory. What every engine has in memory before Python begins is in the runtime's own file already and is left out.

The interface for this is a private one of the pinned Pyodide, so the normal start stays beside it, and the engine falls back
to that one whatever goes wrong (see site/app/worker.js).
"""

from __future__ import annotations

import base64
import hashlib
import json
import subprocess
import tempfile
from dataclasses import dataclass
from pathlib import Path

from builder.packing import packed

__all__ = ["PAGE", "PART", "Image", "Part", "changed", "make_image", "packed_file", "parts_of", "ship_image"]

HERE = Path(__file__).resolve().parent
# Bytes of memory in one part: few enough that a broken connection loses little, many enough that asking is not the work.
PART = 2 * 1024 * 1024
PAGE = 4096
# Unchanged pages between changed ones that are sent all the same: a run more is worth a few of them.
NEAR = 4
GZIP = b"\x1f\x8b"


@dataclass(frozen=True, slots=True)
class Image:
    """The memory, and what the runtime needs beside it."""

    memory: bytes
    fresh: bytes
    """The same before Python has begun."""
    head: str
    """Base64: the number of the build that made it, and the JavaScript objects that Python holds."""
    start: int
    """Where the memory would begin behind the head, in the runtime's own layout."""
    modules: tuple[str, ...]
    """What is imported."""


def make_image(pyodide: Path, core: Path) -> Image:
    """Import the archive `core` in the Pyodide of this folder and keep its memory. The same bytes each time. Raises OSError."""
    with tempfile.TemporaryDirectory() as made:
        command = ["node", str(HERE / "snapshot.mjs"), f"{pyodide}/", str(core), made]
        done = subprocess.run(command, stdin=subprocess.DEVNULL, capture_output=True, text=True, check=False)
        if done.returncode:
            raise OSError(f"the picture of memory was not made:\n{done.stderr}")
        beside = json.loads((Path(made) / "heap.json").read_text(encoding="utf-8"))
        memory, fresh = ((Path(made) / f"{name}.bin").read_bytes() for name in ("heap", "fresh"))
        return Image(memory, fresh, beside["head"], beside["start"], tuple(beside["modules"]))


def changed(memory: bytes, fresh: bytes) -> list[tuple[int, int]]:
    """Where `memory` differs from `fresh` (zeros behind its end), as first and last byte + 1 of runs of whole pages."""
    runs: list[tuple[int, int]] = []
    fresh = fresh.ljust(len(memory), b"\0")
    for at in range(0, len(memory), PAGE):
        if memory[at : at + PAGE] == fresh[at : at + PAGE]:
            continue
        first = at
        if runs and at - runs[-1][1] <= NEAR * PAGE:
            first = runs.pop()[0]
        runs.append((first, min(at + PAGE, len(memory))))
    return runs


@dataclass(frozen=True, slots=True)
class Part:
    """Some runs of memory behind each other."""

    runs: tuple[tuple[int, int], ...]
    """Where each begins and how long it is."""
    data: bytes


def parts_of(image: Image) -> list[Part]:
    """What is changed, in parts of at most PART bytes."""
    parts = []
    runs: list[tuple[int, int]] = []
    data = b""
    for first, end in changed(image.memory, image.fresh):
        while first < end:
            length = min(end - first, PART - len(data))
            runs.append((first, length))
            data += image.memory[first : first + length]
            first += length
            if len(data) == PART:
                parts.append(Part(tuple(runs), data))
                runs, data = [], b""
    return [*parts, Part(tuple(runs), data)] if data else parts


def ship_image(image: Image, folder: Path) -> dict[str, object]:
    """Write the parts below `folder`/runtime; gives what the engine must know of them."""
    place = folder / "runtime" / "start"
    place.mkdir(parents=True)
    listed = []
    for part in parts_of(image):
        name = hashlib.sha256(part.data).hexdigest()[:20]
        listed.append(packed_file(part.data, place / f"{name}.gz", folder) | {"runs": part.runs})
    return {"head": image.head, "start": image.start, "bytes": len(image.memory), "parts": listed}


def packed_file(data: bytes, file: Path, folder: Path) -> dict[str, object]:
    """Write `data` compressed; gives its address below `folder` and both its sha-256, compressed and not. Raises ValueError."""
    if data.startswith(GZIP):
        raise ValueError(f"{file.name}: a tablet would take this for a compressed file")
    smaller = packed(data)
    file.write_bytes(smaller)
    return {"address": file.relative_to(folder).as_posix(), "packed": sri(smaller), "inflated": sri(data)}


def sri(data: bytes) -> str:
    """A sha-256 in the form that browsers compare with."""
    return "sha256-" + base64.b64encode(hashlib.sha256(data).digest()).decode()
