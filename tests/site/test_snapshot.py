"""The picture of memory: the same in every build, cut into parts that make the whole again."""

from __future__ import annotations

import base64
import gzip
import hashlib
import json
import zipfile
from pathlib import Path
from typing import Any

import pytest

from builder.fingerprint import named
from builder.runtime import NODE_PYODIDE
from builder.snapshot import NEAR, PAGE, PART, Image, changed, make_image, parts_of


def runtime(built: Path) -> dict[str, Any]:
    text = (named(built, "app") / "runtime.js").read_text(encoding="utf-8")
    return json.loads(text.partition("export default ")[2].rstrip().removesuffix(";"))


def core(built: Path) -> Path:
    (found,) = built.glob("runtime/core-*/*.zip")
    return found


@pytest.fixture(scope="module")
def image(built: Path) -> Image:
    return make_image(NODE_PYODIDE, core(built))


def test_two_builds_make_the_same_picture(built: Path, image: Image) -> None:
    """The one in the built pages, and one made now."""
    told = runtime(built)["image"]
    assert told["head"] == image.head
    assert told["bytes"] == len(image.memory)
    again = [(list(map(list, part.runs)), part.data) for part in parts_of(image)]
    stored = [(part["runs"], gzip.decompress((built / part["address"]).read_bytes())) for part in told["parts"]]
    assert [runs for runs, _ in again] == [runs for runs, _ in stored]
    assert all(one == other for (_, one), (_, other) in zip(again, stored, strict=True))


def test_nothing_of_the_machine_that_built_it_is_in_the_picture(image: Image) -> None:
    here = str(Path(__file__).resolve().parents[2]).encode()
    assert len(here) > 3
    assert here not in image.memory
    assert b"builder/snapshot" not in image.memory


def test_fresh_memory_and_the_parts_are_the_whole(image: Image) -> None:
    memory = bytearray(image.fresh.ljust(len(image.memory), b"\0"))
    for part in parts_of(image):
        at = 0
        for first, length in part.runs:
            memory[first : first + length] = part.data[at : at + length]
            at += length
        assert at == len(part.data) <= PART
    assert memory == image.memory


def test_every_hash_is_that_of_the_file(built: Path) -> None:
    told = runtime(built)
    for part in [told["program"], *told["image"]["parts"]]:
        packed = (built / part["address"]).read_bytes()
        for said, data in ((part["packed"], packed), (part["inflated"], gzip.decompress(packed))):
            assert said == "sha256-" + base64.b64encode(hashlib.sha256(data).digest()).decode()


def test_the_whole_core_is_imported_but_for_the_terminal(built: Path, image: Image) -> None:
    with zipfile.ZipFile(core(built)) as archive:
        files = [name for name in archive.namelist() if name.endswith(".py") and name.startswith("wedgework/")]
    names = {name.removesuffix(".py").removesuffix("/__init__").replace("/", ".") for name in files}
    left_out = {"wedgework.__main__"} | {name for name in names if name.startswith("wedgework.faces.cli")}
    assert names - set(image.modules) == left_out
    assert len(names) > 100


def test_of_what_the_core_imports_only_the_needed_is_in_the_picture(built: Path, image: Image) -> None:
    with zipfile.ZipFile(core(built)) as archive:
        beside = {name.partition("/")[0] for name in archive.namelist() if name.endswith(".py")} - {"wedgework"}
    assert beside == {"segno"}
    assert {"segno", "segno.encoder"} <= set(image.modules)
    assert {"segno.writers", "gzip", "xml.sax.saxutils", "urllib.parse"} & set(image.modules) == set()


def test_unchanged_pages_are_left_out_unless_they_lie_between_near_ones() -> None:
    fresh = b"a" * (20 * PAGE)
    memory = bytearray(fresh) + b"\0" * PAGE + b"b"
    memory[PAGE] = memory[(NEAR + 2) * PAGE] = memory[(2 * NEAR + 5) * PAGE + 7] = 0
    runs = changed(bytes(memory), fresh)
    assert runs == [
        (PAGE, (NEAR + 3) * PAGE),
        ((2 * NEAR + 5) * PAGE, (2 * NEAR + 6) * PAGE),
        (21 * PAGE, 21 * PAGE + 1),
    ]
