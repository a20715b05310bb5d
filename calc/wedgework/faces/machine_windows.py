"""The windows over the page at the machine: going elsewhere, trouble, where am I, taking rows back, carrying on, and all the
rest.

They stand in the page from the start; the script opens them and fills what depends on the piece.
"""

from __future__ import annotations

from wedgework.faces.markup import Html, element, joined, void
from wedgework.say import has, say

__all__ = ["CAUTIONS", "MISHAPS", "mishaps_html", "windows"]

MISHAPS = ("stitch", "held", "edge", "knitted", "forgotten", "jam", "yarn", "fell")
"""Keys of what can happen; each has a title and numbered steps in the say room."""

AIDS = ("sound", "shake", "speak")
CAUTIONS = ("needles", "weights", "strain", "infants")


def windows() -> Html:
    """All of them, closed."""
    return joined(
        _window("go", "machine.go-title", _go()),
        _window("trouble", "machine.trouble-title", _trouble()),
        _window("find", "machine.find-title", _find()),
        _window("back", "machine.back-title", _back()),
        _window("carry", "machine.carry-title", _carry()),
        _window("more", "machine.more-title", _more()),
        _window("report", "machine.report-title", _report()),
        _window("before", "machine.before-start", _before()),
    )


def _before() -> Html:
    return element("ul", *(element("li", say(f"words.caution-{key}")) for key in CAUTIONS))


def mishaps_html() -> Html:
    """Every mishap with its steps, closed until it is asked for."""
    return joined(*(_mishap(key) for key in MISHAPS))


def _mishap(key: str) -> Html:
    steps: list[Html] = []
    while has(f"machine.mishap-{key}-{len(steps) + 1}"):
        steps.append(element("li", say(f"machine.mishap-{key}-{len(steps) + 1}")))
    return element("details", element("summary", say(f"machine.mishap-{key}")), element("ol", *steps), data_mishap=key)


def _window(which: str, title: str, inside: Html) -> Html:
    name = f"m-{which}-title"
    head = element("h2", say(title), id=name)
    close = element("button", say("machine.close"), type="button", data_close=True)
    return element(
        "dialog", element("div", head, close, class_="m-dialog-head"), inside, class_=f"m-dialog m-{which}", aria_labelledby=name
    )


def _opener(which: str, title: str) -> Html:
    return element("p", element("button", say(title), type="button", data_opens=which, disabled=True))


def _field(name: str, label: str, **more: str) -> Html:
    """One field with its label above it."""
    box = void("input", id=f"m-{name}", name=name, autocomplete="off", **more)
    return element("p", element("label", say(label), for_=f"m-{name}"), box, class_="m-field")


def _said(name: str) -> Html:
    return element("p", class_="m-said", role="status", data_said=name)


def _go() -> Html:
    row = void("input", id="m-row", name="row", inputmode="numeric", autocomplete="off", aria_describedby="m-row-said")
    return joined(
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


def _trouble() -> Html:
    return joined(
        element("div", _opener("find", "machine.find"), _opener("back", "machine.back-rows"), class_="m-two"),
        element(
            "p", element("button", say("machine.carry"), type="button", data_opens="carry", disabled=True), class_="m-wide-button"
        ),
        element("p", class_="m-carried", hidden=True),
        element("h3", say("machine.mishaps")),
        element("div", mishaps_html(), _count_off(), class_="m-mishaps"),
    )


def _count_off() -> Html:
    """Two counts that do not agree: what to do, and a place to note them for the designer."""
    fields = (_field(f"count-{name}", f"machine.count-{name}", inputmode="numeric") for name in ("planned", "counted"))
    note = element("button", say("machine.count-note"), type="submit")
    form = element(
        "form",
        element("div", *fields, class_="m-two"),
        element("p", note, " ", element("span", role="status")),
        class_="m-count-off",
        novalidate=True,
    )
    return element("details", element("summary", say("machine.count-off")), element("p", say("machine.count-off-help")), form)


def _report() -> Html:
    words = void("input", id="m-report-name", name="report-name", maxlength="100", autocomplete="off")
    text = element("textarea", id="m-report-text", name="report-text", rows="3", maxlength="5000")
    return joined(
        element("p", say("machine.report-help")),
        element("div", class_="m-report-holds"),
        element(
            "form",
            element("p", element("label", say("machine.report-name"), for_="m-report-name"), words, class_="m-field m-wide"),
            element("div", class_="m-report-yarns m-two"),
            element("p", element("label", say("machine.report-text"), for_="m-report-text"), text, class_="m-field m-wide"),
            element("p", element("button", say("machine.report-save"), type="submit")),
            novalidate=True,
        ),
        _said("report"),
    )


def _find() -> Html:
    return joined(
        element("p", say("machine.find-help")),
        element(
            "form",
            element(
                "p",
                element("label", say("machine.find-yarn"), for_="m-find-yarn"),
                element("select", id="m-find-yarn", name="yarn"),
                class_="m-field",
            ),
            _ends("colour"),
            _ends("open"),
            _choice("carriage", "machine.find-carriage", (("L", "machine.side-L"), ("R", "machine.side-R"))),
            _choice("wrapped", "machine.find-wrapped", (("1", "machine.find-yes"), ("0", "machine.find-no"))),
            _field("find-counter", "machine.find-counter", inputmode="numeric"),
            element("p", element("button", say("machine.find-go"), type="submit")),
            novalidate=True,
        ),
        _said("find"),
        element("ol", class_="m-fits"),
    )


def _ends(which: str) -> Html:
    ends = (
        element(
            "label",
            say(f"machine.find-{end}"),
            " ",
            void("input", name=f"{which}-{end}", autocomplete="off", autocapitalize="characters", spellcheck="false"),
        )
        for end in ("from", "to")
    )
    none = element("label", void("input", type="checkbox", name=f"{which}-none"), " ", say(f"machine.find-{which}-none"))
    return element("fieldset", element("legend", say(f"machine.find-{which}")), *ends, none)


def _choice(name: str, legend: str, choices: tuple[tuple[str, str], ...], *, tell: bool = True) -> Html:
    made = (
        element("label", void("input", type="radio", name=name, value=value, checked=not value), " ", say(label))
        for value, label in (*choices, *((("", "machine.find-cannot-tell"),) if tell else ()))
    )
    return element("fieldset", element("legend", say(legend)), *made)


def _back() -> Html:
    return joined(
        element(
            "form",
            _field("back-count", "machine.back-count", inputmode="numeric"),
            element("p", element("button", say("machine.back-show"), type="submit")),
            novalidate=True,
        ),
        _said("back"),
        element("ol", class_="m-back-steps"),
        element("p", element("button", say("machine.back-go"), type="button", class_="m-back-go"), hidden=True),
    )


def _carry() -> Html:
    """What the page believes, to be corrected; what comes of it; and the button that goes on from there."""
    rows = element("details", element("summary", say("machine.carry-rows")), element("p", class_="m-carry-rows"))
    yarn = element(
        "p",
        element("label", say("machine.carry-feeder"), for_="m-feeder_yarn"),
        element("select", id="m-feeder_yarn", name="feeder_yarn"),
        class_="m-field",
    )
    sides = (("left", "machine.side-L"), ("right", "machine.side-R"))
    form = element(
        "form",
        _described(
            "changes", "machine.carry-changes", element("textarea", **_described_by("changes"), rows="2", maxlength="4000")
        ),
        rows,
        _described("held_needles", "machine.carry-held", void("input", **_described_by("held_needles"))),
        _choice("carriage_side", "machine.find-carriage", sides, tell=False),
        element("div", yarn, _field("feeder_needle", "machine.carry-feeder-needle"), class_="m-two"),
        _described("mast", "machine.carry-mast", void("input", **_described_by("mast"))),
        element("p", element("button", say("machine.carry-see"), type="submit")),
        novalidate=True,
    )
    go = element("button", say("machine.carry-go"), type="button", class_="m-carry-go")
    return joined(
        element("p", say("machine.carry-help"), class_="m-carry-help"),
        form,
        _said("carry"),
        element("div", class_="m-carry-found"),
        element("div", element("p", say("machine.carry-compare")), element("p", go), class_="m-carry-after", hidden=True),
    )


def _described_by(name: str) -> dict[str, str]:
    return {"id": f"m-{name}", "name": name, "autocomplete": "off", "aria_describedby": f"m-{name}-help"}


def _described(name: str, label: str, box: Html) -> Html:
    """A wide field with its label above and a line of help below."""
    key = "held" if name == "held_needles" else name
    told = element("small", say(f"machine.carry-{key}-help"), id=f"m-{name}-help")
    return element("p", element("label", say(label), for_=f"m-{name}"), box, told, class_="m-field m-wide")


def _more() -> Html:
    return joined(
        element("h3", element("label", say("machine.note"), for_="m-note")),
        element("textarea", id="m-note", class_="m-note-text", rows="2", maxlength="500"),
        element(
            "p",
            element("button", say("machine.note-save"), type="button", class_="m-note-save"),
            " ",
            element("span", role="status", class_="m-note-said"),
        ),
        element("details", element("summary", say("machine.notes")), element("ul", class_="m-notes")),
        element("h3", say("machine.pieces")),
        element("ul", class_="m-pieces"),
        element(
            "div",
            element("h4", say("machine.removed-title")),
            element("ul", class_="m-removed"),
            hidden=True,
            class_="m-removed-part",
        ),
        element("h3", say("machine.time")),
        element("div", class_="m-times"),
        element("h3", say("machine.gauge")),
        _gauge(),
        element("h3", say("machine.awake")),
        element("p", element("button", say("machine.awake"), type="button", class_="m-awake", aria_pressed="false")),
        element("p", class_="m-awake-said", role="status"),
        element("h3", say("machine.aids")),
        *(_aid(key) for key in AIDS),
        element("h3", say("machine.report")),
        _opener("report", "machine.report"),
        element("h3", say("machine.saving")),
        element("p", element("a", say("machine.saving-go"), href="../reference/saving/"), class_="m-link"),
        element("h3", say("machine.paper")),
        element("p", element("button", say("machine.print"), type="button", class_="m-print")),
        element("h3", say("machine.keys")),
        element("p", say("machine.keys-help")),
    )


def _aid(key: str) -> Html:
    button = element("button", say(f"machine.{key}"), type="button", data_aid=key, aria_pressed="false")
    return element("p", button, " ", element("span", data_aid_said=key, role="status"), class_="m-aid")


def _gauge() -> Html:
    names = ("stitches", "width", "rows", "height")
    fields = (_field(f"gauge-{name}", f"machine.gauge-{name}", inputmode="decimal") for name in names)
    return joined(
        element("p", say("machine.gauge-help")),
        element(
            "form",
            element("div", *fields, class_="m-two"),
            element("p", element("button", say("machine.gauge-go"), type="submit")),
            class_="m-gauge",
            novalidate=True,
        ),
        element("div", class_="m-gauge-said", role="status"),
    )
