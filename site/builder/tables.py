"""Tables for the reference pages, made of the same data that the calculators use."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from html import escape

from wedgework.blankets import BLANKETS, MATTRESSES, NamedSize
from wedgework.say import say
from wedgework.units import decimal_text, inches_text, short_decimal
from wedgework.yarn import CATEGORIES, Category

__all__ = ["sizes_html", "table_html", "yarn_weights_html"]


def table_html(heads: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """A table whose first cells are the heads of their rows; every text is escaped."""
    head = "".join(f'<th scope="col">{escape(words)}</th>' for words in heads)
    body = "".join(
        f'<tr><th scope="row">{escape(first)}</th>{"".join(f"<td>{escape(cell)}</td>" for cell in rest)}</tr>'
        for first, *rest in rows
    )
    return f"<table><thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>"


def yarn_weights_html(_nothing: str) -> str:
    """The categories of the Standard Yarn Weight System."""
    return table_html([say(f"site.weight-{key}") for key in ("name", "stitches", "needles")], map(_weight, CATEGORIES))


def _weight(category: Category) -> tuple[str, str, str]:
    least, most = category.least_stitches, category.most_stitches
    stitches = say("site.weight-fewer", most=most) if least is None else say("site.weight-between", least=least, most=most)
    thin, thick = category.least_needle_mm, category.most_needle_mm
    needles = "" if thin is None else short_decimal(thin, 2)
    if thick is None:
        needles = say("site.weight-larger", least=needles)
    else:
        needles = say("site.weight-between-mm", least=needles, most=short_decimal(thick, 2))
    return say("yarn.category", number=category.number, name=say(f"yarn.category-{category.key}")), stitches, needles


def sizes_html(which: str) -> str:
    """Usual sizes: of ``blankets`` or of ``mattresses``."""
    sizes = {"blankets": BLANKETS, "mattresses": MATTRESSES}[which]
    return table_html([say(f"site.size-{key}") for key in ("name", "cm", "inches", "source")], map(_size, sizes.values()))


def _size(size: NamedSize) -> tuple[str, str, str, str]:
    sides = (size.width_mm, size.height_mm)
    cm = say("site.size-by", width=decimal_text(sides[0] / 10, 0), height=decimal_text(sides[1] / 10, 0))
    inches = say("site.size-by", width=inches_text(sides[0], 2)[:-3], height=inches_text(sides[1], 2)[:-3])
    return say(f"blankets.{size.key}"), cm, inches, say(f"blankets.source-{size.source}")
