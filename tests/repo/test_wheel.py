"""What people install: one pure wheel that holds every module, asks only for what is pinned here, and knows its version."""

from __future__ import annotations

import shutil
import subprocess
import sys
import tomllib
import zipfile
from importlib.metadata import distribution
from pathlib import Path

import pytest
from packaging.requirements import Requirement

TOP = Path(__file__).resolve().parents[2]
PROJECT = tomllib.loads((TOP / "pyproject.toml").read_text(encoding="utf-8"))["project"]


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("wheel")
    subprocess.run(
        [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", folder], cwd=TOP, check=True, capture_output=True
    )
    (built,) = folder.iterdir()
    return built


def test_the_wheel_is_pure(wheel: Path) -> None:
    assert wheel.name == f"wedgework-{PROJECT['version']}-py3-none-any.whl"


def test_the_wheel_holds_every_module(wheel: Path) -> None:
    sources = {str(p.relative_to(TOP / "calc")) for p in (TOP / "calc" / "wedgework").rglob("*.py")}
    with zipfile.ZipFile(wheel) as held:
        names = {name for name in held.namelist() if ".dist-info/" not in name}
        licence = [name for name in held.namelist() if name.endswith("licenses/LICENSE")]
    assert names >= sources
    assert {name for name in names if not name.endswith((".py", "py.typed"))} == set()
    assert licence, "the licence travels with the wheel"


def put_beside(python: Path) -> None:
    """What the wheel asks for, as it is installed here."""
    ask = [python, "-c", "import sysconfig; print(sysconfig.get_path('purelib'))"]
    there = Path(subprocess.run(ask, capture_output=True, text=True, check=True).stdout.strip())
    for wanted in map(Requirement, PROJECT["dependencies"]):
        found = distribution(wanted.name)
        assert wanted.specifier.contains(found.version)
        for package in (wanted.name, f"{wanted.name}-{found.version}.dist-info"):
            shutil.copytree(str(found.locate_file(package)), there / package)


def test_the_wheel_installs_into_an_empty_environment_without_a_network(wheel: Path, tmp_path: Path) -> None:
    home = tmp_path / "env"
    subprocess.run([sys.executable, "-m", "venv", "--without-pip", home], check=True)
    python = home / "bin" / "python"
    install = [sys.executable, "-m", "pip", "--python", python, "install", "--quiet", "--no-index", "--no-deps", wheel]
    subprocess.run(install, check=True, capture_output=True)
    put_beside(python)
    said = subprocess.run([home / "bin" / "wedgework", "--version"], cwd=tmp_path, capture_output=True, text=True, check=True)
    assert PROJECT["version"] in said.stdout
    # Nothing but the standard library and what the wheel asks for is there, and every module can be imported.
    walk = (
        "import importlib, pkgutil, wedgework\n"
        "for m in pkgutil.walk_packages(wedgework.__path__, 'wedgework.'):\n"
        "    if not m.name.endswith('__main__'): importlib.import_module(m.name)\n"
        "print('all')"
    )
    said = subprocess.run([python, "-W", "error", "-c", walk], cwd=tmp_path, capture_output=True, text=True, check=False)
    assert said.stdout.strip() == "all", said.stderr
