"""``wedgework calc SLUG --field value ... [--json]``: the argument names come from the declarations."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from dataclasses import dataclass, field

from wedgework.catalogue import CALCULATORS, calculator
from wedgework.declare import Calculator, work_out
from wedgework.faces.answers import answer_object, json_text, problem_object
from wedgework.faces.files import put
from wedgework.faces.terminal import answer_text, calculators_text, help_text, problems_text
from wedgework.problems import Problem
from wedgework.say import say

__all__ = ["calc"]


@dataclass
class Typed:
    """What stood on the line."""

    slugs: list[str] = field(default_factory=list)
    values: dict[str, str] = field(default_factory=dict)
    flags: set[str] = field(default_factory=set)
    problems: list[Problem] = field(default_factory=list)

    def wrong(self, where: str, code: str) -> None:
        self.problems.append(Problem(where, code, say(code, name=where), say(f"{code}.way-out")))


def calc(words: Sequence[str]) -> int:
    """Run one calculator; exit status 0, or 2 with every problem. With ``--json`` the problems are in the JSON too."""
    line = _line(words)
    if not line.slugs and not line.values and not line.problems:
        put(calculators_text())
        return 0 if "help" in line.flags else 2
    chosen = calculator(line.slugs[0]) if line.slugs else None
    if chosen is None:
        slugs = ", ".join(one.slug for one in CALCULATORS)
        wrong = Problem("SLUG", "faces.unknown-calculator", say("faces.unknown-calculator"), say("faces.slugs", slugs=slugs))
        sys.stderr.write(problems_text([wrong, *line.problems]))
        return 2
    if "help" in line.flags:
        put(help_text(chosen))
        return 0
    return _run(chosen, line)


def _run(chosen: Calculator, line: Typed) -> int:
    line.problems += _idle(chosen, line)
    answer = work_out(chosen, line.values)
    problems = [*line.problems, *answer.problems]
    if "json" in line.flags:
        told = answer_object(answer)
        if line.problems:
            told |= {"result": {}, "warnings": [], "problems": [problem_object(problem) for problem in problems]}
        put(json_text(told, indent=2) + "\n")
    if problems:
        sys.stderr.write(problems_text(problems))
        return 2
    if "json" not in line.flags:
        put(answer_text(answer))
    return 0


def _idle(chosen: Calculator, line: Typed) -> list[Problem]:
    """Values that would not count, because the choice they hang on is another: on a line nobody types them for nothing."""
    problems = []
    typed = chosen.defaults | line.values
    for one in chosen.fields:
        if one.only is None or one.name not in line.values:
            continue
        if not one.only.met(typed):
            sentence = say("faces.idle", field=one.only.field, choices=", ".join(one.only.values))
            problems.append(Problem(one.name, "faces.idle", sentence, say("faces.idle.way-out", field=one.only.field)))
    return problems


def _line(words: Sequence[str]) -> Typed:
    """``--name value`` or ``--name=value``, hyphens in a name as good as underscores; ``--json``, ``--help`` stand alone."""
    line = Typed()
    rest = list(words)
    while rest:
        word = rest.pop(0)
        if word in ("--help", "-h", "--json"):
            line.flags.add("help" if word != "--json" else "json")
        elif word.startswith("--") and len(word) > 2:
            name, equals, value = word[2:].partition("=")
            name = name.replace("-", "_")
            if not equals:
                if not rest or _is_option(rest[0]):
                    line.wrong(name, "faces.no-value")
                    continue
                value = rest.pop(0)
            if name in line.values:
                line.wrong(name, "faces.twice")
            line.values[name] = value
        elif not line.slugs and not word.startswith("-"):
            line.slugs.append(word)
        else:
            line.wrong(word, "faces.stray")
    return line


def _is_option(word: str) -> bool:
    return word.startswith("--") or word == "-h"
