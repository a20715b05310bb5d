"""The page at the machine before any script: its first step, true and complete, in the places that the script fills later.

    machine_html(piece_of({}))

Takes the record that `piece` makes and nothing else, as the script does; a test compares what both make of a step.
"""

from __future__ import annotations

from typing import Any

from wedgework.faces.machine_windows import CAUTIONS, windows
from wedgework.faces.markup import Html, element, joined, void
from wedgework.say import say

__all__ = ["machine_html"]

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
        element("p", say("machine.stuck"), class_="m-stuck", role="status"),
        windows(),
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
        element("span", class_="m-pace", hidden=True),
    )
    return element(
        "div",
        element("p", cue["block_name"], class_="m-block"),
        element("p", rows, class_="m-rows"),
        element("p", element("span", piece["title"], class_="m-title"), " ", _step(piece, cue), class_="m-piece"),
        *(
            element("button", say(f"machine.{which}"), type="button", data_opens=which, disabled=True)
            for which in ("go", "trouble", "more")
        ),
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
        element(
            "div", element("span", class_="m-rows-now"), element("span", class_="m-run"), _single(), class_="m-knit", hidden=True
        ),
        _check(cue["check"]),
        element("p", cue["next"], class_="m-next"),
        element("p", class_="m-note", hidden=True),
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


def _single() -> Html:
    """Opens a step of several rows, and closes it again."""
    return element("button", say("machine.single"), type="button", class_="m-single", aria_pressed="false", hidden=True)


def _cautions() -> Html:
    """Whole where there is room; on a telephone a button that opens them, so that the step needs no scrolling."""
    lines = (element("li", say(f"words.caution-{key}")) for key in CAUTIONS)
    button = element("button", say("machine.cautions"), type="button", data_opens="before", disabled=True)
    return joined(
        element("div", element("p", say("machine.before-start")), element("ul", *lines), class_="m-cautions"),
        element("p", button, class_="m-cautions-short"),
    )


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
