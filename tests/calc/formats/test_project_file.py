"""Projects: everything that a person keeps."""

from __future__ import annotations

import json
from fractions import Fraction
from typing import Any

import pytest

from wedgework.formats import Project, read_project, write_project
from wedgework.formats.project import KeptSwatch, Pace
from wedgework.problems import Refused

EMPTY: dict[str, Any] = {"format": "wedgework-project", "version": 1}


def test_an_empty_project_has_every_default() -> None:
    assert read_project(json.dumps(EMPTY)) == Project()
    assert json.loads(write_project(Project()))["pace"] == {}


def test_a_swatch_and_a_pace() -> None:
    swatch = {"stitches": 40, "rows": 60, "washed": {"widths_mm": [286], "heights_mm": [315]}}
    project = read_project(
        json.dumps({**EMPTY, "swatches": [{"name": "Chalk", "tension": 7.1, "swatch": swatch}], "pace": {"seconds_per_row": 4.5}})
    )
    (kept,) = project.swatches
    assert isinstance(kept, KeptSwatch)
    assert (kept.name, kept.tension, kept.notes) == ("Chalk", Fraction(71, 10), "")
    assert kept.swatch.washed is not None
    assert project.pace == Pace(Fraction(9, 2))
    assert read_project(write_project(project)) == project


def test_machines_and_yarns_are_those_of_a_design() -> None:
    project = read_project(
        json.dumps(
            {
                **EMPTY,
                "machines": [{"pitch_mm": 9, "needles": 110, "machine": {"name": "Loft"}}],
                "yarns": [{"id": "a", "name": "Chalk", "colour": "#f2efe6", "on_hand_g": 312.5}],
            }
        )
    )
    assert project.machines[0].machine.name == "Loft"
    assert project.yarns[0].on_hand_g == Fraction(625, 2)


@pytest.mark.parametrize(
    ("changes", "where"),
    [
        ({"pace": {"seconds_per_row": 0}}, "pace.seconds_per_row"),
        ({"designs": [{}]}, "designs[0].format"),
        ({"progress": [{"steps_done": -1}]}, "progress[0].steps_done"),
        ({"shelf": []}, "shelf"),
    ],
)
def test_a_wrong_value_is_named_by_its_path(changes: dict[str, Any], where: str) -> None:
    with pytest.raises(Refused) as caught:
        read_project(json.dumps({**EMPTY, **changes}))
    assert caught.value.problems[0].where == where
