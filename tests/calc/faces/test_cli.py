"""The command line, called as a function: what it prints, what it writes, its exit status."""

from __future__ import annotations

import io
import json
import os
import stat
import sys
from pathlib import Path

import pytest

from pieces import diamond, drawn, piece
from wedgework.faces.cli import main
from wedgework.formats import read_plan, write_design
from wedgework.version import VERSION


@pytest.fixture
def design(tmp_path: Path) -> str:
    path = tmp_path / "design.json"
    path.write_text(write_design(diamond(12, 24)), encoding="utf-8")
    return str(path)


@pytest.fixture
def plan(design: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Path:
    path = tmp_path / "plan.json"
    assert main(["plan", design, "--json", str(path)]) == 0
    capsys.readouterr()
    return path


def typed_in(monkeypatch: pytest.MonkeyPatch, data: bytes) -> None:
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(data), encoding="utf-8"))


def test_plan_prints_title_size_needles_blocks_and_instructions(design: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["plan", design]) == 0
    out = capsys.readouterr().out
    for words in ("Test piece", "8.6 cm (3 3/8 in) wide", "12 needles: L6-R6", "Knit 2 rows", "Base rows"):
        assert words in out
    assert out.index("Blocks in knitting order") < out.index("Start\n")


def test_plan_writes_what_is_asked_for(design: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    paths = [tmp_path / name for name in ("p.json", "front.svg", "purl.svg")]
    options = ["--json", str(paths[0]), "--svg", str(paths[1]), "--machine-svg", str(paths[2])]
    assert main(["plan", design, *options]) == 0
    assert "Test piece" in capsys.readouterr().out
    assert read_plan(paths[0].read_text(encoding="utf-8")).design.title == "Test piece"
    assert all(path.read_text(encoding="utf-8").startswith("<svg") for path in paths[1:])
    assert sorted(p.name for p in tmp_path.iterdir()) == ["design.json", "front.svg", "p.json", "purl.svg"]


def test_a_dash_is_standard_input_and_output(monkeypatch, capsys, design: str) -> None:
    typed_in(monkeypatch, Path(design).read_bytes())
    assert main(["plan", "-", "--json", "-"]) == 0
    out = capsys.readouterr().out
    assert read_plan(out).design.title == "Test piece", "the words stay away"
    typed_in(monkeypatch, out.encode())
    assert main(["check", "-"]) == 0


def test_check_says_what_it_found(plan: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", str(plan)]) == 0
    out = capsys.readouterr().out
    assert "legal, level and joined" in out
    assert "Rows on each needle" in out


def test_check_refuses_a_broken_plan_with_status_1(plan: Path, capsys: pytest.CaptureFixture[str]) -> None:
    value = json.loads(plan.read_text(encoding="utf-8"))
    value["summary"]["ends"] += 1
    plan.write_text(json.dumps(value), encoding="utf-8")
    assert main(["check", str(plan)]) == 1
    assert "cannot be knitted" in capsys.readouterr().out


def test_a_border_that_does_not_join_is_planned_with_a_warning_and_not_passed(tmp_path: Path, capsys) -> None:
    halves = drawn("a", ("b", [(0, 0), ("0.5", 0), ("0.5", 1), (0, 1)]))
    path = tmp_path / "halves.json"
    path.write_text(write_design(piece(halves, 40, 60)), encoding="utf-8")
    assert main(["plan", str(path), "--json", str(tmp_path / "p.json")]) == 0
    assert "Look at this" in capsys.readouterr().out
    assert main(["check", str(tmp_path / "p.json")]) == 1


def test_wrong_input_is_told_whole_and_nothing_is_written(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    value = json.loads(write_design(diamond(12, 24)))
    value["bed"]["needles"] = 1
    value["yarns"][0]["colour"] = "red"
    del value["panel"]["height"]
    path = tmp_path / "design.json"
    path.write_text(json.dumps(value), encoding="utf-8")
    assert main(["plan", str(path), "--json", str(tmp_path / "p.json"), "--svg", "-"]) == 2
    out, err = capsys.readouterr()
    assert out == ""
    for where in ("bed.needles", "yarns[0].colour", "panel.height"):
        assert where in err
    assert not (tmp_path / "p.json").exists()


def test_a_plan_read_as_a_design_is_refused(plan: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["plan", str(plan)]) == 2
    assert capsys.readouterr().err


@pytest.mark.parametrize("name", ["missing.json", "no/missing.json", "a\x00b"])
def test_a_missing_file_is_a_sentence(tmp_path: Path, name: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["plan", f"{tmp_path}/{name}"]) == 2
    assert "There is no such file" in capsys.readouterr().err
    assert main(["check", f"{tmp_path}/{name}"]) == 2


def test_a_folder_is_a_sentence(tmp_path: Path, design: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["plan", str(tmp_path)]) == 2
    assert "folder" in capsys.readouterr().err
    assert main(["plan", design, "--json", str(tmp_path)]) == 2
    assert "folder" in capsys.readouterr().err


def test_bytes_that_are_no_text_are_a_sentence(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "x.json"
    path.write_bytes(b'{"title": "\xff"}')
    assert main(["check", str(path)]) == 2
    assert "UTF-8, from byte 12 on" in capsys.readouterr().err


def test_all_outputs_are_written_or_none(design: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    options = ["--json", str(tmp_path / "p.json"), "--svg", str(tmp_path / "no" / "f.svg"), "--machine-svg", str(tmp_path)]
    assert main(["plan", design, *options]) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert len(err.splitlines()) == 2, "every place that cannot be written is told"
    assert [p.name for p in tmp_path.iterdir()] == ["design.json"]


@pytest.mark.parametrize("options", [["--json", "x", "--svg", "x"], ["--json", "-", "--svg", "-"], ["--svg", "DESIGN"]])
def test_two_outputs_in_one_place_are_refused(design: str, options: list[str], monkeypatch, tmp_path, capsys) -> None:
    monkeypatch.chdir(tmp_path)
    before = Path(design).read_bytes()
    assert main(["plan", design, *(design if o == "DESIGN" else o for o in options)]) == 2
    assert "already taken" in capsys.readouterr().err
    assert Path(design).read_bytes() == before


def test_an_output_keeps_its_permissions_and_its_link(design: str, tmp_path: Path) -> None:
    real, link = tmp_path / "real.svg", tmp_path / "link.svg"
    real.write_text("old")
    real.chmod(0o600)
    link.symlink_to(real)
    assert main(["plan", design, "--svg", str(link)]) == 0
    assert link.is_symlink()
    assert real.read_text(encoding="utf-8").startswith("<svg")
    assert stat.S_IMODE(os.stat(real).st_mode) == 0o600


def test_the_words_do_not_depend_on_the_terminals_alphabet(design: str, tmp_path: Path, monkeypatch, capsys) -> None:
    Path(design).write_text(Path(design).read_text(encoding="utf-8").replace("Test piece", "Decke für Žofie"), encoding="utf-8")
    raw = io.BytesIO()
    monkeypatch.setattr(sys, "stdout", io.TextIOWrapper(raw, encoding="ascii"))
    assert main(["plan", design]) == 0
    assert raw.getvalue().decode("utf-8").startswith("Decke für Žofie")


def test_calc_prints_the_answer(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["calc", "gauge", "--stitches", "30", "--width=10 cm", "--rows", "39", "--height", "100 mm"]) == 0
    out = capsys.readouterr().out
    assert "Stitches per 10 cm  30.00" in out


def test_calc_as_json_has_exactly_these_keys(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["calc", "gauge", "--json", "--washed-width", "28 cm", "--washed_height", "31 cm"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert list(told) == ["calculator", "inputs", "result", "problems", "warnings"]
    assert (told["calculator"], told["problems"], told["warnings"]) == ("gauge", [], [])
    assert told["inputs"]["washed_width"] == "28 cm"
    assert told["result"]["stitches_per_10cm"] == 14.285714


def test_calc_tells_every_problem_at_once(capsys: pytest.CaptureFixture[str]) -> None:
    words = ["calc", "gauge", "stray", "--stitches", "0", "--width", "1;2;3;4;5;6", "--what", "1", "--rows", "--height"]
    assert main(words) == 2
    out, err = capsys.readouterr()
    assert out == ""
    starts = [line.split(":")[0] for line in err.splitlines()]
    assert starts == ["stray", "rows", "height", "what", "stitches", "width"]
    assert "Allowed: 1 to 1000 stitches." in err


def test_calc_as_json_tells_problems_in_the_json_too(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["calc", "gauge", "--json", "--stitches", "x", "--stitches", "y"]) == 2
    out, err = capsys.readouterr()
    told = json.loads(out)
    assert told["result"] == {}
    assert [(p["where"], p["code"]) for p in told["problems"]] == [
        ("stitches", "faces.twice"),
        ("stitches", "units.not-a-number"),
    ]
    assert len(err.splitlines()) == 2


def test_a_value_that_would_not_count_is_refused(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["calc", "panel-plan", "--needles", "60"]) == 2
    assert "only with --size_in: counts" in capsys.readouterr().err
    assert main(["calc", "panel-plan", "--needles", "60", "--rows", "60", "--size_in", "counts", "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["result"]["needles"] == 60


@pytest.mark.parametrize(
    ("words", "status"),
    [(["calc"], 2), (["calc", "--help"], 0), (["calc", "nothing"], 2), (["calc", "--x", "1"], 2)],
)
def test_calc_without_a_calculator_says_which_there_are(words: list[str], status: int, capsys) -> None:
    assert main(words) == status
    told = capsys.readouterr()
    assert "gauge" in told.out + told.err


def test_layouts_for_people_and_for_programs(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["layouts"]) == 0
    assert "nested-diamonds: Nested diamonds" in capsys.readouterr().out
    assert main(["layouts", "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert {"diamond-in-corners", "nested-diamonds", "chevron-bands"} <= {one["name"] for one in told}
    bands = next(p for one in told if one["name"] == "chevron-bands" for p in one["parameters"] if p["name"] == "bands")
    assert (bands["kind"], bands["least"], bands["most"]) == ("whole", 2, 40)


def test_version(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--version"]) == 0
    assert capsys.readouterr().out == f"wedgework {VERSION}\n"


@pytest.mark.parametrize("words", [[], ["nothing"], ["plan"], ["plan", "x", "--what"], ["check"]])
def test_a_line_that_is_no_command_has_status_2(words: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    assert main(words) == 2
    told = capsys.readouterr()
    assert "wedgework" in told.out + told.err


@pytest.mark.skipif(sys.platform == "emscripten", reason="nothing there reads from a pipe that could break")
def test_a_reader_that_goes_away_is_a_sentence(design: str, monkeypatch: pytest.MonkeyPatch, capsys) -> None:
    reading, writing = os.pipe()
    os.close(reading)
    with io.TextIOWrapper(os.fdopen(writing, "wb", 0), encoding="utf-8") as closed:
        monkeypatch.setattr(sys, "stdout", closed)
        assert main(["plan", design]) == 1
    assert "closed" in capsys.readouterr().err


@pytest.mark.skipif(not os.path.exists("/dev/full"), reason="this system has no device that is always full")
def test_a_full_disk_is_a_sentence(design: str, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    with open("/dev/full", "w", encoding="utf-8") as full:
        monkeypatch.setattr(sys, "stdout", full)
        assert main(["plan", design]) == 1
    assert "cannot be written" in capsys.readouterr().err
