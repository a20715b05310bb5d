"""House rules that hold for every file: short, without hosts of registries, without paths of one machine, made by hand."""

from __future__ import annotations

import ast
import re
import subprocess
import tomllib
from functools import cache
from pathlib import Path

import pytest

TOP = Path(__file__).resolve().parents[2]
CODE = {".py", ".js", ".mjs", ".css", ".html"}
MADE_BY_TOOLS = {"site/requirements.txt", "tests/requirements.txt", "site/package-lock.json"}
# Put together here, so that this file does not name them either.
REGISTRY_HOSTS = [
    ".".join(parts)
    for parts in (
        ("pypi", "org"),
        ("pythonhosted", "org"),
        ("npmjs", "org"),
        ("npmjs", "com"),
        ("deb", "debian", "org"),
        ("golang", "org"),
        ("crates", "io"),
        ("unpkg", "com"),
        ("jsdelivr", "net"),
    )
]
MACHINE_PATH = re.compile(r"(?<![\w.~-])/(?:work|farm|root|tmp|home/\w+)/")
NEVER_IN_GIT = re.compile(r"(^|/)(build|dist|node_modules|\.venv|__pycache__)/|\.(pyc|whl|png|jpe?g|woff2?|zip|gz)$|\.egg-info")


@cache
def files() -> tuple[str, ...]:
    """Every file that is in git, or would be with the next commit."""
    command = ["git", "ls-files", "--cached", "--others", "--exclude-standard", "-z"]
    listed = subprocess.run(command, cwd=TOP, capture_output=True, text=True, check=False)
    if listed.returncode:
        pytest.skip("not a git working copy")
    return tuple(sorted(name for name in set(listed.stdout.split("\0")) if name and (TOP / name).is_file()))


def text(name: str) -> str:
    return (TOP / name).read_text(encoding="utf-8")


def places(pattern: re.Pattern[str], names: tuple[str, ...]) -> list[str]:
    """file:line of each line that the pattern is found in."""
    return [
        f"{name}:{number}: {line.strip()[:120]}"
        for name in names
        for number, line in enumerate(text(name).splitlines(), 1)
        if pattern.search(line)
    ]


def test_there_are_files_to_look_at() -> None:
    assert "pyproject.toml" in files()
    assert len([name for name in files() if name.startswith("calc/wedgework/")]) > 20


def test_no_file_of_code_is_longer_than_500_lines() -> None:
    long = {name: count for name in files() if Path(name).suffix in CODE and (count := len(text(name).splitlines())) > 500}
    assert long == {}


def test_the_median_module_is_short() -> None:
    lengths = sorted(len(text(name).splitlines()) for name in files() if name.startswith("calc/") and name.endswith(".py"))
    assert lengths[len(lengths) // 2] <= 150


def test_no_file_names_the_host_of_a_package_registry() -> None:
    assert places(re.compile("|".join(map(re.escape, REGISTRY_HOSTS)), re.IGNORECASE), files()) == []


def test_no_file_names_a_path_of_one_machine() -> None:
    assert places(MACHINE_PATH, files()) == []


def test_the_searches_can_find_something(tmp_path: Path) -> None:
    assert MACHINE_PATH.search("see " + "/".join(("", "work", "main", "x")))
    assert not MACHINE_PATH.search("https://example.invalid/work/main")
    assert NEVER_IN_GIT.search("build/site/index.html")
    assert not NEVER_IN_GIT.search("site/builder/build.py")


def test_nothing_generated_is_in_git() -> None:
    assert [name for name in files() if NEVER_IN_GIT.search(name)] == []


def test_the_version_stands_once() -> None:
    version = tomllib.loads(text("pyproject.toml"))["project"]["version"]
    elsewhere = re.compile(rf"(?<![\d.]){re.escape(version)}(?![\d.]*\d)")
    history = {"pyproject.toml", "site/pages/reference/changelog.md", "site/package-lock.json"}
    # Tests and goldens speak of versions that were; the ones with today's number in them would all have to change at once.
    names = tuple(name for name in files() if name not in history | MADE_BY_TOOLS and not name.startswith("tests/"))
    assert places(elsewhere, names) == []
    assert f"## {version}" in text("site/pages/reference/changelog.md"), "the changelog has a part for this version"


def test_no_module_is_called_utils_and_no_import_has_a_star() -> None:
    code = tuple(name for name in files() if name.endswith(".py"))
    assert [name for name in code if Path(name).stem in {"utils", "util", "helpers", "misc", "common_utils"}] == []
    assert places(re.compile(r"^\s*from\s+\S+\s+import\s+\*"), code) == []


def inner_imports(source: str) -> list[int]:
    """Lines of imports inside a function."""
    functions = [node for node in ast.walk(ast.parse(source)) if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)]
    return [node.lineno for f in functions for node in ast.walk(f) if isinstance(node, ast.Import | ast.ImportFrom)]


def test_the_core_imports_nothing_lazily() -> None:
    """In the browser every module is loaded before the first question; an import left for later would fail there."""
    assert inner_imports("def f():\n    import json\n") == [2]
    core = [name for name in files() if name.startswith("calc/") and name.endswith(".py")]
    assert {name: lines for name in core if (lines := inner_imports(text(name)))} == {}


def test_each_room_explains_itself() -> None:
    """A folder's `__init__` opens with a paragraph that explains the room."""
    rooms = [name for name in files() if name.startswith("calc/") and name.endswith("__init__.py")]
    assert [name for name in rooms if len(ast.get_docstring(ast.parse(text(name))) or "") < 60] == []
