"""What the recipes say when something is missing: one sentence, with the line to type."""

from __future__ import annotations

import os
import stat
import subprocess
from pathlib import Path

import pytest

from builder import environment

TOP = Path(__file__).resolve().parents[2]


def program(folder: Path, name: str, says: str) -> Path:
    """A little program that prints one line."""
    file = folder / name
    file.write_text(f"#!/bin/sh\necho '{says}'\n", encoding="utf-8")
    file.chmod(file.stat().st_mode | stat.S_IXUSR)
    return file


def test_no_node(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PATH", str(tmp_path))
    assert environment.node_problem().startswith("Node and its npm are not there; install Node 20 or newer")


@pytest.mark.parametrize(("says", "fine"), [("v18.20.4", False), ("v20.0.0", True), ("v24.1.0", True), ("what?", False)])
def test_the_age_of_node(says: str, fine: bool, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    program(tmp_path, "node", says)
    program(tmp_path, "npm", "10")
    monkeypatch.setenv("PATH", f"{tmp_path}{os.pathsep}/usr/bin{os.pathsep}/bin")
    assert (environment.node_problem() == "") is fine
    if not fine:
        assert says in environment.node_problem()


def test_a_python_without_the_venv_module(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(environment, "find_spec", lambda name: None)
    with pytest.raises(environment.Missing, match="sudo apt install python3-venv"):
        environment.make_venv()


@pytest.mark.parametrize("name", ["chromium", "google-chrome"])
def test_an_installed_browser_is_found_by_its_name(name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("WEDGEWORK_CHROMIUM", raising=False)
    monkeypatch.setenv("PATH", str(tmp_path))
    file = program(tmp_path, name, "Chromium")
    assert environment.find_chromium() == str(file)


@pytest.mark.parametrize(
    ("finds", "says"),
    [
        ("find_chromium", "sudo apt install chromium"),
        ("find_firefox", "sudo apt install firefox-esr"),
        ("find_webkit", "sudo apt install webkit2gtk-driver xvfb"),
    ],
)
def test_a_missing_browser_fails_in_ci_and_is_skipped_elsewhere(
    finds: str, says: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    for find in ("find_chromium", "find_firefox", "find_webkit"):
        monkeypatch.setattr(environment, find, lambda missing=find == finds: None if missing else "there")
    monkeypatch.setattr(environment, "own_download", lambda: False)
    monkeypatch.setattr(environment.os, "geteuid", lambda: 1000)
    monkeypatch.setenv("CI", "true")
    with pytest.raises(environment.Missing, match=says):
        environment.look_for_browsers()
    monkeypatch.setenv("CI", "")
    environment.look_for_browsers()
    assert capsys.readouterr().out.count("\n") == 1


def test_only_root_in_ci_installs_system_packages(monkeypatch: pytest.MonkeyPatch) -> None:
    ran: list[tuple[object, ...]] = []
    for find in ("find_chromium", "find_firefox", "find_webkit"):
        monkeypatch.setattr(environment, find, lambda: "there" if ran else None)
    monkeypatch.setattr(environment, "own_download", lambda: False)
    monkeypatch.setattr(environment.shutil, "which", lambda name: name)
    monkeypatch.setattr(environment, "run", lambda *command: ran.append(command))
    for ci, user, expected in (("", 0, 0), ("true", 0, 2)):
        ran.clear()
        monkeypatch.setenv("CI", ci)
        monkeypatch.setattr(environment.os, "geteuid", lambda user=user: user)
        environment.look_for_browsers()
        assert len(ran) == expected
    assert {"chromium", "firefox-esr", "webkit2gtk-driver", "xvfb"} <= set(ran[-1])


def test_too_old_a_python_is_named_first(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    monkeypatch.setattr(environment.sys, "version_info", (3, 9, 2))
    assert environment.main(["site"]) == 1
    assert "Python 3.11 or newer is needed" in capsys.readouterr().err


def test_the_recipe_says_it_when_there_is_no_python(tmp_path: Path) -> None:
    """Only a shell on the path: the make recipe itself has to speak."""
    make = subprocess.run(["which", "make"], capture_output=True, text=True, check=True).stdout.strip()
    done = subprocess.run(
        [make, "env-site", "SHELL=/bin/sh"], cwd=TOP, env={"PATH": str(tmp_path)}, capture_output=True, text=True, check=False
    )
    assert done.returncode != 0
    assert "Python 3.11 or newer is needed" in done.stderr


def test_work_is_done_once_for_the_same_locks(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(environment, "VENV", tmp_path)
    done: list[str] = []
    for fingerprint in ("a", "a", "b", "b"):
        environment.once("part", fingerprint, lambda: done.append("made"))
    assert done == ["made", "made"]
