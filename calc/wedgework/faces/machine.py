"""The page at the machine before any script: its first step, true and complete, in the places that the script fills later.

    machine_html(piece_of({}))

Takes the record that `piece` makes and nothing else, as the script does; a test compares what both make of a step.
"""

from __future__ import annotations

from typing import Any

from wedgework.faces.markup import Html, element, joined, void
from wedgework.say import say

__all__ = ["machine_html"]

CAUTIONS = ("needles", "weights", "strain", "infants")
Record = dict[str, Any]


def machine_html(piece: Record) -> Html:
    """Everything of the page but its heading."""
    cue = piece["cues"][0]
    return element(
        "div",
        _bar(piece, cue),
        element("div", class_="m-notices", role="status"),
        _cue(piece, cue),
        element("div", _key(), class_="m-bed", hidden=True),
        element("figure", element("figcaption", say("machine.front-caption")), class_="m-front", hidden=True),
        _moving(piece),
        element("noscript", element("p", say("machine.without-script"), class_="m-notice")),
        _dialog("go"),
        _dialog("more"),
        class_="machine",
        data_machine=piece["digest"],
        data_kind=cue["kind"],
    )


def _bar(piece: Record, cue: Record) -> Html:
    block_rows = next(one for one in reversed(piece["cues"]) if one["block"] == cue["block"])["counter_after"]
    rows = joined(
        element("span", say("machine.block-rows", done=cue["counter_after"], all=block_rows), class_="m-block-rows"),
        element(
            "span",
            say("machine.piece-rows", done=cue["row_before"], all=piece["rows"]),
            class_="m-piece-rows",
            data_row=str(cue["row_before"]),
        ),
    )
    return element(
        "div",
        element("p", cue["block_name"], class_="m-block"),
        element("p", rows, class_="m-rows"),
        element("p", element("span", piece["title"], class_="m-title"), " ", _step(piece, cue), class_="m-piece"),
        element("button", say("machine.go"), type="button", data_opens="go", disabled=True),
        element("button", say("machine.more"), type="button", data_opens="more", disabled=True),
        class_="m-bar",
    )


def _step(piece: Record, cue: Record) -> Html:
    return element("span", say("machine.step", step=cue["index"] + 1, steps=len(piece["cues"])), class_="m-step")


def _cue(piece: Record, cue: Record) -> Html:
    yarn = next((one for one in piece["yarns"] if one["id"] == cue["yarn"]), None)
    return element(
        "section",
        element(
            "div",
            element("p", cue["where"], class_="m-where"),
            element("p", *_yarn(yarn), class_="m-yarn", hidden=yarn is None),
            element("p", say("machine.good-stop"), class_="m-stop", hidden=not cue["good_to_stop"]),
            class_="m-head",
        ),
        element("div", class_="m-now", hidden=True),
        element("ol", *(_line(at, words) for at, words in enumerate(cue["before"])), class_="m-list"),
        element("p", element("span", class_="m-rows-now"), element("span", class_="m-run"), class_="m-knit", hidden=True),
        _check(cue["check"]),
        element("p", cue["next"], class_="m-next"),
        _cautions(),
        class_="m-cue",
        aria_live="polite",
        data_cue=str(cue["index"]),
    )


def _check(words: str) -> Html:
    return element("p", element("b", say("machine.check")), " ", element("span", words), class_="m-check", hidden=not words)


def _line(at: int, words: str) -> Html:
    """One line of a check list; the first that is not done stands large."""
    label = element("label", void("input", type="checkbox", data_item=str(at)), element("span", words))
    return element("li", label, class_="is-now" if at == 0 else None)


def _yarn(yarn: Record | None) -> tuple[Html, ...]:
    """Where it is stands beside it only when rows are knitted: a check list threads it."""
    colour, name = (yarn["colour"], yarn["name"]) if yarn else ("none", "")
    patch = element("rect", x="1", y="1", width="30", height="30", rx="5", fill=colour)
    return (
        element("svg", patch, class_="m-patch", viewBox="0 0 32 32", width="32", height="32", aria_hidden="true"),
        Html(" "),
        element("strong", name),
        Html(" "),
        element("span"),
    )


def _cautions() -> Html:
    lines = (element("li", say(f"words.caution-{key}")) for key in CAUTIONS)
    return element("div", element("p", say("machine.before-start")), element("ul", *lines), class_="m-cautions")


def _key() -> Html:
    """What the four kinds of needles in the drawing mean; the signs are drawn by the script."""
    keys = ("knitting", "held", "holding", "returning")
    return element("p", *(element("span", say(f"machine.key-{key}"), data_key=key) for key in keys), class_="m-key")


def _moving(piece: Record) -> Html:
    return element(
        "div",
        element("button", say("machine.forward"), type="button", data_action="forward", disabled=True),
        element("button", say("machine.back"), type="button", data_action="back", disabled=True),
        class_="m-moving",
    )


def _dialog(which: str) -> Html:
    title = element("h2", say(f"machine.{which}-title"), id=f"m-{which}-title")
    close = element("button", say("machine.close"), type="button", data_close=True)
    inside = _go_inside() if which == "go" else _more_inside()
    head = element("div", title, close, class_="m-dialog-head")
    return element("dialog", head, *inside, class_=f"m-dialog m-{which}", aria_labelledby=f"m-{which}-title")


def _go_inside() -> tuple[Html, ...]:
    row = void("input", id="m-row", name="row", inputmode="numeric", autocomplete="off", aria_describedby="m-row-said")
    return (
        element("p", class_="m-go-undo", hidden=True),
        element(
            "form",
            element("label", say("machine.go-row"), for_="m-row"),
            element("div", row, element("button", say("machine.go-row-go"), type="submit")),
            element("p", id="m-row-said", class_="m-row-said", role="status"),
            class_="m-go-row",
            novalidate=True,
        ),
        element("h3", say("machine.go-block")),
        element("ol", class_="m-go-blocks"),
    )


def _more_inside() -> tuple[Html, ...]:
    return (
        element("h3", say("machine.pieces")),
        element("ul", class_="m-pieces"),
        element("h3", say("machine.awake")),
        element("p", element("button", say("machine.awake"), type="button", class_="m-awake", aria_pressed="false")),
        element("p", class_="m-awake-said", role="status"),
        element("h3", say("machine.paper")),
        element("p", element("button", say("machine.print"), type="button", class_="m-print")),
        element("h3", say("machine.keys")),
        element("p", say("machine.keys-help")),
    )
