"""What a page can ask of the core: each part is a function from the rest of its line to HTML."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from html import escape

from builder.board import board
from builder.classes import class_page
from builder.embed import embed_picker
from builder.formats import format_html
from builder.languages import FOLDER
from builder.licences import licences_html
from builder.machine import machine
from builder.pieces import PIECES, piece_text
from builder.tables import sizes_html, yarn_weights_html
from wedgework.bed import USUAL_BEDS
from wedgework.catalogue import CALCULATORS
from wedgework.draw.diagrams import DIAGRAMS
from wedgework.faces import page
from wedgework.say import say
from wedgework.units import decimal_text, short_decimal
from wedgework.version import VERSION

__all__ = ["GALLERY", "PARTS", "PIECES"]


def calculator(slug: str) -> str:
    """The form and the answer of one calculator, for its defaults; on a narrow screen the answer is far below the form."""
    html = page.calculator_html(slug)
    return f'<p class="to-answer"><a href="#{slug}-answer">{escape(say("site.to-answer"))}</a></p>\n{html}'


def drawing(name: str) -> str:
    """One of the explaining drawings."""
    return f"<figure>{DIAGRAMS[name]()}</figure>"


def piece(name: str) -> str:
    """A design file, planned, knitted on the model bed and drawn."""
    return page.piece_html(piece_text(name))


GALLERY = (
    "harbour-lights",
    "kite-meadow",
    "slate-roof",
    "window-lattice",
    "night-train",
    "far-hills",
    "first-sun",
    "quarry-steps",
    "tide-line",
    "half-round",
)
"""Finished examples, in the order in which they are shown."""


def gallery(_nothing: str) -> str:
    """Every example with its picture and the links that open it; addresses as seen from the page of the gallery."""

    def address(page_name: str, rest: str) -> str:
        pages = {
            "plan": f"../plan/#{rest}",
            "pattern": f"../calculators/written-pattern/#{rest}",
            "file": f"../pieces/{rest}.json",
        }
        return pages[page_name]

    shown = (page.gallery_html(piece_text(name), name, address) for name in GALLERY)
    return f'<div class="ww-gallery">{"".join(shown)}</div>'


def layouts(_nothing: str) -> str:
    """The layouts that ship, with their parameters."""
    return page.layouts_html()


def beds(_nothing: str) -> str:
    """The usual beds: pitch, needles, and the distance from the first needle to the last."""
    head = "".join(f'<th scope="col">{escape(say(f"site.bed-{key}"))}</th>' for key in ("pitch", "needles", "across"))
    rows = "".join(
        f"<tr><td>{short_decimal(bed.pitch_mm, 1)} mm</td><td>{bed.needles}</td>"
        f"<td>{decimal_text((bed.needles - 1) * bed.pitch_mm / 10, 1)} cm</td></tr>"
        for bed in USUAL_BEDS
    )
    return f"<table><thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table>"


def version(_nothing: str) -> str:
    return f"<p>{escape(say('site.version', version=VERSION))}</p>"


def calculators(_nothing: str) -> str:
    """Every calculator with what it does, as seen from the page of all calculators."""
    shown = (
        f'<dt><a href="{one.slug}/">{escape(one.title)}</a></dt><dd>{escape(say(f"calculators.{one.slug}.what"))}</dd>'
        for one in CALCULATORS
    )
    return f"<dl>{''.join(shown)}</dl>"


def terms(language: str) -> str:
    """The words of the trade in another language, each with its source."""
    rows = ((FOLDER / language / "terms.tsv").read_text(encoding="utf-8")).splitlines()
    head, *lines = ([escape(cell) for cell in row.split("\t")] for row in rows if row and not row.startswith("#"))
    heads = "".join(f'<th scope="col">{cell}</th>' for cell in head)
    shown = "".join(f"<tr>{''.join(f'<td>{cell}</td>' for cell in cells)}</tr>" for cells in lines)
    table = f"<table><thead><tr>{heads}</tr></thead><tbody>{shown}</tbody></table>"
    return f'<div class="ww-wide" role="group" tabindex="0" aria-label="{head[0]}, {head[1]}">{table}</div>'


def licences(_nothing: str) -> str:
    return licences_html()


PARTS: Mapping[str, Callable[[str], str]] = {
    "beds": beds,
    "board": board,
    "calculator": calculator,
    "calculators": calculators,
    "class": class_page,
    "drawing": drawing,
    "embed": embed_picker,
    "format": format_html,
    "gallery": gallery,
    "layouts": layouts,
    "licences": licences,
    "machine": machine,
    "piece": piece,
    "sizes": sizes_html,
    "terms": terms,
    "version": version,
    "yarn-weights": yarn_weights_html,
}
