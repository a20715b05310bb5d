"""The one door for a browser: a question in, an answer out, both JSON in a string. It never raises for any string.

    answer('{"calculator": "gauge", "inputs": {"stitches": "40"}}')
    -> '{"answer": {"calculator": "gauge", ...}, "html": "<section ..."}'

`answer` is the calculator's JSON (see `answers`), `html` the inside of ``<output>``. A question that cannot be read at
all is answered with problems in the same form. Questions with ``ask`` in them are those of `asks`.

    speak("de", catalogue)      from then on the answers are in that language; see the say room
"""

from __future__ import annotations

from wedgework.catalogue import CALCULATORS, calculator
from wedgework.declare import Answer, Calculator, work_out
from wedgework.faces import asks
from wedgework.faces.answers import Json, answer_object, json_text, problem_object
from wedgework.faces.markup import element
from wedgework.faces.result import result_html
from wedgework.formats.text import parse
from wedgework.problems import Problem, Refused
from wedgework.say import say, speak

__all__ = ["LONGEST_ASKED", "LONGEST_QUESTION", "answer", "default_answer", "speak", "written"]

LONGEST_QUESTION = 200_000
"""To a calculator; a drawing of one's own is typed whole."""
LONGEST_ASKED = 80_000_000
"""To those of `asks`, which may hold a whole project file."""


def answer(question: str) -> str:
    """The answer to a question; the same bytes on every Python."""
    asked = _question(question)
    if isinstance(asked, str):
        return asked
    if isinstance(asked, Problem):
        words = element("p", str(asked), class_="ww-part ww-problems")
        record: dict[str, Json] = {"calculator": "", "inputs": {}, "result": {}, "problems": [], "warnings": []}
        record["problems"] = [problem_object(asked)]
        return json_text({"answer": record, "html": words})
    return written(work_out(*asked))


def written(found: Answer) -> str:
    """The string that the door gives for an answer."""
    return json_text({"answer": answer_object(found), "html": result_html(found)})


def default_answer(slug: str) -> str:
    """The answer for the defaults: the page holds this string, and a live engine must give it again."""
    return answer(json_text({"calculator": slug, "inputs": {}}))


def _question(question: str) -> tuple[Calculator, dict[str, str]] | Problem | str:
    """What is asked of which calculator; or why it cannot be read; or the answer already, to another kind of question."""
    try:
        asked = parse(question, LONGEST_ASKED)
    except Refused:
        return _unreadable()
    if isinstance(asked, dict) and "ask" in asked:
        told = asks.answer_to(asked)
        return json_text(told) if told is not None else _unreadable()
    if len(question) > LONGEST_QUESTION or not isinstance(asked, dict) or not set(asked) <= {"calculator", "inputs"}:
        return _unreadable()
    inputs = asked.get("inputs", {})
    if not isinstance(inputs, dict) or not all(isinstance(text, str) for text in inputs.values()):
        return _unreadable()
    slug = asked.get("calculator")
    found = calculator(slug) if isinstance(slug, str) else None
    if found is None:
        slugs = ", ".join(one.slug for one in CALCULATORS)
        return Problem("calculator", "faces.unknown-calculator", say("faces.unknown-calculator"), say("faces.slugs", slugs=slugs))
    return found, inputs


def _unreadable() -> Problem:
    return Problem("", "faces.unreadable-question", say("faces.unreadable-question"))
