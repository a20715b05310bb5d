"""What a link is, in words, before anything is done with it: the calculator, title and size of a piece, or what is typed.

    about(read_link(fragment))     # About(what="Panel plan", title="Kites", lines=("76 cm (30 in) wide ...",), page="plan/")

Nothing is planned and nothing computed for it: a link of the greatest size is described at once.
"""

from __future__ import annotations

from contextlib import suppress
from dataclasses import dataclass

from wedgework.calculators import panel_plan
from wedgework.catalogue import calculator
from wedgework.declare import Calculator
from wedgework.declare.calculator import read_all
from wedgework.faces.link import BOARD, Opened
from wedgework.faces.onward_piece import PIECE
from wedgework.formats import read_design
from wedgework.formats.design import Design
from wedgework.layout.sizes import picture_sizes
from wedgework.problems import Refused
from wedgework.say import say, say_n
from wedgework.units import both_text

__all__ = ["About", "about", "design_in", "page_of"]

PLANNER = "panel-plan"
MOST_FIELDS = 6
LONGEST = 60
"""Of a text that was typed; the rest is cut."""


@dataclass(frozen=True, slots=True)
class About:
    what: str
    """The title of the page that it belongs to."""
    title: str
    """Of the piece; empty where there is none, or where it cannot be read."""
    lines: tuple[str, ...]
    """The size of the piece; else what differs from the defaults, field by field."""
    page: str
    """Below the site's first page."""


def page_of(slug: str) -> str:
    """Where a calculator, or the board, lies below the site's first page, with everything round it."""
    return {PLANNER: "plan/", BOARD: "board/"}.get(slug, f"calculators/{slug}/")


def about(opened: Opened) -> About:
    """What a link that was read is. Raises nothing: what is wrong with its inputs, its page says."""
    found = calculator(opened.slug)
    what = found.title if found else say("app.board-title")
    page = page_of(opened.slug)
    if found is not None and not set(PIECE) <= found.defaults.keys():
        return About(what, "", _fields(found, opened), page)
    title = _short(opened.inputs.get("title", found.defaults["title"])) if found else ""
    with suppress(Refused):
        design = design_in(opened)
        if design is not None:
            return About(what, _short(design.title), (_size(design),), page)
    return About(what, title, (), page)


def design_in(opened: Opened) -> Design | None:
    """The design that a link carries, or None where it carries none. Raises Refused for one that cannot be read."""
    if opened.slug == BOARD:
        return read_design(opened.inputs["design"])
    found = calculator(opened.slug)
    if found is None or not set(PIECE) <= found.defaults.keys():
        return None
    typed = {**found.defaults, **opened.inputs}
    return panel_plan.design_from(read_all(panel_plan.CALCULATOR, {name: typed[name] for name in PIECE}))


def _size(design: Design) -> str:
    sizes = picture_sizes(design)
    return say(
        "faces.about-size",
        width=both_text(sizes.width_mm, 0),
        height=both_text(sizes.height_mm, 0),
        stitches=say_n("common.stitches", sizes.needles),
        rows=say_n("common.rows", sizes.rows),
    )


def _fields(found: Calculator, opened: Opened) -> tuple[str, ...]:
    said = []
    for field in found.fields:
        text = opened.inputs.get(field.name, field.default)
        if text == field.default:
            continue
        shown = field.choice_label(found.slug, text) if text in field.choices else _short(text)
        said.append(say("faces.about-field", label=field.label(found.slug), text=shown or say("faces.about-nothing")))
    more = len(said) - MOST_FIELDS
    return (*said[:MOST_FIELDS], *([say_n("faces.about-more", more)] if more > 0 else []))


def _short(text: str) -> str:
    """On one line; what is longer than a line is cut."""
    line = " ".join(text.split())
    return line if len(line) <= LONGEST else f"{line[:LONGEST]}\u2026"
