"""The shelf as a project file and back; what cannot be read is told with the number of its yarn."""

from __future__ import annotations

import json
from typing import Any

import pytest

from wedgework.calculators.shelf import CALCULATOR
from wedgework.declare import work_out
from wedgework.faces.shelf import shelf_file, shelf_typed
from wedgework.faces.wire import answer
from wedgework.formats import read_project
from wedgework.problems import Refused

RUST = {"name": "Rust", "colour": "#b4533f", "ball_g": "50 g", "ball_m": "60 m", "on_hand_g": "175 g", "kind": "wool"}
THIN = {"name": "Thin", "colour": "#102030", "known": "count", "count": "28", "system": "nm", "on_hand_g": "", "kind": ""}
LOUD = {**RUST, "name": "Loud", "stripe": "#b4533f Rust 2.5 m\n#3f5566 Slate 1.25 m"}


def told(**asked: str) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(answer(json.dumps(asked)))
    return found


def test_there_and_back() -> None:
    """What comes back means the same yarn, whatever way it was typed."""
    text = shelf_file([RUST, THIN, LOUD])
    back = shelf_typed(text)
    for typed, again in zip((RUST, THIN, LOUD), back, strict=True):
        one, other = (
            work_out(CALCULATOR, typed).result,
            work_out(CALCULATOR, {k: v for k, v in again.items() if k != "rate"}).result,
        )
        assert one is not None
        assert other is not None
        assert one.values == other.values
    assert shelf_file([{k: v for k, v in again.items() if k != "rate"} for again in back]) == text
    assert [again["rate"] for again in back] == ["1.2", "28", "1.2"]


def test_the_names_of_the_colours_go_along() -> None:
    (back,) = shelf_typed(shelf_file([LOUD]))
    assert back["stripe"] == "#b4533f Rust 2.5 m\n#3f5566 Slate 1.25 m"
    (yarn,) = read_project(shelf_file([LOUD])).yarns
    assert [stripe.name for stripe in yarn.stripe] == ["Rust", "Slate"]
    nameless = {**LOUD, "stripe": "#b4533f 2.5 m\n#3f5566 1.25 m"}
    (again,) = shelf_typed(shelf_file([nameless]))
    assert again["stripe"].count(" m") == 2
    semicolons = shelf_file([LOUD]).replace('"Slate"', '"Slate; dark"')
    assert shelf_typed(semicolons)[0]["stripe"].splitlines()[1] == "#3f5566 Slate, dark 1.25 m"


def test_it_is_a_project_file() -> None:
    project = read_project(shelf_file([RUST, THIN]))
    assert [yarn.name for yarn in project.yarns] == ["Rust", "Thin"]
    assert len({yarn.id for yarn in project.yarns}) == 2
    assert project.designs == ()


def test_over_the_wire() -> None:
    made = told(ask="shelf-file", yarns=json.dumps([RUST]))
    assert made["problems"] == []
    assert told(ask="shelf-read", text=made["text"])["yarns"][0]["name"] == "Rust"
    wrong = told(ask="shelf-file", yarns=json.dumps([RUST, {**RUST, "ball_g": "heavy"}]))
    assert [problem["where"] for problem in wrong["problems"]] == ["yarns[1].ball_g"]
    assert told(ask="shelf-read", text='{"format": "wedgework-plan", "version": 1}')["problems"]
    for broken in ('{"ask": "shelf-file", "yarns": "[1]"}', '{"ask": "shelf-file", "yarns": []}', '{"ask": "shelf-file"}'):
        assert json.loads(answer(broken))["answer"]["problems"], "no question of ours"


@pytest.mark.parametrize(
    ("typed", "where"),
    [
        ({"ball_m": "1 m", "ball_g": "10 kg"}, "ball_m"),
        ({"known": "count", "count": "0.001"}, "count"),
        ({"stripe": "Rust"}, "stripe"),
        ({"name": ""}, "name"),
    ],
)
def test_what_is_no_yarn(typed: dict[str, str], where: str) -> None:
    with pytest.raises(Refused) as refused:
        shelf_file([{**RUST, **typed}])
    assert [problem.where for problem in refused.value.problems] == [f"yarns[0].{where}"]
    assert all(problem.way_out for problem in refused.value.problems)
