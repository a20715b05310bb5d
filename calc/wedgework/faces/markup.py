"""HTML in one small hand: everything is escaped unless it is `Html` already."""

from __future__ import annotations

from html import escape

__all__ = ["Html", "element", "joined", "void"]


class Html(str):
    """Finished markup; what is no `Html` is a person's text and is escaped."""

    __slots__ = ()


def element(tag: str, *inside: str, **attributes: str | bool | None) -> Html:
    """``element("p", "a < b", class_="ww-help")``: an attribute may end in ``_``, inner ``_`` become hyphens."""
    return Html(f"<{tag}{_written(attributes)}>{joined(*inside)}</{tag}>")


def void(tag: str, **attributes: str | bool | None) -> Html:
    """An element that has no inside."""
    return Html(f"<{tag}{_written(attributes)}>")


def joined(*parts: str) -> Html:
    return Html("".join(part if isinstance(part, Html) else escape(part) for part in parts))


def _written(attributes: dict[str, str | bool | None]) -> str:
    """True stands alone, False and None are left out."""
    done = ""
    for key, value in attributes.items():
        name = key.rstrip("_").replace("_", "-")
        if value is True:
            done += f" {name}"
        elif value is not None and value is not False:
            done += f' {name}="{escape(value)}"'
    return done
