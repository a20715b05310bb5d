"""What the built pages hold, complete and true without any script.

calculator_html("gauge")      # the form and the answer for its defaults
layouts_html()                # the layouts that ship
piece_html(text)              # a design file, planned, knitted on the model bed and drawn
gallery_html(text, name, address)   # the same with links that open it
"""

from __future__ import annotations

from collections.abc import Callable

from wedgework.calculators import panel_plan
from wedgework.calculators.drawing_field import typed_of
from wedgework.calculators.layout_fields import parameter_default, parameter_range
from wedgework.catalogue import calculator
from wedgework.declare import work_out
from wedgework.declare.calculator import read_all
from wedgework.draw.front import front_svg
from wedgework.faces.answers import answer_object, json_text
from wedgework.faces.form import fields_html
from wedgework.faces.link import make_link
from wedgework.faces.markup import Html, element, joined
from wedgework.faces.result import result_html
from wedgework.faces.sketch import SKETCHED
from wedgework.faces.tools import tools_over, tools_under
from wedgework.formats import read_design, steps_digest
from wedgework.formats.plan import Plan, is_edge
from wedgework.layout.library import LAYOUTS, LayoutDeclaration
from wedgework.layout.sizes import resolve
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan
from wedgework.replay.result import Replay
from wedgework.say import say, say_n
from wedgework.units import both_text

__all__ = ["calculator_html", "gallery_html", "layouts_html", "piece_html"]

LONG = 4
"""Parts of an answer, under which the ways on from it are no longer seen with its beginning."""


def calculator_html(slug: str, *, alone: bool = False) -> str:
    """The form, and inside ``<output>`` the answer for the defaults; `data-answer` round it holds the same in figures, as the
    wire gives them. `alone`: see `tools`.

    Raises LookupError for a slug that is not there.
    """
    found = calculator(slug)
    if found is None:
        raise LookupError(slug)
    answer = work_out(found, {})
    return element(
        "form",
        fields_html(found, found.defaults),
        element(
            "div",
            tools_over(slug, alone=alone, long=answer.result is not None and len(answer.result.view) > LONG),
            element("output", result_html(answer)),
            tools_under(slug, alone=alone),
            class_="ww-answer",
            id=f"{slug}-answer",
            data_answer=json_text({"answer": answer_object(answer)}),
        ),
        class_="ww-calculator",
        data_calculator=slug,
        data_picture="first" if slug in SKETCHED else None,
        aria_label=found.title,
        novalidate=True,
    )


def layouts_html() -> str:
    """Each layout with its title, how it knits, a piece of it as the panel plan begins, and its parameters."""
    return joined(*(_layout(layout) for layout in LAYOUTS))


def _layout(layout: LayoutDeclaration) -> Html:
    keys = ("name", "what", "range", "default")
    heads = element("tr", *(element("th", say(f"faces.parameter-{key}"), scope="col") for key in keys))
    rows = [
        element(
            "tr",
            element("th", element("code", parameter.name), scope="row"),
            element("td", layout.label(parameter)),
            element("td", parameter_range(parameter)),
            element("td", parameter_default(parameter)),
        )
        for parameter in layout.parameters
    ]
    plan, judged = panel_plan.planned(read_all(panel_plan.CALCULATOR, {"layout": layout.name, "title": layout.title}))
    return element(
        "section",
        element("h2", layout.title, id=layout.name),
        element("p", layout.how_it_knits),
        _figure(plan, judged, layout.name),
        element("p", say("faces.layout-name"), " ", element("code", layout.name)),
        element(
            "div",
            element("table", element("thead", heads), element("tbody", *rows)),
            class_="ww-wide",
            role="group",
            tabindex="0",
            aria_label=say("faces.parameters-of", layout=layout.title),
        ),
        class_="ww-part ww-layout",
        data_layout=layout.name,
    )


def gallery_html(design_text: str, name: str, address: Callable[[str, str], str]) -> str:
    """One finished example: its picture, what its file says of it, and the ways on from it. Raises Refused.

    `address` turns the name of a page and a fragment into where that page lies; the file is at ``file`` with the name.
    """
    design = read_design(design_text)
    plan = plan_piece(design)
    judged = replay_plan(plan)
    typed = typed_of(design)
    to_plan, to_pattern = (make_link(slug, typed, steps_digest(plan.steps)) for slug in ("panel-plan", "written-pattern"))
    ways_on = (
        ("plan", address("plan", to_plan)),
        ("pattern", address("pattern", to_pattern)),
        ("file", address("file", name)),
    )
    links = (element("li", element("a", say(f"faces.gallery-{key}"), href=where)) for key, where in ways_on)
    return element(
        "section",
        element("h2", design.title, id=name),
        element("p", design.notes),
        _figure(plan, judged, name),
        element("ul", *links, class_="ww-ways"),
        class_="ww-part ww-example",
    )


def piece_html(design_text: str) -> str:
    """The finished front of a design file with a few figures, all from the replay. Raises Refused."""
    plan = plan_piece(read_design(design_text))
    return _figure(plan, replay_plan(plan), "piece")


def _figure(plan: Plan, judged: Replay, prefix: str) -> Html:
    """The finished front, and under it title, size, blocks and ends."""
    sizes = resolve(plan.design)
    blocks = sum(1 for block in plan.blocks if not is_edge(block.id))
    words = say(
        "faces.piece",
        width=both_text(sizes.width_mm, 0),
        height=both_text(sizes.height_mm, 0),
        needles=say_n("common.needles", sizes.needles),
        rows=say_n("common.rows", sizes.rows),
        blocks=say_n("faces.blocks", blocks),
        ends=say_n("faces.ends", judged.summary.ends),
    )
    return element(
        "figure",
        Html(front_svg(plan, judged, prefix=prefix)),
        element("figcaption", element("strong", plan.design.title), " ", words),
        class_="ww-piece",
    )
