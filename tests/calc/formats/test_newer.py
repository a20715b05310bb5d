"""Files of a newer Wedgework."""

from __future__ import annotations

import json
from typing import Any

import pytest

from wedgework.formats import read_design
from wedgework.formats.newer import is_newer
from wedgework.problems import Problem, Refused
from wedgework.version import VERSION

SMALL: dict[str, Any] = {
    "format": "wedgework-design",
    "version": 1,
    "title": "Plain",
    "bed": {"pitch_mm": 9, "needles": 110},
    "gauge": {"stitches_per_10cm": 14, "rows_per_10cm": 19},
    "panel": {"width": {"needles": 60}, "height": {"rows": 120}},
    "yarns": [{"id": "a", "name": "Chalk", "colour": "#f2efe6"}],
    "layout": {"background": "a"},
}


def refused(**changes: Any) -> list[Problem]:
    with pytest.raises(Refused) as caught:
        read_design(json.dumps({**SMALL, **changes}))
    return list(caught.value.problems)


@pytest.mark.parametrize(
    ("made_by", "ours", "newer"),
    [
        ("0.2.0", "0.1.0", True),
        ("0.10", "0.9.9", True),
        ("Wedgework 1.0", "0.9", True),
        ("1.0.0", "1.0", False),
        ("1.0", "1.0.1", False),
        ("0.2.0rc1", "0.1.0", True),
        ("by hand", "0.1.0", False),
        ("", "0.1.0", False),
        ("9" * 50, "0.1.0", True),
    ],
)
def test_versions_are_compared_by_their_numbers(made_by: str, ours: str, newer: bool) -> None:
    assert is_newer(made_by, ours) is newer


def test_an_unknown_key_of_a_newer_file_asks_for_an_update() -> None:
    (problem,) = refused(made_by="999.0", ruffle={"rows": 3})
    assert problem.where == "ruffle"
    assert problem.code == "formats.newer"
    assert "ade by a newer Wedgework, 999.0" in problem.sentence
    assert VERSION in problem.sentence
    assert problem.way_out == "Update this copy."


def test_an_unknown_version_of_a_newer_file_asks_for_an_update() -> None:
    (problem,) = refused(made_by="999.0", version=2)
    assert (problem.where, problem.code) == ("version", "formats.newer")


def test_an_unknown_word_of_a_newer_file_asks_for_an_update() -> None:
    (problem,) = refused(made_by="999.0", options={"step_style": "sideways"})
    assert (problem.where, problem.code) == ("options.step_style", "formats.newer")


def test_other_mistakes_of_a_newer_file_are_mistakes() -> None:
    (problem,) = refused(made_by="999.0", title=7)
    assert problem.code == "formats.wrong-type"


@pytest.mark.parametrize("made_by", ["0.0.0", VERSION, "by hand"])
def test_in_a_file_that_is_not_newer_they_are_mistakes_too(made_by: str) -> None:
    (problem,) = refused(made_by=made_by, ruffle=1)
    assert problem.code == "formats.unknown-key"
    (problem,) = refused(made_by=made_by, version=2)
    assert problem.code == "formats.unknown-version"
