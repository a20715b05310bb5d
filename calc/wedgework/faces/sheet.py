"""The sheet of a class as HTML: what a teacher wrote, and each entry with what it is and the way to its page.

    sheet_html(read_class(text))

Everything that was written is shown as text. The only addresses on it are those of our own pages, with the entry's link behind.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from wedgework.draw.sketch import sketch_svg
from wedgework.faces.about import about, design_in
from wedgework.faces.link import read_link
from wedgework.faces.markup import Html, element, joined
from wedgework.formats import Class, ClassEntry
from wedgework.layout import drawn_layout, is_shaped, layout_problems, resolve, size_problems
from wedgework.problems import Refused
from wedgework.say import say

__all__ = ["paragraphs", "picture_html", "sheet_html"]

UP = "../"
"""From the page of the class to the site's first page."""


def sheet_html(found: Class, picture: Callable[[str, str], str] | None = None) -> str:
    """The whole sheet. `picture` makes one of a link and a prefix for its ids; without it there is room for one."""
    entries = (_entry(entry, number, picture) for number, entry in enumerate(found.entries, 1))
    return element(
        "div",
        element("h2", found.title or say("faces.class-untitled")),
        *paragraphs(found.text),
        element("ol", *entries, class_="ww-lesson", aria_label=say("faces.class-contents")) if found.entries else "",
        class_="ww-sheet",
    )


def _entry(entry: ClassEntry, number: int, picture: Callable[[str, str], str] | None) -> Html:
    try:
        what = about(read_link(entry.link))
    except Refused as refused:
        said = " ".join(f"{p.sentence} {p.way_out}".strip() for p in refused.problems)
        return element(
            "li", element("h3", entry.title or f"{number}"), *paragraphs(entry.text), element("p", said, class_="ww-bad")
        )
    named = f"\u201c{what.title}\u201d:" if what.title and what.title != entry.title else ""
    return element(
        "li",
        element("div", Html(picture(entry.link, f"entry-{number}")) if picture else "", class_="ww-entry-picture"),
        element(
            "div",
            element("h3", entry.title or what.title or what.what),
            element("p", " ".join(filter(None, (f"{what.what}.", named, *_ended(what.lines)))), class_="ww-entry-what"),
            *paragraphs(entry.text),
            element(
                "p",
                element(
                    "a", say("faces.class-open", page=what.what), href=f"{UP}{what.page}#{entry.link}", class_="go go--quiet"
                ),
            ),
        ),
        data_link=entry.link,
    )


def _ended(lines: tuple[str, ...]) -> Iterator[str]:
    """Figures in one line, however many there are."""
    if lines:
        yield "; ".join(lines)


def picture_html(link: str, prefix: str) -> str:
    """The picture of the design in a link, not planned; nothing where there is none, or none that is true before it is planned.

    Raises Refused for what is no link.
    """
    opened = read_link(link)
    try:
        design = design_in(opened)
        if (
            design is None
            or is_shaped(design)
            or design.panel.part is not None
            or size_problems(design) + layout_problems(design)
        ):
            return ""
        sizes = resolve(design)
        return sketch_svg(design, drawn_layout(design, sizes), sizes, prefix=prefix, bare=True)
    except Refused:
        return ""


def paragraphs(text: str) -> Iterator[Html]:
    """Plain text as it was written: an empty line begins a paragraph, a line end stays one."""
    for part in text.split("\n\n"):
        lines = [line.strip() for line in part.strip().split("\n")]
        if any(lines):
            broken = [piece for line in lines for piece in (Html("<br>"), line)]
            yield element("p", joined(*broken[1:]))
