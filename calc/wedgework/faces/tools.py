"""What a page offers to do with an answer: a few buttons over it, and under it the ways on and what can be done with its link.

Scripts bring them to life and show them then (see site/app/forms.js); until that their room is kept free, so that nothing moves.
"""

from __future__ import annotations

from wedgework.faces.markup import Html, element, joined
from wedgework.faces.onward import ways
from wedgework.say import say

__all__ = ["tools_over", "tools_under"]

IN_SIGHT = 3
"""Ways on that are seen at once; the others are folded."""
SHARE = ("copy-link", "show-code", "class-put", "send-link")
"""The last one is taken away where the device has nothing to send with."""
STITCH_BY_STITCH = ("panel-plan", "yarn-needs", "scraps")
"""Answers with a finished piece; that of the stripes shows its stitches at once."""


def tools_over(slug: str, *, alone: bool = False, long: bool = False) -> Html:
    """`alone`: in the page of somebody else, with no way on to other pages of the site. `long`: the ways on are far below."""
    found: list[Html] = []
    if slug == "panel-plan" and not alone:
        words, help_ = say("faces.at-the-machine"), say("faces.at-the-machine-help")
        found.append(_button(words, class_="ww-button", title=help_, data_does="machine"))
    found.append(_button(say("faces.defaults"), type_="reset", title=say("faces.defaults-help")))
    if long and not alone:
        found.append(element("a", say("faces.to-tools"), href=f"#{slug}-tools", class_="ww-to-tools"))
    return element("div", *found, class_="ww-actions ww-over")


def tools_under(slug: str, *, alone: bool = False) -> Html:
    """May be empty."""
    found: list[Html] = []
    if slug in STITCH_BY_STITCH:
        found.append(_row(_button(say("faces.stitches"), title=say("faces.stitches-help"), data_does="fabric")))
    if not alone:
        found += [*_onward(slug), _sharing(slug)]
    return element("div", *found, class_="ww-tools", id=f"{slug}-tools") if found else joined()


def _onward(slug: str) -> list[Html]:
    """The ways on, if there are any; from the planner to the layout board first."""
    buttons = (
        [_button(say("app.board-title"), title=say("faces.to-board-help"), data_does="board")] if slug == "panel-plan" else []
    )
    buttons += [_button(say(f"faces.onward-to-{to}"), data_to=to) for to in ways(slug)]
    if not buttons:
        return []
    shown, more = buttons[:IN_SIGHT], buttons[IN_SIGHT:]
    if more:
        folded = element("details", element("summary", say("faces.onward-more")), _row(*more), class_="ww-onward-more")
        shown = [*shown, folded]
    return [_group(f"onward-{slug}", say(f"faces.onward-from-{slug}"), shown)]


def _sharing(slug: str) -> Html:
    buttons = [_button(say(f"app.{key}"), title=say(f"app.{key}-help"), data_does=key) for key in SHARE]
    return _group(f"sharing-{slug}", say("app.share"), buttons, "ww-sharing")


def _group(id_: str, title: str, buttons: list[Html], kind: str = "") -> Html:
    return element(
        "div",
        element("p", title, class_="ww-onward-title", id=id_),
        _row(*buttons),
        class_=f"ww-onward {kind}".rstrip(),
        role="group",
        aria_labelledby=id_,
    )


def _row(*buttons: Html) -> Html:
    return element("div", *buttons, class_="ww-actions")


def _button(words: str, *, type_: str = "button", class_: str = "ww-button ww-button--quiet", **more: str) -> Html:
    return element("button", words, type=type_, class_=class_, **more)
