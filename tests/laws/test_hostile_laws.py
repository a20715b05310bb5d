"""Thousands of damaged and hostile files and links: each is answered with a value or with problems, at once; nothing falls."""

from __future__ import annotations

import json
import random
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from hostile import SCRIPTS, hostile_files, hostile_links
from pieces import diamond
from wedgework.calculators.drawing_field import typed_of
from wedgework.catalogue import CALCULATORS
from wedgework.faces.class_link import make_class_link, read_class_link
from wedgework.faces.link import make_design_link, make_link, read_link
from wedgework.faces.shelf import shelf_typed
from wedgework.faces.wire import answer
from wedgework.formats import (
    Project,
    read_class,
    read_design,
    read_plan,
    read_project,
    read_report,
    read_state,
    write_design,
    write_plan,
    write_project,
)
from wedgework.formats.project import Progress
from wedgework.plan import plan_piece
from wedgework.problems import Problem, Refused

LONGEST_S = 1.0
"""The promise. What is measured here lies far below it, so that a busy machine does not make it fail."""
GOLDEN = Path(__file__).resolve().parents[1] / "golden" / "formats"
FEW, MANY = 700, 9_000
PLAN = plan_piece(diamond(8, 16))
Record = Callable[[str, object], None]


def kept(name: str) -> str:
    return (GOLDEN / f"{name}.json").read_text(encoding="utf-8")


FILES: dict[str, tuple[Callable[[str], Any], str]] = {
    "design": (read_design, kept("every-key")),
    "drawing": (read_design, write_design(diamond(8, 16))),
    "plan": (read_plan, write_plan(PLAN)),
    "state": (read_state, kept("on-the-bed")),
    "project": (read_project, write_project(Project("All", designs=(PLAN.design,), progress=(Progress(PLAN, 7),)))),
    "everything kept": (read_project, kept("everything-kept")),
    "shelf": (shelf_typed, kept("everything-kept")),
    "report": (read_report, kept("test-knitted")),
    "class": (read_class, kept("guild-evening")),
}
LINKS = [
    *(make_link(one.slug, {}) for one in CALCULATORS),
    make_link("panel-plan", typed_of(diamond(20, 40)), "0123456789ab"),
    make_design_link(diamond(20, 40)),
]
LINKS_OF: dict[str, tuple[Callable[[str], Any], list[str]]] = {
    "a page": (read_link, LINKS),
    "a class": (read_class_link, [make_class_link(read_class(kept("guild-evening")))]),
}


def came_of(read: Callable[[str], Any], text: str) -> str:
    """How a reader took it; anything else than a value or problems is a fault and raises."""
    problems: tuple[Problem, ...] | None = None
    begun = time.perf_counter()
    try:
        read(text)
    except Refused as refused:
        problems = tuple(refused.problems)
    took = time.perf_counter() - begun
    assert took < LONGEST_S, f"{took:.2f} s for {len(text)} characters: {text[:200]!r}"
    if problems is None:
        return "read"
    assert problems
    assert all(problem.code and problem.sentence for problem in problems)
    return "refused"


def asked(text: str) -> str:
    """The same through the one door that the browser has: always JSON, with problems where nothing was read."""
    begun = time.perf_counter()
    told = json.loads(answer(text))
    took = time.perf_counter() - begun
    assert took < LONGEST_S, f"{took:.2f} s: {text[:200]!r}"
    found: Any = told.get("problems", told.get("answer", {}).get("problems"))
    assert isinstance(found, list)
    return "refused" if found else "read"


SIZES = [FEW, pytest.param(MANY, marks=pytest.mark.long)]


@pytest.mark.parametrize("count", SIZES)
@pytest.mark.parametrize("kind", FILES)
def test_files(kind: str, count: int, record_property: Record) -> None:
    read, whole = FILES[kind]
    assert came_of(read, whole) == "read"
    came = {"read": 0, "refused": 0}
    for what, text in hostile_files(random.Random(f"{kind} {count}"), whole, count):
        try:
            came[came_of(read, text)] += 1
        except Exception as fault:
            raise AssertionError(f"{what}: {text[:300]!r}") from fault
    assert came["refused"] > count / 2, "most damage is noticed"
    assert came["read"], "and some of it does no harm"
    record_property("hostile", count)


@pytest.mark.parametrize("count", [2 * FEW, pytest.param(3 * MANY, marks=pytest.mark.long)])
@pytest.mark.parametrize("kind", LINKS_OF)
def test_links(kind: str, count: int, record_property: Record) -> None:
    read, links = LINKS_OF[kind]
    assert all(came_of(read, link) == "read" for link in links)
    came = {"read": 0, "refused": 0}
    for what, fragment in hostile_links(random.Random(f"{kind} {count}"), links, count):
        try:
            came[came_of(read, fragment)] += 1
        except Exception as fault:
            raise AssertionError(f"{what}: {fragment[:300]!r}") from fault
    assert came["refused"] > came["read"] > 0
    record_property("hostile", count)


PIECES = [{"plan": json.loads(FILES["plan"][1])}]
ASKED = {
    "open": ("fragment", LINKS[0]),
    "project-look": ("text", FILES["project"][1]),
    "shelf-read": ("text", FILES["shelf"][1]),
    "project-write": (
        "kept",
        json.dumps({"pieces": PIECES, "yarns": [], "fields": [], "designs": []}),
    ),
    "report-write": ("report", FILES["report"][1]),
}


@pytest.mark.parametrize("count", [FEW // 4, pytest.param(MANY // 4, marks=pytest.mark.long)])
@pytest.mark.parametrize("kind", ASKED)
def test_questions_of_the_pages(kind: str, count: int, record_property: Record) -> None:
    """What a page hands on, hurt inside the question, and the question itself hurt."""
    key, whole = ASKED[kind]
    chance = random.Random(f"{kind} {count}")
    if kind == "open":
        inside = [fragment for _, fragment in hostile_links(chance, LINKS, count)]
    else:
        inside = [text for _, text in hostile_files(chance, whole, count)]
    came = [asked(json.dumps({"ask": kind, key: text})) for text in inside]
    assert "refused" in came
    for _, question in hostile_files(chance, json.dumps({"ask": kind, key: whole}), count):
        asked(question)
    record_property("hostile", 2 * count)


@pytest.mark.parametrize("count", [FEW, pytest.param(MANY, marks=pytest.mark.long)])
def test_what_is_typed(count: int, record_property: Record) -> None:
    """Fields of every calculator that plans nothing, full of what nobody types."""
    chance = random.Random(count)
    quick = [one for one in CALCULATORS if "layout" not in one.defaults and one.slug not in ("carry-on", "scraps", "stripes")]
    odd = ["9" * 5_000, "1e999", "-1", "NaN", "1/0", "\ud800", "\u0000", "x" * 20_000, SCRIPTS[1]]
    odd += ["1;" * 5_000, "1 " * 9_000, "\n" * 9_000]
    for number in range(count):
        one = quick[number % len(quick)]
        names = chance.sample(sorted(one.defaults), min(3, len(one.defaults)))
        inputs = {name: chance.choice(odd) for name in names}
        asked(json.dumps({"calculator": one.slug, "inputs": inputs}))
    record_property("hostile", count)
