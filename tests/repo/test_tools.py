"""The tools that hold the house together find nothing: ruff, mypy --strict, import-linter with exhaustive layers."""

from __future__ import annotations

import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

TOP = Path(__file__).resolve().parents[2]
BIN = Path(sys.executable).parent


@pytest.mark.parametrize(
    "command",
    [
        pytest.param(["ruff", "check", "."], id="ruff"),
        pytest.param(["mypy"], id="mypy"),
        pytest.param(["lint-imports"], id="import-linter"),
    ],
)
def test_the_tool_finds_nothing(command: list[str]) -> None:
    done = subprocess.run([BIN / command[0], *command[1:]], cwd=TOP, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr


def test_the_tools_are_set_as_the_rules_say() -> None:
    tool = tomllib.loads((TOP / "pyproject.toml").read_text(encoding="utf-8"))["tool"]
    assert tool["mypy"]["strict"] is True
    (layers,) = tool["importlinter"]["contracts"]
    assert (layers["type"], layers["exhaustive"], layers["containers"]) == ("layers", True, ["wedgework"])


def test_a_forbidden_import_would_be_found(tmp_path: Path) -> None:
    """The comparison can fail: a copy of the core in which replay imports plan is refused."""
    copy = tmp_path / "calc"
    subprocess.run(["cp", "-R", TOP / "calc", copy], check=True)
    (copy / "wedgework" / "replay" / "wrong.py").write_text("import wedgework.plan\n", encoding="utf-8")
    done = subprocess.run(
        [BIN / "lint-imports", "--no-cache", "--config", TOP / "pyproject.toml"],
        cwd=copy,
        env={"PYTHONPATH": str(copy), "PATH": str(BIN)},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 1
    assert "wedgework.replay is not allowed to import wedgework.plan" in done.stdout
