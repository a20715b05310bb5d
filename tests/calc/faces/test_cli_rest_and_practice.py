"""`wedgework replan` and `wedgework practice`."""

from __future__ import annotations

import io
import json
import sys
from pathlib import Path

import pytest

from pieces import diamond
from wedgework.faces.cli import main
from wedgework.formats import read_design, read_plan, write_design, write_state
from wedgework.plan import plan_piece
from wedgework.replay import state_at


@pytest.fixture
def design(tmp_path: Path) -> str:
    path = tmp_path / "design.json"
    path.write_text(write_design(diamond(16, 32)), encoding="utf-8")
    return str(path)


@pytest.fixture
def state(tmp_path: Path) -> str:
    plan = plan_piece(diamond(16, 32))
    path = tmp_path / "state.json"
    path.write_text(write_state(state_at(plan, len(plan.steps) // 2)), encoding="utf-8")
    return str(path)


def test_the_rest_is_written_and_told(design: str, state: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    rest = tmp_path / "rest.json"
    assert main(["replan", design, state, "--json", str(rest)]) == 0
    assert "Blocks in knitting order" in capsys.readouterr().out
    plan = read_plan(rest.read_text(encoding="utf-8"))
    assert plan.state is not None
    assert main(["check", str(rest)]) == 0


def test_a_dash_writes_only_the_plan(design: str, state: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["replan", design, state, "--json", "-"]) == 0
    assert json.loads(capsys.readouterr().out)["state"]["format"] == "wedgework-state"


def test_a_state_of_another_piece_is_refused_by_its_path(design: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    other = tmp_path / "other.json"
    value = {"format": "wedgework-state", "version": 1, "first_needle": -8, "rows": [1] * 15, "held": [], "carriage": "L"}
    other.write_text(json.dumps(value), encoding="utf-8")
    assert main(["replan", design, str(other)]) == 2
    assert capsys.readouterr().err.startswith("rows: ")
    other.write_text(json.dumps({**value, "rows": [1] * 15 + [-1]}), encoding="utf-8")
    assert main(["replan", design, str(other)]) == 2
    assert capsys.readouterr().err.startswith("rows[15]: ")


def test_neither_input_is_written_over(design: str, state: str, capsys: pytest.CaptureFixture[str]) -> None:
    for path in (design, state):
        before = Path(path).read_text(encoding="utf-8")
        assert main(["replan", design, state, "--json", path]) == 2
        assert Path(path).read_text(encoding="utf-8") == before
    assert "is already taken by the state" in capsys.readouterr().err


def test_standard_input_can_be_one_of_the_two(design: str, state: str, monkeypatch, capsys) -> None:  # type: ignore[no-untyped-def]
    assert main(["replan", "-", "-"]) == 2
    assert "only one" in capsys.readouterr().err
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(Path(state).read_bytes()), encoding="utf-8"))
    assert main(["replan", design, "-", "--json", "-"]) == 0


def test_a_practice_piece_is_a_design_that_can_be_planned(
    design: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    sample, picture = tmp_path / "practice.json", tmp_path / "practice.svg"
    assert main(["practice", design, "--json", str(sample), "--svg", str(picture)]) == 0
    out = capsys.readouterr().out
    assert "Start inside the bed" in out
    assert "Practice: Test piece" in out
    assert read_design(sample.read_text(encoding="utf-8")).title == "Practice: Test piece"
    assert picture.read_text(encoding="utf-8").startswith("<svg")
    assert main(["plan", str(sample)]) == 0
