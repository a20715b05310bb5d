"""The lock files pin what pyproject.toml asks for, with hashes, and name no place to fetch it from."""

from __future__ import annotations

import json
import re
import tomllib
from pathlib import Path

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name
from packaging.version import Version

TOP = Path(__file__).resolve().parents[2]
GROUPS = tomllib.loads((TOP / "pyproject.toml").read_text(encoding="utf-8"))["dependency-groups"]
FILES = {"site": ("site", "build"), "tests": ("test", "lint", "lock")}


def pins(folder: str) -> list[tuple[Requirement, int]]:
    """Each pinned requirement with the number of its hashes."""
    text = (TOP / folder / "requirements.txt").read_text(encoding="utf-8")
    entries = re.sub(r"\s*#.*", "", text).replace("\\\n", " ")
    found = []
    for entry in filter(None, (line.strip() for line in entries.splitlines())):
        requirement, *hashes = entry.split(" --hash=sha256:")
        found.append((Requirement(" ".join(requirement.split())), len(hashes)))
    return found


@pytest.mark.parametrize("folder", FILES)
def test_every_pin_is_exact_and_hashed(folder: str) -> None:
    assert len(pins(folder)) > 20
    for requirement, hashes in pins(folder):
        (specifier,) = requirement.specifier
        assert specifier.operator == "==", requirement
        assert hashes, requirement
        assert requirement.url is None


def test_what_the_suites_need_inside_pyodide_is_pinned_as_here() -> None:
    here = {str(r.name): str(r.specifier) for r, _ in pins("tests")}
    inside = {str(r.name): (str(r.specifier), hashes) for r, hashes in pins("tests/pyodide")}
    wanted = [line for line in (TOP / "tests/pyodide/requirements.in").read_text(encoding="utf-8").splitlines() if line[0] != "#"]
    assert set(wanted) <= set(inside)
    assert all(hashes for _, hashes in inside.values())
    differing = {name for name, (specifier, _) in inside.items() if here.get(name, specifier) != specifier}
    assert differing == set()


@pytest.mark.parametrize("folder", FILES)
def test_what_is_asked_for_is_pinned(folder: str) -> None:
    pinned: dict[str, list[str]] = {}
    for requirement, _ in pins(folder):
        pinned.setdefault(canonicalize_name(requirement.name), []).append(next(iter(requirement.specifier)).version)
    for group in FILES[folder]:
        for wanted in map(Requirement, GROUPS[group]):
            versions = pinned.get(canonicalize_name(wanted.name), [])
            assert versions, f"{wanted} of group {group} is not pinned: make lock"
            assert all(wanted.specifier.contains(Version(v)) for v in versions), f"{wanted}: make lock"


def test_the_two_files_agree() -> None:
    site = {(canonicalize_name(r.name), str(r.marker)): str(r.specifier) for r, _ in pins("site")}
    tests = {(canonicalize_name(r.name), str(r.marker)): str(r.specifier) for r, _ in pins("tests")}
    assert {key: (site[key], tests[key]) for key in site.keys() & tests.keys() if site[key] != tests[key]} == {}


def test_every_group_is_locked_somewhere() -> None:
    assert {group for groups in FILES.values() for group in groups} == set(GROUPS)


def test_the_node_lock_has_hashes_and_no_addresses() -> None:
    package = json.loads((TOP / "site" / "package.json").read_text(encoding="utf-8"))
    lock = json.loads((TOP / "site" / "package-lock.json").read_text(encoding="utf-8"))
    wanted = {**package.get("dependencies", {}), **package.get("devDependencies", {})}
    assert all(re.fullmatch(r"\d+\.\d+\.\d+", version) for version in wanted.values()), "exact versions only"
    for name, version in wanted.items():
        assert lock["packages"][f"node_modules/{name}"]["version"] == version
    for path, entry in lock["packages"].items():
        assert "resolved" not in entry
        if path:
            assert entry["integrity"].startswith("sha512-")
