"""The wheel is what is tested: the suites of the core run on the Python that the browser runs, from the wheel as built."""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest

from builder.environment import PYODIDE_WHEELS, in_ci, node_problem
from builder.runtime import NODE_PYODIDE, build_wheel

TOP = Path(__file__).resolve().parents[2]
HERE = Path(__file__).resolve().parent


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    missing = node_problem() or ("" if NODE_PYODIDE.is_dir() and PYODIDE_WHEELS.is_dir() else "run the suites with: make test")
    if missing and not in_ci():
        pytest.skip(missing)
    assert not missing
    return build_wheel(tmp_path_factory.mktemp("wheel"))


def inside(wheel: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
    command = ["node", HERE / "run.mjs", NODE_PYODIDE, PYODIDE_WHEELS, wheel, TOP, *arguments]
    return subprocess.run(command, capture_output=True, text=True, check=False, stdin=subprocess.DEVNULL)


def test_the_suites_of_the_core(wheel: Path) -> None:
    done = inside(wheel, "calc", "every")
    told = done.stdout + done.stderr
    assert done.returncode == 0, told[-20_000:]
    assert "emscripten" in told
    counted = told.rsplit(" passed", 1)[0].split()[-1]
    assert int(counted) > 500


def test_a_failure_inside_is_a_failure_here(wheel: Path) -> None:
    assert inside(wheel, "calc/no_such_suite").returncode != 0


def test_micropip_installs_the_wheel(wheel: Path) -> None:
    done = inside(wheel, "--micropip")
    assert done.stdout.split() == ["True", "True"], done.stdout + done.stderr


def test_two_builds_are_the_same_wheel(tmp_path: Path) -> None:
    one, other = (build_wheel(tmp_path / name) for name in ("one", "other"))
    assert one.name == other.name
    assert one.read_bytes() == other.read_bytes()
