"""The shelf of yarns between a page and the project file: written from what was typed, read by the strict reader.

    shelf_file([{"name": "Rust", "colour": "#b4533f", "ball_g": "50 g", "ball_m": "60 m"}])   # text of a project file
    shelf_typed(text)                                                                         # and back to what would be typed

A page keeps what was typed into the calculator `shelf`, one set of texts for each yarn, and never computes with it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from wedgework.calculators import shelf
from wedgework.declare import work_out
from wedgework.declare.calculator import read_all
from wedgework.formats import read_project, write_project
from wedgework.formats.design import Stripe, Yarn
from wedgework.formats.project import Project
from wedgework.problems import Problem, Refused
from wedgework.units import short_point

__all__ = ["shelf_file", "shelf_typed", "shelf_typed_yarn", "shelf_yarns"]


def shelf_file(yarns: Sequence[Mapping[str, str]]) -> str:
    """A project file with these yarns. Raises Refused, each place with the number of its yarn."""
    return write_project(Project(title=shelf.CALCULATOR.title, yarns=shelf_yarns(yarns)))


def shelf_yarns(yarns: Sequence[Mapping[str, str]]) -> tuple[Yarn, ...]:
    """The yarns that were typed; `rate`, which the page keeps beside them, is not typed. Raises Refused as `shelf_file`."""
    found: list[Yarn] = []
    problems: list[Problem] = []
    for number, typed in enumerate(yarns):
        try:
            texts = {key: text for key, text in typed.items() if key != "rate"}
            yarn, _ = shelf.shelf_yarn(read_all(shelf.CALCULATOR, texts))
            found.append(replace(yarn, id=f"yarn-{number + 1}"))
        except Refused as refused:
            problems += [replace(problem, where=f"yarns[{number}].{problem.where}") for problem in refused.problems]
    if problems:
        raise Refused(problems)
    return tuple(found)


def shelf_typed(text: str) -> list[dict[str, str]]:
    """What would be typed for each yarn of a project file, as it stands there, and as `rate` its metres per gram.

    Raises Refused for what is no project file.
    """
    return [shelf_typed_yarn(yarn) for yarn in read_project(text).yarns]


def _line(stripe: Stripe) -> str:
    """As it is typed; a semicolon would end the line."""
    name = stripe.name.replace(";", ",")
    return f"{stripe.colour} {name} {short_point(stripe.metres, 6)} m".replace("  ", " ")


def shelf_typed_yarn(yarn: Yarn) -> dict[str, str]:
    """What would be typed for one yarn."""
    ball = yarn.ball_g or 50
    rate = yarn.metres_per_gram or (1000 / yarn.tex if yarn.tex else None)
    typed = {
        "name": yarn.name[:60],
        "colour": yarn.colour,
        "kind": yarn.kind,
        "ball_g": f"{short_point(ball, 6)} g",
        "on_hand_g": "" if yarn.on_hand_g is None else f"{short_point(yarn.on_hand_g, 6)} g",
        "stripe": "\n".join(_line(stripe) for stripe in yarn.stripe),
    }
    if rate is not None:
        typed |= {"known": shelf.BALL, "ball_m": f"{short_point(rate * ball, 6)} m"}
    inputs = dict(work_out(shelf.CALCULATOR, typed).inputs)
    return inputs | ({"rate": short_point(rate, 6)} if rate is not None else {})
