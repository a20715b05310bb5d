"""What the pages ask beside an answer: a link to make, a link to open, a piece for the machine.

    {"ask": "link", "calculator": "gauge", "inputs": {...}, "digest": ""}   ->  {"fragment", "problems"}
    {"ask": "open", "fragment": "w1..."}   ->  {"calculator", "title", "inputs", "made_by", "newer", "digest", "about",
                                             "problems"}
    {"ask": "piece", "inputs": {...}}      ->  {"piece", "problems"}
    {"ask": "sketch", "calculator": "panel-plan", "inputs": {...}}   ->  {"html", "problems"}; its picture before it is planned
    {"ask": "fabric", "calculator": "stripes", "inputs": {...}}   ->  {"fabric", "problems"}; see `fabric`
    {"ask": "shelf-file", "yarns": "[...]"}   ->  {"text", "problems"}; what was typed for each yarn, as JSON in a text
    {"ask": "shelf-read", "text": "..."}      ->  {"yarns", "problems"}; a project file with yarns alone
    {"ask": "carry-on", "design": "{...}", "state": "{...}", "inputs": {...}}   ->  {"rows", "html", "piece", "problems"}; see
                                                                                 `carrying`
    {"ask": "measured", "inputs": {...}}   ->  {"said", "problems"}
    {"ask": "onward", "calculator": "gauge", "to": "size", "inputs": {...}}   ->  {"inputs", "title", "problems"}; see `onward`

Those of the layout board stand in `board`, those of the project file in `keeping`, those of classes and codes in `classes`,
those of a test knitter's report in `reports`. `about` is a list of sentences: what a link holds, before anything is done with
it. `inputs` are texts as typed. Every answer
has `problems`, an empty list where all is well; what was asked for is then
empty, or null for a piece. `digest` may be absent. A link that names fields which are not there is opened without them,
and that is told in `problems`.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from wedgework.catalogue import calculator
from wedgework.faces.about import about
from wedgework.faces.answers import Json, Teller, Told, problem_object, refusing
from wedgework.faces.board import BOARD_ASKS
from wedgework.faces.carrying import carried_told
from wedgework.faces.classes import CLASS_ASKS
from wedgework.faces.fabric import fabric_of
from wedgework.faces.keeping import KEEPING_ASKS
from wedgework.faces.link import BOARD, make_link, read_link, unknown_problem
from wedgework.faces.measured import measured_told
from wedgework.faces.onward import carried, ways
from wedgework.faces.piece import piece_of
from wedgework.faces.reports import REPORT_ASKS
from wedgework.faces.shelf import shelf_file, shelf_typed
from wedgework.faces.sketch import SKETCHED, sketch_of
from wedgework.formats.text import parse

__all__ = ["answer_to"]


def answer_to(asked: Mapping[str, Any]) -> Told | None:
    """The answer to one of these questions; None where it is none of them or misshapen. Raises nothing."""
    kind = asked["ask"]
    known = _ASKS.get(kind) if isinstance(kind, str) else None
    if known is None:
        return None
    wanted, may, tell = known
    given = {key: value for key, value in asked.items() if key != "ask"}
    if not wanted <= given.keys() <= wanted | may:
        return None
    if not all(_texts(value) if key == "inputs" else isinstance(value, str) for key, value in given.items()):
        return None
    return tell(given)


def _texts(value: object) -> bool:
    return isinstance(value, dict) and all(isinstance(text, str) for text in value.values())


def _link(asked: dict[str, Any]) -> Told | None:
    if calculator(asked["calculator"]) is None:
        return None
    return {"fragment": make_link(asked["calculator"], asked["inputs"], asked.get("digest", ""))}


def _open(asked: dict[str, Any]) -> Told:
    opened = read_link(asked["fragment"])
    found = calculator(opened.slug)
    if found is None and opened.slug != BOARD:
        raise AssertionError(opened.slug)
    inputs: dict[str, Json] = {**found.defaults, **found.with_marks(opened.inputs)} if found else {**opened.inputs}
    what = about(opened)
    return {
        "calculator": opened.slug,
        "title": what.what,
        "inputs": inputs,
        "made_by": opened.made_by,
        "newer": opened.newer,
        "digest": opened.digest,
        "about": [line for line in (what.title, *what.lines) if line],
        "problems": [problem_object(unknown_problem(opened))] if opened.unknown else [],
    }


def _piece(asked: dict[str, Any]) -> Told:
    return {"piece": piece_of(asked["inputs"])}


def _sketch(asked: dict[str, Any]) -> Told | None:
    return {"html": sketch_of(asked["calculator"], asked["inputs"])} if asked["calculator"] in SKETCHED else None


def _carry_on(asked: dict[str, Any]) -> Told | None:
    return carried_told(asked["design"], asked["state"], asked["inputs"], asked.get("carries", ""))


def _measured(asked: dict[str, Any]) -> Told | None:
    return measured_told(asked["inputs"])


def _fabric(asked: dict[str, Any]) -> Told | None:
    found = fabric_of(asked["calculator"], asked["inputs"])
    return None if found is None else {"fabric": found}


def _shelf_file(asked: dict[str, Any]) -> Told | None:
    yarns = parse(asked["yarns"], len(asked["yarns"]))
    if not isinstance(yarns, list) or not all(_texts(yarn) for yarn in yarns):
        return None
    return {"text": shelf_file(yarns)}


def _shelf_read(asked: dict[str, Any]) -> Told:
    yarns: list[Json] = [dict(yarn) for yarn in shelf_typed(asked["text"])]
    return {"yarns": yarns}


def _onward(asked: dict[str, Any]) -> Told | None:
    found = calculator(asked["calculator"])
    if found is None or asked["to"] not in ways(found.slug):
        return None
    slug = found.slug

    def carry(asked: dict[str, Any]) -> Told:
        there = calculator(asked["to"])
        inputs = carried(slug, asked["to"], asked["inputs"])
        return {"inputs": {**(there.with_marks(inputs) if there else inputs)}, "title": found.title}

    return refusing({"inputs": {}, "title": found.title}, carry)(asked)


_NOTHING_OPENED: Told = {"calculator": "", "title": "", "inputs": {}, "made_by": "", "newer": False, "digest": "", "about": []}
# Keys that must be there, keys that may, and who answers.
_ASKS: Mapping[str, tuple[set[str], set[str], Teller]] = {
    "link": ({"calculator", "inputs"}, {"digest"}, refusing({"fragment": ""}, _link)),
    "open": ({"fragment"}, set(), refusing(_NOTHING_OPENED, _open)),
    "piece": ({"inputs"}, set(), refusing({"piece": None}, _piece)),
    "sketch": ({"calculator", "inputs"}, set(), refusing({"html": ""}, _sketch)),
    "shelf-file": ({"yarns"}, set(), refusing({"text": ""}, _shelf_file)),
    "shelf-read": ({"text"}, set(), refusing({"yarns": []}, _shelf_read)),
    "fabric": ({"calculator", "inputs"}, set(), refusing({"fabric": None}, _fabric)),
    "carry-on": ({"design", "state", "inputs"}, {"carries"}, _carry_on),
    "measured": ({"inputs"}, set(), _measured),
    "onward": ({"calculator", "to", "inputs"}, set(), _onward),
    **BOARD_ASKS,
    **KEEPING_ASKS,
    **CLASS_ASKS,
    **REPORT_ASKS,
}
