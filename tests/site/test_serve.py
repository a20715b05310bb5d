"""The small server: right types, nothing kept, the next port when one is taken."""

from __future__ import annotations

import urllib.error
import urllib.request
from pathlib import Path

import pytest

from builder.serve import listen, serving

# Types as registered with IANA; WebAssembly and modules are refused by browsers under any other.
TYPES = {
    "a.html": "text/html; charset=utf-8",
    "a.mjs": "text/javascript; charset=utf-8",
    "a.wasm": "application/wasm",
    "a.webmanifest": "application/manifest+json",
    "a.svg": "image/svg+xml",
}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    for name in TYPES:
        (tmp_path / name).write_text("x", encoding="utf-8")
    (tmp_path / "404.html").write_text("not there", encoding="utf-8")
    return tmp_path


@pytest.mark.parametrize(("name", "kind"), TYPES.items())
def test_types(folder: Path, name: str, kind: str) -> None:
    with serving(folder) as address, urllib.request.urlopen(address + name) as answer:
        assert answer.headers["Content-Type"] == kind
        assert answer.headers["Cache-Control"] == "no-store"


def test_what_is_not_there_gets_the_page_that_says_so(folder: Path) -> None:
    with serving(folder) as address, pytest.raises(urllib.error.HTTPError) as answer:
        urllib.request.urlopen(address + "nothing/")
    assert answer.value.code == 404
    assert answer.value.read() == b"not there"
    answer.value.close()


def test_a_taken_port_gets_the_next_one(folder: Path) -> None:
    with listen(folder, 18731) as first, listen(folder, first.server_port) as second:
        assert second.server_port > first.server_port


def test_it_listens_on_this_machine_only(folder: Path) -> None:
    with listen(folder, 18751) as server:
        assert server.server_address[0] == "127.0.0.1"
