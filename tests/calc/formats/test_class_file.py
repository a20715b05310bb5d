"""Classes as files: everything that is wrong at once, and never an address."""

from __future__ import annotations

import json
from typing import Any

import pytest

from wedgework.formats import (
    Class,
    ClassEntry,
    class_value,
    read_class,
    read_class_value,
    read_project,
    write_class,
    write_project,
)
from wedgework.formats.project import Project
from wedgework.formats.schemas.classes import MOST_ENTRIES
from wedgework.problems import Refused

LINK = "w1.q1ZKVrJSSk8sTU9V0lHKVLKqrtVRKgMKGegZ6hko1QIA"
BARE: dict[str, Any] = {"format": "wedgework-class", "version": 1}
EVENING = Class("Guild evening", "One.\n\nTwo.", (ClassEntry(LINK, "Swatch", "Yours"), ClassEntry(LINK)))


def places(value: dict[str, Any]) -> list[str]:
    with pytest.raises(Refused) as refused:
        read_class(json.dumps(value))
    assert all(problem.way_out for problem in refused.value.problems)
    return [problem.where for problem in refused.value.problems]


def test_a_class_goes_there_and_back() -> None:
    assert read_class(write_class(EVENING)) == EVENING
    assert read_class(json.dumps(BARE)) == Class()


def test_a_project_keeps_classes_and_one_without_them_has_no_key_for_them() -> None:
    project = Project(classes=(EVENING, Class("Other")))
    assert read_project(write_project(project)) == project
    assert "classes" not in json.loads(write_project(Project()))


@pytest.mark.parametrize(
    "link",
    [
        "https://elsewhere.invalid/#w1.AAAA",
        "//elsewhere.invalid/",
        "javascript:alert(1)",
        "#w1.AAAA",
        "w1.AA AA",
        "w1.AA\nAA",
        'w1."><script>alert(1)</script>',
        "c1.AAAA",
        "w.AAAA",
        "w12345.AAAA",
        "w1." + "A" * 4096,
        "",
        7,
        None,
    ],
)
def test_what_is_no_link_of_ours_is_refused_at_its_place(link: Any) -> None:
    assert places({**BARE, "entries": [{"link": LINK}, {"link": link}]}) == ["entries[1].link"]


def test_every_mistake_is_told_at_once() -> None:
    wrong = {
        **BARE,
        "title": "x" * 121,
        "text": "\u0000",
        "entries": [{"title": 7, "link": LINK}, {"text": "no link"}, {"href": "x", "link": LINK}],
    }
    assert places(wrong) == ["title", "text", "entries[0].title", "entries[1].link", "entries[2].href"]


@pytest.mark.parametrize(
    ("changes", "where"),
    [
        ({"entries": [{"link": LINK}] * (MOST_ENTRIES + 1)}, "entries"),
        ({"text": "x" * 8001}, "text"),
        ({"format": "wedgework-design"}, "format"),
        ({"version": 2}, "version"),
    ],
)
def test_what_is_too_much_or_of_another_kind(changes: dict[str, Any], where: str) -> None:
    assert places({**BARE, **changes}) == [where]


def test_a_class_inside_something_else_is_named_from_there() -> None:
    assert read_class_value(class_value(EVENING)) == EVENING
    with pytest.raises(Refused) as refused:
        read_class_value({**BARE, "entries": 7}, "kept[2]")
    assert refused.value.problems[0].where == "kept[2].entries"
