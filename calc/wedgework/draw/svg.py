"""Elements of a drawing as values, and their text. One unit is one printed millimetre.

    >>> Element("line", {"x1": Fraction(1, 3), "x2": 4}).text()
    '<line x1="0.33" x2="4"/>'

Only presentation attributes, no style, no script: the pages forbid both.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from html import escape

__all__ = ["Child", "Element", "Number", "document", "group", "label", "line", "number", "path", "rect"]

Number = int | Fraction


@dataclass(frozen=True, slots=True)
class Element:
    """`attributes` keep their order; numbers are rounded to two places."""

    name: str
    attributes: Mapping[str, str | Number] = field(default_factory=dict)
    children: tuple[Child, ...] = ()

    def text(self) -> str:
        """The element as SVG, escaped."""
        opened = "".join(f' {key}="{_value(value)}"' for key, value in self.attributes.items())
        if not self.children:
            return f"<{self.name}{opened}/>"
        inner = "".join(escape(c, quote=False) if isinstance(c, str) else c.text() for c in self.children)
        return f"<{self.name}{opened}>{inner}</{self.name}>"


Child = Element | str


def number(value: Number) -> str:
    """At most two decimal places, rounded half away from zero, exactly."""
    # In whole numbers: a drawing has thousands of these, and a tablet makes it while a person types.
    below = value.denominator
    whole = (200 * abs(value.numerator) + below) // (2 * below)
    units, rest = divmod(whole, 100)
    digits = f"{units}.{rest:02d}".rstrip("0").rstrip(".")
    return f"-{digits}" if value < 0 and whole else digits


def _value(value: str | Number) -> str:
    return escape(value) if isinstance(value, str) else number(value)


def document(
    width: Number,
    height: Number,
    title: str,
    desc: str,
    children: Iterable[Child],
    *,
    prefix: str,
    kind: str,
    units: tuple[Number, Number] | None = None,
) -> str:
    """A whole drawing, `width` x `height` mm; `prefix` makes its ids its own on a page, `kind` is its class.

    `units` are its width and height in the units of `children`, where these are not millimetres.
    """
    ids = f"{prefix}-title", f"{prefix}-desc"
    attributes: dict[str, str | Number] = {
        "xmlns": "http://www.w3.org/2000/svg",
        "class": f"drawing drawing-{kind}",
        "width": f"{number(width)}mm",
        "height": f"{number(height)}mm",
        "viewBox": "0 0 {} {}".format(*map(number, units or (width, height))),
        "role": "img",
        "aria-labelledby": " ".join(ids),
        "font-family": "system-ui, sans-serif",
    }
    head = (Element("title", {"id": ids[0]}, (title,)), Element("desc", {"id": ids[1]}, (desc,)))
    return Element("svg", attributes, (*head, *children)).text()


def group(children: Iterable[Child], **attributes: str | Number) -> Element:
    """Elements with common attributes; underscores in names become hyphens."""
    return Element("g", _named(attributes), tuple(children))


def label(x: Number, y: Number, words: str, size: Number, **attributes: str | Number) -> Element:
    """A line of text; `y` is its baseline. Its colour is the page's unless `fill` says otherwise."""
    base: dict[str, str | Number] = {"x": x, "y": y, "font-size": size, "fill": "currentColor"}
    return Element("text", base | _named(attributes), (words,))


def line(x1: Number, y1: Number, x2: Number, y2: Number, **attributes: str | Number) -> Element:
    base: dict[str, str | Number] = {"x1": x1, "y1": y1, "x2": x2, "y2": y2, "stroke": "currentColor"}
    return Element("line", base | _named(attributes))


def path(d: str, **attributes: str | Number) -> Element:
    base: dict[str, str | Number] = {"d": d}
    return Element("path", base | _named(attributes))


def rect(x: Number, y: Number, width: Number, height: Number, **attributes: str | Number) -> Element:
    base: dict[str, str | Number] = {"x": x, "y": y, "width": width, "height": height}
    return Element("rect", base | _named(attributes))


def _named(attributes: Mapping[str, str | Number]) -> dict[str, str | Number]:
    return {key.rstrip("_").replace("_", "-"): value for key, value in attributes.items()}
